// What the report says of songs that were never on, and of a backup that goes on under a song that names nobody.

import { expect, test } from 'vitest';
import { reportMarkdown } from '../../src/report/report-markdown.ts';
import { reportOf } from './report-of.ts';

test('a song jumped over was skipped, one that the night did not come to was not reached', () => {
	const report = reportOf(
		'broken',
		'-01:00 !ready\n00:00 space\n03:00 d\n03:10 j "three" enter\n03:15 space\n06:00 d\n06:10 q e\n',
	);
	const page = reportMarkdown(report);
	expect(page).toMatch(/\| 2 \| Two \| skipped \|/);
	expect(page).toMatch(/\| 4 \| Four \| not reached \|/);
	expect(page).not.toMatch(/\| dropped \|/);
	// Scripts go on reading the record's own word.
	expect(report.songs[3]).toMatchObject({ state: 'dropped', whyNotPlayed: 'to-come' });
	expect(page).toMatch(/## After Three\n\n(- .*\n)*- .*: the show was closed/);
});

test('where the part goes on from the song before, what else is played is a backup for it', () => {
	// Bo's 5 Birch is named in Harbour alone; it is out before Lantern, which says nothing of Bo.
	const report = reportOf(
		'unnamed',
		'-01:00 !ready\n00:00 space\n04:00 d\n04:05 f 5 enter\n04:08 x s\n04:15 space\n07:00 d\n',
	);
	expect(reportMarkdown(report)).toMatch(
		/## Played on a backup\n\n(- .*\n)*- .* Bo played S Spare .*backup for 5 Birch/,
	);
});
