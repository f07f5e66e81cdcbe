// What a night at a moment comes to for choosing: the sections ahead, the instruments, what is in whose
// hands, and whose hands are left alone for a while.

import type { InstrumentState } from '../../machines/instrument.ts';
import type { NightMs } from '../journal/entry.ts';
import { findSong } from '../session/find.ts';
import type { PlayerState, Session } from '../session/session.ts';
import { openFromPoint } from '../session/settled.ts';
import type { Show } from '../showfile/show.ts';
import type { Window } from './busy-windows.ts';
import { cueWindows } from './busy-windows.ts';
import type { Demand } from './demand.ts';
import { demandAt } from './demand.ts';
import { firstSong } from './first-song.ts';
import type { Hand } from './hand.ts';
import type { Section } from './plan.ts';
import type { Moment } from './timeline.ts';
import { sectionsAhead } from './timeline.ts';
import { waysToSound } from './ways-to-sound.ts';

export type Outlook = {
	readonly show: Show;
	readonly nowMs: NightMs;
	readonly sections: readonly Section[];
	/** When the technician presses board cues. */
	readonly cues: readonly Window[];
	readonly instruments: Readonly<Record<string, InstrumentState>>;
	/** What each player has in hands now. */
	readonly hands: ReadonlyMap<string, Hand | null>;
	/** What each player had before the interval and has not had back yet. */
	readonly heldBefore: ReadonlyMap<string, Hand>;
	/** For each player whose hands are left alone: the last section, by its place, for which they are. */
	readonly settledThrough: ReadonlyMap<string, number>;
	/** Whose next stint is their first, or the first after an interval. */
	readonly firstStints: ReadonlySet<string>;
};

/**
 * What the moment comes to.
 *
 * @example
 * outlookOf({ session, nowMs: 0, plannedZeroMs: 0 }).hands.get('ash') // => null
 */
export function outlookOf(moment: Moment): Outlook {
	const { session, nowMs } = moment;
	const { show, instruments, players } = session;
	const sections = sectionsAhead(moment);
	const isInterval = session.phase.value === 'interval';
	const hands = new Map(
		show.players.map(({ id }) => [id, handOf(session, players[id]?.holds ?? null)]),
	);
	const hasHeld = (player: PlayerState | undefined): boolean =>
		player !== undefined && (player.holds !== null || player.sinceMs !== null);
	return {
		show,
		nowMs,
		sections,
		cues: cueWindows(session, sections),
		instruments,
		hands,
		heldBefore: new Map(
			show.players.flatMap(({ id }) => {
				const hand = handOf(session, players[id]?.putDown ?? null);
				return hand === null ? [] : [[id, hand] as const];
			}),
		),
		settledThrough: settledPlaces(session, sections),
		firstStints: new Set(
			show.players
				.map(({ id }) => id)
				.filter((id) => (isInterval ? players[id]?.holds === null : !hasHeld(players[id]))),
		),
	};
}

function handOf(session: Session, instrument: string | null): Hand | null {
	const state = instrument === null ? undefined : session.instruments[instrument];
	if (instrument === null || state === undefined) return null;
	return { instrument, tuning: state.context.tuning, capo: state.context.capo };
}

/**
 * Until which section each player keeps what they hold: through the item that their hand-over was
 * settled for, up to a cue of it that hands them something of its own, unless another song has come to stand
 * before it; or through the song on now when they were given something for a later one already.
 */
function settledPlaces(
	session: Session,
	sections: readonly Section[],
): ReadonlyMap<string, number> {
	const places = new Map<string, number>();
	const present = sections[0];
	if (present?.hasBegun) {
		for (const { id } of session.show.players) {
			if (isHandedAhead(session, id, present)) places.set(id, 0);
		}
	}
	const { item, players } = session.settled;
	if (present?.item !== item) return places;
	for (const id of Object.keys(players)) {
		const openFrom = openFromPoint(session, item, id);
		const place = firstSong(sections).findLastIndex(({ point }) => point < openFrom);
		if (place >= 0) places.set(id, place);
	}
	return places;
}

/** Whether the plan's hand-over that the player got since the song began was not for this song. */
function isHandedAhead(session: Session, id: string, present: Section): boolean {
	const player = session.players[id];
	const song = findSong(session, present.song);
	if (!player?.correctable || player.sinceMs === null || song === null) return false;
	if (player.correctable.given !== player.holds || player.sinceMs <= present.startMs) return false;
	const demand = demandAt(session.show, { song, point: present.point, player: id });
	if (demand.kind === 'named') return demand.instrument.id !== player.holds;
	return demand.kind === 'none' || !isGivenFor(session, demand, player.holds);
}

function isGivenFor(session: Session, demand: Demand, instrument: string | null): boolean {
	if (demand.kind !== 'needs') return true;
	const held = session.show.instruments.find(({ id }) => id === instrument);
	if (held === undefined || held.kind !== demand.part.instrumentKind) return false;
	return waysToSound(held, demand.part.sounds, held.tuning).length > 0;
}
