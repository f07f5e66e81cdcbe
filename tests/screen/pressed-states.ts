// States of a night that went wrong, pressed through the real keys a second apart: what is drawn of them is
// what the plan says, not what somebody thought it would.

import { join } from 'node:path';
import type { ScreenState } from '../../src/screen/screen-state.ts';
import { pressedNight } from '../night/pressed-night.ts';
import { loadShow } from '../scenarios/load-show.ts';

function pressed(showName: string, ...keys: readonly string[]): ScreenState {
	const file = join(import.meta.dirname, '../scenarios/shows', `${showName}.yaml`);
	const { night, press } = pressedNight(loadShow(file));
	press('t', '0', 'space', ...keys);
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
