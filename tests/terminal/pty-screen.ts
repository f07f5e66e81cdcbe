// A program in a real pseudo-terminal, and what the eye would see of it: its output goes through a
// screen emulator, its keys come as bytes, its end is its exit code. For every test of the whole
// program or of a small named one under programs/.

import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { spawn } from '@lydell/node-pty';
import xterm from '@xterm/headless';
import stringWidth from 'string-width';

/** How the program is started. */
export type PtyScreenOptions = {
	readonly command: string;
	readonly args?: readonly string[];
	/** Added to a small fixed environment; `undefined` takes a variable away. */
	readonly env?: Readonly<Record<string, string | undefined>>;
	readonly folder?: string;
	readonly columns?: number;
	readonly rows?: number;
};

/** One cell as it is seen. */
export type SeenCell = {
	readonly text: string;
	readonly isBold: boolean;
	readonly isDim: boolean;
	readonly isInverse: boolean;
	/** Palette number or RGB value; -1 for the terminal's own colour. */
	readonly foreground: number;
	readonly background: number;
};

/** Modes as the terminal has them now. */
export type SeenModes = {
	readonly isAlternateScreen: boolean;
	readonly isCursorHidden: boolean;
	readonly isBracketedPaste: boolean;
	readonly isSynchronized: boolean;
	/** Whether rows do not go on in the next one. */
	readonly isUnwrapped: boolean;
	readonly isMouseOn: boolean;
	readonly isFocusOn: boolean;
};

/** How the program ended: `signal` is its number, or 0. */
export type SeenExit = { readonly code: number; readonly signal: number };

/** What `waitFor` takes: words that must stand on the screen, or a question about its rows. */
export type Awaited = string | RegExp | ((rows: readonly string[]) => boolean);

const NAMED_BYTES: Readonly<Record<string, string>> = {
	space: ' ',
	enter: '\r',
	esc: '\u001B',
	tab: '\t',
	backspace: '\u007F',
	delete: '\u001B[3~',
	up: '\u001B[A',
	down: '\u001B[B',
	right: '\u001B[C',
	left: '\u001B[D',
	pageup: '\u001B[5~',
	pagedown: '\u001B[6~',
	home: '\u001B[H',
	end: '\u001B[F',
	f1: '\u001BOP',
	'ctrl-c': '\u0003',
	'ctrl-z': '\u001A',
};

/**
 * Widths as terminals have them that look at code points one by one, with today's tables; the
 * emulator's own are those of Unicode 6. The packed value is xterm.js's: bit 0 joins, bits 1 and 2 are
 * the width.
 */
export const ONE_BY_ONE = {
	version: 'one by one',
	wcwidth: (codePoint: number): 0 | 1 | 2 =>
		stringWidth(String.fromCodePoint(codePoint)) as 0 | 1 | 2,
	charProperties: (codePoint: number, preceding: number): number => {
		const own = ONE_BY_ONE.wcwidth(codePoint);
		const before = (preceding >> 1) & 3;
		const isJoined = own === 0 && before > 0;
		return ((isJoined ? before : own) << 1) | (isJoined ? 1 : 0);
	},
};

const KEY_GAP_MS = 40;
const AFTER_ESC_MS = 130;
const POLL_MS = 10;

/** The program's terminal. */
export type PtyScreen = {
	readonly pid: number;
	/** The screen's rows, without blanks at their ends; always as many as the screen is high. */
	readonly rows: () => string[];
	/** The rows as one text. */
	readonly text: () => string;
	readonly cell: (column: number, row: number) => SeenCell;
	readonly cursor: () => { readonly column: number; readonly row: number };
	readonly modes: () => SeenModes;
	/** All that was written so far. */
	readonly rawOutput: () => string;
	/** Waits until it is on the screen, and gives back the rows; says what stood there if not. */
	readonly waitFor: (awaited: Awaited, timeoutMs?: number) => Promise<string[]>;
	/** Presses keys one after another as hands would: named ones, or a grapheme as it is. */
	readonly press: (...keys: readonly string[]) => Promise<void>;
	/** Sends bytes in one write, as a paste, a script or a slow link would. */
	readonly send: (bytes: string | Uint8Array) => void;
	readonly resize: (columns: number, rows: number) => void;
	readonly kill: (signal: NodeJS.Signals) => void;
	/** Stops, or goes on, reading what the program writes: a stalled terminal. */
	readonly stall: () => void;
	readonly unstall: () => void;
	/** Closes the terminal's window: the program hangs in the air. */
	readonly hangUp: () => void;
	/** Runs `stty` on the terminal from outside, and gives back what it prints. */
	readonly stty: (...args: readonly string[]) => string;
	/** Writes to the terminal as another program would that has it meanwhile. */
	readonly writeFromOutside: (text: string) => void;
	/** The processes that the started one has started in turn, oldest first. */
	readonly childPids: () => number[];
	/** Settled once the program has ended and all of its output has been drawn. */
	readonly exit: Promise<SeenExit>;
	readonly hasExited: () => boolean;
	/** Waits until the process is gone, though its output may not be read; gives back how long. */
	readonly gone: (timeoutMs?: number) => Promise<number>;
	/** Ends the program, if it still runs, and frees the terminal. For `afterEach`. */
	readonly close: () => Promise<void>;
};

/** Starts the program. */
export function startPtyScreen(options: PtyScreenOptions): PtyScreen {
	const { command, args = [], env = {}, folder = process.cwd(), columns = 80, rows = 24 } = options;
	const terminal = new xterm.Terminal({
		cols: Math.max(columns, 1),
		rows: Math.max(rows, 1),
		scrollback: 200,
		allowProposedApi: true,
	});
	terminal.unicode.register(ONE_BY_ONE);
	terminal.unicode.activeVersion = ONE_BY_ONE.version;
	const pty = spawn(command, [...args], {
		name: 'xterm-256color',
		cols: columns,
		rows,
		cwd: folder,
		env: withoutUndefined({
			PATH: process.env.PATH,
			HOME: process.env.HOME,
			TERM: 'xterm-256color',
			LANG: 'C.UTF-8',
			...env,
		}),
		encoding: null,
	});
	const output: Buffer[] = [];
	let unwritten = 0;
	let ended: SeenExit | undefined;
	let isCursorHidden = false;
	for (const [final, isHidden] of [
		['h', false],
		['l', true],
	] as const) {
		terminal.parser.registerCsiHandler({ prefix: '?', final }, (parameters) => {
			isCursorHidden = parameters.includes(25) ? isHidden : isCursorHidden;
			return false;
		});
	}
	pty.onData((data: unknown) => {
		const bytes = Buffer.from(data as Uint8Array);
		output.push(bytes);
		unwritten += 1;
		terminal.write(bytes, () => {
			unwritten -= 1;
		});
	});
	const exit = new Promise<SeenExit>((resolve) => {
		pty.onExit(async ({ exitCode, signal }) => {
			// The last output may come a moment after the news of the end.
			await pause(POLL_MS);
			while (unwritten > 0) {
				await pause(1);
			}
			ended = { code: exitCode, signal: signal ?? 0 };
			resolve(ended);
		});
	});

	function seenRows(): string[] {
		const buffer = terminal.buffer.active;
		return Array.from({ length: terminal.rows }, (_, row) => {
			const line = buffer.getLine(buffer.viewportY + row);
			return line === undefined ? '' : line.translateToString(true);
		});
	}

	function cell(column: number, row: number): SeenCell {
		const buffer = terminal.buffer.active;
		const found = buffer.getLine(buffer.viewportY + row)?.getCell(column);
		if (found === undefined) {
			throw new Error(`there is no cell at column ${column}, row ${row}`);
		}
		return {
			text: found.getChars(),
			isBold: found.isBold() !== 0,
			isDim: found.isDim() !== 0,
			isInverse: found.isInverse() !== 0,
			foreground: found.isFgDefault() ? -1 : found.getFgColor(),
			background: found.isBgDefault() ? -1 : found.getBgColor(),
		};
	}

	function modes(): SeenModes {
		return {
			isAlternateScreen: terminal.buffer.active.type === 'alternate',
			isCursorHidden,
			isBracketedPaste: terminal.modes.bracketedPasteMode,
			isSynchronized: terminal.modes.synchronizedOutputMode,
			isUnwrapped: !terminal.modes.wraparoundMode,
			isMouseOn: terminal.modes.mouseTrackingMode !== 'none',
			isFocusOn: terminal.modes.sendFocusMode,
		};
	}

	async function waitFor(awaited: Awaited, timeoutMs = 5000): Promise<string[]> {
		const deadline = performance.now() + timeoutMs;
		for (;;) {
			const seen = seenRows();
			if (unwritten === 0 && isSeen(awaited, seen)) {
				return seen;
			}
			if (performance.now() > deadline) {
				const end = ended === undefined ? 'still runs' : `ended with ${JSON.stringify(ended)}`;
				throw new Error(
					`not seen within ${timeoutMs} ms: ${String(awaited)}\nThe program ${end}. Screen:\n${seen.join('\n')}`,
				);
			}
			await pause(POLL_MS);
		}
	}

	async function press(...keys: readonly string[]): Promise<void> {
		for (const key of keys) {
			pty.write(NAMED_BYTES[key] ?? key);
			await pause(key === 'esc' ? AFTER_ESC_MS : KEY_GAP_MS);
		}
	}

	async function close(): Promise<void> {
		if (ended === undefined) {
			sendSignal(pty.pid, 'SIGKILL');
			pty.resume();
			await Promise.race([exit, pause(2000)]);
		}
		terminal.dispose();
	}

	return {
		pid: pty.pid,
		rows: seenRows,
		text: () => seenRows().join('\n'),
		cell,
		cursor: () => ({ column: terminal.buffer.active.cursorX, row: terminal.buffer.active.cursorY }),
		modes,
		rawOutput: () => Buffer.concat(output).toString('utf8'),
		waitFor,
		press,
		// The pty library hands bytes through as they are, whatever its types say.
		send: (bytes) => pty.write((typeof bytes === 'string' ? bytes : Buffer.from(bytes)) as string),
		resize: (newColumns, newRows) => {
			pty.resize(newColumns, newRows);
			terminal.resize(Math.max(newColumns, 1), Math.max(newRows, 1));
		},
		kill: (signal) => sendSignal(pty.pid, signal),
		stall: () => pty.pause(),
		unstall: () => pty.resume(),
		hangUp: () => (pty as unknown as { destroy: () => void }).destroy(),
		stty: (...sttyArgs) =>
			execFileSync('stty', ['-F', slaveOf(pty), ...sttyArgs], { encoding: 'utf8' }),
		writeFromOutside: (text) => writeFileSync(slaveOf(pty), text),
		childPids: () =>
			readFileSync(`/proc/${pty.pid}/task/${pty.pid}/children`, 'utf8')
				.split(' ')
				.filter(Boolean)
				.map(Number),
		exit,
		hasExited: () => ended !== undefined,
		gone: (timeoutMs = 5000) => untilGone(pty.pid, timeoutMs),
		close,
	};
}

/** Waits in real time: a real terminal has no other. */
export function pause(milliseconds: number): Promise<void> {
	return new Promise((resolve) => {
		setTimeout(resolve, milliseconds);
	});
}

async function untilGone(pid: number, timeoutMs: number): Promise<number> {
	const beganMs = performance.now();
	while (isAlive(pid)) {
		if (performance.now() - beganMs > timeoutMs) {
			throw new Error(`process ${pid} still runs after ${timeoutMs} ms`);
		}
		await pause(POLL_MS);
	}
	return performance.now() - beganMs;
}

function isAlive(pid: number): boolean {
	try {
		process.kill(pid, 0);
		return true;
	} catch {
		return false;
	}
}

function isSeen(awaited: Awaited, rows: readonly string[]): boolean {
	if (typeof awaited === 'function') {
		return awaited(rows);
	}
	const text = rows.join('\n');
	return typeof awaited === 'string' ? text.includes(awaited) : awaited.test(text);
}

function sendSignal(pid: number, signal: NodeJS.Signals): void {
	try {
		process.kill(pid, signal);
	} catch (error) {
		if ((error as NodeJS.ErrnoException).code !== 'ESRCH') {
			throw error;
		}
	}
}

/** The pty library keeps the name of the terminal's device to itself. */
function slaveOf(pty: object): string {
	return (pty as { readonly ptsName: string }).ptsName;
}

function withoutUndefined(
	env: Readonly<Record<string, string | undefined>>,
): Record<string, string> {
	return Object.fromEntries(
		Object.entries(env).filter((entry): entry is [string, string] => entry[1] !== undefined),
	);
}
