// What `new` makes a show of: the list's text, whose its columns are, what stands under the name to be written.

import { basename, extname, resolve } from 'node:path';
import { cleanText } from '../../base/clean-text.ts';
import type { Problem } from '../../base/problem.ts';
import { realDisk } from '../../disk/real-disk.ts';
import { decodeText } from '../../setlist/decode-text.ts';
import type { Rack } from '../../setlist/list-reading.ts';
import type { ReadList } from '../../setlist/make-show.ts';
import { problemText } from '../../words/problem-text.ts';
import { forExample } from '../../words/requests.ts';
import * as words from '../../words/set-list.ts';
import type { Ask } from '../ask-on-terminal.ts';
import { optionText, type Request } from '../command.ts';
import type { Io } from '../io.ts';
import { loadBytes } from '../open-show.ts';
import { listBytes } from './list-input.ts';
import { rackOf, showOrGear } from './rack-file.ts';

/** What a list's file is called, without its ending. */
export function nameOf(file: string): string {
	const name = basename(file, extname(file));
	return cleanText(name.trim()) || 'Show';
}

type Source =
	| { readonly file: string; readonly form: 'table' | 'lines'; readonly text: string }
	| { readonly problem: Problem };

/** The list that a request brings, as text. */
export async function readSource(request: Request, io: Io): Promise<Source> {
	const songs = optionText(request, 'songs');
	const list = optionText(request, 'list');
	if (songs !== null && list !== null) {
		return { problem: { code: 'two-lists', what: words.TWO_LISTS, hint: words.ONE_OF_THEM } };
	}
	const file = songs ?? list ?? '';
	const read = await listBytes(file, io);
	if (!read.ok) return { problem: read.problem };
	const decoded = decodeText(read.bytes);
	if (!decoded.ok) {
		const where = { file: cleanText(file) };
		return {
			problem: {
				code: 'not-text',
				what: words.notText(decoded.is),
				where,
				hint: words.SAVE_AS_CSV,
			},
		};
	}
	return { file, form: songs === null ? 'lines' : 'table', text: decoded.text };
}

/** Heading to player; null where one cannot be read. */
export function columnsOf(request: Request): Readonly<Record<string, string>> | null {
	const given = optionText(request, 'column')?.split('\n') ?? [];
	const pairs = given.map((one) => /^(.*\S)\s*=\s*(\S.*)$/.exec(one));
	if (pairs.some((pair) => pair === null)) return null;
	return Object.fromEntries(
		pairs.map((pair) => [pair?.[1]?.trim() ?? '', pair?.[2]?.trim() ?? '']),
	);
}

type There = { readonly text: string; readonly rack: Rack } | { readonly problem: Problem };

/** What stands under the name that is to be written; null for nothing. */
export async function whatIsThere(
	out: string,
	request: Request,
	{ io, ask }: { readonly io: Io; readonly ask: Ask },
): Promise<There | null> {
	const path = resolve(io.cwd, out);
	const stat = realDisk.stat(path);
	if (stat === null) return null;
	const where = { file: cleanText(out) };
	const isFile = stat.kind === 'file';
	const hint = isFile ? words.ADD_TO_IT : words.ANOTHER_NAME;
	const refused = { code: 'file-exists', what: words.fileIsThere(isFile), where, hint };
	const isWanted =
		isFile &&
		(request.options.add === true ||
			(await ask(words.addAsked(cleanText(out))))?.trim().toLowerCase() === 'y');
	if (!isWanted) return { problem: refused };
	const bytes = loadBytes(path);
	const { show, problems } = showOrGear(out, io);
	if (!show || !(bytes instanceof Uint8Array)) {
		const first = problems[0];
		return {
			problem: {
				...{ code: 'no-show', what: words.NOT_A_SHOW_TO_ADD, where },
				...(first ? { hint: `${problemText(first)}` } : {}),
			},
		};
	}
	return { text: new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes), rack: rackOf(show) };
}

/** Why a list cannot be used, in a sentence. */
export function listProblem(read: Extract<ReadList, { ok: false }>, file: string): Problem {
	const where = { file: cleanText(file) };
	switch (read.code) {
		case 'no-rows':
			return { code: read.code, what: words.EMPTY_LIST, where };
		case 'no-title':
			return { code: read.code, what: words.NO_TITLES, where, hint: words.NAME_TITLES };
		case 'no-songs':
			return { code: read.code, what: words.NO_SONGS, where, hint: words.A_SONG_A_ROW };
		case 'too-long':
			return { code: read.code, what: words.TOO_LONG, where, hint: words.CUT_IT };
		case 'no-such-column':
			return {
				...{ code: read.code, what: words.NO_SUCH_COLUMN, where },
				found: cleanText(read.column),
				expected: cleanText(read.known.join(', ')),
			};
	}
}

/** What to say where no list was given. */
export const NO_LIST: Problem = {
	code: 'no-list',
	what: words.NEEDS_A_LIST,
	hint: `${words.LIST_OPTIONS} ${forExample(words.OUT_EXAMPLE)}`,
};
