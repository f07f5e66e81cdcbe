// Every hand-over of a night, and every time that somebody held what the song did not ask for.

import type { InstrumentState } from '../../machines/instrument.ts';
import { cleanText } from '../base/clean-text.ts';
import { tenths } from '../base/show-clock.ts';
import type { Entry, Handed, NightMs } from '../journal/entry.ts';
import { cellAt } from '../session/cells.ts';
import { findInstrument, findSongItem, itemConcerned } from '../session/find.ts';
import { readinessOf } from '../session/readiness.ts';
import type { Session, SongItem } from '../session/session.ts';
import { soundsSo } from '../session/sounds-so.ts';
import type { Part, Show } from '../showfile/show.ts';
import { playerName, shownInstrument, songTitle } from '../showfile/shown-names.ts';
import { soundsLike } from '../tuning/capo.ts';
import { EMPTY_HANDS, inTuning, sounding, tuningAndCapo } from '../words/report.ts';
import { type HandOverTime, handOverTime } from './hand-over-times.ts';
import { AWAY, type NightStep } from './night-steps.ts';
import { secondsOf } from './report-time.ts';

/** How the journal came to hold a hand-over: by a key of its own, with the start of its song, or once that song was over. */
export type HandOverNoted = 'by-itself' | 'with-song' | 'later';

export type HandOverLine = {
	readonly atMs: NightMs;
	/** The song that it was for; null when none was to come. */
	readonly song: string | null;
	/** Key of that song in the night's list. */
	readonly item: string | null;
	readonly player: string;
	readonly playerId: string;
	/** Null: hands left empty. */
	readonly instrument: string | null;
	readonly instrumentId: string | null;
	readonly tuning: string | null;
	readonly capo: number | null;
	readonly by: 'plan' | 'stand-in' | 'exchange';
	/** Seconds since it was made ready; null when it was not. */
	readonly readyAgeSeconds: number | null;
	/** Ready once, but too long ago. */
	readonly isStale: boolean;
	/**
	 * The tuning and capo that it was made ready in, where it was handed in another: that mark said nothing of this one; null
	 * where it was made ready as it was handed, or not at all.
	 */
	readonly readyIn: string | null;
	/** What the plan's hand-over had said, when it was really of this one. */
	readonly correctedFrom: string | null;
	readonly noted: HandOverNoted;
	/** The gap before its song; null before the first song, after an interval and inside a song. */
	readonly wantedSeconds: number | null;
	/**
	 * From the end of the song before, or from when the song was called, or from the break, until it was noted; null where
	 * the journal does not hold that, as of one that was noted with its song's start.
	 */
	readonly takenSeconds: number | null;
	/** Noted while its song was on already, or after its gap was over; null where that is not known. */
	readonly isLate: boolean | null;
	/** The technician whose hands it was, by the show file. */
	readonly tech: string | null;
};

export type WrongHold = {
	readonly atMs: NightMs;
	readonly player: string;
	readonly playerId: string;
	readonly held: string;
	readonly song: string;
	readonly wanted: string;
	/** Until it was put right, or its song was over; null where that is not in the journal. */
	readonly seconds: number | null;
};

type OpenHold = Omit<WrongHold, 'seconds'> & {
	readonly heldId: string;
	/** The song that it is wrong for. */
	readonly item: SongItem;
};

/** Hand-overs in order of time, a correction in place of what it corrects; and wrong holds likewise. */
export function handOverLines(
	show: Show,
	steps: readonly NightStep[],
): { readonly handOvers: readonly HandOverLine[]; readonly wrongHolds: readonly WrongHold[] } {
	const lines: { player: string; line: HandOverLine }[] = [];
	const wrongHolds: WrongHold[] = [];
	const open = new Map<string, OpenHold>();
	/** Those that ended with their song, by player: one that is taken up again was not over. */
	const ended = new Map<string, OpenHold>();
	const withSong = new Set(
		steps.filter(({ entry }) => entry.k === 'song-began').map(({ of }) => of),
	);
	let calledMs: NightMs | null = null;
	let awayUntilMs: NightMs | null = null;
	for (const { entry, of, before, after } of steps) {
		if (entry.k === 'next-chosen') calledMs = entry.at;
		if (entry.k === 'song-began') calledMs = null;
		if (AWAY.has(entry.k)) awayUntilMs = entry.at;
		for (const [player, hold] of open) {
			if (!isHoldOver(hold, { entry, before, after })) continue;
			if (entry.k === 'song-ended') ended.set(player, hold);
			wrongHolds.push(holdUntil(hold, entry.at));
			open.delete(player);
		}
		for (const [player, hold] of ended) {
			const isOnAgain = entry.k === 'song-began' && entry.item === hold.item.key;
			if (!isOnAgain || after.players[player]?.holds !== hold.heldId) continue;
			ended.delete(player);
			open.set(player, hold);
			wrongHolds.splice(
				wrongHolds.findLastIndex(({ playerId }) => playerId === player),
				1,
			);
		}
		if (entry.k !== 'handed-over' && entry.k !== 'hand-over-corrected') continue;
		const { player } = entry;
		const index = lines.findLastIndex((one) => one.player === player);
		const corrected = entry.k === 'hand-over-corrected' ? lines[index]?.line : undefined;
		const atMs = corrected?.atMs ?? entry.at;
		const hold = open.get(player);
		if (hold) {
			wrongHolds.push(holdUntil(hold, atMs));
			open.delete(player);
		}
		const missed = missedFor(before, entry);
		const wanted =
			missed ?? laterItem(before, entry) ?? findSongItem(before, itemConcerned(before));
		const line = lineOf(show, entry, { atMs, before, after, wanted });
		if (corrected) {
			const { by, instrument, noted, wantedSeconds, takenSeconds, isLate } = corrected;
			const correctedFrom = instrument ?? EMPTY_HANDS;
			lines[index] = {
				player,
				line: { ...line, by, correctedFrom, noted, wantedSeconds, takenSeconds, isLate },
			};
		} else {
			const noted = missed ? 'later' : withSong.has(of) ? 'with-song' : 'by-itself';
			const took = handOverTime(entry, { before, after, wanted, noted, calledMs, awayUntilMs });
			lines.push({ player, line: { ...line, ...took, noted } });
		}
		const wrong = wanted && wrongHold(entry, after, wanted);
		if (wrong) open.set(player, { ...wrong, atMs });
	}
	for (const hold of open.values()) wrongHolds.push(holdUntil(hold, null));
	return {
		handOvers: lines.map(({ line }) => line),
		wrongHolds: wrongHolds.sort((one, other) => one.atMs - other.atMs),
	};
}

function holdUntil({ heldId: _, item: _for, ...hold }: OpenHold, atMs: NightMs | null): WrongHold {
	return { ...hold, seconds: atMs === null ? null : secondsOf(atMs - hold.atMs) };
}

/**
 * Whether with this step nothing wrong is held for that song any more: it is over, another one began, or what is held was
 * put right or away. What the next song asks for is told with that song.
 */
function isHoldOver(
	{ playerId, heldId, item }: OpenHold,
	{ entry, before, after }: Pick<NightStep, 'entry' | 'before' | 'after'>,
): boolean {
	if (entry.k === 'song-ended') return before.current === item.key;
	if (entry.k === 'song-began') return entry.item !== item.key;
	const isHanded = entry.k === 'handed-over' || entry.k === 'hand-over-corrected';
	// What they are handed themselves ends it as of when that was.
	if (isHanded && entry.player === playerId) return false;
	if (after.players[playerId]?.holds !== heldId) return true;
	const isAlike =
		before.instruments[heldId] === after.instruments[heldId] &&
		before.show === after.show &&
		before.list === after.list;
	if (isAlike) return false;
	const asked = { k: entry.k, at: entry.at, player: playerId, instrument: heldId };
	return wrongHold(asked, after, findSongItem(after, item.key) ?? item) === null;
}

/** The song that was left without this hand-over, where it was recorded as of that song's beginning. */
function missedFor({ list }: Session, { k, at }: Pick<Entry, 'k' | 'at'>): SongItem | null {
	if (k !== 'handed-over') return null;
	const left = list.find(
		(item) =>
			item.kind === 'song' &&
			item.runs.some(({ beganAtMs, endedAtMs }) => beganAtMs === at && endedAtMs !== null),
	);
	return left?.kind === 'song' ? left : null;
}

/** The song to come that a hand-over made while another one is on says it is for. */
function laterItem(session: Session, entry: Entry): SongItem | null {
	const item = entry.k === 'handed-over' ? entry.item : undefined;
	return item === undefined ? null : findSongItem(session, item);
}

type Around = {
	readonly atMs: NightMs;
	readonly before: Session;
	readonly after: Session;
	readonly wanted: SongItem | null;
};

function lineOf(
	show: Show,
	entry: Handed & { readonly k: string; readonly by?: HandOverLine['by'] },
	{ atMs, before, after, wanted }: Around,
): Omit<HandOverLine, 'noted' | keyof HandOverTime> {
	const given = entry.instrument === null ? undefined : after.instruments[entry.instrument];
	const ready = entry.instrument === null ? null : readinessOf(before, entry.instrument, atMs);
	return {
		atMs,
		song: wanted && cleanText(songTitle(show, wanted.song)),
		item: wanted?.key ?? null,
		player: cleanText(playerName(show, entry.player)),
		playerId: entry.player,
		instrumentId: entry.instrument,
		tech: techOf(show, entry.player),
		instrument: entry.instrument && cleanText(shownInstrument(show, entry.instrument)),
		tuning: given ? cleanText(given.context.tuning.name) : null,
		capo: given ? given.context.capo : null,
		by: entry.by ?? 'exchange',
		readyAgeSeconds: ready?.ageSeconds == null ? null : tenths(ready.ageSeconds),
		isStale: ready?.isStale ?? false,
		readyIn: ready?.ageSeconds == null ? null : readyInOther(entry.instrument, before, after),
		correctedFrom: null,
	};
}

/** How an instrument stood, where it is handed in another tuning or with another capo; else null. */
function readyInOther(id: string | null, before: Session, after: Session): string | null {
	const [was, is] = [before, after].map(({ instruments }) => instruments[id ?? '']?.context);
	if (was === undefined || is === undefined) return null;
	const isSame = was.capo === is.capo && soundsLike(was.tuning, 0, is.tuning);
	return isSame ? null : cleanText(tuningAndCapo(was.tuning.name, was.capo));
}

function wrongHold(
	entry: Handed & { readonly k: string; readonly by?: HandOverLine['by'] },
	after: Session,
	item: SongItem,
): Omit<OpenHold, 'atMs'> | null {
	const { show } = after;
	// A stand-in is chosen knowingly, and the plan gives what the song asks for.
	if (entry.by === 'stand-in' || entry.by === 'plan' || entry.instrument === null) return null;
	const { part } = cellAt(after, { item, point: 0, player: entry.player });
	const state = after.instruments[entry.instrument];
	const held = findInstrument(after, entry.instrument);
	if (!part || !state || !held) return null;
	// A backup is in hands knowingly; that it was one is told with the song.
	if (soundsSo(show, { instrument: held, state }, part)) return null;
	const wanted = wantedInstead(show, part, { id: entry.instrument, state });
	if (wanted === null) return null;
	return {
		...{ heldId: entry.instrument, item },
		player: cleanText(playerName(show, entry.player)),
		playerId: entry.player,
		held: cleanText(
			inTuning(shownInstrument(show, entry.instrument), state.context.tuning.name, 0),
		),
		song: cleanText(songTitle(show, item.song)),
		wanted: cleanText(wanted),
	};
}

/** What the part asks for, in words, when this instrument is not it; else null. */
function wantedInstead(
	show: Show,
	part: Part,
	held: { readonly id: string; readonly state: InstrumentState },
): string | null {
	if (part.kind === 'none') return EMPTY_HANDS;
	if (part.kind === 'named') {
		const own = show.instruments.find((one) => one.id === part.instrument);
		const tuning = part.tuning ?? own?.tuning;
		const { context } = held.state;
		const isIt =
			held.id === part.instrument &&
			context.capo === part.capo &&
			(!tuning || soundsLike(context.tuning, 0, tuning));
		const named = shownInstrument(show, part.instrument);
		return isIt ? null : inTuning(named, tuning?.name ?? null, part.capo);
	}
	const kind = show.instruments.find((one) => one.id === held.id)?.kind;
	const { tuning, capo } = held.state.context;
	const isSuch = kind === part.instrumentKind && soundsLike(tuning, capo, part.sounds);
	return isSuch ? null : sounding(part.instrumentKind, part.sounds.name);
}

/** The technician who has this player, or the only one there is. */
function techOf({ players, techs }: Show, player: string): string | null {
	const id =
		players.find((one) => one.id === player)?.tech ?? (techs.length === 1 ? techs[0]?.id : null);
	const tech = techs.find((one) => one.id === id);
	return tech === undefined ? null : cleanText(tech.name);
}
