// The view of the rig, drawn: what is believed and what is not to be trusted, boards, batteries by hours left.

import { join } from 'node:path';
import { expect, test } from 'vitest';
import { drawnLines } from '../../src/screen/drawn-lines.ts';
import { midiFaultWords } from '../../src/words/midi.ts';
import { pressedNight } from '../night/pressed-night.ts';
import { loadShow } from '../scenarios/load-show.ts';
import { showFrom } from '../showfile/show-files.ts';
import { expectDrawn } from './expect-drawn.ts';

const SHOW = join(import.meta.dirname, '../rig/night-rig.yaml');
const CLUB = join(import.meta.dirname, '../../shows/club.yaml');
const SIZES = [
	{ columns: 80, rows: 24 },
	{ columns: 120, rows: 40 },
	{ columns: 200, rows: 60 },
];
const TO_RIG = ['tab', 'tab', 'tab', 'tab', 'tab'];
const HOUR_MS = 3_600_000;

type Pressed = ReturnType<typeof pressedNight>;

function drawn({ night }: Pressed, size = { columns: 80, rows: 24 }): string {
	return drawnLines(night.screen(), size)
		.map((line) => line.trimEnd())
		.join('\n');
}

const STATES: Readonly<Record<string, (pressed: Pressed) => void>> = {
	song: ({ press }) => press('t', '0', 'space', ...TO_RIG),
	'between-songs': ({ press }) => press('t', '0', 'space', 'd', ...TO_RIG),
	// Ash's pack is suspect, Bo's drive does not switch, Bo has the spare pack since.
	doubts: ({ press, pass }) => {
		press('t', '0', 'space', 'w', 'a', '-', 'f', '0', 'b', '1');
		pass(HOUR_MS / 2);
		press('w', 'b', '3', 'space', ...TO_RIG);
	},
};

for (const size of SIZES) {
	const sized = `${size.columns}x${size.rows}`;
	test.each(Object.keys(STATES))(`rig, %s at ${sized}`, (name) => {
		const pressed = pressedNight(loadShow(SHOW));
		STATES[name]?.(pressed);
		expectDrawn(`rig-${name}-${sized}`, drawn(pressed, size));
	});
	test(`rig of boards alone at ${sized}`, () => {
		const pressed = pressedNight(loadShow(CLUB));
		pressed.press('t', '0', 'space', ...TO_RIG);
		expectDrawn(`rig-boards-${sized}`, drawn(pressed, size));
	});
}

test('a battery is counted down: a pack while it is worn, all else from the first song on', () => {
	const pressed = pressedNight(loadShow(SHOW));
	const { press, pass } = pressed;
	pass(2 * HOUR_MS);
	press('t', '0', 'space');
	pass(HOUR_MS / 2);
	press('w', 'b', '3');
	pass(HOUR_MS);
	press(...TO_RIG);
	const text = drawn(pressed, { columns: 200, rows: 60 });
	// Of 6 h of which 4 were used, an hour and a half is gone; P2 was worn half an hour; P3 an hour.
	expect(text).toMatch(/pack P1 30 min SHORT/);
	expect(text).toMatch(/pack P2 5 h( |$)/m);
	expect(text).toMatch(/pack P3 5 h( |$)/m);
	// 500 mAh at 12 mA are 41.667 h, 10 of them used before; 550 mAh at 100 mA are 5.5 h.
	expect(text).toMatch(/Ash Fuzz 30 h 10 min/);
	expect(text).toMatch(/5 Fell 4 h/);
});

test('what is taken back counts no more', () => {
	const pressed = pressedNight(loadShow(SHOW));
	const { night, press, pass } = pressed;
	press('t', '0', 'space');
	pass(HOUR_MS);
	press('w', 'b', '3');
	pass(HOUR_MS);
	press('u');
	expect(night.session().packTimes.P3).toBeUndefined();
	expect(night.session().packTimes.P2?.sinceMs).toBe(night.session().zeroAtMs);
});

test('only where the show says something of a rig, and after far', () => {
	const bare = pressedNight(
		showFrom(`format: rackside/1
players: [{id: bo, name: Bo}]
instruments: [{id: B1, kind: electric-6, tuning: E standard, slot: "1"}]
songs: [{id: one, hands: {bo: B1}}]
set: [one]
`),
	);
	bare.press('tab', 'tab', 'tab', 'tab');
	expect(bare.night.screen().view).toBe('far');
	bare.press('tab');
	expect(bare.night.screen().view).toBe('stage');
	const club = pressedNight(loadShow(CLUB));
	club.press('tab', 'tab', 'tab', 'tab');
	expect(club.night.screen().view).toBe('far');
	club.press('tab');
	expect(club.night.screen().view).toBe('rig');
	club.press('tab');
	expect(club.night.screen().view).toBe('stage');
});

test('a correction by o changes what is believed and not the cue, and the log keeps both', () => {
	const pressed = pressedNight(loadShow(CLUB));
	const { night, press } = pressed;
	press('t', '0', 'space', 'space');
	const cue = (night.state().cue as { index: number }).index;
	press('o', 'b', '2', ...TO_RIG);
	expect((night.state().cue as { index: number }).index).toBe(cue);
	expect(drawn(pressed)).toMatch(/Ch1 +Drive, Boost, rest off/);
	const log = [...night.screen().log].map(({ words }) => words);
	expect(log[0]).toMatch(/Bo's Boost is on \(corrected\)/);
	expect(log.some((words) => words.startsWith('at Ch1'))).toBe(true);
});

test('a port that boards hang on and that is gone stands under WATCH, and among all warnings', () => {
	const { night, press } = pressedNight(loadShow(CLUB));
	press('t', '0', 'space');
	const outsideTrouble = midiFaultWords({
		...{ port: '/dev/midi1', trouble: 'ENXIO', isGone: true, ports: [] },
	});
	const lines = drawnLines({ ...night.screen(), outsideTrouble }, { columns: 80, rows: 24 });
	expect(lines.filter((line) => line.startsWith('WATCH'))).toEqual([
		expect.stringMatching(
			/^WATCH.* {2}No MIDI: \/dev\/midi1 is gone\. Switch by foot until it is back\./,
		),
	]);
	press('!');
	const all = drawnLines({ ...night.screen(), outsideTrouble }, { columns: 80, rows: 24 });
	expect(all.join('\n')).toMatch(/WATCH +No MIDI: \/dev\/midi1 is gone/);
});
