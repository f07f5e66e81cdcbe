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
import { EMPTY_HANDS, inTuning, sounding } from '../words/report.ts';
import type { NightStep } from './night-steps.ts';

export type HandOverLine = {
	readonly atMs: NightMs;
	/** The song that it was for; null when none was to come. */
	readonly song: string | null;
	readonly player: string;
	/** Null: hands left empty. */
	readonly instrument: string | null;
	readonly tuning: string | null;
	readonly capo: number | null;
	readonly by: 'plan' | 'stand-in' | 'exchange';
	/** Seconds since it was made ready; null when it was not. */
	readonly readyAgeSeconds: number | null;
	/** Ready once, but too long ago. */
	readonly isStale: boolean;
	/** What the plan's hand-over had said, when it was really of this one. */
	readonly correctedFrom: string | null;
};

export type WrongHold = {
	readonly atMs: NightMs;
	readonly player: string;
	readonly held: string;
	readonly song: string;
	readonly wanted: string;
	/** Null when it was still held at the end of the night. */
	readonly seconds: number | null;
};

type OpenHold = Omit<WrongHold, 'seconds'> & { readonly playerId: string };

/** Hand-overs in order of time, a correction in place of what it corrects; and wrong holds likewise. */
export function handOverLines(
	show: Show,
	steps: readonly NightStep[],
): { readonly handOvers: readonly HandOverLine[]; readonly wrongHolds: readonly WrongHold[] } {
	const lines: { player: string; line: HandOverLine }[] = [];
	const wrongHolds: WrongHold[] = [];
	const open = new Map<string, OpenHold>();
	for (const { entry, before, after } of steps) {
		if (entry.k !== 'handed-over' && entry.k !== 'hand-over-corrected') continue;
		const { player } = entry;
		const index = lines.findLastIndex((one) => one.player === player);
		const corrected = entry.k === 'hand-over-corrected' ? lines[index]?.line : undefined;
		const atMs = corrected?.atMs ?? entry.at;
		const hold = open.get(player);
		if (hold) {
			const { playerId: _, ...known } = hold;
			wrongHolds.push({ ...known, seconds: tenths((atMs - hold.atMs) / 1000) });
			open.delete(player);
		}
		const wanted = missedFor(before, entry) ?? findSongItem(before, itemConcerned(before));
		const line = lineOf(show, entry, { atMs, before, after, wanted });
		if (corrected) {
			lines[index] = {
				player,
				line: { ...line, by: corrected.by, correctedFrom: corrected.instrument ?? EMPTY_HANDS },
			};
		} else {
			lines.push({ player, line });
		}
		const wrong = wanted && wrongHold(entry, after, wanted);
		if (wrong) open.set(player, { ...wrong, atMs, playerId: player });
	}
	for (const { playerId: _, ...hold } of open.values()) wrongHolds.push({ ...hold, seconds: null });
	return {
		handOvers: lines.map(({ line }) => line),
		wrongHolds: wrongHolds.sort((one, other) => one.atMs - other.atMs),
	};
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
): HandOverLine {
	const given = entry.instrument === null ? undefined : after.instruments[entry.instrument];
	const ready = entry.instrument === null ? null : readinessOf(before, entry.instrument, atMs);
	return {
		atMs,
		song: wanted && cleanText(songTitle(show, wanted.song)),
		player: cleanText(playerName(show, entry.player)),
		instrument: entry.instrument && cleanText(shownInstrument(show, entry.instrument)),
		tuning: given ? cleanText(given.context.tuning.name) : null,
		capo: given ? given.context.capo : null,
		by: entry.by ?? 'exchange',
		readyAgeSeconds: ready?.ageSeconds == null ? null : tenths(ready.ageSeconds),
		isStale: ready?.isStale ?? false,
		correctedFrom: null,
	};
}

function wrongHold(
	entry: Handed & { readonly k: string; readonly by?: HandOverLine['by'] },
	after: Session,
	item: SongItem,
): Omit<OpenHold, 'atMs' | 'playerId'> | null {
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
		player: cleanText(playerName(show, entry.player)),
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
