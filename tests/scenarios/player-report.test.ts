// A player's report of a night, pressed through the real keys: what happened in their hands, not what happened on the rack.

import { expect, test } from 'vitest';
import { readerMarkdown } from '../../src/report/reader-markdown.ts';
import { readerPage } from '../../src/report/reader-page.ts';
import { showFrom } from '../plan/show-from.ts';
import { reportOfShow } from './report-of.ts';

const show = showFrom(`
players: [{id: ash, name: Ash}, {id: bo, name: Bo}]
instruments:
  - {id: A1, name: Amber, slot: "1", kind: electric-6, tuning: E standard}
  - {id: B1, name: Coal, slot: "3", kind: electric-6, tuning: E standard}
  - {id: A2, name: Birch, slot: "2", kind: electric-6, tuning: E standard}
songs:
  - {id: one, title: One, length: "4:00", hands: {ash: A1, bo: B1}}
  - {id: two, title: Two, length: "4:00", hands: {ash: A2, bo: B1}}
set: [one, two]
`);

function pageOf(script: string): string {
	const reader = { who: 'player', id: 'ash' } as const;
	const report = reportOfShow(show, `-01:00 !ready\n00:00 space\n${script}`);
	return readerMarkdown(readerPage(report, reader)).replace(/\s+/g, ' ');
}

test('a string that breaks in hands is told, one that breaks on the rack is only among what is left to do', () => {
	expect(pageOf('01:00 b 1\n01:05 enter\n')).toMatch(/A string broke in song 1 One/);
	const onRack = pageOf('04:00 space\n04:15 space\n05:00 b 1\n05:02 esc\n');
	expect(onRack).toContain('Nothing broke or failed in your hands');
	expect(onRack).toContain('Before the next show: 1 Amber: restring');
});
