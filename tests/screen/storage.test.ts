// Where the night is kept is said in a row of its own, at every size and in every view, and one view
// lists every warning there is.

import { describe, expect, test } from 'vitest';
import type { Finding } from '../../src/journal/findings.ts';
import type { SaveStatus, SaveWarning } from '../../src/journal/night-journal.ts';
import type { ViewName } from '../../src/keys/key-context.ts';
import { drawScreen } from '../../src/screen/draw-screen.ts';
import { screenText } from '../../src/screen/row.ts';
import type { ScreenState } from '../../src/screen/screen-state.ts';
import { diskFaultWords } from '../../src/words/disk.ts';
import { nightFindingWords } from '../../src/words/night-file.ts';
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

type Told = { readonly save?: Partial<SaveStatus>; readonly findings?: readonly string[] };

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

	test('says so of its own folder too, in the row and in full', () => {
		const state = crowded({ state: 'unsafe', isSaved: false, wipedHome: '/dev/shm/lou/nights' });
		expect(lines(state).find((line) => line.startsWith('NOT SAFE'))).toMatch(
			/^NOT SAFE {2}a restart of the machine empties \/dev\/shm\/lou\/nights +! all$/,
		);
		const listed = lines({ ...state, view: 'warnings' })
			.join('\n')
			.replace(/\n +/g, ' ');
		expect(listed).toContain(
			'Written, not safe: a restart of the machine empties /dev/shm/lou/nights',
		);
		expect(listed).toContain('start with --data and a folder that stays');
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
		expect(row).toMatch(/^STORAGE {3}The night is whole again in .* \+2 more, ! all$/);
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
			/^NOT SAVED In memory only, the disk reports a fault \(EIO\)\. +\+2 more, ! all$/m,
		);
	});

	const path = `${home}/2026-06-12-203000-quay-street-ab12.journal`;
	const problems = ['ENOSPC', 'EDQUOT', 'EIO', 'EROFS', 'EACCES', 'ELOOP', 'ETIMEDOUT'].flatMap(
		(trouble) =>
			[
				{ code: 'unsaved', trouble } as const,
				{ code: 'memory-only', trouble, folder: home } as const,
			].map((problem) => [
				`${problem.code} ${trouble}`,
				{ save: { state: 'unsaved', problem } },
				/^NOT SAVED In memory only, \w/,
			]),
	) as [string, Told, RegExp][];
	const faults = ['EIO', 'EACCES', 'EISDIR'].map((trouble): [string, Told, RegExp] => [
		`unreadable ${trouble}`,
		{ findings: [diskFaultWords({ code: 'file-unreadable', path, trouble })] },
		/^STORAGE {3}\S*…\S+\.journal cannot be read: /,
	]);
	const warned = (warning: SaveWarning): Told => ({ save: { warnings: [warning] } });
	const found = (finding: Finding): Told => ({ findings: [nightFindingWords(finding)] });

	test.each<[string, Told, RegExp]>([
		...problems,
		...faults,
		[
			'slow',
			{ save: { state: 'slow', problem: { code: 'slow' } } },
			/^NOT SAVED The disk is slow: the last steps are (?:not confirmed|written but not yet confirmed)\./,
		],
		['elsewhere', { save: { elsewhere } }, /^NOT SAFE {2}kept in \S+,? /],
		[
			'gone',
			warned({ code: 'file-changed', path, change: 'gone' }),
			/The night's file was moved or removed by some/,
		],
		['cut', warned({ code: 'file-changed', path, change: 'cut-short' }), /file was cut short by /],
		['left', warned({ code: 'file-left', trouble: 'EIO' }), /could not be written any more,/],
		['unconfirmed', warned({ code: 'not-confirmed', trouble: 'EIO' }), /did not confirm what was/],
		['back', warned({ code: 'moved-back', from: folder, folder: home }), /is whole again in …?\S+/],
		[
			'another',
			warned({ code: 'written-by-other', writer: '0123456789ab.cdef01' }),
			/Another copy writes into this night: end one of them\./,
		],
		['foreign', warned({ code: 'written-by-other', writer: null }), /else wrote into this night's/],
		[
			'doubtful',
			{ findings: [diskFaultWords({ code: 'folder-doubtful', path: home, trouble: 'NOT_OURS' })] },
			/nights is used, but it belongs to /,
		],
		[
			'header',
			found({ code: 'header-missing', isWarning: true, isEmpty: false }),
			/The beginning of the night cannot be read/,
		],
		['copy', found({ code: 'copy-gone', isWarning: true }), /The last steps are missing:/],
		[
			'steps',
			found({ code: 'steps-not-kept', isWarning: true, count: 3 }),
			/The last 3 steps of this night were not kept/,
		],
		[
			'taken',
			{
				findings: [
					diskFaultWords({
						...{ code: 'place-taken', path: `${home}/quay-street.drafts`, trouble: 'EISDIR' },
						holds: 'drafts',
					}),
				],
			},
			/y-street\.drafts is not used: it is a folder \(EISDIR\)/,
		],
		[
			'torn',
			found({
				...{ code: 'tail-cut-off', isWarning: false, bytes: 12, isZero: false },
				keptIn: `${path}.torn-1000`,
			}),
			/Incomplete: the night was cut off in the middle /,
		],
		[
			'records',
			found({ code: 'records-missing', isWarning: true, count: 12, isHealed: false }),
			/12 records of this night cannot be read/,
		],
	])('what matters of %s stands in 80 columns, with others as alone', (_, told, words) => {
		for (const others of [[], ['One thing more.', 'And another.']]) {
			// What is newest stands first, and what is found comes before what happens later.
			const findings = [...others, ...(told.findings ?? [])];
			const isLater = told.findings === undefined;
			const drawn = lines(crowded(told.save ?? {}, { findings: isLater ? others : findings }));
			const row = drawn.find((line) => /^(?:NOT SA|ELSEWHERE|STORAGE)/.test(line));
			expect(row).toMatch(words);
			expect(row?.length).toBeLessThanOrEqual(80);
		}
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
			'Another copy of the program is writing into this night too: end one of them (that is w1).',
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
