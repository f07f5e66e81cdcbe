// The screen on a terminal that is only a stream: what the renderer writes is drawn by a screen
// emulator, and compared with what was to be shown.

import { afterEach, expect, test } from 'vitest';
import { COLOUR_SETS } from '../../src/base/colours.ts';
import { drawScreen } from '../../src/screen/draw-screen.ts';
import { screenText } from '../../src/screen/row.ts';
import type { ScreenState } from '../../src/screen/screen-state.ts';
import { TONES } from '../../src/screen/tones.ts';
import { afterABreak, middleOfASong } from '../screen/states.ts';
import { type SeenUiOptions, startSeenUi } from './seen-ui.ts';

let shown: ReturnType<typeof startSeenUi> | undefined;
afterEach(() => {
	shown?.unmount();
	shown = undefined;
});

function start(options: Omit<SeenUiOptions, 'state'>) {
	shown = startSeenUi({ state: middleOfASong(), ...options });
	return shown;
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
	'the colours %s on a terminal of %s bits writes styles: %s',
	async (colours, colorDepth, has) => {
		const { seen, written } = start({ columns: 80, rows: 24, colours, colorDepth });
		await expect.poll(seen).toBe(wanted(middleOfASong(), 80, 24));
		expect(hasStyles(written())).toBe(has);
	},
);

test.each(COLOUR_SETS.slice(0, 3))('each cell has the color of its style: %s', async (colours) => {
	const { seen, cells, show } = start({ columns: 80, rows: 24, colours });
	show(afterABreak());
	await expect.poll(seen).toBe(wanted(afterABreak(), 80, 24));
	const rows = drawScreen(afterABreak(), { columns: 80, rows: 24 }, { isAscii: false });
	const wantedColors = rows.map((row) =>
		row.flatMap(({ text, style }) =>
			[...text].map((letter) => (letter === ' ' ? null : TONES[colours]?.[style].rgb)),
		),
	);
	const colors = cells().map((row, y) =>
		row.slice(0, wantedColors[y]?.length).map(({ text, color }) => (text === '' ? null : color)),
	);
	expect(colors).toEqual(wantedColors);
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

test('only rows that differ are sent, and nothing where none does', async () => {
	const { seen, show, written } = start({ columns: 80, rows: 24 });
	await expect.poll(seen).toBe(wanted(middleOfASong(), 80, 24));
	const before = written().length;
	show({ ...middleOfASong() });
	await new Promise((resolve) => setTimeout(resolve, 100));
	expect(written().length).toBe(before);
	show({ ...middleOfASong(), message: 'held' });
	await expect.poll(seen).toContain('held');
	const sent = written().slice(before);
	expect(sent).toContain('held');
	for (const row of ['SONG', 'TO DO', 'space']) expect(sent).not.toContain(row);
});

test('the newest state is shown once it is told to draw, and not before', async () => {
	const { seen, show, change } = start({ columns: 80, rows: 24 });
	const before = wanted(middleOfASong(), 80, 24);
	await expect.poll(seen).toBe(before);
	change(afterABreak());
	await new Promise((resolve) => setTimeout(resolve, 100));
	expect(seen()).toBe(before);
	show(afterABreak());
	await expect.poll(seen).toBe(wanted(afterABreak(), 80, 24));
});

test('at every new size each frame has that size', async () => {
	const { seen, resize, written } = start({ columns: 120, rows: 40 });
	await expect.poll(seen).toBe(wanted(middleOfASong(), 120, 40));
	const before = written().length;
	resize(80, 24);
	await expect.poll(seen).toBe(wanted(middleOfASong(), 80, 24));
	// Frames end with the end of synchronised output (DECSET 2026).
	const frames = written().slice(before).split('\x1b[?2026l').slice(0, -1);
	expect(frames.length).toBeGreaterThan(0);
	for (const frame of frames) expect(frame.split('\n').length).toBeLessThanOrEqual(24);
});

test('drawn anew on demand', async () => {
	const { seen, written } = start({ columns: 80, rows: 24 });
	await expect.poll(seen).toBe(wanted(middleOfASong(), 80, 24));
	const before = written().length;
	shown?.redraw();
	await expect.poll(() => written().length).toBeGreaterThan(before + 500);
	expect(seen()).toBe(wanted(middleOfASong(), 80, 24));
});

test('a fault while drawing is handed out, and its trace is not drawn', async () => {
	const { seen, show, written, faults } = start({ columns: 80, rows: 24 });
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
