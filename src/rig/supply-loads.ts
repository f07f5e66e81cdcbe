// What hangs on each output of each supply.

import type { Power, Supply, SupplyOutput } from '../showfile/rig.ts';
import type { Show } from '../showfile/show.ts';

/** Something that runs on power: a pedal of a board, a part of a rig, an active instrument. */
export type Powered = {
	/** Null for an instrument. */
	readonly player: string | null;
	readonly id: string;
	readonly name: string;
	readonly power: Power;
};

export type OutputLoad = {
	readonly supply: Supply;
	readonly output: SupplyOutput;
	readonly on: readonly Powered[];
	/** The sum of what the file gives; null where nothing on it says what it draws. */
	readonly usedMilliamps: number | null;
};

type Electrics = Pick<Show, 'boards' | 'rigs' | 'supplies' | 'instruments'>;

/**
 * All that says what it runs on, in the order of boards, rigs, instruments.
 *
 * @example
 * powered(BOARD).map(({ id }) => id) // => ['drive', 'boost']
 */
export function powered({
	boards,
	rigs = {},
	instruments,
}: Omit<Electrics, 'supplies'>): readonly Powered[] {
	const ofPlayers = [...Object.entries(boards), ...Object.entries(rigs)].flatMap(([player, all]) =>
		all.flatMap(({ id, name, power }) =>
			power === undefined ? [] : [{ player, id, name, power }],
		),
	);
	const own = instruments.flatMap(({ id, name, power }) =>
		power === undefined ? [] : [{ player: null, id, name, power }],
	);
	return [...ofPlayers, ...own];
}

/**
 * Every output of every supply with what is on it, those with nothing on them too.
 *
 * @example
 * outputLoads(BOARD).map(({ usedMilliamps }) => usedMilliamps) // => [105, null]
 */
export function outputLoads(show: Electrics): readonly OutputLoad[] {
	const all = powered(show);
	return (show.supplies ?? []).flatMap((supply) =>
		supply.outputs.map((output) => {
			const on = all.filter(
				({ power }) => power.supply === supply.id && power.output === output.id,
			);
			const drawn = on.flatMap(({ power }) => power.milliamps ?? []);
			const usedMilliamps = drawn.length === 0 ? null : drawn.reduce((sum, one) => sum + one, 0);
			return { supply, output, on, usedMilliamps };
		}),
	);
}
