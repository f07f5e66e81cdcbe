// YAML to a tree: everything stays the text that was written, places are those that an editor shows, and
// what hurts is refused before the recursive half of the parser sees it.

import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse, stringify } from 'yaml';
import { DEEPEST_LEVEL, MOST_TOKENS } from '../../src/showfile/nesting-guard.ts';
import { readYaml } from '../../src/showfile/read-yaml.ts';
import { placeAt, plainValue } from '../../src/showfile/source-node.ts';
import { problemText } from '../../src/words/problem-text.ts';
import { problemOf } from '../../src/words/problems.ts';

const RUNS = Number(process.env.YAML_RUNS ?? 150);

const plain = (text: string): unknown => {
	const { root } = readYaml('f', text);
	return root && plainValue(root);
};
const codes = (text: string) => readYaml('f', text).problems.map(({ code }) => code);

describe('single values', () => {
	it.each(['yes', 'no', 'on', '010', '1:30', '1.10', '.nan', '.inf', '1e999', '0x1F', 'null', '~'])(
		'%s stays what was written',
		(text) => {
			expect(plain(`key: ${text}`)).toEqual({ key: text });
		},
	);

	it('keeps keys apart that other readers take for one', () => {
		expect(plain('1: a\n"01": b\n1.0: c')).toEqual({ '1': 'a', '01': 'b', '1.0': 'c' });
	});

	it('calls two ways to type one accent the same key', () => {
		expect(codes('r\u00e9: 1\nre\u0301: 2')).toEqual(['repeated-key']);
	});
});

describe('places', () => {
	it('are line and column as editors count them', () => {
		const { root } = readYaml('f', 'a: 1\nb:\n  - x\n  - {c: "ü", d: y}\n');
		if (!root) throw new Error('no tree');
		expect(placeAt(root, ['b', 1, 'd'])).toEqual({ file: 'f', line: 4, column: 17 });
		expect(placeAt(root, ['b', 0])).toEqual({ file: 'f', line: 3, column: 5 });
	});
});

describe('what show files do not have', () => {
	it.each([
		['a: &x 1\nb: *x', 'anchor', 'alias'],
		['a: *nowhere', 'alias'],
		['<<: {a: 1}', 'merge-key'],
		['a: !!int 1', 'tag'],
		['a: !own 1', 'tag'],
		['a: !!binary aGk=', 'tag'],
		['a: 1\n---\nb: 2', 'many-documents'],
		['%YAML 1.1\n---\na: 1', 'yaml-directive'],
		['? [a, b]\n: 1', 'odd-key'],
		['__proto__: {isAdmin: true}', 'forbidden-key'],
		['a: {constructor: {prototype: {x: 1}}}', 'forbidden-key'],
		['a: {toString: 1}', 'forbidden-key'],
		['a: 1\na: 2', 'repeated-key'],
		['a: "\\ud800"', 'lone-surrogate'],
		['a: {b, c: 1}', 'no-colon'],
	])('%j', (text, ...expected) => {
		expect(codes(text)).toEqual(expected);
		expect(({} as Record<string, unknown>).isAdmin).toBeUndefined();
	});

	it('an alias bomb is refused at its first alias, unopened', () => {
		const bomb = [
			'a: &a [x, x]',
			...[...'bcdefghij'].map((l, i) => `${l}: &${l} [*${'abcdefghi'[i]}, *${'abcdefghi'[i]}]`),
		].join('\n');
		const { root, problems } = readYaml('f', bomb);
		expect(root).toBeNull();
		expect(problems.map((one) => problemText(problemOf(one)))[0]).toMatch(
			/^f:1:\d+: anchors are not allowed here/,
		);
		expect(problems.some(({ code, where }) => code === 'alias' && where?.line === 2)).toBe(true);
	});
});

describe('depth', () => {
	it.each([
		['brackets', '['.repeat(100_000)],
		['braces', '{a: '.repeat(100_000)],
		['dashes', '- '.repeat(100_000)],
		['question marks', '? '.repeat(100_000)],
		['lines', Array.from({ length: 500 }, (_, i) => `${' '.repeat(i)}k:`).join('\n')],
	])('of %s without end is refused at the first level too many', (_, text) => {
		const [problem, ...others] = readYaml('f', text).problems;
		expect(others).toEqual([]);
		expect(problem?.code).toBe('too-deep');
		// Refused where level 33 begins, so nothing behind it was looked at.
		expect(`${problem?.where?.line}:${problem?.where?.column}`).toMatch(/^1:(33|65|66|129)$|^3\d:/);
	});

	it('counts levels as the parsed tree has them', () => {
		const tree: fc.Arbitrary<unknown> = fc.letrec((tie) => ({
			node: fc.oneof(
				{ maxDepth: 60, withCrossShrink: true },
				fc.constantFrom('x', 'two words', '"quoted: #"', 'a-b'),
				fc.array(tie('node'), { minLength: 1, maxLength: 3 }),
				fc.dictionary(fc.constantFrom('k', 'key two', 'z'), tie('node'), {
					minKeys: 1,
					maxKeys: 2,
				}),
			),
		})).node;
		const chain = (depth: number, inner: unknown): unknown =>
			depth === 0 ? inner : depth % 2 ? [chain(depth - 1, inner)] : { k: chain(depth - 1, inner) };
		fc.assert(
			fc.property(tree, fc.nat(36), fc.boolean(), fc.boolean(), (inner, depth, isFlow, isTight) => {
				const value = chain(depth, inner);
				const text = stringify(value, {
					schema: 'failsafe',
					indentSeq: !isTight,
					lineWidth: 0,
					collectionStyle: isFlow ? 'flow' : 'block',
				});
				// The library's own reading says how deep the text is.
				const levels = levelsOf(parse(text, { schema: 'failsafe' }));
				expect(codes(text).includes('too-deep')).toBe(levels > DEEPEST_LEVEL);
			}),
			{ numRuns: RUNS },
		);
	});

	it('and length are bounded together: a flat file of too many values is refused', () => {
		expect(codes(`a: [${'x,'.repeat(MOST_TOKENS / 2)}]`)).toEqual(['too-many-values']);
	});
});

function levelsOf(value: unknown): number {
	if (typeof value !== 'object' || value === null) return 0;
	return 1 + Math.max(0, ...Object.values(value).map(levelsOf));
}
