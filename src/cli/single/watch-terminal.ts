// The launcher of the program as one file: it starts itself once more, watches, and puts the terminal right when
// the program died without doing so itself. The same promise and signals as in launch.sh, which needs a shell.

import { spawn } from 'node:child_process';
import { constants } from 'node:os';
import { unblock } from '../../terminal/stall.ts';
import { RESET_FROM_OUTSIDE } from '../../terminal/terminal-modes.ts';
import { STOPPED_UNEXPECTEDLY } from '../../words/stopped.ts';
import { EXIT } from '../exit-code.ts';

/** A program that does not end by itself though it has done all that it could gets as long. */
const ANSWER_MS = 1000;
/** A terminal that is stalled holds up whoever writes to it. */
const WRITE_MS = 500;

const ENDING_SIGNALS = ['SIGHUP', 'SIGINT', 'SIGQUIT', 'SIGTERM'] as const;
/** On Windows a console tells all its programs by itself, and sending a signal there ends at once. */
const HANDS_ON = process.platform !== 'win32';

/** Starts the same program under this one, and ends as it ends; `alone` is called where none can be started. */
export function watchTerminal(argv: readonly string[], alone: () => void): void {
	let isUnanswered = false;
	let isGivenUp = false;
	let hasSaid = false;
	const child = spawn(process.execPath, argv, {
		stdio: 'inherit',
		env: { ...process.env, RACKSIDE_LAUNCHER: String(process.pid) },
	});
	child.on('error', alone);
	child.on('spawn', () => {
		for (const name of ENDING_SIGNALS) process.on(name, () => HANDS_ON && child.kill(name));
		// See launch.sh for what each of the two says.
		process.on('SIGUSR1', () => {
			isUnanswered = true;
			setTimeout(() => {
				isGivenUp = true;
				child.kill('SIGKILL');
				end(EXIT.notKept, true);
			}, ANSWER_MS);
		});
		process.on('SIGUSR2', () => {
			hasSaid = true;
		});
	});
	child.on('exit', (code, signal) => {
		if (isGivenUp) return;
		const number = signal === null ? (code ?? EXIT.bug) : 128 + constants.signals[signal];
		// Given up by its own hand: the disk has not answered.
		const isLate = isUnanswered && signal === 'SIGKILL';
		end(isLate ? EXIT.notKept : number, isLate || number > 128);
	});

	function end(code: number, isAbnormal: boolean): void {
		// Node itself puts back the settings that it found at its start, whenever it ends. On Windows nothing tells
		// a program that was ended from one that ended.
		if (hasSaid || !(isAbnormal || process.platform === 'win32')) process.exit(code);
		const { stdout, stderr } = process;
		unblock([stdout, stderr]);
		for (const stream of [stdout, stderr]) stream.on('error', () => process.exit(code));
		setTimeout(() => process.exit(code), WRITE_MS);
		const isExpected = code <= 3 || code === EXIT.bug || EXPECTED.has(code - 128);
		stdout.write(RESET_FROM_OUTSIDE, () =>
			stderr.write(isExpected ? '' : `${STOPPED_UNEXPECTEDLY}\n`, () => process.exit(code)),
		);
	}
}

/** Endings that need no word of ours: the program has one of its own, or was asked to go. */
const EXPECTED = new Set<number>(ENDING_SIGNALS.map((name) => constants.signals[name]));
