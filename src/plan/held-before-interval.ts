// What each player had in hands when an interval began. The night only records that everything came
// back to the rack, so it follows from what came back then and what each was last asked for.

import { findSong } from '../session/find.ts';
import type { Session } from '../session/session.ts';
import type { Instrument } from '../showfile/show.ts';
import type { Demand } from './demand.ts';
import { demandAt } from './demand.ts';
import type { Hand } from './hand.ts';

/**
 * For each player who had something: of what came back as the interval began, the instrument that they
 * were last named for, or one of the kind last needed, or else one left over that they may have.
 *
 * @example
 * heldBeforeInterval(session).size // => 0
 */
export function heldBeforeInterval(session: Session): ReadonlyMap<string, Hand> {
	const returned = session.show.instruments.filter(({ id }) => {
		const backAtMs = session.instruments[id]?.context.backAtMs ?? null;
		return backAtMs !== null && backAtMs === session.phaseSinceMs;
	});
	const held = new Map<string, Hand>();
	const taken = new Set<string>();
	const give = (player: string, instrument: Instrument | undefined): void => {
		const context = instrument && session.instruments[instrument.id]?.context;
		if (!instrument || !context) return;
		taken.add(instrument.id);
		held.set(player, { instrument: instrument.id, tuning: context.tuning, capo: context.capo });
	};
	const demands = new Map(session.show.players.map(({ id }) => [id, lastDemand(session, id)]));
	for (const [player, demand] of demands) {
		if (demand?.kind !== 'named') continue;
		give(
			player,
			returned.find(({ id }) => id === demand.instrument.id && !taken.has(id)),
		);
	}
	for (const [player, demand] of demands) {
		if (held.has(player) || demand === null || demand.kind === 'none') continue;
		const left = returned.filter(
			(one) => !taken.has(one.id) && (one.for === null || one.for.includes(player)),
		);
		const kind = demand.kind === 'needs' ? demand.part.instrumentKind : null;
		give(player, left.find((one) => one.kind === kind) ?? left[0]);
	}
	return held;
}

/** What the player was last asked for in what was played; null when nothing was. */
function lastDemand(session: Session, player: string): Demand | null {
	const played = session.list
		.flatMap((item) =>
			item.kind === 'song'
				? item.runs.map(({ beganAtMs }) => ({ beganAtMs, song: item.song }))
				: [],
		)
		.sort((one, other) => other.beganAtMs - one.beganAtMs);
	for (const { song: id } of played) {
		const song = findSong(session, id);
		if (song === null) continue;
		const demand = demandAt(session.show, { song, point: song.cues.length, player });
		if (demand.kind !== 'keeps') return demand;
	}
	return null;
}
