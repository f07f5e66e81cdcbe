// A whole night of the club show in a real terminal, the program killed at fifty random moments: after
// each start it stands on the same song, cue, hands, boards and incidents, and nothing is lost.

import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { Entry } from '../../src/journal/entry.ts';
import type { JournalRecord } from '../../src/journal/record.ts';
import { playedSongs } from '../../src/night/night-state.ts';
import {
	gestureAt,
	KEY_APART_MS,
	lookAtJournal,
	mustShow,
	pause,
	startRun,
	wordsOf,
} from './driver.ts';

const KILLS = Number(process.env.NIGHT_KILLS ?? 50);
const SEED = Number(process.env.NIGHT_SEED ?? 7);

/** Chance that is the same every time (a linear congruential generator; constants from Numerical Recipes, from memory). */
function chance(seed: number): () => number {
	let state = seed >>> 0;
	return () => {
		state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
		return state / 2 ** 32;
	};
}

/** What people are told after a step stands in a record of its own. */
const stepsIn = (records: readonly JournalRecord<Entry>[]): number =>
	records.filter(({ e }) => e[0]?.k !== 'plan-told').length;

test(`the club show from start to end with ${KILLS} kills`, async () => {
	const data = mkdtempSync(join(tmpdir(), 'rackside-night-'));
	const roll = chance(SEED);
	let screen = startRun(data);
	let keys = 0;
	let kills = 0;
	let lastKey = '';
	try {
		await screen.waitFor('? all', 10_000);
		for (;;) {
			const before = lookAtJournal(data);
			const gesture = gestureAt(before);
			if (gesture === null) break;
			let isKilled = false;
			for (const key of gesture.keys) {
				await pause(key === lastKey ? KEY_APART_MS : 60);
				lastKey = key;
				await screen.press(key);
				keys += 1;
				if (kills < KILLS && roll() < 0.42) {
					await pause(Math.floor(roll() * 120));
					screen.kill('SIGKILL');
					await screen.exit;
					isKilled = true;
					break;
				}
			}
			if (!isKilled) {
				for (let tries = 0; tries < 100 && !gesture.isDone(lookAtJournal(data)); tries++)
					await pause(20);
				continue;
			}
			kills += 1;
			await screen.close();
			const killed = lookAtJournal(data);
			// What was there before the key is there still, and the key in hand at most once.
			expect(killed.records.slice(0, before.records.length)).toEqual(before.records);
			expect(stepsIn(killed.records)).toBeLessThanOrEqual(stepsIn(before.records) + 1);
			screen = startRun(data);
			await mustShow(screen, wordsOf(killed.session));
			expect(lookAtJournal(data).session).toEqual(killed.session);
			lastKey = '';
		}
		const { session, records } = lookAtJournal(data);
		expect(kills).toBe(KILLS);
		expect(keys).toBeGreaterThanOrEqual(120);
		expect(session.phase.value).toBe('over');
		expect(session.incidents.map(({ kind, isOpen }) => ({ kind, isOpen }))).toEqual([
			{ kind: 'string-break', isOpen: false },
			{ kind: 'string-break', isOpen: false },
		]);
		const played = playedSongs(session);
		expect(played.filter(({ state }) => state === 'played').length).toBeGreaterThanOrEqual(16);
		expect(
			played.some(
				({ song }) => session.show.songs.find(({ id }) => id === song)?.title === 'Old Mill',
			),
		).toBe(true);
		expect(records.map(({ s }) => s)).toEqual(records.map((_, index) => index + 1));
	} finally {
		await screen.close();
		rmSync(data, { recursive: true, force: true });
	}
}, 240_000);
