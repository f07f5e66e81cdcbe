// What was at fault on a rig on earlier nights, counted by part: what was found once is likelier next time.

import type { Entry } from '../journal/entry.ts';

export type FoundCause = { readonly player: string; readonly part: string };

/** A night with what was found at fault in it. */
export type NightCauses = {
	/** Folder of its show file. */
	readonly folder: string;
	/** Its instruments by id: an identity that holds from night to night, see `gearId`. */
	readonly gears: Readonly<Record<string, string>>;
	readonly causes: readonly FoundCause[];
};

type Kept = { readonly id: string; readonly e: readonly Entry[] };

/**
 * The causes that a night's records tell, in order; those that were taken back left out by the caller.
 *
 * @example
 * foundCauses([{ id: '1', e: [{ k: 'fault-sought', player: 'bo', symptom: 'silent' }] }, { id: '2', e: [{ k: 'fault-found', fault: '1', part: 'lead' }] }]) // => [{ player: 'bo', part: 'lead' }]
 */
export function foundCauses(records: readonly Kept[]): readonly FoundCause[] {
	const players = new Map<string, string>();
	return records.flatMap(({ id, e }) =>
		e.flatMap((entry): readonly FoundCause[] => {
			if (entry.k === 'fault-sought') players.set(id, entry.player);
			if (entry.k !== 'fault-found') return [];
			const player = players.get(entry.fault);
			return player === undefined ? [] : [{ player, part: entry.part }];
		}),
	);
}

/**
 * How often each part of a player's rig was the cause, by its id now. An instrument is the same by its identity,
 * whoever played it; a cord or a pedal is by player and id, in shows of the same folder.
 *
 * @example
 * timesFound([{ folder: '/a', gears: { A1: 'gear amber' }, causes: [{ player: 'bo', part: 'A1' }, { player: 'bo', part: 'lead' }] }], { player: 'bo', folder: '/a', gears: { B7: 'gear amber' } }) // => { B7: 1, lead: 1 }
 */
export function timesFound(
	nights: readonly NightCauses[],
	now: Omit<NightCauses, 'causes'> & { readonly player: string },
): Readonly<Record<string, number>> {
	const ids = new Map(Object.entries(now.gears).map(([id, gear]) => [gear, id]));
	const counts: Record<string, number> = {};
	for (const { folder, gears, causes } of nights) {
		for (const { player, part } of causes) {
			const gear = gears[part];
			const isSameRig = folder === now.folder && player === now.player;
			const id = gear === undefined ? (isSameRig ? part : undefined) : ids.get(gear);
			if (id !== undefined) counts[id] = (counts[id] ?? 0) + 1;
		}
	}
	return counts;
}
