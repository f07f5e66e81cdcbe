// The screen on a terminal that is only a stream: what the renderer writes is drawn by a screen
// emulator, so that its cells can be looked at.

import { PassThrough } from 'node:stream';
import xterm from '@xterm/headless';
import type { ColorDepth, LookName } from '../../src/base/colors.ts';
import type { Area } from '../../src/screen/row.ts';
import type { ScreenState } from '../../src/screen/screen-state.ts';
import { createPaintGate } from '../../src/terminal/stall.ts';
import { createFramePainter } from '../../src/ui/frame-painter.ts';
import { startUi } from '../../src/ui/start-ui.tsx';
import { styledScreen } from '../../src/ui/styled-screen.ts';
import { seenCells } from './seen-cells.ts';

export type SeenUiOptions = {
	readonly state: ScreenState;
	readonly columns: number;
	readonly rows: number;
	readonly look?: LookName;
	readonly colorDepth?: ColorDepth;
	/** Whether the screen was shown already when the renderer begins. */
	readonly hasFirstPicture?: boolean;
};

/** Starts the screen and gives back what the eye sees of it, and the ways to change it. */
export function startSeenUi(options: SeenUiOptions) {
	const { columns, rows, look = 'dark', colorDepth = 24 } = options;
	const terminal = new xterm.Terminal({
		cols: columns,
		rows,
		allowProposedApi: true,
		// As a terminal's line discipline does with what programs write.
		convertEol: true,
	});
	let written = '';
	let isStalled = false;
	let whenSent: (() => void) | undefined;
	const stdout = Object.assign(new PassThrough(), { columns, rows, isTTY: true });
	stdout.on('data', (bytes: Buffer) => {
		written += bytes.toString();
		terminal.write(bytes);
	});
	let state = options.state;
	let offer: (() => void) | undefined;
	const faults: unknown[] = [];
	const painter = createFramePainter(stdout);
	const getScreen = () => ({ ...state, preferences: { looks: look, keys: {}, times: {} } });
	const rowsAt = (size: Area) => styledScreen(getScreen(), size, { isAscii: false, colorDepth });
	if (options.hasFirstPicture) painter.paint(rowsAt(stdout).join('\n'));
	const unmount = startUi({
		rowsAt,
		subscribe: (paint) => {
			offer = createPaintGate({
				hasBacklog: () => isStalled,
				paint,
				afterSending: (run) => {
					whenSent = run;
				},
			}).offer;
			return () => {};
		},
		onFault: (error) => faults.push(error),
		stdout: stdout as unknown as NodeJS.WriteStream,
		painter,
		stdin: new PassThrough() as unknown as NodeJS.ReadStream,
	});
	return {
		unmount,
		painter,
		faults,
		/** The rows as one text, without blanks at their ends. */
		seen: () => {
			const buffer = terminal.buffer.active;
			return Array.from({ length: terminal.rows }, (_, row) =>
				buffer
					.getLine(buffer.viewportY + row)!
					.translateToString(true)
					.trimEnd(),
			).join('\n');
		},
		cells: () => seenCells(terminal),
		written: () => written,
		show: (next: ScreenState) => {
			state = next;
			offer?.();
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
