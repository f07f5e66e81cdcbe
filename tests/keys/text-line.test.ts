// Editing a line of text: the keys that people's hands know from every other text field, and letters
// that are more than one code point.

import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { editLine, lineOf, lineText, typeInto } from '../../src/keys/text-line.ts';
import { loadShow } from '../scenarios/load-show.ts';
import { playShow } from '../scenarios/play.ts';

const show = loadShow(join(import.meta.dirname, '../../shows/club.yaml'));

/** The line after these keys, single letters typed, as `before|after`. */
function typed(keys: readonly string[]): string {
	const { before, after } = keys.reduce(
		(line, key) => editLine(line, key) ?? typeInto(line, key),
		lineOf(''),
	);
	return `${before}|${after}`;
}

describe('a line of text', () => {
	test.each<[readonly string[], string]>([
		[['a', 'b', 'left', 'c'], 'ac|b'],
		[['a', 'b', 'home', 'c'], 'c|ab'],
		[['a', 'b', 'ctrl-a', 'delete'], '|b'],
		[['a', 'b', 'left', 'left', 'left', 'right', 'end', 'c'], 'abc|'],
		[['a', ' ', 'b', 'c', 'ctrl-w'], 'a |'],
		[['a', 'b', 'left', 'ctrl-k'], 'a|'],
		[['a', 'b', 'left', 'ctrl-u'], '|b'],
		[['backspace', 'delete', 'left', 'ctrl-w'], '|'],
		// An accent that follows its letter, and a family of three: each goes in one.
		[['e\u0301', 'backspace'], '|'],
		[['a', '👩‍👩‍👧', 'left', 'delete'], 'a|'],
	])('%j', (keys, line) => {
		expect(typed(keys)).toBe(line);
	});

	test('moving about changes no letter', () => {
		const moves = fc.constantFrom('left', 'right', 'home', 'end', 'ctrl-a', 'ctrl-e');
		fc.assert(
			fc.property(fc.string({ unit: 'grapheme' }), fc.array(moves), (text, keys) => {
				const line = keys.reduce((now, key) => editLine(now, key) ?? now, lineOf(text));
				expect(lineText(line)).toBe(text);
			}),
		);
	});
});

describe('in the night', () => {
	const start = '-01:00 !ready\n00:00 space\n';
	test('left and right move in the text and never change the song', () => {
		const { states, screen } = playShow(
			show,
			`${start}01:00 m "toels" left left left right right left left "w" !screen\n01:20 enter`,
		);
		expect(states.at(-1)?.song.id).toBe('harbour');
		expect(screen).toContain('tow|els');
	});

	test('what was typed is there again when the field was left for something urgent', () => {
		const urgent = '01:00 m "two towe" esc\n01:10 b 1\n01:11 enter\n01:20 m !screen\n';
		const { screen } = playShow(show, `${start}${urgent}01:22 "ls" enter\n01:30 m !screen`);
		const [again, after] = screen.split('Memo, then enter').slice(1);
		expect(again?.split('\n')[0]).toContain('two towe_');
		expect(after?.split('\n')[0]?.trim()).toBe('_');
		expect(screen).toContain('memo: two towels');
	});

	test('an incident keeps its own words', () => {
		const left = '01:00 i\n01:02 e "3 at the" esc\n01:06 i\n01:08 e !screen\n01:09 esc\n';
		const { screen } = playShow(show, `${start}${left}01:10 u\n01:11 e !screen`);
		const fields = [...screen.matchAll(/space, words\s+(\S.*)$/gm)].map(([, field]) =>
			field?.trim(),
		);
		expect(fields).toEqual(['_', '3 at the_']);
	});
});
