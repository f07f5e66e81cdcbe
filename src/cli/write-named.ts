// A file that is written for the user: under the name that was typed, never over one that is there unless `--force`
// says so, or under a name of ours, which gets a number where it is taken.

import { basename, dirname, resolve } from 'node:path';
import type { Problem } from '../base/problem.ts';
import { writeExport } from '../disk/export-file.ts';
import { realDisk } from '../disk/real-disk.ts';
import { exportProblem } from '../words/disk.ts';
import type { Request } from './command.ts';
import type { Io } from './io.ts';

export type ToWrite = {
	/** From the working folder. */
	readonly name: string;
	readonly content: string | Uint8Array;
	/** The option that named it, such as `--out`; left out where the name is ours. */
	readonly option?: string;
};

/** Writes it; gives back its path, or the problem where that cannot be done. */
export function writeNamed(
	{ name, content, option }: ToWrite,
	request: Request,
	io: Io,
): { readonly path: string } | { readonly problem: Problem } {
	const target = resolve(io.cwd, name);
	const done = writeExport(realDisk, {
		folder: dirname(target),
		name: basename(target),
		text: content,
		isDefaultName: option === undefined,
		isForced: option !== undefined && request.options.force === true,
	});
	return 'path' in done ? done : { problem: exportProblem(done.fault, option) };
}
