// The first picture is drawn before the renderer is there; where they differed, what is left of the
// first would stay on the screen.

import xterm from '@xterm/headless';
import { afterEach, expect, test } from 'vitest';
import { drawScreen } from '../../src/screen/draw-screen.ts';
import { screenText } from '../../src/screen/row.ts';
import { firstFrame } from '../../src/ui/first-frame.ts';
import { afterABreak, beforeTheShow, middleOfASong, wideNames } from '../screen/states.ts';
import { seenCells } from './seen-cells.ts';
import { startSeenUi } from './seen-ui.ts';

let shown: ReturnType<typeof startSeenUi> | undefined;
afterEach(() => {
	shown?.ui.unmount();
	shown = undefined;
});

const sizes = [
	{ columns: 80, rows: 24 },
	{ columns: 120, rows: 40 },
	{ columns: 30, rows: 5 },
];
const cases = [beforeTheShow, middleOfASong, afterABreak, wideNames].flatMap((make) =>
	sizes.map((size) => ({ name: make.name, make: () => make(), size })),
);

test.each(cases)(
	'$name at $size.columns columns is what the renderer draws',
	async ({ make, size }) => {
		const state = make();
		const options = { isAscii: false, colorDepth: 24 } as const;
		const terminal = new xterm.Terminal({
			cols: size.columns,
			rows: size.rows,
			allowProposedApi: true,
		});
		await new Promise<void>((done) => terminal.write(firstFrame(state, size, options), done));
		shown = startSeenUi({ state, ...size });
		await expect.poll(shown.seen).toBe(screenText(drawScreen(state, size, options)));
		expect(seenCells(terminal)).toEqual(shown.cells());
		const { cursorX, cursorY } = terminal.buffer.active;
		expect([cursorX, cursorY]).toEqual([0, 0]);
		terminal.dispose();
	},
);
