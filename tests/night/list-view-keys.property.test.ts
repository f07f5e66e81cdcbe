// Any keys at all in and around the list view, with a show file that keeps changing: nothing throws,
// what is drawn fits, and the night read back from its journal is the night that was.

import { join } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { displayWidth } from '../../src/base/display-width.ts';
import { memoryJournal } from '../../src/journal/memory-journal.ts';
import { type Night, openNight } from '../../src/night/night.ts';
import { openPast } from '../../src/night/night-past.ts';
import { drawScreen } from '../../src/screen/draw-screen.ts';
import { rowText } from '../../src/screen/row.ts';
import { openSession } from '../../src/session/open-session.ts';
import { sampleHeader } from '../journal/sample-journal.ts';
import { loadShow } from '../scenarios/load-show.ts';
import { otherShows } from '../session/other-shows.ts';
import { RUNS } from '../session/walk.ts';

const show = loadShow(join(import.meta.dirname, '../../shows/club.yaml'));
const shows = otherShows(show);
const START_MS = 1_000_000_000_000;

const gestures = fc.oneof(
	{
		weight: 3,
		arbitrary: fc.constantFrom(
			['g', 'down', 'down', 'enter'],
			['g', 'up', 'enter'],
			['k', 'enter'],
			['k'],
			['p', 'o', 'enter'],
			['p', 'tab', 'down', 'enter'],
			['h'],
			['v', 'enter'],
			['down', 'down', 'down'],
			['up', 'up'],
		),
	},
	{
		weight: 2,
		arbitrary: fc
			.constantFrom(
				...['space', 'space', 'd', 'left', 'right', 'b', 'x', 'j', 't', 'i', 'u', 'u', 'y', 'esc'],
				...[
					'tab',
					'enter',
					'g',
					'p',
					'v',
					'backspace',
					'1',
					'4',
					's',
					'a',
					'o',
					'l',
					'0',
					'-',
					'z',
				],
			)
			.map((key) => [key]),
	},
);
/** A few keys, how long before each, and which reading of the file they would find. */
const presses = fc
	.array(
		fc.tuple(gestures, fc.constantFrom(40, 400, 400, 2000, 60_000), fc.nat(shows.length - 1)),
		{ maxLength: 40, size: 'max' },
	)
	.map((all) => all.flatMap(([keys, ...rest]) => keys.map((key) => [key, ...rest] as const)));
const sizes = fc.constantFrom(
	{ columns: 80, rows: 24 },
	{ columns: 120, rows: 40 },
	{ columns: 40, rows: 9 },
	{ columns: 200, rows: 60 },
);

function drawnFits(night: Night, size: { readonly columns: number; readonly rows: number }): void {
	const rows = drawScreen(night.screen(), size, { isAscii: false });
	expect(rows.length).toBe(size.rows);
	for (const row of rows) expect(displayWidth(rowText(row))).toBeLessThanOrEqual(size.columns);
}

test('anything may be pressed', () => {
	fc.assert(
		fc.property(presses, sizes, (pressed, size) => {
			let atMs = 0;
			let version = 0;
			const journal = memoryJournal(sampleHeader());
			const night = openNight({
				show,
				journal,
				clock: { wallMs: () => START_MS + atMs, upMs: () => 1_000_000 + atMs, bootId: 'boot' },
				plannedZeroMs: START_MS,
				dayOffsetMinutes: 0,
				isRehearsal: true,
			});
			night.watchShow({
				version: () => ({ sum: String(version), sinceMs: START_MS }),
				read: () => ({ show: shows[version] ?? show, problems: [] }),
			});
			for (const name of ['space', 'tab', 'tab']) {
				night.press(name);
				atMs += 400;
			}
			for (const [name, waitMs, reading] of pressed) {
				version = reading;
				atMs += waitMs;
				night.tick();
				night.press(name);
				drawnFits(night, size);
				JSON.stringify(night.state());
			}
			const again = openPast(
				openSession(show),
				memoryJournal(sampleHeader(), {
					records: JSON.parse(JSON.stringify(journal.records())),
					checkpoint: null,
				}),
			);
			expect(JSON.stringify(again.session())).toBe(JSON.stringify(night.session()));
		}),
		// Each run draws some hundred screens, and plans every way out at each.
		{ numRuns: Math.ceil(RUNS / 5) },
	);
}, 120_000);
