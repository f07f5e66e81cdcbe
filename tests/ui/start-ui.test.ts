// The screen on a terminal that is only a stream: what the renderer writes is drawn by a screen
// emulator, and compared with what was to be shown.

import { Console } from 'node:console';
import { PassThrough } from 'node:stream';
import xterm from '@xterm/headless';
import { afterEach, expect, test } from 'vitest';
import { type ColorDepth, LOOK_NAMES, type LookName } from '../../src/base/colors.ts';
import { drawScreen } from '../../src/screen/draw-screen.ts';
import { LOOKS } from '../../src/screen/looks.ts';
import { screenText } from '../../src/screen/row.ts';
import type { ScreenState } from '../../src/screen/screen-state.ts';
import { createPaintGate } from '../../src/terminal/stall.ts';
import { startUi, type Ui } from '../../src/ui/start-ui.tsx';
import { afterABreak, middleOfASong } from '../screen/states.ts';

// The test runner's console lacks the constructor that the renderer uses.
Object.assign(console, { Console });

let ui: Ui | undefined;
const faults: unknown[] = [];
afterEach(() => {
	faults.length = 0;
	ui?.unmount();
	ui = undefined;
});

type Size = { readonly columns: number; readonly rows: number };
type Colors = { readonly look?: LookName; readonly colorDepth?: ColorDepth };

function start(size: Size, { look = 'dark', colorDepth = 24 }: Colors = {}) {
	const terminal = new xterm.Terminal({
		cols: size.columns,
		rows: size.rows,
		allowProposedApi: true,
		// As a terminal's line discipline does with what programs write.
		convertEol: true,
	});
	let written = '';
	let isStalled = false;
	let whenSent: (() => void) | undefined;
	const stdout = Object.assign(new PassThrough(), { ...size, isTTY: true });
	stdout.on('data', (bytes: Buffer) => {
		written += bytes.toString();
		terminal.write(bytes);
	});
	let state: ScreenState = middleOfASong();
	let isDrawnUpTo: (() => void) | undefined;
	ui = startUi({
		getScreen: () => state,
		subscribe: (paint) => {
			isDrawnUpTo = createPaintGate({
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
		stdin: new PassThrough() as unknown as NodeJS.ReadStream,
		options: { isAscii: false, look, colorDepth },
	});
	return {
		stdout,
		seen: () => {
			const buffer = terminal.buffer.active;
			return Array.from({ length: terminal.rows }, (_, row) =>
				buffer
					.getLine(buffer.viewportY + row)!
					.translateToString(true)
					.trimEnd(),
			).join('\n');
		},
		written: () => written,
		colorAt: (x: number, y: number) => {
			const cell = terminal.buffer.active.getLine(y)!.getCell(x)!;
			return cell.isFgRGB() ? `#${cell.getFgColor().toString(16).padStart(6, '0')}` : null;
		},
		show: (next: ScreenState) => {
			state = next;
			isDrawnUpTo?.();
		},
		stall: () => {
			isStalled = true;
		},
		readAgain: () => {
			isStalled = false;
			whenSent?.();
		},
		resize: (columns: number, rows: number) => {
			terminal.resize(columns, rows);
			Object.assign(stdout, { columns, rows });
			stdout.emit('resize');
		},
	};
}

const wanted = (state: ScreenState, columns: number, rows: number) =>
	screenText(drawScreen(state, { columns, rows }, { isAscii: false }));

test('what is drawn is what the terminal shows, at first, after a change and after a resize', async () => {
	const { seen, show, resize } = start({ columns: 80, rows: 24 });
	await expect.poll(seen).toBe(wanted(middleOfASong(), 80, 24));
	show(afterABreak());
	await expect.poll(seen).toBe(wanted(afterABreak(), 80, 24));
	resize(120, 40);
	await expect.poll(seen).toBe(wanted(afterABreak(), 120, 40));
	resize(30, 5);
	await expect.poll(seen).toBe(wanted(afterABreak(), 30, 5));
});

test('a stalled terminal gets nothing, and the newest once it reads again', async () => {
	const { seen, show, stall, readAgain, written } = start({ columns: 80, rows: 24 });
	await expect.poll(seen).toBe(wanted(middleOfASong(), 80, 24));
	stall();
	const before = written();
	show({ ...middleOfASong(), message: 'held' });
	show(afterABreak());
	await new Promise((resolve) => setTimeout(resolve, 100));
	expect(written()).toBe(before);
	readAgain();
	await expect.poll(seen).toBe(wanted(afterABreak(), 80, 24));
});

// ESC[…m is how a style is set (ECMA-48, SGR).
const hasStyles = (written: string) =>
	written.split('\u001B[').some((one) => /^[1-9][\d;]*m/.test(one));

test.each([
	['dark', 24, true],
	['dark', 1, false],
	['none', 24, false],
] as const)(
	'the look %s on a terminal of %s bits writes styles: %s',
	async (look, colorDepth, has) => {
		const { seen, written } = start({ columns: 80, rows: 24 }, { look, colorDepth });
		await expect.poll(seen).toBe(wanted(middleOfASong(), 80, 24));
		expect(hasStyles(written())).toBe(has);
	},
);

test.each(LOOK_NAMES.slice(0, 3))('each cell has the color of its style: %s', async (look) => {
	const { seen, colorAt, show } = start({ columns: 80, rows: 24 }, { look });
	show(afterABreak());
	await expect.poll(seen).toBe(wanted(afterABreak(), 80, 24));
	const rows = drawScreen(afterABreak(), { columns: 80, rows: 24 }, { isAscii: false });
	for (const [y, row] of rows.entries()) {
		let x = 0;
		for (const { text, style } of row) {
			for (const letter of text) {
				if (letter !== ' ') expect([x, y, colorAt(x, y)]).toEqual([x, y, LOOKS[look]?.[style].rgb]);
				x += 1;
			}
		}
	}
});

test('one changed cell costs less than a twentieth of a whole screen', async () => {
	const { seen, show, written } = start({ columns: 120, rows: 40 });
	await expect.poll(seen).toBe(wanted(middleOfASong(), 120, 40));
	const whole = Buffer.byteLength(written());
	const later = { ...middleOfASong(), message: 'x' };
	show(later);
	await expect.poll(seen).toBe(wanted(later, 120, 40));
	expect(Buffer.byteLength(written()) - whole).toBeLessThan(whole / 20);
});

test('drawn anew on demand', async () => {
	const { seen, written } = start({ columns: 80, rows: 24 });
	await expect.poll(seen).toBe(wanted(middleOfASong(), 80, 24));
	const before = written().length;
	await ui?.redraw();
	await expect.poll(() => written().length).toBeGreaterThan(before + 500);
	expect(seen()).toBe(wanted(middleOfASong(), 80, 24));
});

test('a fault while drawing is handed out, and its trace is not drawn', async () => {
	const { seen, show, written } = start({ columns: 80, rows: 24 });
	await expect.poll(seen).toBe(wanted(middleOfASong(), 80, 24));
	const broken = new Error('broken on purpose');
	show(
		new Proxy(middleOfASong(), {
			get: () => {
				throw broken;
			},
		}),
	);
	await expect.poll(() => faults).toEqual([broken]);
	expect(written()).not.toContain('broken on purpose');
});
