// What each player gets next and how far that is: the first thing that the screen must say. Worked out
// apart from its drawing, since every view shows it in some size.

import { cuePoints } from '../../machines/song.ts';
import { fitWidth } from '../base/display-width.ts';
import type { CapoMove, Plan, PlannedHandOver, Section, Slot } from '../plan/plan.ts';
import { calledIn } from '../plan/sentence.ts';
import { slotAndName, songTitle } from '../showfile/shown-names.ts';
import type { Tuning } from '../tuning/tuning.ts';
import { durationWords } from './duration-words.ts';
import { handOverReadiness, standInReadiness } from './hand-over-readiness.ts';
import { type StateMark, stateWords } from './instrument-words.ts';
import { instrumentOf, slotWords, songOf, songPlace } from './named-in-show.ts';
import type { SpanStyle } from './row.ts';
import type { ScreenState } from './screen-state.ts';
import { capoWords } from './tuning-words.ts';

/** What a player gets next. */
export type Coming = {
	readonly player: string;
	/** `hand-over`: also a capo moved on what is kept; `missing`: what a song asks for cannot be had. */
	readonly kind: 'break' | 'hand-over' | 'missing' | 'keeps';
	/** Null: nothing in hands. */
	readonly instrument: string | null;
	readonly tuning: Tuning | null;
	readonly capo: number;
	/** For which song or point. */
	readonly forWhat: string;
	/** `in    2:33`, `now   0:12`, the number always in the same cells; for a break how long it has been silent. */
	readonly when: string;
	/** Ready or not for this very hand-over, as a mark; null where nothing is handed. */
	readonly mark: StateMark | null;
	/** The same in words, with the work that is left. */
	readonly status: string;
	/** Why this stand-in, or why there is nothing; null where the song asks for it. */
	readonly why: string | null;
	/** To be checked before it leaves the rack. */
	readonly leave: string | null;
	readonly pack: string | null;
	/** Act now: its moment has come, or it is near and not ready. */
	readonly isUrgent: boolean;
};

/** How it is written whether it is ready. */
export function readinessStyle({ isUrgent, mark }: Coming): SpanStyle {
	if (isUrgent) return 'accent';
	return mark === null || mark === '+' ? 'plain' : 'unready';
}

/** Seconds before the hand-over from which an instrument that is not ready calls for attention; common practice, no source. */
const URGENT_SECONDS = 30;

/** One for each player: breaks first, then by the time of their hand-over, then who keeps what they have. */
export function comingHandOvers(state: ScreenState): readonly Coming[] {
	const { players } = state.session.show;
	const breaks = players.flatMap(({ id }) => breakOf(state, id) ?? []);
	const isBroken = (player: string) => breaks.some((one) => one.player === player);
	const first = players
		.flatMap(({ id }) => (isBroken(id) ? [] : (firstOf(state, id) ?? [])))
		.toSorted((one, other) => one.atMs - other.atMs);
	const isComing = (player: string) => first.some(({ coming }) => coming.player === player);
	const rest = players.filter(({ id }) => !isBroken(id) && !isComing(id));
	return [
		...breaks,
		...first.map(({ coming }) => coming),
		...rest.map(({ id }) => keptBy(state, id)),
	];
}

type Dated = { readonly atMs: number; readonly coming: Coming };

/** The player's first hand-over, or the song before it for which there is nothing to hand over. */
function firstOf(state: ScreenState, player: string): Dated | null {
	const planned = state.plan.handOvers.find((one) => one.player === player);
	const move = moveBefore(state, player, planned);
	const lacks = state.plan.slots.filter(
		(one) => one.player === player && one.instrument === null && one.why !== null,
	);
	const ahead = lacks.find(({ section }) => !section.hasBegun);
	const hasLack =
		ahead !== undefined &&
		(planned === undefined || ahead.section.startMs <= planned.section.startMs);
	if (hasLack) return missingOf(state, ahead);
	if (move) return movedOf(state, move);
	if (planned) return { atMs: planned.wantedMs, coming: plannedOf(state, planned) };
	return lacks[0] ? missingOf(state, lacks[0]) : null;
}

/** The capo that the player is to move on what they keep, where that comes before they are given something else. */
function moveBefore(
	{ plan }: ScreenState,
	player: string,
	planned: PlannedHandOver | undefined,
): CapoMove | undefined {
	if (planned === undefined) return undefined;
	return capoMovesOf(plan, player).find(({ section }) => section.startMs <= planned.wantedMs);
}

/** The capos that the player has still to move on what they keep, in order. */
function capoMovesOf({ capoMoves }: Plan, player: string): readonly CapoMove[] {
	return capoMoves.filter((one) => one.player === player && !one.section.hasBegun);
}

function movedOf(state: ScreenState, move: CapoMove): Dated {
	const { section, player, instrument, tuning, capo } = move;
	const atMs = section.previousEndMs ?? section.startMs;
	return {
		atMs,
		coming: {
			player,
			kind: 'hand-over',
			instrument,
			tuning,
			capo,
			forWhat: forWords(state, section),
			when: whenWords((atMs - state.nowMs) / 1000),
			mark: null,
			why: null,
			status: 'KEEPS IT, moves the capo',
			leave: null,
			pack: null,
			isUrgent: false,
		},
	};
}

function missingOf(state: ScreenState, slot: Slot): Dated {
	const { section, player } = slot;
	const atMs = section.previousEndMs ?? section.startMs;
	const untilSeconds = (atMs - state.nowMs) / 1000;
	return {
		atMs,
		coming: {
			player,
			kind: 'missing',
			instrument: null,
			tuning: null,
			capo: slot.capo,
			forWhat: forWords(state, section),
			when: whenWords(untilSeconds),
			mark: null,
			why: calledIn(slot.why ?? '', slot.named, (id) => slotAndName(state.session.show, id)),
			status: 'NOTHING',
			leave: null,
			pack: null,
			isUrgent: untilSeconds <= URGENT_SECONDS,
		},
	};
}

function forWords({ session }: ScreenState, section: Section): string {
	const { show } = session;
	const song = songOf(show, section.song);
	const point = song ? cuePoints(song)[section.point] : undefined;
	const { place } = songPlace(session, section.item);
	const where = section.point > 0 ? `${point?.at ?? 'a cue'} in ` : `${place} `;
	return `for ${where}${songTitle(show, section.song)}`;
}

function whenWords(untilSeconds: number): string {
	const long = fitWidth(durationWords(Math.abs(untilSeconds)), 6, { align: 'right' });
	return `${untilSeconds >= 0 ? 'in ' : 'now'} ${long}`;
}

function breakOf(state: ScreenState, player: string): Coming | null {
	const best = state.standIns[player]?.[0];
	const open = state.session.incidents.findLast((one) => one.isOpen && one.player === player);
	if (best === undefined && open === undefined) return null;
	const { show } = state.session;
	const instrument = best === undefined ? null : instrumentOf(show, best.instrument);
	const ready = best === undefined ? null : standInReadiness(state, best);
	const since = open ? (state.nowMs - open.atMs) / 1000 : 0;
	const broken = open?.instrument == null ? '' : ` ${slotWords(show, open.instrument)}`;
	return {
		player,
		kind: 'break',
		instrument: best?.instrument ?? null,
		tuning: best?.tuning ?? null,
		capo: best?.capo ?? 0,
		forWhat: `STRING BREAK${broken}`,
		when: `SILENT ${fitWidth(durationWords(since), 6, { align: 'right' })}`,
		mark: ready?.mark ?? null,
		status: ready?.words ?? 'NO STAND-IN',
		why: best?.why ?? null,
		leave: instrument?.leave ?? null,
		pack: instrument?.pack ?? null,
		isUrgent: true,
	};
}

function plannedOf(state: ScreenState, planned: PlannedHandOver): Coming {
	const { session, nowMs } = state;
	const { show } = session;
	const { section, player, instrument } = planned;
	const part = songOf(show, section.song);
	const point = part ? cuePoints(part)[section.point] : undefined;
	const asked = point?.parts[player];
	const { mark, words, due } = handOverReadiness(state, planned);
	const untilSeconds = (planned.wantedMs - nowMs) / 1000;
	const isReady = instrument === null || mark === '+';
	const isDue =
		untilSeconds <= URGENT_SECONDS ||
		due.some((one) => (one.beginByMs - nowMs) / 1000 <= URGENT_SECONDS);
	return {
		player,
		kind: 'hand-over',
		instrument,
		tuning: planned.tuning,
		capo: planned.capo,
		forWhat: forWords(state, section),
		when: whenWords(untilSeconds),
		mark,
		why: null,
		status: words,
		leave: planned.leave,
		pack:
			(asked && asked.kind !== 'none' ? asked.pack : null) ??
			(instrument === null ? null : (instrumentOf(show, instrument)?.pack ?? null)),
		isUrgent: untilSeconds <= 0 || (!isReady && isDue),
	};
}

function keptBy(state: ScreenState, player: string): Coming {
	const holds = state.session.players[player]?.holds ?? null;
	const held = holds === null ? null : (state.session.instruments[holds] ?? null);
	const { show } = state.session;
	const move = capoMovesOf(state.plan, player).find(({ instrument }) => instrument === holds);
	const moves = move ? `${capoWords(move.capo)} for ${songTitle(show, move.section.song)}` : '';
	const isWhole = held === null || held.context.stringsDown.length === 0;
	return {
		player,
		kind: 'keeps',
		instrument: holds,
		tuning: held?.context.tuning ?? null,
		capo: held?.context.capo ?? 0,
		forWhat: holds === null ? 'nothing to come' : 'keeps',
		when: '',
		mark: null,
		why: null,
		status: isWhole || held === null ? moves : stateWords(show, held, state.nowMs),
		leave: null,
		pack: null,
		isUrgent: false,
	};
}
