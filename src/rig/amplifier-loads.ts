// What each amplifier drives: the cabinets between it and the next one, joined as the file says.

import type { RigPart } from '../showfile/rig.ts';
import type { Show } from '../showfile/show.ts';
import { parallelOhms } from './circuit.ts';

export type AmplifierLoad = {
	readonly player: string;
	readonly amplifier: RigPart;
	readonly cabs: readonly RigPart[];
	/** Null: no cabinet, or one whose ohms the file does not give. */
	readonly ohms: number | null;
	/** What the amplifier's output is made for; null where the file does not say. */
	readonly tapOhms: number | null;
};

/**
 * The load of every amplifier of a show, player by player.
 *
 * @example
 * amplifierLoads({ rigs: { bo: [amp('head', 4), cab('cab1', 8), cab('cab2', 8)] } })[0].ohms // => 4
 */
export function amplifierLoads({ rigs = {} }: Pick<Show, 'rigs'>): readonly AmplifierLoad[] {
	return Object.entries(rigs).flatMap(([player, parts]) =>
		parts.flatMap((amplifier, at) => {
			if (amplifier.kind !== 'amp') return [];
			const after = parts.slice(at + 1);
			const end = after.findIndex(({ kind }) => kind === 'amp');
			const cabs = (end < 0 ? after : after.slice(0, end)).filter(({ kind }) => kind === 'cab');
			return [{ player, amplifier, cabs, ohms: cabOhms(cabs), tapOhms: amplifier.tap ?? null }];
		}),
	);
}

/** Each cabinet is joined to all that come before it; side by side where the file does not say. */
function cabOhms(cabs: readonly RigPart[]): number | null {
	let together: number | null = null;
	for (const { ohms, wired = 'parallel' } of cabs) {
		if (ohms === undefined) return null;
		if (together === null) together = ohms;
		else together = wired === 'series' ? together + ohms : parallelOhms([together, ohms]);
	}
	return together;
}

/** Ohms on labels are nominal; nearer than this is the same: common practice, no source. */
const SAME_LOAD = 0.1;

/**
 * Whether an output that is made for `tapOhms` may drive so many ohms. One without tubes may drive more, and gives less
 * into them (common practice); of one that is not said to have none no other load is taken as safe.
 *
 * @example
 * mayDrive({ isTube: true }, { ohms: 8, tapOhms: 4 }) // => false
 * mayDrive({ isTube: false }, { ohms: 8, tapOhms: 4 }) // => true
 */
export function mayDrive(
	{ isTube }: Pick<RigPart, 'isTube'>,
	{ ohms, tapOhms }: { readonly ohms: number; readonly tapOhms: number },
): boolean {
	const off = ohms - tapOhms;
	return Math.abs(off) <= SAME_LOAD * tapOhms || (isTube === false && off > 0);
}

/**
 * Watts that each cabinet of a load gets when the amplifier gives all it has: side by side the lower ohms take
 * more, in a row the higher. An amplifier without tubes holds its volts, so that its watts go down as the ohms go up.
 * Null where the file lacks ohms or the amplifier's watts.
 *
 * @example
 * cabWatts({ player: 'bo', amplifier: { ...amp('head', 4), watts: 30 }, cabs: [cab('a', 8), cab('b', 8)], ohms: 4, tapOhms: 4 }) // => [15, 15]
 */
export function cabWatts(load: AmplifierLoad): readonly number[] | null {
	const { amplifier, cabs, ohms: together, tapOhms } = load;
	if (amplifier.watts === undefined || together === null) return null;
	const isLess = amplifier.isTube === false && tapOhms !== null && together > tapOhms;
	let share = isLess ? (amplifier.watts * tapOhms) / together : amplifier.watts;
	const watts: number[] = [];
	// From the last one joined to the first: what it leaves goes to all before it.
	for (const [at, { ohms = 0, wired = 'parallel' }] of [...cabs.entries()].reverse()) {
		const before = cabOhms(cabs.slice(0, at));
		const part = before === null ? 1 : (wired === 'series' ? ohms : before) / (ohms + before);
		watts.unshift(share * part);
		share *= 1 - part;
	}
	return watts;
}
