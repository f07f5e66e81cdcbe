// The example shows, and the hands' clock of a lesson.

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { readShow } from '../../src/showfile/read-show.ts';
import type { Show } from '../../src/showfile/show.ts';

const folder = fileURLToPath(new URL('../../shows', import.meta.url));

/** The show in this file of the examples. */
export function exampleShow(file: string): Show {
	const { show } = readShow((name) => readFileSync(join(folder, name)), file);
	if (show === null) throw new Error(`${file} is no show`);
	return show;
}

export const EXAMPLES = ['club.yaml', 'festival.yaml', 'first.yaml', 'folk.yaml'] as const;

/** A clock that goes on only when it is told to. */
export function handClock(): {
	readonly handMs: () => number;
	readonly pass: (ms: number) => void;
} {
	let ms = 5_000_000;
	return {
		handMs: () => ms,
		pass: (more) => {
			ms += more;
		},
	};
}
