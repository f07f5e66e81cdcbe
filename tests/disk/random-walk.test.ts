// Nights at random: steps, pauses, disks that fail, fill up or hang, and every few steps the program
// killed or the power cut, several times in one night.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Effect, FaultDisk, settle } from './fault-disk.ts';
import { expectKept, KeptNight, nightsFolder, spareFolder } from './kept-night.ts';
import { stepsOf } from './night-steps.ts';

const runs = Number(process.env.RACKSIDE_RUNS ?? 200);
const folders = [nightsFolder, spareFolder];

type PlainMove = {
	readonly do: 'step' | 'settle' | 'hold' | 'release' | 'full' | 'home-full' | 'room' | 'small';
};
type Move =
	| PlainMove
	| { readonly do: 'wait'; readonly milliseconds: number }
	| { readonly do: 'fault'; readonly name: string; readonly code: string; readonly times: number }
	| { readonly do: 'short'; readonly bytes: number };

const move: fc.Arbitrary<Move> = fc.oneof(
	{ weight: 8, arbitrary: fc.constant({ do: 'step' } as const) },
	{ weight: 4, arbitrary: fc.constant({ do: 'settle' } as const) },
	fc.constantFrom<Move>(
		{ do: 'hold' },
		{ do: 'release' },
		{ do: 'full' },
		{ do: 'home-full' },
		{ do: 'room' },
		{ do: 'small' },
	),
	fc.record({ do: fc.constant('wait' as const), milliseconds: fc.nat(5000) }),
	fc.record({
		do: fc.constant('fault' as const),
		name: fc.constantFrom('write', 'sync', 'syncFolder', 'openNew', 'truncate', 'stat', 'statOpen'),
		code: fc.constantFrom('EIO', 'ENOSPC', 'EINTR', 'EFBIG', 'EROFS', 'EACCES'),
		times: fc.integer({ min: 1, max: 4 }),
	}),
	fc.record({ do: fc.constant('short' as const), bytes: fc.nat(200) }),
);

const stretch = fc.record({
	moves: fc.array(move, { maxLength: 40 }),
	end: fc.constantFrom('kill', 'power-cut'),
	chances: fc.array(fc.nat(1_000_000), { minLength: 1, maxLength: 20 }),
});

async function make(move: Move, disk: FaultDisk, night: KeptNight): Promise<void> {
	if (move.do === 'step') night.append();
	else if (move.do === 'settle') await settle();
	else if (move.do === 'hold') disk.isHoldingSyncs = true;
	else if (move.do === 'release') await disk.releaseSyncs();
	else if (move.do === 'full') disk.roomBytes = disk.usedBytes() + 100;
	else if (move.do === 'home-full') disk.effect = noRoomAtHome;
	else if (move.do === 'room') {
		disk.roomBytes = Number.POSITIVE_INFINITY;
		if (disk.effect === noRoomAtHome) disk.effect = () => null;
	} else if (move.do === 'small') disk.fileLimitBytes = 2000;
	else if (move.do === 'wait') night.tick(move.milliseconds);
	else if (move.do === 'short') disk.effect = times(1, 'write', { short: move.bytes });
	else if (move.do === 'fault') disk.effect = times(move.times, move.name, { fail: move.code });
}

/** A full disk: no byte more, but a name. */
const noRoomAtHome: FaultDisk['effect'] = ({ name, path }) =>
	name === 'write' && path.startsWith(nightsFolder) ? { fail: 'ENOSPC' } : null;

function times(count: number, name: string, effect: Effect): FaultDisk['effect'] {
	let left = count;
	return (call) => {
		if (call.name !== name || left === 0) return null;
		left -= 1;
		return effect;
	};
}

function chooser(chances: readonly number[]): (most: number) => number {
	let index = 0;
	return (most) => {
		index += 1;
		return (chances[index % chances.length] ?? 0) % (most + 1);
	};
}

/** The disk after a restart of the machine that empties the spare folder. */
function withoutSpare(disk: FaultDisk): FaultDisk {
	for (const path of disk.files()) if (path.startsWith(spareFolder)) disk.remove(path);
	return disk.afterKill();
}

const walk = fc.array(stretch, { minLength: 1, maxLength: 5 });

test('nothing shown as saved is ever lost, nothing is there twice, nothing is invented', async () => {
	await fc.assert(
		fc.asyncProperty(walk, fc.boolean(), async (stretches, isSpareWiped) => {
			let disk = new FaultDisk();
			let night = new KeptNight(disk, folders);
			if (isSpareWiped) night.wiped.add(spareFolder);
			const lost = new Set<number>();
			await night.create();
			for (const [index, { moves, end, chances }] of stretches.entries()) {
				for (const next of moves) await make(next, disk, night);
				const saved = night.savedSteps;
				const typed = night.steps;
				// Only what the system itself had been given outlives a kill.
				const isWritten = night.status === null || night.status.problem === null;
				expect(disk.closedTwice).toBe(0);
				disk.isKilled = true;
				disk = end === 'kill' ? disk.afterKill() : disk.afterPowerCut(chooser(chances));
				if (isSpareWiped && end === 'power-cut') disk = withoutSpare(disk);
				const next = new KeptNight(disk, folders);
				if (isSpareWiped) next.wiped.add(spareFolder);
				next.upMs = night.upMs;
				const opened = next.resume(`writer-${index + 2}`);
				expectKept(opened, { saved: end === 'kill' && isWritten ? typed : saved, typed, lost });
				const kept = new Set(stepsOf(opened.records()));
				for (let step = 1; step <= next.steps; step += 1) if (!kept.has(step)) lost.add(step);
				if (!opened.journal) {
					expect(saved).toBe(0);
					return;
				}
				night = next;
			}
			for (let second = 0; second < 600 && !night.status?.isSaved; second += 1) {
				night.tick(1000);
				await settle();
			}
			expect(night.journal?.status()).toMatchObject({ isSaved: true, problem: null });
			const last = new KeptNight(
				disk.afterPowerCut(() => 0),
				folders,
			);
			expectKept(last.resume('writer-9'), { saved: night.steps, typed: night.steps, lost });
		}),
		{ numRuns: runs },
	);
}, 600_000);
