// The pictures in the README are what the program draws, and stay so.

import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { afterEach, expect, test } from 'vitest';
import { drawScreen } from '../../src/screen/draw-screen.ts';
import { screenText } from '../../src/screen/row.ts';
import { screenSvg } from './screen-svg.ts';
import { scriptedScreen } from './scripted-screen.ts';
import { startSeenUi } from './seen-ui.ts';

const path = (name: string) => fileURLToPath(new URL(name, import.meta.url));
const { state, size } = scriptedScreen(
	path('../../shows/club.yaml'),
	path('../rehearsals/readme-picture.txt'),
);

let shown: ReturnType<typeof startSeenUi> | undefined;
afterEach(() => {
	shown?.unmount();
	shown = undefined;
});

const sets = ['dark', 'amber'] as const;

test.each(sets)(
	'the picture of the colours %s is what is drawn; WRITE_PICTURE=1 writes it',
	async (colours) => {
		shown = startSeenUi({ state, ...size, colours });
		const drawn = screenText(drawScreen(state, size, { isAscii: false }));
		await expect.poll(shown.seen).toBe(drawn);
		const svg = screenSvg(shown.cells(), `The screen in the middle of a song:\n${drawn}`);
		const file = path(`pictures/club-${colours}.svg`);
		if (process.env.WRITE_PICTURE) writeFileSync(file, svg);
		expect(readFileSync(file, 'utf8')).toBe(svg);
	},
);

test('the README shows them', () => {
	const readme = readFileSync(path('../../README.md'), 'utf8');
	for (const colours of sets) expect(readme).toContain(`(tests/ui/pictures/club-${colours}.svg)`);
});
