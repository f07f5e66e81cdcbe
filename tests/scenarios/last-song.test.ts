// In the last song nothing is planned any more; what is wrong is still to be put right.

import { expect, test } from 'vitest';
import { showFrom } from '../plan/show-from.ts';
import { playShow } from './play.ts';

const show = showFrom(`
players: [{id: ash, name: Ash}]
instruments: [{id: A1, slot: "1", kind: electric-6, tuning: E standard, pack: P1}]
packs: [{id: P1, channel: "11"}]
songs: [{id: one, length: "4:00", hands: {ash: A1}}]
set: [one]
`);
const todo = (keys: string) =>
	playShow(show, `-01:00 !ready\n00:00 space\n01:00 ${keys}!screen --size 80x24\n`)
		.screen.split('\n')
		.find((line) => line.startsWith('TO DO'));

test('nothing to do is said only where nothing is wrong', () => {
	expect(todo('')).toMatch(/nothing to do/);
	expect(todo('w a - ')).toMatch(/put right what WATCH says/);
});
