// Two pieces of work on one instrument, one under the other, say which song each is for.

import { expect, test } from 'vitest';
import { showFrom } from '../plan/show-from.ts';
import { playShow } from '../scenarios/play.ts';

const show = showFrom(`
show: {recheck-after: 8m}
players: [{id: ash, name: Ash}]
instruments:
  - {id: A1, name: Amber, slot: "1", kind: electric-6, for: [ash], tuning: E standard}
  - {id: A4, name: Anchor, slot: "4", kind: electric-6, for: [ash], tuning: drop D}
songs:
  - {id: one, title: One, length: "12:00", hands: {ash: {instrument: A4}}}
  - {id: two, title: Two, length: "12:00", hands: {ash: {instrument: A1}}}
  - {id: three, title: Three, length: "12:00", hands: {ash: {instrument: A4}}}
  - {id: four, title: Four, length: "12:00", hands: {ash: {instrument: A1}}}
set: [one, two, three, four]
`);
const toDo = (screen: string) => {
	const lines = screen.split('\n');
	const at = lines.findIndex((line) => line.startsWith('TO DO'));
	return lines.slice(at, at + 3).filter((line) => /within|short/.test(line));
};

test('of one instrument the song is said with each piece, of others with none', () => {
	const rows = toDo(playShow(show, '-01:00 !ready\n00:00 space\n02:00 !screen').screen);
	const amber = rows.filter((row) => row.includes('1 Amber'));
	expect(amber.map((row) => row.match(/ song \d$/)?.[0])).toEqual([' song 2', ' song 4']);
	for (const row of rows.filter((one) => one.includes('4 Anchor')))
		expect(row).not.toMatch(/song \d/);
});
