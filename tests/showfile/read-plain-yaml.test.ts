// Two readers of one language: where the plain one answers, the YAML library must have given the very
// same tree, places included, and no complaint. PLAIN_RUNS sets how many texts are tried.

import { readdirSync, readFileSync } from 'node:fs';
import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import { readPlainYaml } from '../../src/showfile/read-plain-yaml.ts';
import { readYaml } from '../../src/showfile/read-yaml.ts';

const RUNS = Number(process.env.PLAIN_RUNS ?? 2000);

const SHOWS = new URL('../../shows/', import.meta.url);
const shows = readdirSync(SHOWS).map((name) => readFileSync(new URL(name, SHOWS), 'utf8'));

/** Whether the plain reader answered; that the library agrees is asserted. */
function agrees(text: string): boolean {
	const root = readPlainYaml('f', text);
	if (root) expect(readYaml('f', text)).toStrictEqual({ root, problems: [] });
	return root !== null;
}

it.each(shows)('reads the example shows, as the library does', (text) => {
	expect(agrees(text)).toBe(true);
});

it.each([
	'a: b # c\n\n# d\ne:   f  \n',
	'a:\n- b\n- c: d\n  e: f\ng: h',
	'a: # b\n    - {c: [], d: {}}\n    -   e: "f: # g"\n',
	'a: it\'s\nb: \'c "d" \'\ne: ""\nf: x:y#z, [w]',
	'a b-c.d: 1\n2: [3, 4:5, a b, "c"]',
	'a: über é\n',
	'a: [b , "c" , d ]\ne: {f: g , h: i }',
	`a: ${'['.repeat(15)}${']'.repeat(15)}`,
])('reads %j, as the library does', (text) => {
	expect(agrees(text)).toBe(true);
});

it.each([
	'',
	'a:',
	'a: b: c',
	'a:\nb: c',
	'a:\n  b:\nc: d',
	'a:\n  b:\n- c',
	'a: b\n  c: d',
	'a: b\n  c',
	'a: b\na: c',
	'a: b\n- c',
	'a:\n  - b\n c: d',
	' a: b',
	'- a',
	'a: [b, ]',
	'a: [b',
	'a: {b, c: d}',
	'a: [b: c]',
	'a: "b\\n"',
	"a: 'it''s'",
	'a: "b" c',
	'a: "b"#c',
	'a: [b]#c',
	'a: [b # c]',
	'a: &b c',
	'a: *b',
	'a: !b c',
	'a: |\n  b',
	'a: - b',
	'a:\n  - - b',
	'a:\tb',
	'a: b\tc',
	'a: b\r\nc: d',
	'\ufeffa: b',
	'a: b\ufeff',
	'a: b\u0085c',
	'a: b\u2028c: d',
	'a:\n  b: c\n    d: e\nf: g',
	'a:\n  - b\n    - c\nf: g',
	'<<: {a: b}',
	'constructor: a',
	'a: b\n---\nc: d',
	'a: b\n...\n',
	'%YAML 1.1\n---\na: b',
	'? a\n: b',
	`a: ${'['.repeat(16)}${']'.repeat(16)}`,
	`a: ${'['.repeat(40)}${']'.repeat(40)}`,
])('leaves %j to the library', (text) => {
	expect(readPlainYaml('f', text)).toBeNull();
});

it('leaves a text to the library that is longer than any show', () => {
	const text = (length: number) => `a: ${'b'.repeat(length - 3)}`;
	expect(agrees(text(200_000))).toBe(true);
	expect(readPlainYaml('f', text(200_001))).toBeNull();
});

const PIECES = [
	...[...'ab1 :-,[]{}#"\'|>&*!%@`?~<=._\\\n\t\r\0\u00a0\u0085\u2028\ufeff\u0301\u00e9'],
	...[' ', '  ', '    ', '\n', '\n  ', '\n    ', '\n- ', '\n  - ', ': ', ':\n', ', ', ' #', ' # a'],
	...[
		'a: ',
		'b: ',
		'c: b',
		'a: {b: c}',
		'- a: b',
		'[a, b]',
		'{a: b, c: d}',
		'"a"',
		"'b'",
		'---',
		'...',
	],
	...[
		'\r\n',
		'a b',
		'a:b',
		'<<: ',
		'__proto__: ',
		'null',
		'- - ',
		'[]',
		'{}',
		'\\u00e9',
		"''",
		'""',
	],
];

it('agrees with the library on any text it reads', () => {
	const text = fc
		.array(fc.constantFrom(...PIECES), { maxLength: 24 })
		.map((parts) => parts.join(''));
	fc.assert(
		fc.property(text, (one) => void agrees(one)),
		{ numRuns: RUNS },
	);
});

it('agrees with the library on shows with a few slips in them', () => {
	const slip = fc.record({
		at: fc.nat(99_999),
		cut: fc.nat(6),
		put: fc.array(fc.constantFrom('', ...PIECES), { maxLength: 2 }),
	});
	const slips = fc.array(slip, { minLength: 1, maxLength: 3 });
	fc.assert(
		fc.property(fc.constantFrom(...shows), fc.nat(99_999), slips, (show, from, all) => {
			// Forty lines hold what a whole show does and are read in a moment.
			const lines = show.split('\n');
			const part = lines
				.slice(from % lines.length)
				.slice(0, 40)
				.join('\n');
			const start = part.search(/^\S/m);
			const damaged = all.reduce(
				(text, { at, cut, put }) => {
					const where = at % (text.length + 1);
					return text.slice(0, where) + put.join('') + text.slice(where + cut);
				},
				part.slice(Math.max(0, start)),
			);
			agrees(damaged);
		}),
		{ numRuns: RUNS },
	);
});
