// What is drawn of a night that went wrong: breaks, backups and what stands in for what, where there is nothing
// to hand, and what else goes wrong on a stage.

import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { drawScreen } from '../../src/screen/draw-screen.ts';
import { screenText } from '../../src/screen/row.ts';
import type { ScreenState } from '../../src/screen/screen-state.ts';
import { loadShow } from '../scenarios/load-show.ts';
import { playShow } from '../scenarios/play.ts';
import { expectDrawn } from './expect-drawn.ts';
import {
	allLate,
	longInterval,
	noBackup,
	pedalStuck,
	playOn,
	secondBreak,
	staying,
	stayingDone,
	substituted,
	suspectPack,
	takenAway,
	wrongInstrument,
} from './pressed-states.ts';

const sizes = [
	{ columns: 80, rows: 24 },
	{ columns: 100, rows: 30 },
	{ columns: 120, rows: 40 },
	{ columns: 200, rows: 60 },
];
const drawn = (state: ScreenState, size: (typeof sizes)[number]) =>
	screenText(drawScreen(state, size, { isAscii: false }));

describe.each([{ columns: 60, rows: 20 }, ...sizes])('at $columns x $rows', (size) => {
	const sized = `${size.columns}x${size.rows}`;
	test.each(
		Object.entries({
			staying,
			'staying-done': stayingDone,
			substituted,
			'no-backup': noBackup,
			'long-interval': longInterval,
			'second-break': secondBreak,
			'play-on': playOn,
			'pedal-stuck': pedalStuck,
			'wrong-instrument': wrongInstrument,
			'suspect-pack': suspectPack,
			'all-late': allLate,
			'taken-away': takenAway,
		}),
	)('%s', (name, make) => {
		expectDrawn(`${name}-${sized}`, drawn(make(), size));
	});
});

test.each(sizes)(
	'the list says who keeps what for which song, and what is handed in place of what: $columns x $rows',
	(size) => {
		const list = drawn({ ...staying(), view: 'list', picked: 3 }, size);
		const isNamed = size.columns >= 100;
		expect(list).toContain(
			isNamed ? 'Ash keeps S Spare for 1 Amber, CAPO ON 2' : 'Ash S CAPO 2 for 1',
		);
		const other = drawn({ ...substituted(), view: 'list', picked: 1 }, size);
		expect(other).toContain(isNamed ? 'Ash S Spare for 4 Acorn' : 'Ash S for 4');
	},
);

test('what is handed is what the mark and the words are about', () => {
	const rows = drawn(substituted(), { columns: 80, rows: 24 }).split('\n');
	expect(rows[0]).toMatch(/^ASH .*S Spare for 2 Lantern +RETUNE 1:00$/);
	expect(rows.slice(0, 4).join('\n')).toContain('backup for 4 Acorn');
});

test('above the list it is one line, with the name and whom it stands in for', () => {
	const [first] = drawn({ ...staying(), view: 'list' }, { columns: 80, rows: 24 }).split('\n');
	expect(first).toMatch(/^ASH +in +2:57 KEEPS S Spare, CAPO ON 2, backup for 1 Amber$/);
});

test('small windows name the act too', () => {
	for (const columns of [40, 60, 70]) {
		const rows = drawn(staying(), { columns, rows: 10 }).split('\n');
		expect(rows.slice(0, 4).join('\n')).toMatch(/KEEPS S( Spare)?, CAPO ON 2/);
	}
});

test('where the song ends before any backup is in hands, playing on stands first among the choices', () => {
	const { states, screen } = playShow(
		loadShow(join(import.meta.dirname, '../rehearsals/theatre.yaml')),
		'-01:00 t 0\n-00:30 enter enter\n00:00 space\n03:30 b 8 !state !screen\n',
	);
	// Ferry Bell is 3:40 long, and nothing is handed in less than the 10 s that remain less the keys.
	expect(states[0].standIns.ivo[0].readyIn).toBeGreaterThan(8);
	expect(screen).toMatch(/^STRING BREAK.*\n {2}BEST {2}0 play on .*\n +or +[89K] /m);
	// The keys say the same: what enter would hand is none of it.
	expect(screen).toMatch(/^0 play on {2}enter [89K] anyway {2}slot another/m);
});
