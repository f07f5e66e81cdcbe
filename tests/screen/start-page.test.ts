// The first screen with no night, one and many, at the sizes of the live screen.

import { describe, expect, test } from 'vitest';
import { type Choice, startItems } from '../../src/cli/start-choices.ts';
import { rowText, rowWidth, screenText } from '../../src/screen/row.ts';
import { drawStartPage, type StartPage } from '../../src/screen/start-page.ts';
import {
	ALL_PLAYED,
	afterSong,
	atSong,
	begunAt,
	moreUnfinished,
	START,
	startDetail,
	startsAt,
} from '../../src/words/start-page.ts';
import { expectDrawn } from './expect-drawn.ts';

const SIZES = [
	{ columns: 80, rows: 24 },
	{ columns: 120, rows: 40 },
	{ columns: 200, rows: 60 },
];

const choice = (label: string, detail: string, name = 'x'): Choice => ({
	label,
	detail,
	opens: { kind: 'command', name },
});

const NEW = choice(START.newShow, START.newAbout);
const EXAMPLE = choice(START.example, START.exampleAbout);
const WALK = choice(START.walk, START.walkAbout, 'walk');
const REPORT = choice(START.report, startDetail('Quay Street, first night', '2026-06-11 20:29'));
const TONIGHT = choice(
	START.tonight('Quay Street, third night'),
	startDetail(startsAt('20:30'), 'quay-3.yaml'),
);
const open = (title: string, moment: string, howFar: string): Choice =>
	choice(START.resume(title), startDetail(begunAt(moment), howFar));

const page = (choices: readonly Choice[], note: string | null = null): StartPage => ({
	items: startItems(choices),
	picked: 0,
	day: '2026-06-12',
	note,
});

const STATES: Readonly<Record<string, StartPage>> = {
	'start-none': page([NEW, EXAMPLE, WALK]),
	'start-one': page([
		open('Quay Street, second night', 'today 20:31', atSong(7, 18, 'Lantern')),
		NEW,
		REPORT,
		EXAMPLE,
		WALK,
	]),
	'start-many': page(
		[
			open('Quay Street, second night', 'today 20:31', atSong(7, 18, 'Lantern')),
			open('Harbour Fair', '2026-06-10 14:05', afterSong(11, 11, 'Oldmill')),
			open(
				'A title that is so long that no line of a usual terminal has room for all of it',
				'2026-06-01 19:58',
				ALL_PLAYED,
			),
			TONIGHT,
			choice(
				START.lastShow('Folk Tent'),
				startDetail('2026-06-09', startsAt('16:00'), 'folk.yaml'),
			),
			NEW,
			REPORT,
			EXAMPLE,
			WALK,
		],
		moreUnfinished(2),
	),
};

describe.each(Object.entries(STATES))('%s', (name, state) => {
	test.each(SIZES)('$columns x $rows', (size) => {
		const drawn = drawStartPage(state, size, { isAscii: false });
		expectDrawn(`${name}-${size.columns}x${size.rows}`, screenText(drawn));
	});

	test('fits every size, and what enter opens is always in sight', () => {
		for (const columns of [1, 7, 30, 79, 80, 200]) {
			for (const rows of [1, 2, 3, 4, 8, 12, 17, 24, 40]) {
				for (const picked of state.items.keys()) {
					const drawn = drawStartPage({ ...state, picked }, { columns, rows }, { isAscii: true });
					expect(drawn).toHaveLength(rows);
					for (const row of drawn) expect(rowWidth(row)).toBeLessThanOrEqual(columns);
					if (columns === 1) continue;
					expect(drawn.filter((row) => rowText(row).startsWith('>'))).toHaveLength(1);
				}
			}
		}
	});
});
