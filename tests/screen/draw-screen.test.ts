// Drawn screens at three sizes, what must be found on them, and that none exceeds its terminal. The
// width of a row is measured by string-width, as the renderer does.

import fc from 'fast-check';
import stringWidth from 'string-width';
import { describe, expect, test } from 'vitest';
import { ACTIONS } from '../../src/keys/actions.ts';
import type { ViewName } from '../../src/keys/key-context.ts';
import type { Work } from '../../src/plan/plan.ts';
import { drawScreen } from '../../src/screen/draw-screen.ts';
import { rowText, screenText } from '../../src/screen/row.ts';
import type { ScreenState } from '../../src/screen/screen-state.ts';
import { expectDrawn } from './expect-drawn.ts';
import {
	afterABreak,
	at,
	beforeTheShow,
	bothRacks,
	encore,
	fourteen,
	handOverOfThree,
	interval,
	jumpPrompt,
	middleOfASong,
	notSaved,
	over,
	segueNext,
	sixPlayers,
	wideNames,
} from './states.ts';

const unicode = { isAscii: false };
const small = { columns: 80, rows: 24 };
const sizes = [small, { columns: 120, rows: 40 }, { columns: 200, rows: 60 }];
/** The stage view also at sizes between. */
const stageSizes = [{ columns: 60, rows: 20 }, { columns: 100, rows: 30 }, ...sizes];
const tiny = [
	{ columns: 80, rows: 23 },
	{ columns: 60, rows: 15 },
	{ columns: 40, rows: 10 },
	{ columns: 20, rows: 4 },
];
const views: readonly ViewName[] = ['stage', 'rack', 'list', 'log', 'warnings', 'help', 'settings'];
const states: Readonly<Record<string, () => ScreenState>> = {
	'before-the-show': () => beforeTheShow(),
	'middle-of-a-song': middleOfASong,
	'after-a-break': afterABreak,
	'hand-over-of-three': handOverOfThree,
	'jump-prompt': jumpPrompt,
	interval,
	encore,
	over,
	'not-saved': notSaved,
	'six-players': sixPlayers,
	'wide-names': wideNames,
	fourteen,
	'both-racks': bothRacks,
	'segue-next': segueNext,
};
const text = (state: ScreenState, size = small) => screenText(drawScreen(state, size, unicode));

describe('drawn screens', () => {
	for (const size of stageSizes) {
		const sized = `${size.columns}x${size.rows}`;
		test.each(Object.keys(states))(`%s at ${sized}`, (name) => {
			expectDrawn(`${name}-${sized}`, text(states[name]!(), size));
		});
	}

	for (const size of sizes) {
		const sized = `${size.columns}x${size.rows}`;

		test.each(views.slice(1))(`%s at ${sized}`, (view) => {
			expectDrawn(`${view}-${sized}`, text({ ...middleOfASong(), view, picked: 2 }, size));
		});
	}

	test.each(tiny)('too small, $columns x $rows', (size) => {
		expectDrawn(`too-small-${size.columns}x${size.rows}`, text(middleOfASong(), size));
	});

	test('in ASCII', () => {
		const drawn = screenText(drawScreen(middleOfASong(), small, { isAscii: true }));
		expect(drawn).toMatch(/^[\x20-\x7e\n]*$/);
		expectDrawn('ascii-80x24', drawn);
	});
});

test('no size is exceeded, whatever is shown', () => {
	const runs = Number(process.env.RACKSIDE_RUNS ?? 200);
	const state = fc.record({
		make: fc.constantFrom(...Object.values(states)),
		view: fc.constantFrom(...views),
		picked: fc.integer({ min: 0, max: 40 }),
		message: fc.option(fc.string({ unit: 'grapheme', maxLength: 120 })),
		isLocked: fc.boolean(),
		isDark: fc.boolean(),
		isRehearsal: fc.boolean(),
		hasPrompt: fc.boolean(),
	});
	const size = fc.record({
		columns: fc.oneof(fc.integer({ min: 1, max: 80 }), fc.integer({ min: 1, max: 200 })),
		rows: fc.oneof(fc.integer({ min: 1, max: 24 }), fc.integer({ min: 1, max: 60 })),
	});
	fc.assert(
		fc.property(state, size, fc.boolean(), ({ make, hasPrompt, ...rest }, area, isAscii) => {
			const prompt = hasPrompt ? afterABreak().prompt : null;
			const rows = drawScreen({ ...make(), ...rest, prompt }, area, { isAscii });
			expect(rows).toHaveLength(area.rows);
			for (const row of rows) {
				expect(stringWidth(rowText(row))).toBeLessThanOrEqual(area.columns);
				if (isAscii) expect(rowText(row)).toMatch(/^[\x20-\x7e]*$/);
			}
		}),
		{ numRuns: runs },
	);
});

describe('what must be found', () => {
	test('everything at 80x24: hand-overs, song, work, board, hands, rack, warnings, curfew, last', () => {
		const drawn = text(middleOfASong());
		for (const words of [
			/ASH 4 Dace .*in +2:33 BO 7 Briar .*in +2:33/,
			/no capo {2}RECHECK, TOUCH UP 0:45 .*CAPO ON 3 {2}TOUCH UP 0:55/,
			/off: 1 Amber to slot 1 .*off: 5 Elder to slot 5/,
			/PACK P2; check volume 7, neck pickup/,
			/CLEO +keeps 8 Granite/,
			/1 {3}Ash .*2 ~ Eb std .*3 x bench .*4 ~ drop D/,
			/ {2}E std .*FAULTY .*TOUCH UP/,
			/9 {3}out .*S \+ E std/,
			/TO DO +4 Dace .*0:45 +start within +0:48\n/,
			/SONG .*6 of 10 {2}Gravel {2}V2.*1:12 of 3:45 +2:33 left/,
			/CUE +Ch2 {2}STOMP \+DRIVE \+DELAY dotted-eighth/,
			/BO BOARD .*all off .*at Ch2: DRIVE, DELAY \(dotted-eighth\) on/,
			/THEN +7 Lantern, starts: Ash, gap 0:30, count 4/,
			/WATCH .*0:30/,
			/CURFEW .*22:45/,
			/LAST .*20:50 {2}at V2 .*u undo/,
			/PgDn\/space Ch2.*\? all/,
		]) {
			expect(drawn).toMatch(words);
		}
	});

	test('a moment after a break: the backup first, and how long the sound has been gone', () => {
		const rows = text(afterABreak()).split('\n');
		expect(rows[0]).toMatch(/ASH +DOWN +0:04 +STRING BREAK .*READY, 0:10 to hand over/);
		expect(rows[1]).toContain('TAKE S Spare  no capo');
		expect(rows.join('\n')).toContain('or  6 Fern');
		expect(rows[4]).toBe('off: 1 Amber to the bench');
		expect(rows.join('\n')).toMatch(/^1 x Ash /m);
		expect(rows.at(-1)).toContain('enter S in hands');
	});

	test('the hand-over in three rows of letters at 80x24', () => {
		const rows = text(middleOfASong()).split('\n');
		expect(rows.slice(1, 4).every((row) => /[▀▄█]/.test(row))).toBe(true);
	});

	test('a small screen says so and still shows hand-over, song and work in four lines', () => {
		const rows = text(middleOfASong(), { columns: 40, rows: 4 }).split('\n');
		expect(rows[0]).toMatch(/ASH 4/);
		expect(rows[1]).toMatch(/TO DO 4 ~ TOUCH UP drop D/);
		expect(rows[2]).toMatch(/Gravel/);
		expect(rows[3]).toContain('small');
	});

	test('dark: one dim letter and nothing else', () => {
		const rows = drawScreen({ ...middleOfASong(), isDark: true }, small, unicode);
		expect(screenText(rows).trim()).toBe('z');
		expect(rows.flat().map(({ style }) => style)).toEqual(['dim']);
	});

	test('locked, rehearsed and not saved are all said, in every view', () => {
		for (const view of views) {
			const drawn = text({
				...middleOfASong(),
				view,
				isLocked: true,
				isRehearsal: true,
				save: {
					state: 'unsaved',
					isSaved: false,
					savedSeq: 3,
					lastSeq: 9,
					problem: { code: 'unsaved', trouble: 'ENOSPC' },
					elsewhere: null,
					wipedHome: null,
					sinceUpMs: 0,
					warnings: [],
				},
			});
			expect(drawn).toContain('LOCKED');
			expect(drawn).toContain('REHEARSAL');
			expect(drawn).toContain('NOT SAVED');
			if (view === 'stage') expect(drawn).toContain('NOT SAVED In memory only, the disk is full');
		}
	});

	test('at 200x60 rack, list and log stand beside the stage view', () => {
		const drawn = text(middleOfASong(), { columns: 200, rows: 60 });
		expect(drawn).toMatch(/1 {3}Ash .*RACK +state/);
		expect(drawn).toMatch(/LIST +state/);
		expect(drawn).toMatch(/LOG +newest first/);
	});

	test('wide names leave the columns after them in line', () => {
		const column = (state: ScreenState, mark: string) =>
			text(state)
				.split('\n')
				.filter((row) => row.includes(mark))
				.map((row) => stringWidth(row.slice(0, row.indexOf(mark))));
		expect(column(wideNames(), ' of 3:45')).toEqual(column(middleOfASong(), ' of 3:45'));
		expect(column(wideNames(), 'CAPO 3')).toEqual(column(middleOfASong(), 'CAPO 3'));
	});

	test.each(sizes)('help: the words of every key whole at $columns x $rows', (size) => {
		const help = ACTIONS.map(({ keys, words }) => ({ key: keys[0] ?? '', words }));
		const bare = (words: string) => words.replace(/\s/g, '');
		// Words that run over several lines stand in one column, however many there are.
		const columnsOf = (page: string) =>
			[1, 2, 3, 4].flatMap((across) => {
				const width = Math.floor(size.columns / across);
				return Array.from({ length: across }, (_, column) =>
					bare(
						page
							.split('\n')
							.map((line) => line.slice(column * width, (column + 1) * width))
							.join(''),
					),
				);
			});
		const pages = help.flatMap((_, picked) =>
			columnsOf(text({ ...middleOfASong(), view: 'help', help, picked }, size)),
		);
		for (const { words } of help) {
			expect(pages.some((page) => page.includes(bare(words)))).toBe(true);
		}
	});

	test('a song for which there is nothing to hand over stands among the hand-overs', () => {
		const state = middleOfASong();
		const section = state.plan.sections[1]!;
		const slot = {
			section,
			player: 'cleo',
			instrument: null,
			named: 'i9',
			asked: 'i9',
			tuning: state.plan.handOvers[0]!.tuning!,
			capo: 0,
			kind: 'bass-4' as const,
			isHandOver: false,
			isKept: false,
			for: null,
			isChosen: false,
			isMissing: true,
			why: { code: 'out', instrument: 'i9' } as const,
			leave: null,
			pack: null,
		};
		const lacking = { ...state, plan: { ...state.plan, slots: [slot] } };
		expect(text(lacking)).toMatch(
			/CLEO +in +\d:\d\d\n(.*\n){3}.*NO BACKUP\n.* 9 Heron is out tonight/,
		);
		const only = { ...lacking, plan: { ...lacking.plan, handOvers: [] } };
		expect(text(only)).toMatch(
			/^CLEO +in +\d:\d\d +for 7 Lantern +NO BACKUP\n.* 9 Heron is out tonight/,
		);
		const late = { ...only, nowMs: at(23) };
		expect(text(late)).toMatch(/^CLEO +now +for 7 Lantern/);
		// What could be handed all the same is never beside NO BACKUP.
		const about = { song: 'lantern', player: 'cleo', why: slot.why };
		const warning = { code: 'missing' as const, ...about, standIn: 'i6' };
		const could = text({ ...only, plan: { ...only.plan, warnings: [warning] } });
		expect(could).toMatch(/^CLEO .* NOTHING PLANNED\n.*\n?.*9 Heron is out tonight;/);
		expect(could).not.toContain('NO BACKUP');
	});

	test('from an hour on lengths of time have their hours, none of them cut', () => {
		const state = middleOfASong();
		const early = { ...beforeTheShow(), nowMs: at(-436, -40), plan: state.plan };
		const rows = text(early).split('\n');
		expect(rows[0]).toMatch(/^ASH 4 Dace +in 7:39:25 BO 7 Briar +in 7:39:25$/);
		expect(rows.find((row) => row.startsWith('SHOW'))).toContain('starts in 7:16:40');
	});

	test('what is to be done counts down to its latest start, then says by how much it will be late', () => {
		const { plan } = middleOfASong();
		const rowAt = (nowMs: number, how: Partial<Work> = {}) =>
			text({
				...middleOfASong(),
				nowMs,
				plan: { ...plan, work: plan.work.map((one) => ({ ...one, ...how })) },
			})
				.split('\n')
				.find((row) => row.startsWith('TO DO')) ?? '';
		expect(rowAt(at(20, 12))).toMatch(/ start within {3}0:48$/);
		expect(rowAt(at(21, 0))).toMatch(/ start within {3}0:00$/);
		// Past it, what is in time itself holds up something else, that says so in its own row.
		expect(rowAt(at(21, 10))).toMatch(/ start within {3}0:00$/);
		const late = rowAt(at(21, 10), { slackSeconds: -25, shortSeconds: 10 });
		expect(late).toMatch(/ 0:10 short$/);
		// The number stays in its cells.
		expect(late.indexOf('0:10')).toBe(rowAt(at(20, 50)).indexOf('0:10'));
	});

	test('the last row shows all that a step did, or, where that is too long, what first and how much more', () => {
		const line = (words: string, step: string) => ({
			atMs: at(1),
			words,
			isTakenBack: false,
			step,
		});
		const opening = line('the night was opened', '1');
		const two = [line('Slot 2 ready', '2'), line('Slot 1 ready', '2'), opening];
		expect(text({ ...middleOfASong(), log: two, takeableStep: '2' })).toMatch(
			/LAST +20:31 +Slot 1 ready; Slot 2 ready +u undo/,
		);
		const four = [line('all the rest is ready too', '2'), line('Slot 3 ready', '2'), ...two];
		expect(text({ ...middleOfASong(), log: four, takeableStep: '2' })).toMatch(
			/LAST +20:31 +Slot 1 ready; Slot 2 ready; Slot 3 ready; \+1 more .*u undo/,
		);
		const nothingDone = { log: [opening], takeableStep: null };
		expect(text({ ...middleOfASong(), ...nothingDone })).not.toContain('u undo');
	});

	test('what is staged has its mark on the rack, in a cell that is empty else', () => {
		const state = middleOfASong();
		const { session } = state;
		const i6 = { ...session.instruments.i6!, value: 'staged' as const };
		const staged = {
			...state,
			session: { ...session, instruments: { ...session.instruments, i6 } },
		};
		for (const size of [small, { columns: 120, rows: 40 }, { columns: 60, rows: 15 }]) {
			const [before, after] = [text(state, size), text(staged, size)];
			expect(before).toContain('6 -');
			expect(after.replace('6>-', '6 -').replace('staged', 'rack  ')).toBe(before);
			expect(after).toContain('6>-');
		}
		const help = ACTIONS.map(({ keys, words }) => ({ key: keys[0] ?? '', words }));
		const page = text({ ...state, view: 'help', help });
		expect(page).toContain('> staged');
		expect(page).toContain('PACK: put it on');
		expect(page).toContain('LAST +2 more: see the log');
	});

	test('a list that is cut says how much lies below and above', () => {
		const state: ScreenState = { ...middleOfASong(), view: 'rack' };
		const size = { columns: 80, rows: 12 };
		expect(text(state, size)).toMatch(/\d more below/);
		expect(text({ ...state, picked: 10 }, size)).toMatch(/\d more above/);
		expect(text(state)).not.toContain('more below');
	});

	test('the key for all keys is never cut, and in 30x8 one player is shown whole', () => {
		for (let columns = 10; columns <= 80; columns += 1) {
			expect(text(middleOfASong(), { columns, rows: 24 })).toMatch(/\?( all)?$/);
		}
		const rows = text(middleOfASong(), { columns: 30, rows: 8 }).split('\n');
		expect(rows[0]).toMatch(/^ASH 4 drop D RECHECK.* in 2:33$/);
	});
});

test('a plan that is not known to be the best says so in a word, and moves nothing by it', () => {
	const proved = middleOfASong();
	const rough = { ...proved, plan: { ...proved.plan, isProved: false } };
	const [before, after] = [text(proved), text(rough)].map((drawn) => drawn.split('\n'));
	const row = before?.findIndex((line) => line.startsWith('DO ')) ?? -1;
	expect(after?.[row]).toBe(before?.[row]?.replace('DO       ', 'DO rough '));
	expect(after?.filter((line, index) => line !== before?.[index])).toHaveLength(1);
});
