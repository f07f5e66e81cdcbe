// What each player gets next and how far that is: the first thing that the screen must say. Worked out
// apart from its drawing, since every view shows it in some size.

import { endsFirst } from '../plan/demand/first-song.ts';
import type { PlannedHandOver, Section, Slot, StandIn } from '../plan/plan.ts';
import { openBreakOf, songOnNow } from '../session/find.ts';
import { packFor } from '../session/suspect-packs.ts';
import { shownInstrument, songTitle } from '../showfile/shown-names.ts';
import { standInWords, whyBesideCapo } from '../words/backup-reasons.ts';
import { capoAct } from '../words/capo-words.ts';
import { stateWords } from '../words/instrument-state.ts';
import {
	actForSong,
	breakWords,
	downWords,
	KEEPS,
	NO_BACKUP,
	NO_BACKUP_PLAY_ON,
	NOTHING_PLANNED,
	NOTHING_TO_COME,
	nextIs,
	orBackup,
	playOnUntil,
	takesLonger,
	whenWords,
} from '../words/stage.ts';
import { shortTuning } from '../words/tuning-names.ts';
import { unplayableWords } from '../words/unplayable.ts';
import { isNotAfter, stayBefore, stayingOf, wantedBeside } from './coming-stay.ts';
import { forWords, momentOf } from './coming-words.ts';
import { wrongInHands } from './coming-wrong.ts';
import { handOverReadiness, standInReadiness } from './hand-over-readiness.ts';
import { instrumentOf } from './named-in-show.ts';
import type { ScreenState } from './screen-state.ts';
import type { Coming, Dated } from './what-comes.ts';

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

/** What comes first for the player: what is wrong in hands, a hand-over, what they stay on, or a song for which there is nothing. */
function firstOf(state: ScreenState, player: string): Dated | null {
	const wrong = wrongInHands(state, player, (section) => lackedMs(state, section));
	if (wrong !== null) return wrong;
	const planned = state.plan.handOvers.find((one) => one.player === player);
	const stay = stayBefore(state.plan, player, planned);
	const lacks = state.plan.slots.filter((one) => one.player === player && one.isMissing);
	const [lack] = lacks;
	// Whether the song names what was taken out of their hands, or it was chosen for them.
	const isTaken = lack?.why?.code === 'in-hands' || lack?.why?.code === 'none-free';
	const takenMs = isTaken && lack.section.hasBegun ? emptiedMs(state, player) : null;
	if (lack && takenMs !== null) return missingOf(state, lack, takenMs);
	const ahead = lacks.find(({ section }) => !section.hasBegun);
	const first = stay ?? planned;
	const isLackFirst =
		ahead !== undefined && (first === undefined || isNotAfter(ahead.section, first.section));
	if (isLackFirst) return missingOf(state, ahead);
	if (stay) return stayingOf(state, stay);
	if (planned) return { atMs: planned.wantedMs, coming: plannedOf(state, planned) };
	return lack ? missingOf(state, lack) : null;
}

/** Since when their hands are empty, where that came about in the song that is on. */
function emptiedMs({ session }: ScreenState, player: string): number | null {
	const { holds = null, sinceMs = null } = session.players[player] ?? {};
	const beganMs = songOnNow(session)?.item.runs.at(-1)?.beganAtMs ?? null;
	const isInSong = sinceMs !== null && beganMs !== null && sinceMs >= beganMs;
	return holds === null && isInSong ? sinceMs : null;
}

/** What could be handed all the same where the plan has nothing: its instrument's id. */
export function backupUnplanned(
	{ plan }: ScreenState,
	{ player, section }: Slot,
): string | undefined {
	const warning = plan.warnings.find(
		(one) => one.code === 'missing' && one.player === player && one.song === section.song,
	);
	return warning?.code === 'missing' ? warning.standIn : undefined;
}

function missingOf(state: ScreenState, slot: Slot, wantedMs?: number): Dated {
	const { section, player } = slot;
	const { show } = state.session;
	const backup = backupUnplanned(state, slot);
	const why = slot.why === null ? '' : unplayableWords(show, slot.why);
	const atMs = wantedMs ?? lackedMs(state, section);
	const untilSeconds = (atMs - state.nowMs) / 1000;
	return {
		atMs,
		coming: {
			player,
			kind: 'missing',
			instrument: null,
			tuning: null,
			capo: slot.capo,
			for: null,
			...forWords(state, section),
			moment: momentOf(section),
			seconds: untilSeconds,
			when: whenWords(untilSeconds, section.hasBegun),
			mark: null,
			why: backup === undefined ? why : orBackup(why, shownInstrument(show, backup)),
			status: backup === undefined ? NO_BACKUP : NOTHING_PLANNED,
			due: [],
			leave: null,
			pack: null,
			isUrgent: untilSeconds <= URGENT_SECONDS,
		},
	};
}

/** When it would be handed: with what others get for the same song, else as soon as their hands are free for it. */
function lackedMs({ plan }: ScreenState, section: Section): number {
	if (section.hasBegun) return section.startMs;
	const freeMs = section.isAfterInterval ? null : section.previousEndMs;
	return wantedBeside(plan, section) ?? freeMs ?? section.startMs;
}

/** Whether what is on has something to play for the player. */
function isPlaying({ plan }: ScreenState, player: string): boolean {
	return plan.slots.some((one) => one.player === player && one.section.hasBegun);
}

/** The broken instruments whose cards say so. */
export function brokenOnCards(state: ScreenState): readonly string[] {
	return state.session.show.players.flatMap(({ id }) =>
		isPlaying(state, id) ? (openBreakOf(state.session, id)?.instrument ?? []) : [],
	);
}

/** A break that waits for its answer, or sound that is gone otherwise and a backup for it, as long as the song that is on has something to play for the player. */
function breakOf(state: ScreenState, player: string): Coming | null {
	// Otherwise the hand-over that comes next answers it, and is what is to be said.
	if (!isPlaying(state, player)) return null;
	const open = openBreakOf(state.session, player);
	const offered = open === null ? offeredTo(state, player) : undefined;
	const best = open === null ? offered?.standIn : state.standIns[player]?.[0];
	if (best === undefined && open === null) return null;
	const { show } = state.session;
	const instrument = best === undefined ? null : instrumentOf(show, best.instrument);
	const ready = best === undefined ? null : standInReadiness(state, best);
	const sinceMs = open?.atMs ?? offered?.atMs ?? state.nowMs;
	const since = (state.nowMs - sinceMs) / 1000;
	const broken = open?.instrument == null ? null : shownInstrument(show, open.instrument);
	// A search offers its tests beside it; after a break there is only to play on.
	const left =
		best === undefined || offered !== undefined
			? null
			: endsFirst(best, state.plan.sections, state.nowMs);
	if (best !== undefined && left !== null) {
		return {
			...playOn(state, { player, best, left }),
			forWhat: offered?.forWhat ?? breakWords(broken),
			seconds: since,
			when: downWords(since),
		};
	}
	return {
		player,
		kind: 'break',
		instrument: best?.instrument ?? null,
		tuning: best?.tuning ?? null,
		capo: best?.capo ?? 0,
		for: null,
		forWhat: offered?.forWhat ?? breakWords(broken),
		moment: null,
		seconds: since,
		when: offered?.isSilent === false ? '' : downWords(since),
		mark: ready?.mark ?? null,
		status: ready?.words ?? NO_BACKUP_PLAY_ON,
		due: [],
		why: best === undefined ? null : standInWords(show, whyBesideCapo(best)),
		leave: instrument?.leave ?? null,
		pack: best === undefined ? null : packFor(state.session, player, best.instrument),
		isUrgent: true,
	};
}

/** The backup that a search for a fault names, as long as enter would hand it. */
function offeredTo({ prompt }: ScreenState, player: string) {
	const backup = prompt?.backup;
	return backup?.player === player ? backup : undefined;
}

type TooLate = { readonly player: string; readonly best: StandIn; readonly left: number };

/** The song is over before anything else is in hands: what is to come then matters more. */
function playOn(state: ScreenState, { player, best, left }: TooLate) {
	const { show } = state.session;
	const next = state.plan.handOvers.find(
		(one) => one.player === player && !one.section.hasBegun && one.instrument !== null,
	);
	const named =
		next?.instrument && next.tuning
			? [nextIs(shownInstrument(show, next.instrument), shortTuning(show, next.tuning), next.capo)]
			: [];
	const isSame = next?.instrument === best.instrument;
	const takes = takesLonger(
		isSame ? null : shownInstrument(show, best.instrument),
		best.readyInSeconds,
	);
	return {
		player,
		kind: 'break' as const,
		instrument: null,
		tuning: null,
		capo: 0,
		for: null,
		moment: null,
		mark: null,
		status: playOnUntil(left),
		due: [],
		why: [...named, takes].join('; '),
		leave: null,
		pack: null,
		isUrgent: true,
	};
}

function plannedOf(state: ScreenState, planned: PlannedHandOver): Coming {
	const { nowMs } = state;
	const { section, player, instrument } = planned;
	const { mark, words, due } = handOverReadiness(state, planned);
	// Still open in a song that is on, it has been wanted since that began.
	const wantedMs = section.hasBegun ? section.startMs : planned.wantedMs;
	const untilSeconds = (wantedMs - nowMs) / 1000;
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
		for: planned.for,
		...forWords(state, section),
		moment: momentOf(section),
		seconds: untilSeconds,
		when: whenWords(untilSeconds, section.hasBegun),
		mark,
		why: null,
		status: words,
		due,
		leave: planned.leave,
		pack: planned.pack,
		isUrgent: untilSeconds <= 0 || (!isReady && isDue),
	};
}

function keptBy(state: ScreenState, player: string): Coming {
	const holds = state.session.players[player]?.holds ?? null;
	const held = holds === null ? null : (state.session.instruments[holds] ?? null);
	const { show } = state.session;
	const move = state.plan.capoMoves.find(
		(one) => one.player === player && one.instrument === holds && !one.section.hasBegun,
	);
	const moves = move ? actForSong(capoAct(move.capo), songTitle(show, move.section.song)) : '';
	const isWhole = held === null || held.context.stringsDown.length === 0;
	return {
		player,
		kind: 'keeps',
		instrument: holds,
		tuning: held?.context.tuning ?? null,
		capo: held?.context.capo ?? 0,
		for: standsInNow(state, player),
		forWhat: holds === null ? NOTHING_TO_COME : KEEPS,
		moment: null,
		seconds: null,
		when: '',
		mark: null,
		why: null,
		status: isWhole || holds === null ? moves : stateWords(state.session, holds, state.nowMs),
		due: [],
		leave: null,
		pack: null,
		isUrgent: false,
	};
}

/** The instrument that the song names, where what the player has in it stands in for that. */
function standsInNow({ plan }: ScreenState, player: string): string | null {
	const slot = plan.slots.find((one) => one.player === player && one.section.hasBegun);
	return slot?.for ?? null;
}
