// Damaged show files: whatever happens to the bytes, reading them gives a show or named problems, never a
// thrown error, never a show and problems at once, and soon enough. SHOW_RUNS sets how many are tried, SHOW_SEED
// which, so that a long campaign is several short ones.

import { readFileSync } from 'node:fs';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkShow } from '../../src/showfile/check-show.ts';
import { readShow } from '../../src/showfile/read-show.ts';
import type { ShowReading } from '../../src/showfile/show-from-files.ts';
import { findingWords } from '../../src/words/findings.ts';
import { problemOf } from '../../src/words/problems.ts';
import { loaderOf } from './show-files.ts';

const RUNS = Number(process.env.SHOW_RUNS ?? 200);
const SEED = Number(process.env.SHOW_SEED ?? Date.now() % 1_000_000);
if (process.env.SHOW_RUNS)
	console.log(`seed ${SEED}, ${RUNS} damaged shows, a quarter as many parts, as many of no text`);

const SHOWS = new URL('../../shows/', import.meta.url);
const text = (name: string) => readFileSync(new URL(name, SHOWS), 'latin1');
// Bytes as Latin-1, so that cutting anywhere also makes bad UTF-8.
const SEEDS = ['folk.yaml', 'festival.yaml', 'first.yaml', 'club-gear.yaml'].map(text);

/** One reading may take this long of the processor: it waits for nothing, and others hold a busy machine for seconds. */
const MOST_MS = 2000;

/** Milliseconds of the processor that this program has had. */
function processorMs(): number {
	const { user, system } = process.cpuUsage();
	return (user + system) / 1000;
}

const PIECES = [
	'*a',
	'&a ',
	'!!str ',
	'!x ',
	'<<: ',
	'- ',
	'? ',
	': ',
	'{',
	'}',
	'[',
	']',
	'"',
	"'",
	'|\n',
	'>\n',
	'#',
	'%',
	'@',
	'`',
	'\t',
	'\r',
	'\0',
	'\x1b',
	'\x85',
	'\xed\xa0\x80',
	'\xff\xfe',
	'\xe2\x80\xae',
	'---\n',
	'...\n',
	'\n',
	'\n\n',
	'   ',
	'__proto__: 1\n',
	'constructor: {}\n',
	'none',
	'.inf',
	'1e999',
	'-0',
	'99999999999999999999',
	'~',
	'null',
	'id: ',
	'set:\n',
	'include: club.yaml\n',
	'"\\ud800"',
	',',
];

type Edit = (source: string) => string;

const spot = fc.nat({ max: 99_999 });
const at = (source: string, where: number) => where % (source.length + 1);

const edit: fc.Arbitrary<Edit> = fc.oneof(
	fc.tuple(spot, fc.constantFrom(...PIECES)).map(
		([where, piece]): Edit =>
			(s) =>
				s.slice(0, at(s, where)) + piece + s.slice(at(s, where)),
	),
	fc.tuple(spot, fc.integer({ min: 1, max: 80 })).map(
		([where, length]): Edit =>
			(s) =>
				s.slice(0, at(s, where)) + s.slice(at(s, where) + length),
	),
	fc.tuple(spot, fc.nat(255)).map(
		([where, code]): Edit =>
			(s) =>
				s.slice(0, at(s, where)) + String.fromCharCode(code) + s.slice(at(s, where) + 1),
	),
	// A whole line twice, or moved, or indented otherwise.
	fc.tuple(spot, spot, fc.integer({ min: -2, max: 2 })).map(
		([from, to, shift]): Edit =>
			(s) => {
				const lines = s.split('\n');
				const line = lines[from % lines.length] ?? '';
				const moved = shift < 0 ? line.slice(-shift) : ' '.repeat(shift) + line;
				return lines.toSpliced(to % lines.length, shift === 0 ? 1 : 0, moved).join('\n');
			},
	),
	fc
		.tuple(spot, fc.integer({ min: 2, max: 400 }), fc.constantFrom('[', '- ', '  ', '"a",', '{b: '))
		.map(
			([where, times, piece]): Edit =>
				(s) =>
					s.slice(0, at(s, where)) + piece.repeat(times) + s.slice(at(s, where)),
		),
	spot.map(
		(where): Edit =>
			(s) =>
				s.slice(0, at(s, where)),
	),
);

const damaged = fc
	.tuple(fc.constantFrom(...SEEDS), fc.array(edit, { minLength: 1, maxLength: 4 }))
	.map(([seed, edits]) =>
		Buffer.from(
			edits.reduce((s, one) => one(s), seed),
			'latin1',
		),
	);

function judge({ show, problems }: ShowReading): void {
	expect(show === null).toBe(problems.length > 0);
	for (const { code, what, where } of problems.map(problemOf)) {
		expect(code).toMatch(/^[a-z]+(?:-[a-z0-9]+)*$/);
		expect(what).not.toMatch(/undefined|\[object|[\p{Cc}\p{Bidi_Control}]/u);
		expect(where?.file).toMatch(/\.yaml$/);
	}
	// What opens can also be checked, whatever it says.
	if (show)
		for (const one of checkShow(show))
			expect(findingWords(show, one)).not.toMatch(/undefined|\bnull\b/);
}

describe('a damaged show file', () => {
	it('is a show or named problems', () => {
		fc.assert(
			fc.property(damaged, (bytes) => {
				const began = processorMs();
				judge(readShow(loaderOf({ 'show.yaml': bytes }), 'show.yaml'));
				expect(processorMs() - began).toBeLessThan(MOST_MS);
			}),
			{ numRuns: RUNS, seed: SEED },
		);
	});

	it('is no worse as an included file', () => {
		const main = text('club.yaml');
		fc.assert(
			fc.property(damaged, (bytes) => {
				const folder = { 'show.yaml': Buffer.from(main, 'latin1'), 'club-gear.yaml': bytes };
				judge(readShow(loaderOf(folder), 'show.yaml'));
			}),
			{ numRuns: Math.ceil(RUNS / 4), seed: SEED },
		);
	});

	it('is named even when its bytes were never meant to be text', () => {
		fc.assert(
			fc.property(fc.uint8Array({ maxLength: 400 }), (bytes) => {
				const { show, problems } = readShow(loaderOf({ 'show.yaml': bytes }), 'show.yaml');
				expect(show).toBeNull();
				expect(problems.length).toBeGreaterThan(0);
			}),
			{ numRuns: RUNS, seed: SEED },
		);
	});
});

describe('a file of the largest size', () => {
	const fill = (piece: string) => piece.repeat(Math.floor(990_000 / piece.length));

	it.each([
		['songs', `format: rackside/1\nsongs:\n${fill('- {id: x, title: y}\n')}`],
		[
			'keys',
			`format: rackside/1\n${Array.from({ length: 60_000 }, (_, i) => `k${i}: 1`).join('\n')}`,
		],
		['brackets', fill('[')],
		['quotes', fill('"')],
		['open quote', `a: "${fill('x ')}`],
		['colons', fill(': ')],
		['comments', fill('# x\n')],
		['blank lines', fill('\n')],
		['one long word', fill('x')],
		['words over many lines', `a: ${fill('x\n  ')}`],
		['aliases', fill('- *a\n')],
		['controls', fill('\u0001')],
		['bad bytes', fill('\xff\n')],
		['marks', `a: x${fill('\u0301')}`],
	])('of %s is refused by name within a second or two', (_, source) => {
		const bytes = source.includes('\xff') ? Buffer.from(source, 'latin1') : Buffer.from(source);
		const began = processorMs();
		const { show, problems } = readShow(loaderOf({ 'show.yaml': bytes }), 'show.yaml');
		expect(show).toBeNull();
		expect(problems.length).toBeGreaterThan(0);
		expect(problems.length).toBeLessThanOrEqual(101);
		expect(processorMs() - began).toBeLessThan(2 * MOST_MS);
	});
});
