// A program that keeps a night on the real disk is killed at random moments, fifty times by default.

import { expect, test } from 'vitest';
import { killRounds } from '../campaigns/kill-rounds.ts';
import { scratchFolder } from './scratch-folder.ts';

const count = Number(process.env.RACKSIDE_KILLS ?? 50);

test('no step that was made is lost by a kill', async () => {
	const folder = scratchFolder();
	const result = await killRounds({ folder: () => folder, count, chance: Math.random });
	expect(result.faults).toEqual([]);
	expect(result.steps).toBeGreaterThan(count);
}, 600_000);
