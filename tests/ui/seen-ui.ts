// The screen on a terminal that is only a stream: what the renderer writes is drawn by a screen
// emulator, so that its cells can be looked at.

import { PassThrough } from 'node:stream';
import xterm from '@xterm/headless';
import type { ColorDepth, ColourSet } from '../../src/base/colours.ts';
import type { Area } from '../../src/screen/row.ts';
import type { ScreenState } from '../../src/screen/screen-state.ts';
import { createPaintGate } from '../../src/terminal/stall.ts';
import { BEGIN_FRAME, ENTER_SCREEN, FIRST_CELL } from '../../src/terminal/terminal-modes.ts';
import { startUi } from '../../src/ui/start-ui.tsx';
import { styledScreen } from '../../src/ui/styled-screen.ts';
import { type SeenCell, seenCells } from './seen-cells.ts';

export type SeenUiOptions = {
	readonly state: ScreenState;
	readonly columns: number;
	readonly rows: number;
	readonly colours?: ColourSet;
	readonly colorDepth?: ColorDepth;
};

function emulator({ columns, rows }: Area): xterm.Terminal {
	return new xterm.Terminal({
		cols: columns,
		rows,
		allowProposedApi: true,
		// As a terminal's line discipline does with what programs write.
		convertEol: true,
	});
}

/** What the eye sees where this alone was written. */
export async function cellsAfter(text: string, size: Area): Promise<SeenCell[][]> {
	const terminal = emulator(size);
	await new Promise<void>((done) => terminal.write(text, done));
	return seenCells(terminal);
}

/** Starts the screen and gives back what the eye sees of it, and the ways to change it. */
export function startSeenUi(options: SeenUiOptions) {
	const { columns, rows, colours = 'dark', colorDepth = 24 } = options;
	const terminal = emulator(options);
	let written = '';
	let isStalled = false;
	let whenSent: (() => void) | undefined;
	const stdout = Object.assign(new PassThrough(), { columns, rows, isTTY: true });
	stdout.on('data', (bytes: Buffer) => {
		written += bytes.toString();
		terminal.write(bytes);
	});
	let state = options.state;
	const faults: unknown[] = [];
	const getScreen = () => ({ ...state, preferences: { colours, keys: {}, times: {} } });
	const rowsAt = (size: Area) => styledScreen(getScreen(), size, { isAscii: false, colorDepth });
	const shown = rowsAt(stdout);
	const firstPicture = ENTER_SCREEN + shown.join('\r\n') + FIRST_CELL;
	stdout.write(firstPicture);
	const { draw, redraw, unmount } = startUi({
		shown,
		rowsAt,
		onFault: (error) => faults.push(error),
		stdout: stdout as unknown as NodeJS.WriteStream,
		stdin: new PassThrough() as unknown as NodeJS.ReadStream,
	});
	const { offer } = createPaintGate({
		hasBacklog: () => isStalled,
		paint: draw,
		afterSending: (run) => {
			whenSent = run;
		},
	});
	return {
		unmount,
		redraw: () => {
			stdout.write(BEGIN_FRAME + ENTER_SCREEN);
			redraw();
		},
		faults,
		/** The rows as one text, without blanks at their ends. */
		seen: () => {
			const buffer = terminal.buffer.active;
			return Array.from({ length: terminal.rows }, (_, row) =>
				buffer
					.getLine(buffer.viewportY + row)!
					// The emulator keeps what a narrower terminal no longer shows.
					.translateToString(true, 0, terminal.cols)
					.trimEnd(),
			).join('\n');
		},
		cells: () => seenCells(terminal),
		written: () => written,
		/** What was written before the renderer began. */
		firstPicture,
		show: (next: ScreenState) => {
			state = next;
			offer();
		},
		change: (next: ScreenState) => {
			state = next;
		},
		stall: () => {
			isStalled = true;
		},
		readAgain: () => {
			isStalled = false;
			whenSent?.();
		},
		resize: (newColumns: number, newRows: number) => {
			terminal.resize(newColumns, newRows);
			Object.assign(stdout, { columns: newColumns, rows: newRows });
			stdout.emit('resize');
		},
	};
}
