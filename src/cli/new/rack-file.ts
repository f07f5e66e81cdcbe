// The players and instruments that a new show begins with, from a show file or from a file of gear alone.

import { basename, dirname, join, resolve } from 'node:path';
import { cleanText } from '../../base/clean-text.ts';
import type { Problem } from '../../base/problem.ts';
import { EMPTY_RACK, type Rack } from '../../setlist/list-reading.ts';
import { takeOver } from '../../setlist/take-over.ts';
import { FORMAT } from '../../showfile/format.ts';
import { readShow } from '../../showfile/read-show.ts';
import type { Show } from '../../showfile/show.ts';
import { problemOf } from '../../words/problems.ts';
import { RACK_ELSEWHERE, SAME_FOLDER } from '../../words/set-list.ts';
import type { Io } from '../io.ts';
import { loadBytes } from '../open-show.ts';

export type RackReading =
	| {
			readonly ok: true;
			readonly rack: Rack;
			/** Files that the new show includes. */
			readonly include: readonly string[];
			/** Parts that it holds itself. */
			readonly further: Readonly<Record<string, unknown>>;
	  }
	| { readonly ok: false; readonly problems: readonly Problem[] };

/** No file has a song of this id. */
const PROBE = 'rackside-no-song';

/** The show of this file; of a file without a set, such as one of gear, what it holds, with no song in the list. */
export function showOrGear(
	file: string,
	io: Io,
	bytes?: Uint8Array,
): {
	readonly show: Show | null;
	readonly isWhole: boolean;
	readonly problems: readonly Problem[];
} {
	const load = (path: string) =>
		bytes && path === file ? bytes : loadBytes(resolve(io.cwd, path));
	const whole = readShow(load, file);
	if (whole.show) return { show: whole.show, isWhole: true, problems: [] };
	const main = join(dirname(file), `.${PROBE}.yaml`);
	const text = `format: ${FORMAT}\ninclude: ["${basename(file)}"]\nsongs: [{id: ${PROBE}}]\nset: [${PROBE}]\n`;
	const gear = readShow(
		(path) => (path === main ? new TextEncoder().encode(text) : load(path)),
		main,
	);
	if (gear.show) {
		const songs = gear.show.songs.filter(({ id }) => id !== PROBE);
		return { show: { ...gear.show, songs, set: [] }, isWhole: false, problems: [] };
	}
	return { show: null, isWhole: false, problems: whole.problems.map(problemOf) };
}

/** What a new list is read beside. */
export function rackOf(show: Show): Rack {
	return {
		players: show.players,
		instruments: show.instruments.map((one) => ({ ...one, tuning: one.tuning.name })),
		songs: show.songs,
		abbreviations: show.abbreviations,
	};
}

/** The rack of a file for a show that is written to `out`; a file of gear beside it is included, all else copied. */
export function readRack(file: string | null, out: string, io: Io): RackReading {
	if (file === null) return { ok: true, rack: EMPTY_RACK, include: [], further: {} };
	const { show, isWhole, problems } = showOrGear(file, io);
	if (!show) return { ok: false, problems };
	const rack = { ...rackOf(show), songs: [] };
	const isBeside = dirname(resolve(io.cwd, file)) === dirname(resolve(io.cwd, out));
	if (isBeside && !isWhole)
		return { ok: true, rack: rackOf(show), include: [basename(file)], further: {} };
	const bytes = loadBytes(resolve(io.cwd, file));
	const text = bytes instanceof Uint8Array ? new TextDecoder().decode(bytes) : '';
	const { further, include } = takeOver(text);
	if (include.length > 0 && !isBeside) {
		const where = { file: cleanText(file) };
		return {
			ok: false,
			problems: [{ code: 'rack-elsewhere', what: RACK_ELSEWHERE, where, hint: SAME_FOLDER }],
		};
	}
	return { ok: true, rack, include, further };
}
