// How long a hand-over had and how long it took, as far as the journal holds it. The song's end and the key that noted
// the hand-over are in it; when hands really met is not.

import { cueIndex } from '../../machines/song.ts';
import type { Entry, NightMs } from '../journal/entry.ts';
import { isAsAsked } from '../session/as-asked.ts';
import { findSong, songOnNow } from '../session/find.ts';
import type { Session, SongItem } from '../session/session.ts';
import { gapBetween } from '../showfile/gap-between.ts';
import { secondsOf } from './report-time.ts';

/** See `HandOverLine`. */
export type HandOverTime = {
	readonly wantedSeconds: number | null;
	readonly takenSeconds: number | null;
	readonly isLate: boolean | null;
};

type Made = {
	readonly before: Session;
	readonly after: Session;
	/** The song that it was for. */
	readonly wanted: SongItem | null;
	readonly noted: 'by-itself' | 'with-song' | 'later';
	/** When the song to come was called, where that was since the last one began. */
	readonly calledMs: NightMs | null;
	/** When the program came back last; what was measured over that time is not known. */
	readonly awayUntilMs: NightMs | null;
};

/** The times of one hand-over or correction. */
export function handOverTime(entry: Entry, made: Made): HandOverTime {
	const { before, wanted, noted, calledMs } = made;
	const taken = (fromMs: NightMs): number | null =>
		(made.awayUntilMs ?? fromMs) > fromMs ? null : secondsFrom(fromMs, entry.at);
	const incident = 'incident' in entry ? entry.incident : undefined;
	if (incident !== undefined) {
		const broke = before.incidents.find(({ id }) => id === incident);
		const takenSeconds = broke === undefined ? null : taken(broke.atMs);
		return { wantedSeconds: null, takenSeconds, isLate: null };
	}
	const on = songOnNow(before);
	const isForSongOn = on !== null && noted !== 'later' && on.item.key === wanted?.key;
	if (noted === 'by-itself' && isForSongOn) return inSong(entry, made, taken);
	const wantedSeconds = wanted && gapBefore(before, wanted);
	if (noted === 'later') return { wantedSeconds, takenSeconds: null, isLate: null };
	// With the start of its song, or while the song before was still on: it was there in time.
	if (noted === 'with-song' || on !== null)
		return { wantedSeconds, takenSeconds: null, isLate: false };
	// Before the first song and in an interval nothing waits for it.
	if (wantedSeconds === null || before.phaseSinceMs === null) {
		return { wantedSeconds, takenSeconds: null, isLate: false };
	}
	const takenSeconds = taken(Math.max(before.phaseSinceMs, calledMs ?? 0));
	const isLate = takenSeconds === null ? null : takenSeconds > wantedSeconds;
	return { wantedSeconds, takenSeconds, isLate };
}

/** Noted in the song that it is for: late where it was that song's first, and it is as asked only now. */
function inSong(
	entry: Entry,
	{ before, after }: Made,
	taken: (fromMs: NightMs) => number | null,
): HandOverTime {
	const player = 'player' in entry ? entry.player : null;
	const isAtStart = before.song !== null && cueIndex(before.song) === 0;
	const isAsked = player !== null && !isAsAsked(before, player) && isAsAsked(after, player);
	const on = songOnNow(before);
	if (!isAtStart || !isAsked || on === null) {
		return { wantedSeconds: null, takenSeconds: null, isLate: null };
	}
	const endedMs = lastEndBefore(before, on.item.runs.at(-1)?.beganAtMs ?? entry.at);
	const takenSeconds = endedMs === null ? null : taken(endedMs);
	const isKnown = endedMs === null || takenSeconds !== null;
	return { wantedSeconds: gapBefore(before, on.item), takenSeconds, isLate: isKnown ? true : null };
}

/**
 * Seconds between the song that was on last and this one, by the list as it stands; null at the first song, after an
 * interval, and where that is on.
 */
export function gapBefore(session: Session, item: SongItem): number | null {
	const { list, current } = session;
	const at = list.findIndex(({ key }) => key === item.key);
	const isOn = current === item.key && session.phase.value === 'song';
	const runs = isOn ? item.runs.at(-1) : undefined;
	const before = runs === undefined ? currentItem(session) : playedBefore(session, runs.beganAtMs);
	if (before === null || at < 0) return null;
	const from = list.findIndex(({ key }) => key === before.key);
	if (list.slice(from + 1, at).some(({ kind }) => kind === 'interval')) return null;
	return gapBetween({
		given: item.gapSeconds,
		before: findSong(session, before.song) ?? { ends: 'stop' },
		isEncoreBegin: item.isEncore && !before.isEncore,
	});
}

function currentItem({ list, current }: Session): SongItem | null {
	const item = list.find(({ key }) => key === current);
	return item?.kind === 'song' ? item : null;
}

function playedBefore({ list }: Session, beganAtMs: NightMs): SongItem | null {
	let last: { item: SongItem; endedAtMs: NightMs } | null = null;
	for (const item of list) {
		if (item.kind !== 'song') continue;
		for (const { endedAtMs } of item.runs) {
			if (endedAtMs === null || endedAtMs > beganAtMs) continue;
			if (last === null || endedAtMs >= last.endedAtMs) last = { item, endedAtMs };
		}
	}
	return last?.item ?? null;
}

function lastEndBefore({ list }: Session, beganAtMs: NightMs): NightMs | null {
	const ends = list.flatMap((item) =>
		item.kind === 'song'
			? item.runs.flatMap(({ endedAtMs }) =>
					endedAtMs !== null && endedAtMs <= beganAtMs ? [endedAtMs] : [],
				)
			: [],
	);
	return ends.length === 0 ? null : Math.max(...ends);
}

function secondsFrom(fromMs: NightMs, toMs: NightMs): number {
	return secondsOf(Math.max(0, toMs - fromMs));
}
