// The run sheet of a night whose list was changed while it was under way.

import { expect, test } from 'vitest';
import { sessionAfter } from '../../src/plan/what-if/what-if.ts';
import { runSheet } from '../../src/report/run-sheet.ts';
import { tonightSheet } from '../../src/report/tonight-sheet.ts';
import { allReady, mark, nightAfter, withEntries, withSongBegun } from '../plan/night-at.ts';
import { smallShow } from './small-show.ts';

test('what is played is done, what was dropped is gone, what was moved stands where it comes', () => {
	const show = smallShow();
	const begun = withSongBegun(nightAfter(show, allReady(show, '-01:00')), '00:00');
	const played = withEntries(begun, { k: 'song-ended', at: mark('04:00'), how: 'played' });
	const nowMs = mark('04:05');
	// Harbour, Lantern, Gravel, Tide: Lantern is dropped, Tide goes before Gravel.
	const session = sessionAfter({ session: played, nowMs }, [
		{ do: 'drop-song', item: '2' },
		{ do: 'move-song', item: '4', before: '3', isEncore: false },
	]);
	const sheet = tonightSheet({ session: session ?? played, nowMs, plannedZeroMs: 0 });
	const lines = runSheet(sheet, { version: '', since: [], hasBoards: false }).split('\n');
	expect(lines[0]).toContain("tonight's list");
	// Lantern is dropped, so that Tide comes 15 s after the end of Harbour.
	expect(lines.filter((line) => /^ {0,2}\d /.test(line))).toEqual([
		expect.stringMatching(/^ {2}1 Harbour +done$/),
		expect.stringMatching(/^ {2}2 Tide +20:04 {2}gap 0:15/),
		expect.stringMatching(/^ {2}3 =Gravel\|x +20:07 {2}gap 0:15/),
	]);
	expect(lines.join('\n')).not.toContain('Lantern');
});
