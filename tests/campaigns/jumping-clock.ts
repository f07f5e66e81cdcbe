// A live night in a real terminal whose wall clock jumps back and forth, by libfaketime, while the machine's
// time since its start goes on as it is. Holds that records keep the order of the keys, that the show clock and
// the report go by the time that passed, that each jump is noted, and that a kill between two jumps changes none
// of it.

import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type PtyScreen, pause, startPtyScreen } from '../terminal/pty-screen.ts';
import { lookAtJournal } from '../whole-night/driver.ts';
import { fakeClock } from './fake-clock.ts';
import type { OwnFolder } from './own-folder.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** Two ticks, after each of which the program looks at its clocks. */
const NOTICED_MS = 2500;
/** What a busy machine may take to read a key; every jump is far longer. */
const LATE_MS = 10_000;
const PATIENCE_MS = 30_000;
const TYPED_APART_MS = 100;

/** Why no clock can be made to jump here; null when it can. */
export function whyNoJumps(): string | null {
	return fakeClock() === null ? 'there is no libfaketime on this machine' : null;
}

/** What one night with these jumps showed; `jumps`: by how many seconds the wall clock is off, one after the other. */
export async function nightWithJumps(
	own: OwnFolder,
	name: string,
	jumps: readonly number[],
): Promise<readonly string[]> {
	const night = new JumpingNight(own, name);
	try {
		await night.play(jumps);
	} catch (error) {
		night.faults.push(String(error).split('\n').slice(0, 30).join('\n'));
	} finally {
		await night.close();
	}
	return night.faults;
}

class JumpingNight {
	readonly faults: string[] = [];
	readonly #own: OwnFolder;
	readonly #data: string;
	readonly #offset: string;
	#screen: PtyScreen | null = null;
	/** When each memo was entered, in real milliseconds. */
	readonly #enteredMs: number[] = [];
	#songBeganMs = 0;

	constructor(own: OwnFolder, name: string) {
		this.#own = own;
		this.#data = own.below(name);
		this.#offset = own.below(`${name}.offset`);
		this.#jump(0);
	}

	async play(jumps: readonly number[]): Promise<void> {
		await this.#start();
		await this.#press('t', '0');
		await this.#press('space');
		this.#songBeganMs = performance.now();
		await this.#memo();
		for (const [place, seconds] of jumps.entries()) {
			this.#jump(seconds);
			// Noted by the program that runs, or passed over by the one that starts.
			if (place === Math.floor(jumps.length / 2)) await this.#killAndStart();
			await pause(NOTICED_MS);
			this.#lookAtSong(`after the jump to ${seconds} s`);
			await this.#memo();
		}
		await this.#press('q', 'enter');
		await this.#screen?.gone(PATIENCE_MS);
		this.#lookAtRecords(jumps);
		this.#lookAtReport();
	}

	async close(): Promise<void> {
		await this.#screen?.close();
	}

	/** How far the wall clock is off, as the library reads it anew at each look at a clock. */
	#jump(seconds: number): void {
		writeFileSync(this.#offset, `${seconds < 0 ? '' : '+'}${seconds}\n`);
	}

	async #start(): Promise<void> {
		this.#screen = startPtyScreen({
			command: process.execPath,
			args: ['dist/rackside.js', 'run', 'shows/club.yaml'],
			folder: root,
			env: {
				...this.#own.environment(),
				RACKSIDE_DATA: this.#data,
				LD_PRELOAD: fakeClock() ?? '',
				FAKETIME_TIMESTAMP_FILE: this.#offset,
				FAKETIME_NO_CACHE: '1',
				FAKETIME_DONT_FAKE_MONOTONIC: '1',
			},
		});
		await this.#screen.waitFor('? all', PATIENCE_MS);
	}

	async #killAndStart(): Promise<void> {
		this.#screen?.kill('SIGKILL');
		await this.#screen?.gone(PATIENCE_MS);
		await this.close();
		await this.#start();
	}

	/** Presses keys that make one record, and waits until the file has it. */
	async #press(...keys: readonly string[]): Promise<void> {
		const count = () => lookAtJournal(this.#data).records.length;
		const before = count();
		await this.#screen?.press(...keys);
		if (keys[0] === 'q') return;
		for (let tenth = 0; count() === before; tenth += 1) {
			if (tenth > PATIENCE_MS / 100) throw new Error(`${keys.join(' ')} made no record`);
			await pause(100);
		}
	}

	async #memo(): Promise<void> {
		const words = `memo${this.#enteredMs.length}`;
		for (const key of ['m', ...words]) {
			await this.#screen?.press(key);
			// Where the machine is busy they are read at once, and only what hands can have typed counts.
			await pause(TYPED_APART_MS);
		}
		this.#enteredMs.push(performance.now());
		await this.#screen?.press('enter');
		for (let tenth = 0; this.#memos().length < this.#enteredMs.length; tenth += 1) {
			if (tenth > PATIENCE_MS / 100) throw new Error(`${words} made no record`);
			await pause(100);
		}
	}

	#memos() {
		return lookAtJournal(this.#data).records.flatMap(({ e }) =>
			e.flatMap((entry) => (entry.k === 'memo-written' ? [entry] : [])),
		);
	}

	/** The show clock of the song, as the screen has it. */
	#lookAtSong(when: string): void {
		const row = this.#screen?.rows().find((one) => /^SONG /.test(one)) ?? '';
		const [, minutes = '', seconds = ''] = /(\d+):(\d\d) of \d+:\d\d/.exec(row) ?? [];
		const passedMs = performance.now() - this.#songBeganMs;
		const shownMs = (Number(minutes) * 60 + Number(seconds)) * 1000;
		if (minutes === '' || Math.abs(shownMs - passedMs) > LATE_MS)
			this.#tell(
				`${when} ${Math.round(passedMs / 1000)} s of the song passed, shown: ${row.trim()}`,
			);
	}

	#lookAtRecords(jumps: readonly number[]): void {
		const { records } = lookAtJournal(this.#data);
		const memos = this.#memos();
		const wanted = this.#enteredMs.map((_, number) => `memo${number}`);
		const found = memos.map(({ words }) => words);
		if (found.join() !== wanted.join()) this.#tell(`memos in the order ${found.join()}`);
		if (records.some(({ s, m, h }, at) => at > 0 && !follows({ s, m, h }, records[at - 1])))
			this.#tell('records are not in the order in which they were made');
		for (const [number, { at }] of memos.entries()) {
			const passed = (this.#enteredMs[number] ?? 0) - (this.#enteredMs[0] ?? 0);
			if (Math.abs(at - (memos[0]?.at ?? 0) - passed) > LATE_MS)
				this.#tell(`memo${number} is ${at - (memos[0]?.at ?? 0)} ms in, not ${passed}`);
		}
		const noted = records.flatMap(({ e }) =>
			e.flatMap((entry) => (entry.k === 'clock-set' ? [entry.bySeconds] : [])),
		);
		// The one that a kill hid is known from the next on.
		const by = jumps.map((seconds, place) => seconds - (jumps[place - 1] ?? 0));
		const expected = by.filter((_, place) => place !== Math.floor(jumps.length / 2));
		const isNoted = expected.every((one, at) => Math.abs(one - (noted[at] ?? 0)) <= 2);
		if (noted.length !== expected.length || !isNoted)
			this.#tell(`the clock was set by ${expected.join()} s, noted: ${noted.join()}`);
	}

	/** The report has every memo in its order, by the show clock as much apart as they were. */
	#lookAtReport(): void {
		const env = { ...process.env, ...this.#own.environment(), RACKSIDE_DATA: this.#data };
		const ran = spawnSync(process.execPath, ['dist/rackside.js', 'report', '--json'], {
			...{ cwd: root, env, encoding: 'utf8' },
		});
		const { memos }: ReportedMemos = JSON.parse(ran.stdout);
		const told = memos.map(({ words }) => words.replace(/^.* /, '')).join();
		if (told !== this.#enteredMs.map((_, number) => `memo${number}`).join())
			this.#tell(`the report has the memos ${told}`);
		for (const [number, { at }] of memos.entries()) {
			const passed = (this.#enteredMs[number] ?? 0) - this.#songBeganMs;
			const [hours = 0, minutes = 0, seconds = 0] = at.mark.split(':').map(Number);
			const toldMs = (hours * 3600 + minutes * 60 + seconds) * 1000;
			// Not a number is no time either.
			if (!(Math.abs(toldMs - passed) <= LATE_MS))
				this.#tell(`the report has memo${number} at ${at.mark}, not ${Math.round(passed)} ms in`);
		}
	}

	#tell(fault: string): void {
		this.faults.push(`${this.#data}: ${fault}`);
	}
}

type ReportedMemos = {
	readonly memos: readonly { readonly words: string; readonly at: { readonly mark: string } }[];
};

type Placed = { readonly s: number; readonly m: number; readonly h: readonly [number, number] };

function follows(one: Placed, before: Placed | undefined): boolean {
	if (!before) return true;
	const [ms, count] = one.h;
	const [msBefore, countBefore] = before.h;
	const isLater = ms > msBefore || (ms === msBefore && count > countBefore);
	return isLater && one.s > before.s && one.m >= before.m;
}
