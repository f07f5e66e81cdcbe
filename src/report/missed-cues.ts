// Cues that nobody stepped to.

import { cuePoints } from '../../machines/song.ts';
import { cleanText } from '../base/clean-text.ts';
import { findSong, positionOf } from '../session/find.ts';
import { songTitle } from '../showfile/shown-names.ts';
import type { SongNight } from './report-songs.ts';
import type { ReportTime } from './report-time.ts';

/** Cues of a song that counts as played which nobody stepped to. */
export type MissedCues = {
	/** When the song ended. */
	readonly at: ReportTime;
	readonly item: string;
	readonly position: number | null;
	readonly song: string;
	readonly cues: readonly string[];
	/** Ids of the players whose boards one of them changes. */
	readonly playerIds: readonly string[];
};

/** The cues of each playing that counts as played which were never reached, by the journal. */
export function missedCues({ show, steps, last, timeAt }: SongNight): readonly MissedCues[] {
	const all: MissedCues[] = [];
	let reached = new Set<number>();
	for (const { entry, before } of steps) {
		if (entry.k === 'song-began') reached = new Set();
		if (entry.k === 'cue-reached') reached.add(entry.index);
		if (entry.k !== 'song-ended' || entry.how !== 'played') continue;
		const item = before.list.find(({ key }) => key === before.current);
		const song = item?.kind === 'song' ? findSong(before, item.song) : null;
		if (item?.kind !== 'song' || song === null) continue;
		const points = cuePoints(song).filter(({ index }) => index > 0 && !reached.has(index));
		const cues = points.map(({ at }) => cleanText(at));
		const playerIds = [
			...new Set(points.flatMap(({ index }) => Object.keys(song.cues[index - 1]?.boards ?? {}))),
		];
		if (cues.length === 0) continue;
		all.push({
			at: timeAt(entry.at),
			item: item.key,
			position: positionOf(last.list, item) || null,
			song: cleanText(songTitle(show, item.song)),
			cues,
			playerIds,
		});
	}
	return all;
}
