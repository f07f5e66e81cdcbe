// What a night at a moment comes to for planning: the sections ahead and what each asks of whom, the
// instruments, what is in whose hands, and whose hands are left alone for a while.

import type { InstrumentState } from '../../../machines/instrument.ts';
import type { NightMs } from '../../journal/entry.ts';
import { type Cell, cellAt } from '../../session/cells.ts';
import { findSongItem } from '../../session/find.ts';
import type { Session } from '../../session/session.ts';
import { openFromPoint } from '../../session/settled.ts';
import type { Show } from '../../showfile/show.ts';
import type { Section } from '../plan.ts';
import { cueWindows, type Window } from './cue-windows.ts';
import type { Demand } from './demand.ts';
import { demandOf } from './demand.ts';
import { firstSong } from './first-song.ts';
import type { Hand } from './hand.ts';
import { choicesFor } from './options.ts';
import type { Moment } from './sections-ahead.ts';
import { sectionsAhead } from './sections-ahead.ts';

/** What a section asks of a player, and how. */
export type Asked = Omit<Cell, 'part'> & {
	readonly player: string;
	readonly demand: Demand;
	/** Their hands are left alone here. */
	readonly isSettled: boolean;
};

export type Outlook = {
	readonly show: Show;
	readonly nowMs: NightMs;
	/** The first song has begun, or something is in hands for it: a missing slot takes nothing out of them. */
	readonly isLive: boolean;
	readonly isInterval: boolean;
	readonly sections: readonly Section[];
	/** For each section, what it asks of each player, in the file's order. */
	readonly asked: readonly (readonly Asked[])[];
	/** When the technician presses board cues. */
	readonly cues: readonly Window[];
	readonly instruments: Readonly<Record<string, InstrumentState>>;
	/** For each instrument with strings down that will be restrung in time, the place of the first section it is wanted by. */
	readonly restrungFor: ReadonlyMap<string, number>;
	/** What each player has in hands now. */
	readonly hands: ReadonlyMap<string, Hand | null>;
	/** What each player had before the interval and has not had back yet. */
	readonly heldBefore: ReadonlyMap<string, Hand>;
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
	const ids = show.players.map(({ id }) => id);
	const sections = sectionsAhead(moment);
	const isInterval = session.phase.value === 'interval';
	const settled = new Map(ids.map((id) => [id, settledThrough(session, sections, id)]));
	return {
		show,
		nowMs,
		isLive: session.zeroAtMs !== null || Object.values(players).some(({ holds }) => holds !== null),
		isInterval,
		sections,
		asked: sections.map((section, place) =>
			ids.map((player) => ({
				...askedAt(session, section, player),
				isSettled:
					(settled.get(player) ?? -1) >= place || isStaying(session, sections, { place, player }),
			})),
		),
		cues: cueWindows(session, sections),
		instruments,
		restrungFor: new Map(),
		hands: new Map(ids.map((id) => [id, handOf(session, players[id]?.holds ?? null)])),
		heldBefore: new Map(
			ids.flatMap((id) => {
				const hand = handOf(session, players[id]?.putDown ?? null);
				return hand === null ? [] : [[id, hand] as const];
			}),
		),
		firstStints: new Set(ids.filter((id) => !hasBegun(session, id))),
	};
}

/** Whether this player has, or has had, anything in hands since the night or the last interval began. */
function hasBegun({ players, intervalBeganMs }: Session, id: string): boolean {
	const { holds = null, sinceMs = null } = players[id] ?? {};
	return (
		holds !== null || (sinceMs !== null && sinceMs > (intervalBeganMs ?? Number.NEGATIVE_INFINITY))
	);
}

/** What this section asks of this player. */
function askedAt(
	session: Session,
	{ item: key, point, hasBegun }: Section,
	player: string,
): Omit<Asked, 'isSettled'> {
	const item = findSongItem(session, key);
	const cell = item === null ? GONE : cellAt(session, { item, point, player });
	return {
		player,
		demand: demandOf(session.show, cell),
		isNamed: cell.isNamed,
		// In a song that is on at such a point the hand-over may still be open.
		goesOnWithin: cell.goesOnWithin && !hasBegun,
	};
}

/** Off the list nothing is asked. */
const GONE: Cell = { part: null, isNamed: false, goesOnWithin: false };

/**
 * Whether the strings on an instrument can be played in the section at this place.
 *
 * @example
 * isStrung(outlook, 'A1', 0) // => true
 */
export function isStrung(
	{ instruments, restrungFor }: Outlook,
	instrument: string,
	place: number,
): boolean {
	const isWhole = instruments[instrument]?.context.stringsDown.length === 0;
	return isWhole || (restrungFor.get(instrument) ?? Number.POSITIVE_INFINITY) <= place;
}

function handOf(session: Session, instrument: string | null): Hand | null {
	const state = instrument === null ? undefined : session.instruments[instrument];
	if (instrument === null || state === undefined) return null;
	return { instrument, tuning: state.context.tuning, capo: state.context.capo };
}

/**
 * Until which section a player keeps what they hold, -1 for none: through the item that their hand-over was
 * settled for, up to a cue of it that hands them something of its own, unless another song has come to stand
 * before it; through the song on now when they were given something for a later one already, or when a
 * string of theirs broke in it: what to take then is asked by itself.
 */
function settledThrough(session: Session, sections: readonly Section[], player: string): number {
	const [present] = sections;
	if (present === undefined) return -1;
	const { item, players } = session.settled;
	if (present.item === item && Object.hasOwn(players, player)) {
		const openFrom = openFromPoint(session, item, player);
		const place = firstSong(sections).findLastIndex(({ point }) => point < openFrom);
		if (place >= 0) return place;
	}
	if (!present.hasBegun) return -1;
	return isHandedAhead(session, player, present) || isBroken(session, player) ? 0 : -1;
}

/** Whether they stay on what they have for the next time that the item of this section comes, said before it begins. */
function isStaying(
	session: Session,
	sections: readonly Section[],
	{ place, player }: { readonly place: number; readonly player: string },
): boolean {
	const { item, players } = session.staying;
	const section = sections[place];
	if (section?.item !== item || !players.includes(player)) return false;
	const begins = sections.findIndex((one) => one.item === item && one.point === 0 && !one.hasBegun);
	return (
		begins >= 0 && place >= begins && section.point < openFromPoint(session, item ?? '', player)
	);
}

function isBroken({ players, instruments }: Session, id: string): boolean {
	const held = players[id]?.holds ?? null;
	return held !== null && (instruments[held]?.context.stringsDown.length ?? 0) > 0;
}

/** Whether the plan's hand-over that the player got since the song began was not for this song. */
function isHandedAhead(session: Session, id: string, present: Section): boolean {
	const player = session.players[id];
	if (!player?.correctable || player.sinceMs === null) return false;
	if (player.correctable.given !== player.holds || player.sinceMs <= present.startMs) return false;
	const { demand } = askedAt(session, present, id);
	if (demand.kind === 'named') return demand.instrument.id !== player.holds;
	if (demand.kind !== 'needs') return demand.kind === 'none';
	const rack = { show: session.show, instruments: session.instruments, isStrung: () => true };
	const choices = choicesFor(rack, { part: demand.part, player: id });
	return !choices.some(({ hand }) => hand.instrument === player.holds);
}
