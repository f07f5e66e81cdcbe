// The run sheet as it is taped to the case.

import { join } from 'node:path';
import { expect, test } from 'vitest';
import { planBeforeDoors } from '../../src/plan/plan-before-doors.ts';
import { runSheet } from '../../src/report/run-sheet.ts';
import type { Show } from '../../src/showfile/show.ts';
import { loadShow } from '../scenarios/load-show.ts';
import { smallShow } from './small-show.ts';

test('a line a song, with what changes, and never wider than paper', () => {
	const show = smallShow();
	const lines = runSheet(show, planBeforeDoors(show)).split('\n');
	for (const line of lines) expect(line.length).toBeLessThanOrEqual(80);
	const songs = lines.filter((line) => /^ {0,2}\d /.test(line));
	expect(songs).toEqual([
		expect.stringMatching(/^ {2}1 Harbour +\S+ +ASH 1 Amber E std {2}CLEO 8 Cedar E std$/),
		expect.stringMatching(/^ {2}2 Lantern +\S+ +0:30 +ASH 4 Anchor drop D$/),
		expect.stringMatching(/^ {2}3 =Gravel\|x +\S+ +0:15 +ASH 1 Amber E std$/),
		expect.stringMatching(/^ {2}4 Tide +\S+ +0:15 +ASH keeps 1 Amber, CAPO ON 2$/),
	]);
	expect(lines.join('\n')).toContain('Hearing');
});

test('the legend names every slot of the rack, those that nobody owns too', () => {
	const show = smallShow();
	const sheet = runSheet(show, planBeforeDoors(show));
	expect(sheet).toContain('\nASH: 1 Amber, 4 Anchor\n');
	expect(sheet).toContain('\nSPARES: S Spare\n');
});

test('a title line too long is broken between its facts, not inside one', () => {
	const show = {
		...smallShow(),
		venue: 'The Old Wharrel Rooms by the Harbour',
		curfewMinutes: 1365,
	};
	const long = { ...show, title: 'Quay Street, the second of nights', date: '2026-06-12' };
	const lines = runSheet(long, planBeforeDoors(long)).split('\n');
	expect(lines.slice(0, 2)).toEqual([
		'Quay Street, the second of nights, The Old Wharrel Rooms by the Harbour,',
		'  2026-06-12, start 20:00, curfew 22:45',
	]);
});

test('what strings stand off equal temperament stands by the tuning, or under it where it is long', () => {
	const few = { ...smallShow(), offsets: [{ tuning: 'drop D', cents: { 3: -3, 6: -2 } }] };
	const many = {
		...smallShow(),
		offsets: [{ player: 'ash', cents: { 1: -1, 2: -1, 3: -3, 4: -2, 5: -2, 6: -2 } }],
	};
	const sheetOf = (show: Show) => runSheet(show, planBeforeDoors(show));
	expect(sheetOf(few)).toContain('ASH 4 Anchor drop D, strings 6 -2, 3 -3 c');
	expect(sheetOf(few)).toMatch(/ASH 1 Amber E std {2}CLEO/);
	expect(sheetOf(many)).toMatch(
		/ASH 4 Anchor drop D,\n {38}strings 6 -2, 5 -2, 4 -2, 3 -3, 2 -1, 1 -1\n {38}c\n/,
	);
	for (const line of sheetOf(many).split('\n')) expect(line.length).toBeLessThanOrEqual(80);
});

test('boards on request, under each song: its order, each point whole, times in milliseconds', () => {
	const show = loadShow(join(import.meta.dirname, '../rig/night-rig.yaml'));
	const plan = planBeforeDoors(show);
	expect(runSheet(show, plan)).not.toContain('board');
	const sheet = runSheet(show, plan, { hasBoards: true });
	for (const line of sheet.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
	// A dotted eighth at 104 is 432.7 ms, a quarter at 120 is 500: 60000 over the tempo, times its quarter notes.
	expect(sheet).toMatch(
		/1 Lantern .*\n.*\n {4}ASH board start: Fuzz {2}solo: Fuzz {2}out: all off\n {4}BO board start: Drive {2}solo: Drive, Boost, Delay dotted eighth 433 ms\n {13}out: Drive, Delay wide\n/,
	);
	expect(sheet).toMatch(
		/2 Quarry .*\n {4}BO board order: Chorus before Drive {2}start: Chorus, Delay quarter 500 ms\n/,
	);
});
