// A delay whose time hangs on the tempo, from one song into the next: it does not change by itself. A quarter note
// lasts 60 s / tempo: 789 ms at 76 BPM, 508 ms at 118 (arithmetic).

import { expect, test } from 'vitest';
import { runSheet } from '../../src/report/run-sheet.ts';
import { tonightSheet } from '../../src/report/tonight-sheet.ts';
import { mark, nightAfter } from '../plan/night-at.ts';
import { showFrom } from '../plan/show-from.ts';
import { playShow } from './play.ts';

type Given = { readonly midi?: string; readonly asks?: string; readonly tempo?: number };

function show({ midi = '', asks = '', tempo = 118 }: Given) {
	return showFrom(`
players: [{id: bo, name: Bo}]
boards: {bo: [{id: drive, name: Drive}, {id: delay, name: Delay${midi}}]}
instruments:
  - {id: B1, name: Birch, slot: "5", kind: electric-6, for: [bo], tuning: E standard}
songs:
  - {id: one, title: One, length: "4:00", tempo: 76, hands: {bo: {instrument: B1}}, board: {bo: {delay: {time: quarter}}}}
  - {id: two, title: Two, length: "4:00", tempo: ${tempo}${asks}}
set: [one, two]
`);
}

const words = (screen: string) => screen.replace(/\s+/g, ' ');
const between = (given: Given, keys = '') =>
	words(playShow(show(given), `-01:00 !ready\n00:00 space\n${keys}04:00 d\n04:05 !screen`).screen);
const sheet = (given: Given) =>
	runSheet(
		tonightSheet({
			session: nightAfter(show(given), []),
			nowMs: mark('-10:00'),
			plannedZeroMs: 0,
		}),
		{ version: '', since: [], hasBoards: false },
	);

test.each([
	['the song says nothing of the board', {}],
	['the song asks for the same', { asks: ', board: {bo: {delay: {time: quarter}}}' }],
])('another tempo is a time to be set, where %s', (_, given) => {
	expect(between(given)).toContain('CUE Two starts STOMP DELAY quarter 508 ms');
	expect(sheet(given)).toContain('start: BO DELAY quarter 508 ms');
});

test('where the tempo is the same, or the pedal is sent it, there is nothing to press', () => {
	const midi = ', midi: {channel: 1, tempo: {cc: 93}}';
	for (const given of [{ tempo: 76 }, { midi }]) {
		expect(between(given)).toContain('CUE Two starts board stays');
		expect(sheet(given)).not.toContain('508 ms');
	}
});

test('a pedal that does not switch is not asked to, and no time is claimed for it', () => {
	const screen = between({}, '00:30 f 0 2\n');
	expect(screen).toContain('CUE Two starts board stays');
	expect(screen).toContain('at Two: DELAY STUCK (time quarter) on');
	expect(screen).not.toContain('ms)');
});

test('the rig view names the time as a change', () => {
	const { screen } = playShow(
		show({}),
		'-01:00 !ready\n00:00 space\n04:00 d\n04:02 tab tab tab tab tab !screen',
	);
	expect(words(screen)).toContain('Delay to quarter: 508 ms');
});
