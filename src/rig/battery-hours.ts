// How long batteries last: of packs, pedals, preamps and active instruments.

import type { Show } from '../showfile/show.ts';
import { powered } from './supply-loads.ts';

export type BatteryLeft = {
	readonly what: 'pack' | 'pedal' | 'part' | 'instrument';
	/** Null for packs and instruments. */
	readonly player: string | null;
	readonly id: string;
	/** Capacity over draw less the hours used, no margin taken off; never under 0. Null where the draw is not known. */
	readonly hoursLeft: number | null;
};

/**
 * Hours that a battery gives from fresh: what it holds over what is drawn.
 *
 * @example
 * freshHours(500, 12).toFixed(3) // => '41.667'
 */
export function freshHours(milliampHours: number, milliamps: number): number {
	return milliampHours / milliamps;
}

/**
 * Every battery of a show: packs, then pedals, parts of rigs, instruments.
 *
 * @example
 * batteriesLeft(PACKS) // => [{ what: 'pack', player: null, id: 'P1', hoursLeft: 3.5 }]
 */
export function batteriesLeft(
	show: Pick<Show, 'packs' | 'boards' | 'rigs' | 'instruments'>,
): readonly BatteryLeft[] {
	const packs = show.packs.flatMap(({ id, battery }): readonly BatteryLeft[] =>
		battery === undefined
			? []
			: [{ what: 'pack', player: null, id, hoursLeft: left(battery.hours - battery.used) }],
	);
	const others = powered(show).flatMap(({ player, id, power }): readonly BatteryLeft[] => {
		const { battery, milliamps } = power;
		if (battery === null) return [];
		const what =
			player === null
				? 'instrument'
				: show.boards[player]?.some((one) => one.id === id && one.power === power)
					? 'pedal'
					: 'part';
		const hoursLeft =
			milliamps === null || milliamps === 0
				? null
				: left(freshHours(battery.milliampHours, milliamps) - battery.hoursUsed);
		return [{ what, player, id, hoursLeft }];
	});
	return [...packs, ...others];
}

function left(hours: number): number {
	return Math.max(0, hours);
}
