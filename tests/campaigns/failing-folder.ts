// A night whose folder fails in its fourth song for ten minutes and comes back, as the live screen tells it:
// prints what was done, at what time of the show, and what stood in the row of where the night is kept. Fails
// when anything is missing from that folder afterwards. The folder is a disk of 1 MB in memory, in a namespace
// of its own that is gone with this program: Linux, with unshare(1), mount(8) and for the second way strace(1).
//   node failing-folder.ts full    others fill the disk (ENOSPC, by itself)
//   node failing-folder.ts broken  the disk refuses every write and confirmation (EIO, by strace)
// The clock of the show runs 30 times faster than the wall's, so each way takes half a minute.

import { execFileSync, spawn, spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync, readlinkSync, rmSync, statfsSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { nightOnDisk } from '../../src/cli/nights/night-on-disk.ts';
import { listNights } from '../../src/disk/nights-folder.ts';
import { realDisk } from '../../src/disk/real-disk.ts';
import { type PtyScreen, pause, startPtyScreen } from '../terminal/pty-screen.ts';
import { OwnFolder } from './own-folder.ts';

const SPEED = 30;
const TEN_MINUTES_MS = 600_000 / SPEED;
const PATIENCE_MS = 10_000;
/** The same key again within 300 ms counts once. */
const APART_MS = 400;
const TYPED_APART_MS = 100;
const MOST_STEPS = 60;
const STORAGE = /^(?:NOT SAFE|NOT SAVED|ELSEWHERE|STORAGE)/;
/** What stands there while all is well: a disk in memory is none that a restart leaves alone. */
const WELL = /^NOT SAFE +a restart of the machine empties .*small\/nights/;
const MEMOS = ['before', 'first minute', 'fifth minute', 'ninth minute', 'after'];

/** Makes the folder fail; gives back what ends that. */
type Way = (own: OwnFolder, pid: number) => Promise<() => Promise<void>>;

const WAYS: Readonly<Record<string, Way>> = {
	full: async (own) => {
		// Every block that is left, and what others free they fill again.
		const { bavail, bsize } = statfsSync(own.below('small'));
		writeFileSync(own.below('small', 'filler'), Buffer.alloc(Number(bavail) * Number(bsize)));
		return async () => rmSync(own.below('small', 'filler'));
	},
	broken: async (own, pid) => {
		const nights = own.below('small', 'nights');
		const paths = [nights, ...readdirSync(nights).map((name) => `${nights}/${name}`)];
		// Those of files that will be begun meanwhile.
		const [night = ''] = paths.filter((path) => path.endsWith('.journal'));
		const later = Array.from({ length: 40 }, (_, place) =>
			night.replace(/(?:\.\d+)?\.journal$/, `.${place + 2}.journal`),
		);
		const injected = ['write', 'fdatasync', 'fsync'].flatMap((call) => [
			'-e',
			`inject=${call}:error=EIO`,
		]);
		const tracer = spawn('strace', [
			...['-f', '-qq', '-o', '/dev/null', '-p', String(pid)],
			...[...paths, ...later].flatMap((path) => ['-P', path]),
			...['-e', 'trace=write,fdatasync,fsync', ...injected],
		]);
		await pause(500);
		return async () => {
			tracer.kill('SIGINT');
			await new Promise((done) => tracer.once('close', done));
		};
	},
};

class Told {
	readonly #screen: PtyScreen;

	constructor(screen: PtyScreen) {
		this.#screen = screen;
	}

	/** Presses the keys, waits a moment, and prints what the screen says. */
	async press(what: string, ...keys: readonly string[]): Promise<void> {
		await this.#screen.press(...keys);
		await pause(APART_MS);
		this.say(what);
	}

	/** What is said of where the night is kept; empty for nothing. */
	row(): string {
		return (
			this.#screen
				.rows()
				.find((one) => STORAGE.test(one))
				?.trimEnd() ?? ''
		);
	}

	say(what: string): void {
		const [, time = '--:--'] = / (\d\d:\d\d) *$/m.exec(this.#screen.text()) ?? [];
		console.log(`${time}  ${what}`);
		console.log(`       ${this.row() || 'nothing of where the night is kept'}`);
	}
}

function childrenOf(screen: PtyScreen): number {
	return screen.childPids()[0] ?? screen.pid;
}

async function night(own: OwnFolder, way: Way): Promise<string[]> {
	const spare = own.below('temporary');
	const data = own.below('small');
	const screen = startPtyScreen({
		command: 'sh',
		args: [
			'-c',
			`'${process.execPath}' dist/rackside.js rehearse shows/club.yaml --speed ${SPEED}; echo "code $?"; read -r _`,
		],
		env: { ...own.environment(), RACKSIDE_DATA: data, TMPDIR: spare },
		folder: fileURLToPath(new URL('../..', import.meta.url)),
	});
	const told = new Told(screen);
	const memo = async (words: string): Promise<void> => {
		for (const key of ['m', ...words]) {
			await screen.press(key);
			// Where the machine is busy they are read at once, and only what hands can have typed counts.
			await pause(TYPED_APART_MS);
		}
		await told.press(`memo "${words}"`, 'enter');
	};
	await screen.waitFor('? all', PATIENCE_MS);
	await told.press('everything on the rack is ready', 't', '0');
	for (const song of ['first', 'second', 'third']) {
		await told.press(`the ${song} song begins`, 'space');
		await told.press('and ends', 'd');
	}
	await told.press('the fourth song begins', 'space');
	await memo('before');
	const mend = await way(own, childrenOf(screen));
	told.say('FROM HERE ON THE FOLDER FAILS');
	await memo('first minute');
	// A full disk still takes what fits into the last block of a file (4 KB, tmpfs(5)).
	for (let step = 0; step < MOST_STEPS && WELL.test(told.row()); step += 1) {
		await told.press('an incident', 'i');
	}
	await pause(TEN_MINUTES_MS * 0.4);
	await memo('fifth minute');
	await told.press('the fourth song ends', 'd');
	await told.press('the fifth begins', 'space');
	await pause(TEN_MINUTES_MS * 0.4);
	await memo('ninth minute');
	await mend();
	told.say('THE FOLDER TAKES BYTES AGAIN');
	await screen.waitFor((rows) => rows.some((row) => WELL.test(row)), 60_000);
	told.say('it is back');
	await memo('after');
	await told.press('all warnings', '!');
	await told.press('back', 'esc');
	await told.press('left', 'q', 'enter');
	await screen.waitFor(/code \d+/, PATIENCE_MS);
	console.log(
		screen
			.rows()
			.filter((row) => row !== '')
			.join('\n'),
	);
	await screen.close();
	return missing(`${data}/nights`, spare);
}

/** What the folder lacks of the night, the other one left out of account. */
function missing(home: string, spare: string): string[] {
	const others = readdirSync(spare)
		.filter((name) => /^rackside-\d+-[0-9a-f]+$/.test(name))
		.map((name) => `${spare}/${name}`);
	const [listed] = listNights(realDisk, [home]).nights;
	if (!listed) return ['there is no night'];
	const alone = nightOnDisk([home], listed.id);
	const both = nightOnDisk([home, ...others], listed.id);
	const memos = alone.records.flatMap(({ e }) =>
		e.flatMap((entry) => (entry.k === 'memo-written' ? [entry.words] : [])),
	);
	console.log(
		`${alone.records.length} records in its own folder, ${both.records.length} in both; memos: ${memos.join(', ')}`,
	);
	return [
		...(alone.records.length === both.records.length
			? []
			: ['records are in the other folder only']),
		...(JSON.stringify(memos) === JSON.stringify(MEMOS)
			? []
			: ['a memo is missing, or there twice']),
		...alone.findings.map(({ code }) => `the night has ${code}`),
	];
}

const [, program = '', name = 'full', callers] = process.argv;
const way = WAYS[name];
if (!way) throw new RangeError(`the ways are ${Object.keys(WAYS).join(', ')}`);
if (callers === undefined) {
	const here = readlinkSync('/proc/self/ns/mnt');
	const alone = ['--mount', '--map-root-user', process.execPath, program, name, here];
	process.exitCode = spawnSync('unshare', alone, { stdio: 'inherit' }).status ?? 1;
} else {
	if (readlinkSync('/proc/self/ns/mnt') === callers) {
		throw new Error('started outside a namespace of its own: nothing is mounted');
	}
	const own = new OwnFolder('folder');
	for (const one of ['small', 'temporary']) mkdirSync(own.below(one), { mode: 0o700 });
	execFileSync('mount', [
		...['-t', 'tmpfs', '-o', 'size=1m,mode=700', 'rackside-small'],
		own.below('small'),
	]);
	const faults = await night(own, way);
	execFileSync('umount', [own.below('small')]);
	for (const fault of faults) console.log(`FAULT: ${fault}`);
	if (faults.length === 0) own.remove();
	process.exitCode = faults.length === 0 ? 0 : 1;
}
