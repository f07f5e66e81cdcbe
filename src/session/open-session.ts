// The session that a night begins with: everything on the rack, hands empty, nothing played.

import { boardAtRest, instrumentAtLoadIn, showBefore } from '../../machines/at-load-in.ts';
import type { Show } from '../showfile/show.ts';
import { withCellsAbove } from './cells.ts';
import type { ListItem, PlayerState, Session } from './session.ts';

/** A player at the load-in. */
export const EMPTY_HANDS: PlayerState = {
	holds: null,
	sinceMs: null,
	putDown: null,
	pack: null,
	correctable: null,
};

/** Nobody was said to stay for a later song. */
export const NONE_STAYING: Session['staying'] = { item: null, players: [] };

/** A fresh night of this show. */
export function openSession(show: Show): Session {
	const list = show.set.map((item, index): ListItem => {
		const key = String(index + 1);
		return item.kind === 'interval'
			? { key, kind: 'interval', seconds: item.seconds }
			: {
					key,
					kind: 'song',
					song: item.song,
					gapSeconds: item.gapSeconds,
					isEncore: item.isEncore,
					isPassedOver: false,
					isDropped: false,
					runs: [],
					above: {},
					tonight: {},
				};
	});
	return {
		show,
		phase: showBefore(),
		list: withCellsAbove(list, show),
		current: null,
		next: list[0]?.key ?? null,
		zeroAtMs: null,
		song: null,
		phaseSinceMs: null,
		intervalBeganMs: null,
		instruments: Object.fromEntries(
			show.instruments.map((one) => [one.id, instrumentAtLoadIn(one)]),
		),
		players: Object.fromEntries(show.players.map((player) => [player.id, EMPTY_HANDS])),
		boards: Object.fromEntries(
			Object.entries(show.boards).map(([player, pedals]) => [player, boardAtRest(pedals)]),
		),
		settled: { item: null, players: {} },
		staying: NONE_STAYING,
		told: {},
		incidents: [],
		faults: [],
		suspectPacks: [],
		packChange: null,
		unmarked: null,
		packTimes: {},
		freshBatteries: [],
		stageCelsius: null,
		readyMarks: {},
	};
}
