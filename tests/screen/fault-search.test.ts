// What is drawn while a fault is sought: what is asked, what to do in a song, what after it.

import { describe, expect, test } from 'vitest';
import { drawScreen } from '../../src/screen/draw-screen.ts';
import { screenText } from '../../src/screen/row.ts';
import { expectDrawn } from './expect-drawn.ts';
import { faultAfterSong, faultAsked, faultInSong } from './pressed-states.ts';

const sizes = [
	{ columns: 80, rows: 24 },
	{ columns: 120, rows: 40 },
	{ columns: 200, rows: 60 },
];

describe.each(sizes)('at $columns x $rows', (size) => {
	test.each(
		Object.entries({
			'fault-asked': faultAsked,
			'fault-in-a-song': faultInSong,
			'fault-after-a-song': faultAfterSong,
		}),
	)('%s', (name, make) => {
		const drawn = screenText(drawScreen(make(), size, { isAscii: false }));
		expectDrawn(`${name}-${size.columns}x${size.rows}`, drawn);
		if (name !== 'fault-asked') expect(drawn).toContain('Never lift the safety earth');
	});
});
