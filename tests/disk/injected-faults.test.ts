// A few of the faults of `npm run campaign:faults`, made by the system itself; and that a campaign can touch
// nothing but what it made.

import {
	mkdirSync,
	readFileSync,
	renameSync,
	rmdirSync,
	symlinkSync,
	writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, onTestFinished, test } from 'vitest';
import { nightWithFaults, whyNoInjection } from '../campaigns/injected-faults.ts';
import { OwnFolder } from '../campaigns/own-folder.ts';
import { scratchFolder } from './scratch-folder.ts';

const why = whyNoInjection();

describe(`calls of the system${why ? ` (left out: ${why})` : ''}`, () => {
	test.skipIf(why !== null).each([
		[
			'fail',
			[
				{ call: 'write', how: 'error=ENOSPC', at: 3 },
				{ call: 'fdatasync', how: 'error=EIO', at: 2 },
			],
		],
		['kill', [{ call: 'write', how: 'signal=SIGKILL', at: 12 }]],
	])(
		'that %s: nothing is lost or invented, the next start opens',
		(_, faults) => {
			const own = new OwnFolder('test');
			onTestFinished(() => own.remove());
			const night = nightWithFaults(own, 'night', faults, 1);
			expect(night.isReached).toBe(true);
			expect(night.faults).toEqual([]);
		},
		120_000,
	);
});

describe('the folder of a campaign', () => {
	test('gives out no path that leads out of it', () => {
		const own = new OwnFolder('test');
		onTestFinished(() => own.remove());
		const other = scratchFolder();
		writeFileSync(join(other, 'precious'), 'precious');
		symlinkSync(other, own.below('link'));
		for (const names of [
			['..'],
			['.'],
			['link'],
			['link', 'precious'],
			['link', 'new'],
			['..', 'new'],
		]) {
			expect(() => own.below(...names), names.join('/')).toThrow('is not below');
		}
		expect(own.below('new')).toBe(join(own.path, 'new'));
	});

	test('is not removed when another is in its place, nor is what a link in it leads to', () => {
		const own = new OwnFolder('test');
		const other = scratchFolder();
		writeFileSync(join(other, 'precious'), 'precious');
		symlinkSync(other, own.below('link'));
		renameSync(own.path, `${own.path}-moved`);
		mkdirSync(own.path);
		expect(() => own.remove()).toThrow('is not the folder that was made here');
		rmdirSync(own.path);
		renameSync(`${own.path}-moved`, own.path);
		own.remove();
		expect(readFileSync(join(other, 'precious'), 'utf8')).toBe('precious');
	});
});
