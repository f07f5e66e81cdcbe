// What is drawn while a fault is sought: what is asked, what to do in a song, what after it.

import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { drawScreen } from '../../src/screen/draw-screen.ts';
import { screenText } from '../../src/screen/row.ts';
import { loadShow } from '../scenarios/load-show.ts';
import { playShow } from '../scenarios/play.ts';
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

test('after a swap that changed nothing it is the backup that comes off, not what it stands in for', () => {
	const theatre = loadShow(join(import.meta.dirname, '../rehearsals/theatre.yaml'));
	const { screen } = playShow(
		theatre,
		'-00:40 !ready\n00:00 space\n00:45 n w s\n00:55 !screen\n01:00 2 !screen',
	);
	expect(screen).toContain('Swap 1 Thistle for X Spare.');
	expect(screen).toContain('Swap X Spare for 4 Sorrel, pack too.');
});
