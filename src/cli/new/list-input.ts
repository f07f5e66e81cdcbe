// The bytes of a list, from a file or from standard input.

import { resolve } from 'node:path';
import { cleanText } from '../../base/clean-text.ts';
import type { Problem } from '../../base/problem.ts';
import { diskTrouble } from '../../words/disk.ts';
import { NO_FILE, NOTHING_PIPED, notReadable, PIPE_IT } from '../../words/set-list.ts';
import type { Io } from '../io.ts';
import { loadBytes } from '../open-show.ts';

/** More than this is no set list. */
const MOST_BYTES = 4_000_000;

export type ListBytes =
	| { readonly ok: true; readonly bytes: Uint8Array }
	| { readonly ok: false; readonly problem: Problem };

/** The bytes of the file, or of standard input for `-`. */
export async function listBytes(file: string, io: Io): Promise<ListBytes> {
	if (file === '-') {
		const bytes = await standardInput();
		if (bytes.length > 0) return { ok: true, bytes };
		return { ok: false, problem: { code: 'no-input', what: NOTHING_PIPED, hint: PIPE_IT } };
	}
	const bytes = loadBytes(resolve(io.cwd, file));
	if (bytes instanceof Uint8Array) return { ok: true, bytes };
	const where = { file: cleanText(file) };
	const what = bytes === null ? NO_FILE : notReadable(diskTrouble(bytes.trouble));
	return { ok: false, problem: { code: 'no-file', what, where } };
}

async function standardInput(): Promise<Uint8Array> {
	const chunks: Uint8Array[] = [];
	let size = 0;
	for await (const chunk of process.stdin) {
		chunks.push(chunk as Uint8Array);
		size += (chunk as Uint8Array).length;
		if (size > MOST_BYTES) break;
	}
	return Buffer.concat(chunks);
}
