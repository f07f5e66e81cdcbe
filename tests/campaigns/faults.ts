// The faults of a disk and of a machine, made by the system's own tools where it has them: every call that a
// night makes fails once and kills once, two fail in one night, the disk is full for a while, every byte is cut
// off and every bit flipped, the wall clock jumps in a live night. RACKSIDE_FAULTS says how many nights have two faults (100; 2,000 before a release),
// RACKSIDE_SEED which. Touches only folders that it made itself, and those of nights with a fault are kept.

import { spawnSync } from 'node:child_process';
import { readFileSync, readlinkSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { chance } from '../plan/oracle/chance.ts';
import { type Fault, nightWithFaults, whyNoInjection } from './injected-faults.ts';
import { nightWithJumps, whyNoJumps } from './jumping-clock.ts';
import { OwnFolder, removeWhenStopped } from './own-folder.ts';

/** What disks and systems answer at these calls: the manual pages of each in section 2. */
const failures: readonly Fault[] = [
	...['EIO', 'ENOSPC', 'EDQUOT'].map((code) => ({ call: 'write', how: `error=${code}` })),
	...['EIO', 'ENOSPC'].map((code) => ({ call: 'fdatasync', how: `error=${code}` })),
	{ call: 'fsync', how: 'error=EIO' },
	...['EMFILE', 'EACCES', 'EIO', 'ENOSPC'].map((code) => ({
		call: 'openat',
		how: `error=${code}`,
	})),
	...['EIO', 'ENOSPC'].map((code) => ({ call: 'rename', how: `error=${code}` })),
	...['EIO', 'ENOSPC'].map((code) => ({ call: 'mkdir', how: `error=${code}` })),
	{ call: 'ftruncate', how: 'error=EIO' },
	{ call: 'unlink', how: 'error=EIO' },
	{ call: 'read', how: 'error=EIO' },
	{ call: 'statx', how: 'error=EIO' },
	{ call: 'getdents64', how: 'error=EIO' },
	{ call: 'close', how: 'error=EIO' },
];
const kills: readonly Fault[] = [
	'write',
	'fdatasync',
	'fsync',
	'rename',
	'mkdir',
	'ftruncate',
	'unlink',
].map((call) => ({ call, how: 'signal=SIGKILL' }));

/** `left` says why a row could not be tried here. */
type Row = {
	readonly cases: number;
	readonly runs: number;
	readonly faults: readonly string[];
	readonly left?: string;
};

const nights = Number(process.env.RACKSIDE_FAULTS ?? 100);
const seed = Number(process.env.RACKSIDE_SEED ?? Date.now() % 1_000_000);
const root = fileURLToPath(new URL('../..', import.meta.url));
const own = new OwnFolder('faults');
removeWhenStopped(own);
const rows = new Map<string, Row>();

function leftOut(left: string): Row {
	return { cases: 0, runs: 0, faults: [], left };
}

/** A night for each number of such calls, until one is over before it comes to so many. */
function eachCall(fault: Fault): Row {
	const faults: string[] = [];
	let runs = 0;
	for (let at = 1; ; at += 1) {
		const name = `${fault.call}-${fault.how.split('=')[1]}-${at}`;
		const night = nightWithFaults(own, name, [{ ...fault, at }], 1 + (at % 5));
		runs += night.runs;
		faults.push(...night.faults);
		if (night.isReached) continue;
		// A row without a case would look as if all had gone well.
		return at === 1
			? leftOut('none of these nights makes such a call')
			: { cases: at - 1, runs, faults };
	}
}

function twoFaults(): Row {
	const by = chance(seed);
	const faults: string[] = [];
	let runs = 0;
	for (let number = 1; number <= nights; number += 1) {
		const first = { ...by.of(failures), at: 1 + by.below(8) };
		const others = failures.filter(({ call }) => call !== first.call);
		const second = { ...by.of(others), at: 1 + by.below(8) };
		const night = nightWithFaults(own, `two-${number}`, [first, second], 1 + by.below(5));
		runs += night.runs;
		faults.push(...night.faults.map((fault) => `${JSON.stringify([first, second])} ${fault}`));
	}
	return { cases: nights, runs, faults };
}

function smallDisk(rounds: number): Row {
	const program = fileURLToPath(new URL('small-disk.ts', import.meta.url));
	const here = process.platform === 'linux' ? readlinkSync('/proc/self/ns/mnt') : '';
	const alone = ['--mount', '--map-root-user'];
	const tried = spawnSync('unshare', [...alone, 'true'], { encoding: 'utf8' });
	if (tried.status !== 0) return leftOut('no disk can be mounted here for this program alone');
	const ran = spawnSync('unshare', [...alone, process.execPath, program, here, String(rounds)], {
		encoding: 'utf8',
	});
	const faults =
		ran.status === 0 ? JSON.parse(ran.stdout) : [`ended as ${ran.status}: ${ran.stderr}`];
	return { cases: rounds, runs: rounds, faults };
}

/** The tests that cut and flip, here with every bit instead of a seventh of them. */
function everyByteAndBit(): Row {
	const out = own.below('flips.json');
	const vitest = ['node_modules/vitest/vitest.mjs', 'run', '--config', '.ci/vitest.config.ts'];
	const said = ['--testTimeout', '600000', '--reporter=json', `--outputFile=${out}`];
	const ran = spawnSync(
		process.execPath,
		[...vitest, ...said, 'tests/journal/read-journal.test.ts'],
		{
			cwd: root,
			encoding: 'utf8',
			env: { ...process.env, RACKSIDE_ALL_FLIPS: '1' },
		},
	);
	const { numTotalTests: cases, numFailedTests: failed } = JSON.parse(readFileSync(out, 'utf8'));
	const isWell = ran.status === 0 && failed === 0;
	return { cases, runs: 1, faults: isWell ? [] : [`${failed} of ${cases} tests: see ${out}`] };
}

/** Hours back and forth, the hour of summer time, days, and the first second that a clock can say. */
async function jumpingClock(cases: number): Promise<Row> {
	const by = chance(seed);
	const faults: string[] = [];
	for (let number = 1; number <= cases; number += 1) {
		const by1970 = -Math.floor(Date.now() / 1000) + 1;
		const some = [7200, -7200, 3600, -3600, 86_400, -86_400 * 400, by1970, 0];
		const jumps = Array.from({ length: 6 }, (_, place) => some[by.below(some.length)] ?? place);
		const apart = jumps.filter((one, place) => one !== (jumps[place - 1] ?? 0));
		faults.push(...(await nightWithJumps(own, `jumps-${number}`, apart)));
	}
	return { cases, runs: 2 * cases, faults };
}

function tell(what: string, row: Row): void {
	rows.set(what, row);
	const { cases, runs, faults, left } = row;
	console.log(`${what}: ${left ?? `${cases} cases, ${runs} runs, ${faults.length} faults`}`);
	for (const fault of faults) console.log(`  ${own.path}: ${fault}`);
}

console.log(`seed ${seed}, ${nights} nights with two faults`);
const why = whyNoInjection();
for (const fault of [...failures, ...kills]) {
	tell(`${fault.call} ${fault.how.split('=')[1]}`, why ? leftOut(why) : eachCall(fault));
}
tell('two faults in one night', why ? leftOut(why) : twoFaults());
tell('disk full, then free', smallDisk(20));
tell('every byte cut, every bit flipped', everyByteAndBit());
const whyStill = whyNoJumps();
tell('wall clock jumps in a live night', whyStill ? leftOut(whyStill) : await jumpingClock(3));

const table = [...rows].map(([what, { cases, runs, faults, left }]) => [
	what,
	left === undefined ? { cases, runs, faults: faults.length } : { 'left out': left },
]);
console.table(Object.fromEntries(table));
const isWell = [...rows.values()].every(({ faults }) => faults.length === 0);
if (isWell) own.remove();
process.exitCode = isWell ? 0 : 1;
