// States of a night that went wrong, pressed through the real keys a second apart: what is drawn of them is
// what the plan says, not what somebody thought it would.

import { join } from 'node:path';
import type { ScreenState } from '../../src/screen/screen-state.ts';
import { pressedNight } from '../night/pressed-night.ts';
import { showFrom } from '../plan/show-from.ts';
import { loadShow } from '../scenarios/load-show.ts';

function pressed(showName: string, ...keys: readonly string[]): ScreenState {
	return pressedIn({ file: `../scenarios/shows/${showName}.yaml` }, ...keys);
}

/** The clock of that night says 1:46 at its start, this long before eight in the evening. */
const TO_EIGHT_MINUTES = 18 * 60 + 14;

/** Four players, two racks of seven, a board. A number: so many seconds go by. */
const atTheatre = (...keys: readonly (string | number)[]) =>
	pressedIn({ file: '../rehearsals/theatre.yaml', dayOffsetMinutes: TO_EIGHT_MINUTES }, ...keys);

function pressedIn(
	{ file, dayOffsetMinutes = 0 }: { readonly file: string; readonly dayOffsetMinutes?: number },
	...keys: readonly (string | number)[]
): ScreenState {
	const show = loadShow(join(import.meta.dirname, file));
	const { night, press, pass } = pressedNight(show, { dayOffsetMinutes });
	for (const key of ['t', '0', 'space', ...keys]) {
		if (typeof key === 'number') pass(key * 1000);
		else press(key);
	}
	return night.screen();
}

const toThird = ['d', 'space', 'd', 'space'];

/** The third song is on; Ash has a backup in hands and keeps it for the fourth, with a capo on. */
export const staying = () => pressed('broken', ...toThird, 'b', '1', 'enter');

/** The same with the capo on already. */
export const stayingDone = () => pressed('broken', ...toThird, 'b', '1', 'enter', 'd', 'enter');

/** What the next song names is out, and something else is retuned for it. */
export const substituted = () => pressed('quarry', 'f', '4', 'enter');

/** All that Ash could have for the next song is out. */
export const noBackup = () =>
	pressed(
		'broken',
		...toThird,
		...['s', '2', '3', '4', '1'].flatMap((slot) => ['f', slot, 'enter']),
	);

/** In a long interval, with strings and another tuning to put on first. */
export const longInterval = () => pressed('twenty', 'b', '1', 'enter', 'd');

/** Two sounds are gone, and the second break waits for its answer. */
export const secondBreak = () => atTheatre('b', '1', 'b', '8');

/** The song is over before any backup is in hands. */
export const playOn = () => atTheatre(210, 'b', '8', 'esc', 4);

/** A pedal does not switch, and a cue that wants it has come. */
export const pedalStuck = () => atTheatre(30, 'f', '0', '2', 'enter', 'space');

/** A player has another instrument in hands than the song wants. */
export const wrongInstrument = () => atTheatre(40, 'x', '2');

/** A pack that is on is suspect, and the next instrument's is the same. */
export const suspectPack = () => atTheatre(60, 'w', 'w', '-');

/** A jump by hand into a song for which four have nothing yet. */
export const allLate = () => atTheatre('right', 5, 'right', 5, 'right', 3);

function silent(...keys: readonly string[]): ScreenState {
	const { night, press } = pressedNight(loadShow(join(import.meta.dirname, '../rig/silent.yaml')));
	press('t', '0', 'enter', 'enter', 'space', ...keys);
	return night.screen();
}

/** What is heard of Bo is asked. */
export const faultAsked = () => silent('n', 'b');

/** Bo is silent in the middle of a song: what to do with the hands now. */
export const faultInSong = () => silent('n', 'b', 's');

/** The sound is back past the board, the song is over, and the cause is sought. */
export const faultAfterSong = () => silent('n', 'b', 's', '1', 'd', '2');

/** Ash was given what Bo was playing, and nothing else would do for Bo. */
export const takenAway = () => {
	const { night, press, pass } = pressedNight(
		showFrom(`
players: [{id: ash, name: Ash, key: h}, {id: bo, name: Bo, key: n}]
instruments:
  - {id: A1, name: Amber, slot: 1, kind: acoustic-6, tuning: E standard}
  - {id: B1, name: Basalt, slot: 2, kind: electric-6, tuning: E standard}
  - {id: C1, name: Coral, slot: 3, kind: acoustic-6, tuning: drop D, for: [bo]}
songs:
  - {id: one, title: One, length: "4:00", hands: {ash: {instrument: A1}, bo: {instrument: B1}}}
  - {id: two, title: Two, length: "4:00", hands: {ash: {instrument: A1}, bo: {instrument: C1}}}
set: [one, {song: two, gap: 60s}]
`),
	);
	press('t', '0', 'enter', 'space');
	pass(90_000);
	press('x', 'h', '2');
	return night.screen();
};
