// The log narrowed to what somebody looks for, through the real keys.

import { join } from 'node:path';
import { expect, test } from 'vitest';
import { loadShow } from '../scenarios/load-show.ts';
import { playShow } from '../scenarios/play.ts';

const show = loadShow(join(import.meta.dirname, '../../shows/club.yaml'));
const night =
	'-01:00 !ready\n00:00 space\n01:00 b 1\n01:01 enter\n01:10 m "towels for Bo"\n01:20 enter\n';
/** The words of the log view's lines after these keys. */
function logAfter(keys: string): readonly string[] {
	const { screen } = playShow(show, `${night}02:00 tab tab tab ${keys} !screen`);
	const rows = screen.split('\n');
	const first = rows.findIndex((row) => /^ *LOG /.test(row)) + 1;
	return rows.slice(first).flatMap((row) => /^[> ] +-?[\d:]+ +(.*\S) *$/.exec(row)?.[1] ?? []);
}

test('only lines with all the words are shown, in any order and case, and no words show all again', () => {
	const all = logAfter('');
	expect(all).toContain('memo: towels for Bo');
	expect(logAfter('/ "AMBER break" enter')).toEqual(['string break on 1 Amber, Ash']);
	expect(logAfter('/ "towels" enter / backspace*6 enter')).toEqual(all);
	expect(logAfter('/ "no such thing" enter')).toEqual([]);
});

test('what is opened is the line that is seen, and leaving the view shows all again', () => {
	const { screen } = playShow(show, `${night}02:00 tab tab tab / "towels" enter enter !screen`);
	expect(screen).toMatch(/^memo: towels for Bo/m);
	expect(logAfter('/ "towels" enter esc tab tab tab')).toEqual(logAfter(''));
});
