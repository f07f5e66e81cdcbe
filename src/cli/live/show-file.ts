// The show file on disk as a night looks after it: a look each second costs a few stats, and a file is
// read only when one of them has changed.

import { createHash } from 'node:crypto';
import { type Stats, statSync } from 'node:fs';
import { resolve } from 'node:path';
import type { ShowFile } from '../../night/show-watch.ts';
import { readPlainShow } from '../../showfile/read-plain-show.ts';
import { readShow } from '../../showfile/read-show.ts';
import type { Io } from '../io.ts';
import { loadBytes, readBytes } from '../open-show.ts';

/** One file as it was last looked at. */
type Looked = { readonly stamp: string; readonly sum: string; readonly sinceMs: number };

/** The file as it was typed, with whatever it includes from its first reading on. */
export function showFileOf(file: string, io: Io): ShowFile {
	let paths: readonly string[] = [resolve(io.cwd, file)];
	const looked = new Map<string, Looked>();
	const lookAt = (path: string): Looked => {
		const before = looked.get(path);
		const stat = statOf(path);
		const stamp = stat ? `${stat.ino} ${stat.size} ${stat.mtimeMs}` : 'none';
		if (before?.stamp === stamp) return before;
		const bytes = readBytes(path);
		const sum = bytes === null ? 'none' : createHash('sha256').update(bytes).digest('hex');
		// Written again as it was, it has not changed.
		const sinceMs = before?.sum === sum ? before.sinceMs : (stat?.mtimeMs ?? io.wallMs());
		const now = { stamp, sum, sinceMs };
		looked.set(path, now);
		return now;
	};
	return {
		version: () => {
			const all = paths.map(lookAt);
			return {
				sum: all.map(({ sum }) => sum).join(' '),
				sinceMs: Math.max(...all.map(({ sinceMs }) => sinceMs)),
			};
		},
		read: () => {
			const asked = new Set<string>();
			const load = (name: string) => {
				const path = resolve(io.cwd, name);
				asked.add(path);
				return loadBytes(path);
			};
			const reading = readPlainShow(load, file) ?? readShow(load, file);
			paths = [...asked];
			return reading;
		},
	};
}

/** Null for a file that is not there or cannot be looked at. */
function statOf(path: string): Stats | null {
	try {
		return statSync(path);
	} catch {
		return null;
	}
}
