// What a rehearsal script says, and what it is told when it cannot be read.

import { describe, expect, test } from 'vitest';
import { parseScreenSize, parseScript } from '../../../src/cli/rehearsal/parse-script.ts';

function pressesOf(text: string) {
	const reading = parseScript(text, 'a.txt');
	if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
	return reading.steps.map(({ atMs, act }) => [atMs, act.do === 'press' ? act.key : `!${act.do}`]);
}

function problemsOf(text: string) {
	const reading = parseScript(text, 'a.txt');
	return reading.ok
		? []
		: reading.problems.map(({ code, where }) => [code, where?.line, where?.column]);
}

describe('times', () => {
	test.each([
		['00:01 d', 1000],
		['1:02:03 d', 3_723_000],
		['-01:00 d', -60_000],
		['00:28.4 d', 28_400],
		['90:00.250 d', 5_400_250],
	])('%s', (line, atMs) => {
		expect(pressesOf(line)).toEqual([[atMs, 'd']]);
	});

	test.each(['1:2 d', 'space', '"00:01" d', '00:61 d', '00:01.1234 d', '999:00:00 d'])(
		'%s is no time',
		(line) => {
			expect(problemsOf(line)).toEqual([['script-time', 1, 1]]);
		},
	);
});

describe('keys', () => {
	test('on one line are 400 ms apart', () => {
		expect(pressesOf('00:10 e 3 enter')).toEqual([
			[10_000, 'e'],
			[10_400, '3'],
			[10_800, 'enter'],
		]);
	});

	test('a word that repeats keeps its own distance, and the key after it the usual one', () => {
		expect(pressesOf('00:00 d space*3@33ms l')).toEqual([
			[0, 'd'],
			[400, 'space'],
			[433, 'space'],
			[466, 'space'],
			[866, 'l'],
		]);
		expect(pressesOf('00:00 **2')).toEqual([
			[0, '*'],
			[400, '*'],
		]);
	});

	test('quoted text is typed a key a character', () => {
		expect(pressesOf('00:00 j "o #\\"" enter').map(([, key]) => key)).toEqual([
			'j',
			'o',
			'space',
			'#',
			'"',
			'enter',
		]);
	});

	test('a comment begins at # before a word, and lines may end in CR LF', () => {
		expect(pressesOf('# all\r\n\r\n00:00 x  # rest\r\n')).toEqual([[0, 'x']]);
	});

	test('directives take no time', () => {
		expect(pressesOf('00:00 d !state x !screen --size 120x40 !kill !ready')).toEqual([
			[0, 'd'],
			[0, '!state'],
			[400, 'x'],
			[400, '!screen'],
			[400, '!kill'],
			[400, '!ready'],
		]);
	});

	test.each([
		['00:00 spce', 'script-key', 7],
		['00:00 d !stat', 'script-key', 9],
		['00:00 space@30ms', 'script-key', 7],
		['00:00 d*0', 'script-count', 7],
		['00:00 d*99999', 'script-count', 7],
		['00:00 "abc', 'script-quotes', 7],
		['00:00 "abc"d', 'script-quotes', 7],
		['00:00 !screen --size 0x9', 'script-size', 22],
		['00:00 !screen --size', 'script-size', 7],
		['00:00   # nothing', 'script-empty', 6],
	])('%s', (line, code, column) => {
		expect(problemsOf(line)).toEqual([[code, 1, column]]);
	});
});

describe('lines that run into each other', () => {
	test('a line may begin with the last key of the one before, and not a moment earlier', () => {
		expect(problemsOf('00:10 t 1\n00:10.400 d')).toEqual([]);
		expect(problemsOf('00:10 t 1\n00:10.399 d')).toEqual([['script-overlap', 2, 1]]);
		expect(problemsOf('00:10 d\n00:09 d')).toEqual([['script-overlap', 2, 1]]);
	});

	test('a long run counts to its last press', () => {
		expect(problemsOf('00:00 space*30@33ms\n00:00.957 d')).toEqual([]);
		expect(problemsOf('00:00 space*30@33ms\n00:00.956 d')).toEqual([['script-overlap', 2, 1]]);
	});
});

test('sizes', () => {
	expect(parseScreenSize('120x40')).toEqual({ columns: 120, rows: 40 });
	for (const text of ['120', '0x1', '1x0', '1001x5', 'x', '-1x5', '9x9x9']) {
		expect(parseScreenSize(text)).toBeNull();
	}
});

test('problems never carry what a terminal would obey', () => {
	const reading = parseScript('00:00 \u001b]0;x\u0007', '\u001b[31m.txt');
	expect(JSON.stringify(reading)).not.toContain('\\u001b');
	expect(reading.ok).toBe(false);
});
