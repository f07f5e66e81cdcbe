// Drawn screens at three sizes, what must be found on them, and that none exceeds its terminal. The
// width of a row is measured by string-width, as the renderer does.

import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import stringWidth from 'string-width';
import { describe, expect, test } from 'vitest';
import { drawScreen } from '../../src/screen/draw-screen.ts';
import { rowText, screenText } from '../../src/screen/row.ts';
import type { ScreenState, ViewName } from '../../src/screen/screen-state.ts';
import { afterABreak, beforeTheShow, middleOfASong, wideNames } from './states.ts';

const unicode = { isAscii: false };
const small = { columns: 80, rows: 24 };
const sizes = [small, { columns: 120, rows: 40 }, { columns: 200, rows: 60 }];
const views: readonly ViewName[] = ['live', 'rack', 'set', 'log', 'help'];
const states: Readonly<Record<string, () => ScreenState>> = {
	'before-the-show': () => beforeTheShow(),
	'middle-of-a-song': middleOfASong,
	'after-a-break': afterABreak,
	'wide-names': wideNames,
};
const text = (state: ScreenState, size = small) => screenText(drawScreen(state, size, unicode));
const drawing = (name: string) => fileURLToPath(new URL(`drawn/${name}.txt`, import.meta.url));

describe('drawn screens', () => {
	for (const size of sizes) {
		for (const [name, make] of Object.entries(states)) {
			test(`${name} at ${size.columns}x${size.rows}`, async () => {
				const drawn = `${text(make(), size)}\n`;
				await expect(drawn).toMatchFileSnapshot(drawing(`${name}-${size.columns}x${size.rows}`));
			});
		}
	}

	test.each(views.slice(1))('%s at 80x24', async (view) => {
		const drawn = `${text({ ...middleOfASong(), view, picked: 2 })}\n`;
		await expect(drawn).toMatchFileSnapshot(drawing(`${view}-80x24`));
	});

	test('in ASCII', async () => {
		const drawn = `${screenText(drawScreen(middleOfASong(), small, { isAscii: true }))}\n`;
		expect(drawn).toMatch(/^[\x20-\x7e\n]*$/);
		await expect(drawn).toMatchFileSnapshot(drawing('ascii-80x24'));
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
			/ASH .*in 2:33/,
			/STALE 16:02, touch-up 0:45/,
			/check volume 7, neck pickup/,
			/BO .*slot 7.*CAPO 3.*NOT READY/,
			/NOW .*6 of 10 {2}Gravel {2}V2.*1:12 of 3:45.*left +2:33/,
			/NEXT .*Ch2.*Lantern/,
			/slot 4 .*0:45 .*begin by +21:00 .*0:48 spare/,
			/BO .*now V2 .*all off/,
			/at {2}Ch2 .*DRIVE, DELAY \(time dotted-eighth\) on, rest off/,
			/IN HANDS .*Ash 1 E std/,
			/RACK .*1 = .*2 ~ .*3 x/,
			/9 o .*S \+/,
			/WATCH .*0:30/,
			/CURFEW .*22:45/,
			/LAST .*20:04 {2}V2\. .*u takes it back/,
			/space Ch2.*\? all keys/,
		]) {
			expect(drawn).toMatch(words);
		}
	});

	test('a moment after a break: the stand-in first, and how long it has been silent', () => {
		const rows = text(afterABreak()).split('\n');
		expect(rows[0]).toMatch(/ASH +SILENT 0:04 +STRING BREAK/);
		expect(rows[1]).toContain('take slot S  Spare');
		expect(rows.join('\n')).toContain('slot 6  Fern');
		expect(rows.join('\n')).toMatch(/NOW .*Gravel/);
		expect(rows.at(-1)).toContain('enter S is in hands');
	});

	test('the hand-over in three rows of letters at 80x24', () => {
		const rows = text(middleOfASong()).split('\n');
		expect(rows.slice(1, 4).every((row) => /[▀▄█]/.test(row))).toBe(true);
	});

	test('a small screen says so and still shows hand-over, song and work in four lines', () => {
		const rows = text(middleOfASong(), { columns: 40, rows: 4 }).split('\n');
		expect(rows[0]).toMatch(/ASH 4/);
		expect(rows[1]).toMatch(/Gravel/);
		expect(rows[2]).toMatch(/slot 4/);
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
					problem: 'The disk is full.',
					sinceUpMs: 0,
					warnings: [],
				},
			});
			expect(drawn).toContain('LOCKED');
			expect(drawn).toContain('REHEARSAL');
			expect(drawn).toContain('NOT SAVED');
			if (view === 'live') expect(drawn).toContain('The disk is full.');
		}
	});

	test('at most 24 bright cells in a calm moment', () => {
		const calm = middleOfASong();
		const cells = drawScreen({ ...calm, plan: { ...calm.plan, work: [] } }, small, unicode)
			.flat()
			.filter(({ style }) => style === 'bright')
			.reduce((sum, { text: words }) => sum + words.replaceAll(' ', '').length, 0);
		expect(cells).toBeGreaterThan(0);
		expect(cells).toBeLessThanOrEqual(24);
	});

	test('a second later every word stands where it stood', () => {
		const now = middleOfASong();
		const later = { ...now, nowMs: now.nowMs + 1000 };
		const places = (state: ScreenState) =>
			text(state)
				.split('\n')
				.map((row) => row.replace(/\d/g, '0'));
		expect(places(later)).toEqual(places(now));
	});

	test('at 200x60 rack, set and log stand beside the live view', () => {
		const drawn = text(middleOfASong(), { columns: 200, rows: 60 });
		expect(drawn).toMatch(/ASH .*RACK +state/);
		expect(drawn).toMatch(/SET +state/);
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
});
