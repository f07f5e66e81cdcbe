// A night opened when its day or its hour is past: said once in words, and no negative time left.

import { expect, test } from 'vitest';
import { oddStart, plannedZero } from '../../src/night/planned-zero.ts';
import { oddStartWords } from '../../src/words/program.ts';
import { showFrom } from '../plan/show-from.ts';
import { playShow } from '../scenarios/play.ts';
import { pressedNight } from './pressed-night.ts';

const at = (text: string) => Date.parse(`${text}Z`);
const show = { date: '2026-06-12', startMinutes: 20 * 60 + 30 };
const said = (openedMs: number) => {
	const odd = oddStart(show, openedMs, 0);
	return odd && oddStartWords(show, odd);
};

test('nothing is said on the day, before the hour', () => {
	expect(said(at('2026-06-12T19:00'))).toBe(null);
	// Past midnight, the day before is still the night's own.
	expect(plannedZero(show, at('2026-06-13T00:30'), 0)).toBe(at('2026-06-12T20:30'));
});

test('an hour that has gone by, and a day that has', () => {
	expect(said(at('2026-06-12T21:35'))).toBe(
		'The start, 20:30, has gone by: the first song begins when you press space.',
	);
	expect(said(at('2026-11-30T10:00'))).toBe(
		"The show file's date, 2026-06-12, is past. Counting to 20:30 today.",
	);
	expect(said(at('2026-11-30T22:00'))).toBe(
		"The show file's date, 2026-06-12, is past. The start, 20:30, has gone by: the first song begins when you press space.",
	);
});

const one = showFrom(`
players: [{id: ash, name: Ash}]
instruments: [{id: A1, slot: "1", kind: electric-6, tuning: E standard}]
songs: [{id: one, length: "4:00", hands: {ash: A1}}]
set: [one]
`);

test('no time is left before a start that has gone by', () => {
	const { screen } = playShow(one, '-00:10 !ready\n01:05:00 !screen --size 80x24\n');
	expect(screen).toContain('not begun');
	expect(screen).not.toMatch(/starts in +-|-\d[\d:]* (left|over)/);
});

test('the sentence is there until the first key', () => {
	const { night, press } = pressedNight(one, { says: 'The start has gone by.' });
	expect(night.screen().message).toBe('The start has gone by.');
	press('?');
	expect(night.screen().message).not.toBe('The start has gone by.');
});
