// The program as it is delivered, from its bundle or through its launcher, in a terminal that a shell
// had before it and has again after it. What the shell finds and what the journal holds are looked at
// from outside.

import { existsSync, mkdtempSync, readFileSync, readlinkSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { afterEach } from 'vitest';
import { singleFile } from '../single/single-file.ts';
import {
	KEY_APART_MS,
	lookAtJournal,
	mustShow,
	type Seen,
	wordsOf,
} from '../whole-night/driver.ts';
import { type PtyScreen, type PtyScreenOptions, pause, startPtyScreen } from './pty-screen.ts';

const FOLDER = join(import.meta.dirname, '../..');

/** Another Node may be named for the program, as the oldest that will do. */
const NODE = process.env.PROGRAM_NODE ?? process.execPath;

/** Modes of a terminal that a shell has. */
export const MODES_OFF = {
	isAlternateScreen: false,
	isCursorHidden: false,
	isBracketedPaste: false,
	isSynchronized: false,
	isUnwrapped: false,
	isMouseOn: false,
	isFocusOn: false,
};

/** A machine that others hold busy may need many times what a start takes alone. */
export const PATIENCE_MS = 20_000;

/** How the program is started. */
export type ProgramOptions = Pick<PtyScreenOptions, 'env' | 'columns' | 'rows'> & {
	/** `node` runs the bundle, `launcher` what `npm start` and `npx` run, `single` the one file; `node` if left out. */
	readonly by?: 'node' | 'launcher' | 'single';
	/** The words after the program's name; the live screen of the club show if left out. */
	readonly words?: string;
	/** A folder for nights that is there already; a new one if left out. */
	readonly data?: string;
	/** A shell's line in which PROGRAM stands for the program. */
	readonly line?: string;
};

/** A started program with what is looked at from outside. */
export type Program = {
	readonly screen: PtyScreen;
	readonly data: string;
	/** Its home and its folder for traces. */
	readonly home: string;
	/** The process that runs the bundle; undefined before it is there and once it is gone. */
	readonly pid: () => number | undefined;
	readonly signal: (signal: NodeJS.Signals) => void;
	/** Waits until the process of the bundle is gone, its output read or not; gives back how long. */
	readonly gone: (timeoutMs?: number) => Promise<number>;
	/** Presses keys, and waits until each has changed the journal; gives back what it then says. */
	readonly record: (...keys: readonly string[]) => Promise<Seen>;
	/** What the shell printed and found after the program: exit code, and settings as before. */
	readonly afterwards: () => Promise<{ readonly code: number; readonly areSettingsKept: boolean }>;
};

const open: { readonly screen: PtyScreen; readonly pid: () => number | undefined }[] = [];
const folders: string[] = [];

/** Gives back a folder that is gone after the test. */
export function scratch(name = 'whole', under = tmpdir()): string {
	const folder = mkdtempSync(join(under, `rackside-${name}-`));
	folders.push(folder);
	return folder;
}

/** Ends what a test left running and removes its folders; to be called once in every file of tests. */
export function cleanUpAfterEach(): void {
	afterEach(async () => {
		for (const { screen, pid } of open.splice(0)) {
			const left = pid();
			if (left !== undefined) process.kill(left, 'SIGKILL');
			await screen.close();
		}
		for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
	});
}

/** Starts the program under a shell. */
export function startProgram(options: ProgramOptions = {}): Program {
	const {
		by = 'node',
		words = 'run shows/club.yaml',
		data = scratch(),
		line = 'PROGRAM',
	} = options;
	const notes = scratch('notes');
	const program = {
		node: () => `'${NODE}' dist/rackside.js`,
		launcher: () => 'dist/launch.sh',
		single: singleFile,
	}[by]();
	const middle = line.replaceAll('PROGRAM', `${program} ${words}`);
	const settings = (name: string) => `stty -g >'${notes}/${name}'`;
	// The pty library names the terminal as it likes, whatever its environment says.
	const kind = options.env && 'TERM' in options.env ? `TERM='${options.env.TERM}'; ` : '';
	const screen = startPtyScreen({
		command: 'sh',
		args: [
			'-c',
			`${kind}echo a shell; ${settings('before')}; ${middle}; code=$?; echo "code $code"; echo $code >'${notes}/code'; ${settings('after')}`,
		],
		env: { RACKSIDE_DATA: data, HOME: notes, TMPDIR: notes, ...options.env },
		folder: FOLDER,
		...(options.columns === undefined ? {} : { columns: options.columns }),
		...(options.rows === undefined ? {} : { rows: options.rows }),
	});
	let known: number | undefined;
	const pid = () => {
		known ??= bundleUnder(screen.pid);
		return known !== undefined && isBundle(known) ? known : undefined;
	};
	const started = { screen, pid };
	open.push(started);

	async function gone(timeoutMs = PATIENCE_MS): Promise<number> {
		const beganMs = performance.now();
		while (pid() !== undefined) {
			if (performance.now() - beganMs > timeoutMs)
				throw new Error(`still runs after ${timeoutMs} ms`);
			await pause(5);
		}
		return performance.now() - beganMs;
	}

	async function record(...keys: readonly string[]): Promise<Seen> {
		for (const [index, key] of keys.entries()) {
			if (key === keys[index - 1]) await pause(KEY_APART_MS);
			const before = lookAtJournal(data).records.length;
			await screen.press(...key.split(' '));
			await until(() => lookAtJournal(data).records.length > before, `${key} in the journal`);
		}
		return lookAtJournal(data);
	}

	async function afterwards() {
		await until(() => existsSync(join(notes, 'after')), 'the shell after the program');
		await screen.exit;
		const read = (name: string) => readFileSync(join(notes, name), 'utf8');
		return {
			code: Number(read('code')),
			areSettingsKept: read('before') === read('after') && read('before') !== '',
		};
	}

	return {
		...started,
		data,
		home: notes,
		signal: (signal) => {
			const there = pid();
			if (there === undefined) throw new Error(`${signal} came too late: the program is gone`);
			process.kill(there, signal);
		},
		gone,
		record,
		afterwards,
	};
}

/** Starts the program and waits for its live screen. */
export async function startLive(options: ProgramOptions = {}): Promise<Program> {
	const program = startProgram(options);
	await program.screen.waitFor('? all', PATIENCE_MS);
	return program;
}

/** Waits until something holds; says what was waited for if it never does. */
export async function until(holds: () => boolean, what: string): Promise<void> {
	const deadlineMs = performance.now() + PATIENCE_MS;
	while (!holds()) {
		if (performance.now() > deadlineMs) throw new Error(`never came: ${what}`);
		await pause(10);
	}
}

/** Starts the program anew on the same nights, and holds that it stands where `before` stood. */
export async function mustGoOn(data: string, before: Seen): Promise<void> {
	const found = lookAtJournal(data);
	if (found.records.length < before.records.length) throw new Error('records are lost');
	const next = await startLive({ data });
	await mustShow(next.screen, wordsOf(before.session));
	await until(
		() => lookAtJournal(data).records.at(-1)?.e[0]?.k === 'resumed',
		'the note of resuming',
	);
}

function bundleUnder(pid: number): number | undefined {
	if (isBundle(pid)) return pid;
	for (const child of childrenOf(pid)) {
		const found = bundleUnder(child);
		if (found !== undefined) return found;
	}
	return undefined;
}

function childrenOf(pid: number): number[] {
	try {
		const text = readFileSync(`/proc/${pid}/task/${pid}/children`, 'utf8');
		return text.split(' ').filter(Boolean).map(Number);
	} catch {
		return [];
	}
}

function isBundle(pid: number): boolean {
	try {
		// A process that has ended and was not waited for yet has no command line.
		const [, ...args] = readFileSync(`/proc/${pid}/cmdline`, 'utf8').split('\0');
		if (args.some((word) => word.endsWith('dist/rackside.js'))) return true;
		// The one file watches, and is watched, under one name.
		const isSingle = basename(readlinkSync(`/proc/${pid}/exe`)).startsWith('rackside-');
		return isSingle && readFileSync(`/proc/${pid}/environ`, 'utf8').includes('RACKSIDE_LAUNCHER=');
	} catch {
		return false;
	}
}
