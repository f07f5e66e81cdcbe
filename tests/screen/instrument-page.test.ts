// The page of an instrument, drawn: what the ear will say stands beside its strings or below, wherever there
// is room, and what must be read is never given up for it.

import { describe, expect, test } from 'vitest';
import type { Measured } from '../../src/gear/gear-entry.ts';
import { drawScreen } from '../../src/screen/draw-screen.ts';
import { promptLines } from '../../src/screen/prompt-lines.ts';
import { screenText } from '../../src/screen/row.ts';
import { pressedNight, START_MS } from '../night/pressed-night.ts';
import { showFrom } from '../showfile/show-files.ts';
import { expectDrawn } from './expect-drawn.ts';

const SHOW = `
format: rackside/1
show: {title: By ear, date: 2026-06-12, start: "20:30"}
players: [{id: ash, name: Ash}, {id: bo, name: Bo}]
instruments:
  - id: A1
    name: Amber
    slot: "1"
    kind: electric-6
    for: [ash]
    tuning: E standard
    scale: 25.5 in
    strings: [10, 13, 17, 26w, 36w, 46w]
    setup: {action: [1.9, 1.6], relief: 0.2}
    strung: {on: 2026-06-10, hours: 3.5}
    leave: volume 7, neck pickup
    notes: buzz at the ninth fret
  - {id: D1, name: Dozen, slot: "2", kind: acoustic-12, for: [bo], tuning: E standard}
songs:
  - id: low
    title: Weir
    length: "3:00"
    hands: {ash: {instrument: A1, tuning: drop D}, bo: {instrument: D1, capo: 3}}
    shapes: {ash: ["000xxx", x32010], bo: ["320003"]}
  - {id: back, title: Back, length: "3:00", hands: {ash: {instrument: A1}}}
set: [low, back]
`;

const DAY_MS = 86_400_000;
const measured = (days: number, relief: number, third: number): Measured => ({
	k: 'set-up-measured',
	at: START_MS - days * DAY_MS,
	gear: 'file A1 /shows',
	tuning: 'E standard',
	gauges: ['0.254 mm'],
	measures: { relief: [relief] },
	at12: [0, 0, 0, third, 0, 0],
});

function page(...keys: readonly string[]) {
	const past = [measured(1, 0.3, 3), measured(9, 0.2, 1), measured(30, 0.2, 0)];
	const { night, press } = pressedNight(showFrom(SHOW), {
		measuredOn: ({ id }) => (id === 'A1' ? past : []),
	});
	press('tab', ...keys, 'enter');
	return (columns: number, rows: number) =>
		screenText(drawScreen(night.screen(), { columns, rows }, { isAscii: false }));
}

describe.each([
	[80, 24],
	[120, 40],
	[200, 60],
])('at %i x %i', (columns, rows) => {
	test('six strings', () => {
		const drawn = page()(columns, rows);
		expectDrawn(`instrument-page-${columns}x${rows}`, drawn);
		// 3 × 73.4162 − 2 × 110, and 1.955 cents under a pure fifth.
		expect(drawn).toMatch(/6-5 P5 +2\.0 c narrow +0\.25/);
		expect(drawn).toContain('exposed in Weir: 000xxx');
		expect(drawn).toContain('moved in 8 days: relief +0.10 mm, 12th fret of string 3 +2 c');
	});

	test('twelve strings under a capo', () => {
		const drawn = page('down')(columns, rows);
		expectDrawn(`twelve-string-page-${columns}x${rows}`, drawn);
		expect(drawn).toContain('exposed in Weir: 320003 (G) at capo 3');
	});
});

test('a wide rack says how far each can have gone since it was made ready, and by which string', () => {
	const warm = `${SHOW}stage: {soundcheck: 18}\n`;
	const { night, press } = pressedNight(showFrom(warm));
	const drawnAt = (columns: number, rows: number) =>
		screenText(drawScreen(night.screen(), { columns, rows }, { isAscii: false }));
	press('tab');
	expect(drawnAt(120, 40)).not.toContain('string: stage, about');
	press('a', '2', '6', 'enter');
	// The plain third at 506 MPa, eight degrees warmer: −34.1 c by hand for the string alone, a third to two thirds seen.
	expect(drawnAt(120, 40)).toMatch(/1 - Amber .* 3: 11 to 23 c flat\n/);
	expectDrawn('rack-on-a-warmer-stage-120x40', drawnAt(120, 40));
	expect(drawnAt(80, 24)).not.toContain('string: stage, about');
	press('t', '1');
	expect(drawnAt(120, 40)).not.toContain('c flat');
});

describe('what is good to know', () => {
	const lines = ['one', 'two and more', 'three'];
	const more = [['a', 'b'], ['c']];
	const at = (columns: number, rows: number) => promptLines({ lines, more }, { columns, rows });

	test('stands beside what must be read where there are columns and rows for it', () => {
		const drawn = ['one            a', 'two and more   b', 'three', '               c'];
		expect(at(16, 4)).toEqual(drawn);
	});

	test('what finds no room beside stands below', () => {
		const wide = [['a', 'b'], ['too wide for it']];
		const drawn = promptLines({ lines, more: wide }, { columns: 16, rows: 9 });
		expect(drawn).toEqual(['one            a', 'two and more   b', 'three', '', 'too wide for it']);
	});

	test('below, where there are rows but no columns', () => {
		expect(at(12, 8)).toEqual([...lines, '', 'a', 'b', '', 'c']);
		expect(at(12, 6)).toEqual([...lines, '', 'a', 'b']);
	});

	test('is left out where there are neither', () => {
		expect(at(12, 3)).toEqual(lines);
		expect(at(12, 1)).toEqual(lines);
	});
});
