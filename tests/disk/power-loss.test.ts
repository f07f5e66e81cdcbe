// A few of the power cuts of `npm run campaign:power`: the calls of a real program, made again up to any of
// them on a disk that keeps only what it confirmed and any part of the rest.

import { mkdirSync } from 'node:fs';
import { expect, onTestFinished, test } from 'vitest';
import { whyNoInjection } from '../campaigns/injected-faults.ts';
import { OwnFolder } from '../campaigns/own-folder.ts';
import { NIGHTS, powerCuts } from '../campaigns/power-cuts.ts';

const why = whyNoInjection();
const SEED = 7;

function wanted(failing: (typeof NIGHTS)[number]) {
	const own = new OwnFolder('power');
	onTestFinished(() => own.remove());
	mkdirSync(own.below('night'));
	return { own, name: 'night', failing, steps: 8, count: 600, seed: SEED, isEachByte: false };
}

test.skipIf(why !== null).each(NIGHTS.filter((_, place) => place % 3 === 0))(
	`no step shown as saved is lost by a power cut in a night with %j${why ? ` (left out: ${why})` : ''}`,
	async (failing) => {
		const { calls, cuts, faults } = await powerCuts(wanted(failing));
		expect(faults).toEqual([]);
		expect(calls).toBeGreaterThan(50);
		expect(cuts).toBeGreaterThanOrEqual(600);
	},
	60_000,
);

test.skipIf(why !== null)(
	'on a disk whose word counts for nothing the same cuts find steps missing',
	async () => {
		const { faults } = await powerCuts({ ...wanted({}), isLying: true });
		expect(faults.join('\n')).toContain('shown as saved, without');
	},
	60_000,
);
