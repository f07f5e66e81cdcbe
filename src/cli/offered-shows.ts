// The show files that a start offers: those of the working folder whose date is today, and the one that was
// opened last.

import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { showIdentity } from '../disk/paths.ts';
import { realDisk } from '../disk/real-disk.ts';
import type { Request } from './command.ts';
import type { Io } from './io.ts';
import type { OfferedShow } from './start-choices.ts';

/** A folder with more is no folder of shows, and reading it would be waited for. */
const MOST_FILES = 200;
/** A matinee and an evening show. */
const MOST_TODAY = 2;

/** `today` as it stands in a show file, `2026-06-12`; `last`: the file opened last, null for none. */
export async function offeredShows(
	{ today, last }: { readonly today: string; readonly last: string | null },
	request: Request,
	io: Io,
): Promise<readonly OfferedShow[]> {
	const { openShow, readBytes } = await import('./show-commands.ts');
	const read = async (file: string): Promise<OfferedShow> => {
		const { show } = await openShow(file, request, io);
		return { file: showIdentity(file), isToday: show?.date === today, show };
	};
	const ofToday: OfferedShow[] = [];
	const isOfToday = new RegExp(`\\bdate:\\s*["']?${today}\\b`);
	for (const path of showFiles(io.cwd)) {
		if (ofToday.length === MOST_TODAY) break;
		// Most files are of other days, and need not be read as shows.
		const text = Buffer.from(readBytes(path) ?? []).toString();
		if (!isOfToday.test(text)) continue;
		const found = await read(path);
		if (found.isToday || found.show === null) ofToday.push({ ...found, isToday: true });
	}
	const isLastThere = last !== null && existsSync(last);
	return [...ofToday, ...(isLastThere ? [await read(last)] : [])];
}

/** The newest first. */
function showFiles(folder: string): readonly string[] {
	try {
		return readdirSync(folder)
			.filter((name) => /\.ya?ml$/i.test(name))
			.slice(0, MOST_FILES)
			.map((name) => join(folder, name))
			.map((path) => ({ path, modifiedMs: realDisk.stat(path)?.modifiedMs ?? 0 }))
			.toSorted((one, other) => other.modifiedMs - one.modifiedMs)
			.map(({ path }) => path);
	} catch {
		// A folder that cannot be listed offers none.
		return [];
	}
}
