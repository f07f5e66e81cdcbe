// The first walk and a drill as they are delivered: shown, left, and nothing of their nights kept.

import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { pause } from './pty-screen.ts';
import {
	cleanUpAfterEach,
	MODES_OFF,
	PATIENCE_MS,
	scratch,
	startProgram,
} from './whole-program.ts';

cleanUpAfterEach();

test('the first walk is left by esc twice, and leaves nothing behind', async () => {
	const data = scratch();
	const { screen, afterwards } = startProgram({ words: 'walk', data });
	await screen.waitFor(/^1\/8/m, PATIENCE_MS);
	await screen.press('space');
	await screen.waitFor('enter: go on', PATIENCE_MS);
	await pause(1000);
	await screen.press('enter');
	await screen.waitFor(/^2\/8/m, PATIENCE_MS);
	await screen.press('esc');
	await pause(400);
	await screen.press('esc');
	await screen.waitFor('You left the walk', PATIENCE_MS);
	expect(await afterwards()).toEqual({ code: 0, areSettingsKept: true });
	expect(screen.modes()).toMatchObject(MODES_OFF);
	expect(readdirSync(data)).toEqual([]);
});

test('a drill keeps how fast one was, and no night', async () => {
	const data = scratch();
	const words = 'drill shows/festival.yaml --seed 3 --moments 1 --name Robin';
	const { screen, afterwards } = startProgram({ words, data });
	await screen.waitFor(/^1\/1/m, PATIENCE_MS);
	await screen.waitFor('of 0:30', PATIENCE_MS);
	await screen.waitFor('Missed. Right:', 40_000);
	await pause(1000);
	await screen.press('enter');
	await screen.waitFor('--seed 3', PATIENCE_MS);
	expect(await afterwards()).toEqual({ code: 0, areSettingsKept: true });
	expect(existsSync(join(data, 'nights'))).toBe(false);
	const kept = JSON.parse(readFileSync(join(data, 'drills.json'), 'utf8'));
	expect(kept.who).toBe('Robin');
	expect(Object.values(kept.people.Robin)).toEqual([
		{ best: null, last: null, answered: 0, missed: 1 },
	]);
}, 90_000);
