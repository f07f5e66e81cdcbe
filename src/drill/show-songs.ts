// A show played through as planned, with where each of its songs began: what the moments of a drill go on from.

import { songEndMs } from '../plan/demand/first-song.ts';
import { songOnNow } from '../session/find.ts';
import {
	beginNext,
	doWork,
	makeAllReady,
	openTrial,
	placeOf,
	type TrialOptions,
	type TrialPlace,
} from './trial-night.ts';

/** A song that has just begun, with its planned hand-overs made. */
export type SongBegun = {
	readonly song: string;
	readonly place: TrialPlace;
	/** How long it is expected to last. */
	readonly seconds: number;
};

/** All is ready a minute before the first song. */
const READY_MS = -60_000;

/** The songs of the show in the order in which they are played. */
export function songsOfShow(options: TrialOptions): readonly SongBegun[] {
	const trial = openTrial(options, { records: [], atMs: READY_MS });
	const { night, clock } = trial;
	makeAllReady(trial);
	const songs: SongBegun[] = [];
	while (beginNext(trial)) {
		const endMs = songEndMs(night.plan().sections) ?? night.nowMs();
		const seconds = (endMs - night.nowMs()) / 1000;
		const song = songOnNow(night.session())?.song.id ?? '';
		songs.push({ song, place: placeOf(trial), seconds });
		clock.leap((seconds * 1000) / 2);
		doWork(trial);
	}
	return songs;
}
