// Names that are not UTF-8. They come to us with a sign in place of what could not be decoded, so nothing is
// found by them, and what is written would go elsewhere.

import { resolve } from 'node:path';
import { cleanText } from '../base/clean-text.ts';
import type { Problem } from '../base/problem.ts';
import { fs } from '../disk/node-fs.ts';
import { ANOTHER_DATA, ANOTHER_NAME, NOT_UTF8 } from '../words/requests.ts';
import type { Request } from './command.ts';
import type { Io } from './io.ts';
import { placesOf } from './places.ts';

/** A problem for each name that was asked for, and for the data folder, where it cannot be decoded. */
export function undecodedNames(request: Request, io: Io): Problem[] {
	const { data, settings } = placesOf(request, io);
	const typed = [...request.words, ...Object.values(request.options)];
	const names = typed.filter((one) => typeof one === 'string' && one !== request.options.data);
	return [
		...lost([data, settings], io, ANOTHER_DATA),
		...lost(names as readonly string[], io, ANOTHER_NAME),
	].slice(0, 1);
}

function lost(names: readonly string[], { cwd }: Io, hint: string): Problem[] {
	return names
		.filter((name) => name.includes('\ufffd') && !fs.existsSync(resolve(cwd, name)))
		.map((name) => ({ code: 'name-not-utf8', what: NOT_UTF8, found: cleanText(name), hint }));
}
