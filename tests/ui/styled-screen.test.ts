// The first picture is drawn before the renderer is there; where they differed, the screen would change
// by itself once it is.

import { afterEach, expect, test } from 'vitest';
import { drawScreen } from '../../src/screen/draw-screen.ts';
import { screenText } from '../../src/screen/row.ts';
import { afterABreak, beforeTheShow, middleOfASong, wideNames } from '../screen/states.ts';
import { cellsAfter, startSeenUi } from './seen-ui.ts';

let shown: ReturnType<typeof startSeenUi> | undefined;
afterEach(() => {
	shown?.unmount();
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

// ECMA-48: 8.3.39 ED and 8.3.41 EL.
const erases = (written: string) => written.split('\x1b[').some((one) => /^\d*[JK]/.test(one));

test.each(cases)(
	'$name at $size.columns columns: the renderer draws the same over it',
	async ({ make, size }) => {
		const state = make();
		shown = startSeenUi({ state, ...size });
		const { seen, cells, written, firstPicture, show } = shown;
		await expect.poll(() => written().length).toBeGreaterThan(firstPicture.length);
		const drawn = written().slice(firstPicture.length);
		expect(erases(drawn)).toBe(false);
		expect(erases(firstPicture)).toBe(true);
		await expect.poll(seen).toBe(screenText(drawScreen(state, size, { isAscii: false })));
		expect(cells()).toEqual(await cellsAfter(firstPicture, size));
		const first = written();
		// Drawn by the renderer, and drawn again when told so.
		show({ ...state });
		await new Promise((done) => setTimeout(done, 50));
		expect(written()).toBe(first);
	},
);
