// Foot switches that turn pages step the show whatever is shown: the help says so where pages are turned.

import { join } from 'node:path';
import { expect, test } from 'vitest';
import { drawScreen } from '../../src/screen/draw-screen.ts';
import { screenText } from '../../src/screen/row.ts';
import { pressedNight } from '../night/pressed-night.ts';
import { loadShow } from '../scenarios/load-show.ts';

const show = loadShow(join(import.meta.dirname, '../../shows/club.yaml'));

test('page down and page up step the show while help is open, and help says it', () => {
	const { night, press } = pressedNight(show);
	const cue = () => (night.state() as { cue: { index: number } | null }).cue?.index;
	press('space', '?', 'pagedown');
	expect(cue()).toBe(1);
	press('pageup');
	expect(cue()).toBe(0);
	const help = screenText(
		drawScreen(night.screen(), { columns: 80, rows: 24 }, { isAscii: false }),
	);
	expect(help).toContain('up and down scroll; PgDn and PgUp step the SHOW');
	expect(help.replace(/\s+/g, ' ')).toContain('Page down (a foot switch) does it in every view');
});
