// The run sheet as it is taped to the case.

import { expect, test } from 'vitest';
import { planBeforeDoors } from '../../src/plan/plan-before-doors.ts';
import { runSheet } from '../../src/report/run-sheet.ts';
import { smallShow } from './small-show.ts';

test('a line a song, with what changes, and never wider than paper', () => {
	const show = smallShow();
	const lines = runSheet(show, planBeforeDoors(show)).split('\n');
	for (const line of lines) expect(line.length).toBeLessThanOrEqual(80);
	const songs = lines.filter((line) => /^ {0,2}\d /.test(line));
	expect(songs).toEqual([
		expect.stringMatching(/^ {2}1 Harbour +\S+ +ASH 1 E std {2}CLEO 8 E std$/),
		expect.stringMatching(/^ {2}2 Lantern +\S+ +0:30 +ASH 4 drop D$/),
		expect.stringMatching(/^ {2}3 =Gravel\|x +\S+ +0:15 +ASH 1 E std$/),
		expect.stringMatching(/^ {2}4 Tide +\S+ +0:15 +ASH 1 E std capo 2$/),
	]);
	expect(lines.join('\n')).toContain('Hearing');
});
