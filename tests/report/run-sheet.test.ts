// The run sheet as text, as it is taped to the case: per song what to hand and what to press, and the work at the
// rack in the song while which it is done.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cleanText } from '../../src/base/clean-text.ts';
import { displayWidth } from '../../src/base/display-width.ts';
import { planBeforeDoors } from '../../src/plan/plan-before-doors.ts';
import { runSheet } from '../../src/report/run-sheet.ts';
import { sheetBeforeDoors } from '../../src/report/sheet-before-doors.ts';
import { chosenOf } from '../../src/report/sheet-choice.ts';
import { pageText, type SheetPage } from '../../src/report/sheet-pages.ts';
import type { Show } from '../../src/showfile/show.ts';
import { rackShow, smallShow, unmeasuredShow } from './small-show.ts';

const sheetText = (show: Show, hasBoards = false) =>
	runSheet(sheetBeforeDoors(show, planBeforeDoors(show)), {
		version: 'version 1',
		since: [],
		hasBoards,
	});

/** The lines of a song, its first one first. */
function songLines(text: string, position: number): readonly string[] {
	const lines = text.split('\n');
	const at = lines.findIndex((line) => line.startsWith(`${String(position).padStart(3)} `));
	const end = lines.findIndex((line, index) => index > at && line.startsWith('---'));
	return lines.slice(at, end).map((line) => line.trim());
}

test('a song says who gets what and what comes off, with its clock and its gap', () => {
	const text = sheetText(smallShow());
	for (const line of text.split('\n')) expect(displayWidth(line)).toBeLessThanOrEqual(80);
	expect(songLines(text, 1)).toEqual([
		expect.stringMatching(/^1 Harbour +20:00$/),
		'[ ] ASH on 1 Amber E std',
		'[ ] CLEO on 8 Cedar E std',
	]);
	expect(songLines(text, 2)).toEqual([
		expect.stringMatching(/^2 Lantern +20:04 {2}gap 0:30$/),
		'[ ] ASH on 4 Anchor drop D, off 1 Amber',
		// Gravel starts at 20:08:15; a hand-over of 15 s and this work of a minute (common practice) come before it.
		'[ ] RACK 1 Amber TOUCH UP 1:00, start by 20:07, for 3 =Gravel|x',
	]);
	expect(songLines(text, 3)[0]).toMatch(/^3 =Gravel\|x +20:08 {2}gap 0:15 TIGHT$/);
	expect(songLines(text, 4)).toContain('[ ] ASH keeps 1 Amber E std, CAPO ON 2');
	expect(text).toContain('Hearing');
});

test('behind a song without a length the clock says about, work for later songs too', () => {
	const text = sheetText(unmeasuredShow());
	expect(songLines(text, 1)[0]).toMatch(/ 20:00$/);
	// 20:00 and 4:00 of Harbour and 0:30; then 3:00, the median of 4:00, 3:00 and 3:00, and 0:15.
	expect(songLines(text, 2)[0]).toMatch(/ {2}20:04 /);
	expect(songLines(text, 2)).toContain(
		'[ ] RACK 1 Amber TOUCH UP 1:00, start by about 20:06, for 3 =Gravel|x',
	);
	expect(songLines(text, 3)[0]).toMatch(/ about 20:07 /);
	expect(songLines(text, 4)[0]).toMatch(/ about 20:11 /);
});

test('what the file notes of a song stands under its head, and of a song without notes nothing', () => {
	const plain = smallShow();
	const songs = plain.songs.map((song) =>
		song.id === 'lantern' ? { ...song, notes: 'Petra drops E by hand\nDI ch 14' } : song,
	);
	const text = sheetText({ ...plain, songs });
	expect(songLines(text, 2)[1]).toBe('note: Petra drops E by hand DI ch 14');
	expect(text.match(/note:/g)).toHaveLength(1);
});

test('what is retuned says into what and when; a capo says where it goes on and when it comes off', () => {
	const text = sheetText(rackShow());
	expect(songLines(text, 2)[0]).toMatch(/ {2}ends ring$/);
	// Amber is in drop D for the second song after the interval, and in its own tuning before.
	expect(songLines(text, 2)).toContain(
		'[ ] ASH on 1 Amber drop D, RETUNE drop D in the interval, PACK P2 (12)',
	);
	expect(text).toContain('INTERVAL 20:00 long  20:04');
	expect(text).toContain('[ ] off ASH 1 Amber, BO 5 Birch');
	expect(text).toMatch(/RACK 1 Amber RETUNE drop D \d:\d\d, start by 20:\d\d, for 2 Lantern/);
	expect(songLines(text, 3)).toContain('[ ] BO keeps 5 Birch E std, CAPO ON 2');
	expect(songLines(text, 4)).toContain('[ ] BO keeps 5 Birch E std, CAPO OFF');
});

test('cues say what to press, and on request the whole board', () => {
	const points = (hasBoards: boolean) =>
		songLines(sheetText(rackShow(), hasBoards), 1).filter((line) =>
			/^(start|Ch1|solo):/.test(line),
		);
	expect(points(false)).toEqual([
		'Ch1: BO +DRIVE',
		'solo: BO −DRIVE +DELAY eighth 300 ms  “eight bars”',
	]);
	expect(points(true)).toEqual([
		'start: BO board stays (all off)',
		'Ch1: BO +DRIVE (Drive)',
		'solo: BO −DRIVE +DELAY eighth 300 ms (Delay eighth 300 ms)  “eight',
	]);
});

test('for one player, and with what changes alone', () => {
	const show = rackShow();
	const sheet = sheetBeforeDoors(show, planBeforeDoors(show));
	const textOf = (players: readonly string[] | null, isChangesOnly: boolean) =>
		runSheet(chosenOf(sheet, { players, isChangesOnly }), {
			version: '',
			since: [],
			hasBoards: false,
		});
	expect(textOf(['ply'], false)).not.toMatch(/BO (on|keeps|\+)/);
	expect(textOf(['ply'], false)).toMatch(/^ {2}3 Tide/m);
	const changes = textOf(['ply'], true);
	expect(changes).not.toMatch(/^ {2}3 Tide/m);
	expect(changes).not.toContain('Ch1:');
	expect(changes).toContain('ASH on 1 Amber drop D');
});

test('nothing is called by its id', () => {
	const show = rackShow();
	const ids = [...show.instruments, ...show.songs, ...show.players].map(({ id }) => id);
	for (const id of ids) expect(sheetText(show)).not.toMatch(new RegExp(`(^|[^A-Za-z])${id}\\b`));
});

test('the legend names every slot of the rack, those that nobody owns too', () => {
	const sheet = sheetText(smallShow());
	expect(sheet).toContain('\nASH: 1 Amber, 4 Anchor\n');
	expect(sheet).toContain('\nSPARES: S Spare\n');
});

test('a title line too long is broken between its facts, not inside one', () => {
	const show = {
		...smallShow(),
		venue: 'The Old Wharrel Rooms by the Harbour',
		curfewMinutes: 1365,
	};
	const long = { ...show, title: 'Quay Street, the second of nights', date: '2026-06-12' };
	expect(sheetText(long).split('\n').slice(0, 2)).toEqual([
		'Quay Street, the second of nights, The Old Wharrel Rooms by the Harbour,',
		'  2026-06-12, start 20:00, curfew 22:45',
	]);
});

test('what strings stand off equal temperament stands by the tuning', () => {
	const few = { ...smallShow(), offsets: [{ tuning: 'drop D', cents: { 3: -3, 6: -2 } }] };
	const many = {
		...smallShow(),
		offsets: [{ player: 'ash', cents: { 1: -1, 2: -1, 3: -3, 4: -2, 5: -2, 6: -2 } }],
	};
	expect(songLines(sheetText(few), 2)).toContain(
		'[ ] ASH on 4 Anchor drop D, off 1 Amber, strings 6 -2, 3 -3 c',
	);
	expect(songLines(sheetText(many), 2).join(' ')).toContain(
		'off 1 Amber, strings 6 -2, 5 -2, 4 -2, 3 -3, 2 -1, 1 -1 c',
	);
	for (const line of sheetText(many).split('\n')) expect(line.length).toBeLessThanOrEqual(80);
});

test('hostile names keep every text within 80 columns, on lines of their own, and move no cursor', () => {
	fc.assert(
		fc.property(
			fc.array(hostileName, { minLength: 4, maxLength: 4 }),
			([title, name, at, gear]) => {
				const plain = rackShow();
				const show: Show = {
					...plain,
					title: title!,
					players: plain.players.map((one) => ({ ...one, name: name! })),
					instruments: plain.instruments.map((one) => ({ ...one, name: gear!, leave: gear! })),
					songs: plain.songs.map((song) => ({
						...song,
						title: title!,
						notes: at!,
						cues: song.cues.map((cue) => ({ ...cue, at: at!, say: at! })),
					})),
				};
				const sheet = sheetBeforeDoors(show, planBeforeDoors(show));
				const pages: readonly SheetPage[] = [
					{ kind: 'rack' },
					{ kind: 'radio' },
					{ kind: 'cues', player: 'bob' },
					{ kind: 'floor', player: 'ply' },
				];
				const texts = [
					runSheet(sheet, { version: 'version 1', since: [title!], hasBoards: true }),
					...pages.map((page) => pageText(sheet, page, 'version 1')),
				];
				for (const line of texts.flatMap((text) => text.split('\n'))) {
					expect(displayWidth(line)).toBeLessThanOrEqual(80);
					expect(cleanText(line)).toBe(line);
				}
			},
		),
		{ numRuns: 60 },
	);
});

/** Anything at all, and what is known to break texts. */
const hostileName = fc.oneof(
	fc.string({ unit: 'binary', minLength: 1 }),
	fc.constantFrom('x'.repeat(500), '\u001b[2J\r\n', '\u202eback', 'שלום', '漢字'.repeat(60)),
);
