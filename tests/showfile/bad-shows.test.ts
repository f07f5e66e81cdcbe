// One file for each mistake in tests/bad-shows, beside the message that it must get. Files whose name
// begins with _ are only included by others.

import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readShow } from '../../src/showfile/read-show.ts';
import { problemText } from '../../src/words/problem-text.ts';
import { problemOf } from '../../src/words/problems.ts';

const FOLDER = new URL('../bad-shows/', import.meta.url);
const names = readdirSync(FOLDER)
	.filter((name) => name.endsWith('.yaml') && !name.startsWith('_'))
	.map((name) => name.replace(/\.yaml$/, ''));

function load(path: string): Uint8Array | null {
	return readdirSync(FOLDER).includes(path) ? readFileSync(new URL(path, FOLDER)) : null;
}

describe('a mistake in a show file', () => {
	it.each(names)('%s', (name) => {
		const { show, problems } = readShow(load, `${name}.yaml`);
		const expected = readFileSync(new URL(`${name}.txt`, FOLDER), 'utf8').trimEnd();
		expect(problems.map((one) => problemText(problemOf(one))).join('\n')).toBe(expected);
		expect(show).toBeNull();
	});

	it('is held by at least a hundred files', () => {
		expect(names.length).toBeGreaterThanOrEqual(100);
	});

	it('is told by a file, a line and a column, and never by a thrown error', () => {
		for (const name of names) {
			for (const { where } of readShow(load, `${name}.yaml`).problems) {
				expect(where?.file).toMatch(/\.yaml$/);
				expect(where?.line).toBeGreaterThan(0);
				expect(where?.column).toBeGreaterThan(0);
			}
		}
	});
});
