// Where the night is kept is said in a row of its own, at every size and in every view, and one view
// lists every warning there is.

import { describe, expect, test } from 'vitest';
import type { SaveStatus } from '../../src/journal/night-journal.ts';
import type { ViewName } from '../../src/keys/key-context.ts';
import { drawScreen } from '../../src/screen/draw-screen.ts';
import { screenText } from '../../src/screen/row.ts';
import type { ScreenState } from '../../src/screen/screen-state.ts';
import { jumpPrompt, middleOfASong } from './states.ts';

const views: readonly ViewName[] = ['stage', 'rack', 'list', 'log', 'help', 'settings'];
const sizes = [
	{ columns: 40, rows: 10 },
	{ columns: 80, rows: 12 },
	{ columns: 80, rows: 24 },
	{ columns: 120, rows: 40 },
	{ columns: 200, rows: 60 },
];
const home = '/home/lou/.local/share/rackside/nights';
const folder = '/tmp/rackside-1000-1a2b3c4d';
const elsewhere = { folder, home, trouble: 'ENOSPC', isWiped: true };

const lines = (state: ScreenState, size = { columns: 80, rows: 24 }) =>
	screenText(drawScreen(state, size, { isAscii: false })).split('\n');

/** The middle of a song with more warnings of the plan than any screen has rows for. */
function crowded(save: Partial<SaveStatus>, rest: Partial<ScreenState> = {}): ScreenState {
	const state = middleOfASong();
	const [first] = state.plan.warnings;
	if (!first) throw new Error('the plan warns of nothing');
	return {
		...state,
		plan: { ...state.plan, warnings: Array.from({ length: 70 }, () => first) },
		save: { ...state.save, ...save },
		...rest,
	};
}

describe('the row', () => {
	test.each(sizes)(
		'is there at $columns x $rows in every view, whatever the plan warns of',
		(size) => {
			for (const view of views) {
				const drawn = lines(
					crowded({ state: 'unsafe', isSaved: false, elsewhere }, { view }),
					size,
				);
				const row = drawn.find((line) => line.startsWith('NOT SAFE'));
				expect(row, `${view}\n${drawn.join('\n')}`).toMatch(/^NOT SAFE {2}kept in \/tmp\//);
				expect(drawn).toHaveLength(size.rows);
			}
		},
	);

	test('names both folders and the reason in 80 columns', () => {
		const row = lines(crowded({ elsewhere })).find((line) => line.startsWith('NOT SAFE'));
		expect(row).toMatch(/kept in \/tmp\/rackside-1000-1a2b3c4d, ENOSPC in .*rackside\/nights/);
		expect(row).toMatch(/! all$/);
	});

	test('where a restart wipes nothing it is elsewhere, not unsafe', () => {
		const text = lines(crowded({ elsewhere: { ...elsewhere, isWiped: false } })).join('\n');
		expect(text).toMatch(/^ELSEWHERE kept in/m);
		expect(text).not.toContain('NOT SAFE');
	});

	test('what was noticed stands there, newest first, until it was looked at', () => {
		const warnings = [
			{ code: 'file-left', trouble: 'EIO' },
			{ code: 'moved-back', from: folder, folder: home },
		] as const;
		const state = crowded({ warnings }, { findings: ['The end of the night is incomplete.'] });
		const row = lines(state).find((line) => line.startsWith('STORAGE'));
		expect(row).toMatch(/^STORAGE {3}The night is whole in .* \+2 more, ! all$/);
		expect(lines({ ...state, noticesSeen: 2 }).join('\n')).toMatch(
			/^STORAGE {3}The night is whole/m,
		);
		const seen = lines({ ...state, noticesSeen: 3 }).join('\n');
		expect(seen).not.toContain('STORAGE');
		expect(seen).toMatch(/^CURFEW/m);
	});

	test('what is wrong just now comes before where the night is, and that before what was noticed', () => {
		const state = crowded({
			state: 'unsaved',
			problem: { code: 'unsaved', trouble: 'EIO' },
			elsewhere,
			warnings: [{ code: 'not-confirmed', trouble: 'EIO' }],
		});
		expect(lines(state, { columns: 120, rows: 40 }).join('\n')).toMatch(
			/^NOT SAVED The disk reports a fault \(EIO\).* \+2 more, ! all$/m,
		);
	});

	test('a question leaves it in sight', () => {
		const { prompt } = jumpPrompt();
		const text = lines(crowded({ elsewhere }, { prompt })).join('\n');
		expect(text).toMatch(/^NOT SAFE/m);
	});
});

describe('the view of all warnings', () => {
	const warnings = [
		{ code: 'file-left', trouble: 'EIO' },
		{ code: 'file-changed', path: `${home}/x.journal`, change: 'gone' },
		{ code: 'written-by-other', writer: 'w1' },
	] as const;
	const state = crowded({ elsewhere, warnings }, { view: 'warnings', noticesSeen: 3 });

	test('has every one in full, those of where the night is kept first', () => {
		const text = lines(
			{ ...state, plan: { ...state.plan, warnings: state.plan.warnings.slice(68) } },
			{
				columns: 80,
				rows: 40,
			},
		)
			.join('\n')
			.replace(/\n +/g, ' ');
		for (const words of [
			'Written, not safe: the night is kept in /tmp/rackside-1000-1a2b3c4d, which a restart of the machine empties',
			`since ${home} takes nothing, the disk is full`,
			'Another copy of the program (w1) is writing',
			'moved or removed by somebody else',
			'the night goes on in a new one',
		])
			expect(text).toContain(words);
		expect(text.indexOf('NOT SAFE')).toBeLessThan(text.indexOf('WATCH'));
		expect(text.match(/WATCH/g)).toHaveLength(2);
	});

	test('scrolls to the last one', () => {
		const numbered = { ...state, picked: 999 };
		const drawn = lines(numbered);
		expect(drawn.join('\n')).toMatch(/ to 74 of 74, up and down scroll/);
		expect(drawn).toHaveLength(24);
	});
});
