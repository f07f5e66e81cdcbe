// What is to be done before the next show, after nights told as history; and each form of it with words that would be
// something else if they could.

import { parse } from 'csv-parse/sync';
import { describe, expect, test } from 'vitest';
import type { Entry } from '../../src/journal/entry.ts';
import { recordBeside } from '../../src/journal/new-record.ts';
import { factsOfNight } from '../../src/report/night-facts.ts';
import { nightReport } from '../../src/report/night-report.ts';
import { nightSteps } from '../../src/report/night-steps.ts';
import { nightsPage } from '../../src/report/nights-page.ts';
import { nightsReport } from '../../src/report/nights-report.ts';
import { readerMarkdown } from '../../src/report/reader-markdown.ts';
import { tomorrowLines } from '../../src/report/tomorrow.ts';
import {
	tickOf,
	tomorrowCsv,
	tomorrowJson,
	tomorrowMarkdown,
} from '../../src/report/tomorrow-forms.ts';
import { screenText } from '../../src/screen/row.ts';
import { drawTomorrow } from '../../src/screen/tomorrow-view.ts';
import type { Show } from '../../src/showfile/show.ts';
import { showOf } from '../history/three-nights.ts';

/** 20:00 UTC. */
const ZERO = Date.UTC(2026, 5, 12, 20);

const TEXT = `format: rackside/1
show: {title: Small show, date: 2026-06-12, start: "20:00", curfew: "20:05"}
players:
  - {id: ash, name: Ash, plays: guitar}
  - {id: cleo, name: Cleo, plays: bass}
instruments:
  - {id: A1, name: Amber, slot: "1", kind: electric-6, for: [ash], tuning: E standard,
     strings: [10, 13, 17, 26w, 36w, 46w], strung: {hours: 2}, hired-from: Harrow Hire, serial: X7}
  - {id: A4, name: Anchor, slot: "4", kind: electric-6, for: [ash], tuning: drop D, pack: P1}
  - {id: S1, name: Spare, slot: s, kind: electric-6, tuning: E standard, spare: true}
  - {id: C1, name: Cedar, slot: "8", kind: bass-4, for: [cleo], tuning: E standard, strung: {hours: 59.5},
     strings: [45w, 65w, 85w, 105w]}
songs:
  - {id: harbour, title: Harbour, length: "4:00", hands: {ash: {instrument: A1}, cleo: {instrument: C1}}}
  - {id: lantern, title: Lantern, length: "3:30", hands: {ash: {instrument: A4}}}
packs: [{id: P1}]
boards: {ash: [{id: drive, name: Drive}]}
stock: [{gauge: "10", count: 0}, {gauge: "17", count: 1}]
set: [harbour, {song: lantern, gap: 30s}]
`;

/** Seconds from the first song's start, then entries without their moment. */
type Told = readonly [number, ...(readonly Record<string, unknown>[])];

function lines(show: Show, night: readonly Told[], next: Show | null = null) {
	const records = night.map(([seconds, ...entries], index) =>
		recordBeside({
			...{ s: index + 1, w: 'test', at: { wallMs: ZERO + seconds * 1000, upMs: seconds * 1000 } },
			e: entries.map((entry) => ({ at: ZERO + seconds * 1000, ...entry }) as unknown as Entry),
		}),
	);
	const told = nightSteps(show, records);
	const report = nightReport({
		...{ show, night: 'n1', isRehearsal: false, ...told },
		...{ plannedZeroMs: ZERO, dayOffsetMinutes: 0, damage: [] },
	});
	const facts = factsOfNight({ report, steps: told.steps, folder: '/shows', day: '2026-06-12' });
	const found = tomorrowLines({
		...{ nights: [facts], report, steps: told.steps, dayOffsetMinutes: 0, folder: '/shows' },
		next: next && { show: next, folder: '/shows' },
	});
	return { found, facts };
}

const said = (kind: string, found: ReturnType<typeof lines>['found']) =>
	found
		.filter((one) => one.kind === kind)
		.map(({ instrument, text, why }) => [instrument, text, why]);

const began: Told = [
	0,
	{ k: 'song-began', item: '1' },
	{ k: 'handed-over', player: 'ash', instrument: 'A1', by: 'plan' },
	{ k: 'handed-over', player: 'cleo', instrument: 'C1', by: 'plan' },
];
const troubled: readonly Told[] = [
	began,
	[60, { k: 'string-broke', instrument: 'A1', player: 'ash' }],
	[70, { k: 'handed-over', player: 'ash', instrument: 'S1', by: 'stand-in', incident: 'test:2' }],
	[80, { k: 'incident-described', incident: 'test:2', string: 3 }],
	[90, { k: 'pedal-stuck', player: 'ash', pedal: 'drive' }],
	[240, { k: 'song-ended', item: '1', how: 'played' }],
	[260, { k: 'handed-over', player: 'ash', instrument: 'A4', by: 'plan' }],
	[270, { k: 'song-began', item: '2' }],
	[280, { k: 'pack-suspected', player: 'ash', pack: 'P1' }],
	[300, { k: 'put-aside', instrument: 'A4', fault: 'jack' }],
	[305, { k: 'handed-over', player: 'ash', instrument: 'S1', by: 'exchange', capo: 2 }],
	[310, { k: 'incident-noted' }],
	[312, { k: 'incident-described', incident: 'test:12', kind: 'hum', words: 'left amp' }],
	[3600, { k: 'song-ended', item: '2', how: 'played' }],
	[3700, { k: 'show-ended' }],
];

describe('after a troubled night', () => {
	const { found } = lines(showOf(TEXT), troubled);

	test('restring what broke, with which string and when; and what is due by its hours', () => {
		// Cedar was in hands for an hour and more, with 59.5 h before: a bass is due at 60.
		expect(said('restring', found)).toEqual([
			['A1', 'put on string 3 (17)', 'string 3 broke 20:01 in Harbour'],
			['C1', 'new set 45w 65w 85w 105w', '60.5 h in hands, due at 60 h'],
		]);
	});

	test('repair, with who had it and when', () => {
		expect(said('repair', found)).toEqual([
			['A4', 'repair: jack', '20:05 in Lantern, Ash had it'],
			[null, 'free the switch of Drive, Ash', 'stuck off since 20:01 in Harbour'],
			[null, 'check battery and channel of pack P1', 'suspect since 20:04 in Lantern, Ash wore it'],
			[null, 'look into: hum', '20:05 in Lantern; left amp'],
		]);
	});

	test('buy against the stock, and see to what nobody counts', () => {
		expect(said('buy', found)).toEqual([
			// One goes on, one is to be there for the next break, one is there.
			[
				null,
				'1 x 17',
				'1 in stock by the show file; restringing takes 1; 1 broke, so have as many again',
			],
			[
				null,
				'see that there are 1 x 45w, 1 x 65w, 1 x 85w, 1 x 105w',
				'the show file does not count them under stock',
			],
		]);
	});

	test('tell players, the hire firm, who has the radio list, production', () => {
		expect(said('tell', found)).toEqual([
			['A1', 'Ash: 1 Amber cannot be played as it is', 'string 3 broke'],
			['A1', 'Harrow Hire: 1 Amber', 'string 3 broke; serial X7'],
			['A4', 'Ash: 4 Anchor cannot be played as it is', 'faulty: jack'],
			[
				null,
				'whoever has the radio list: pack P1 is suspect',
				'suspect since 20:04 in Lantern, Ash wore it',
			],
			[null, 'production: 55:00 over the curfew', 'curfew 20:05'],
		]);
	});

	test('carry over what stands otherwise than the file says, and what is out', () => {
		expect(said('carry-over', found)).toEqual([
			['A1', 'is on the bench', 'so it stood at the end of the night'],
			['A4', 'is on the bench', 'so it stood at the end of the night'],
			['S1', 'capo 2 is on', 'the show file gives E standard, no capo'],
		]);
	});
});

test('a quiet night leaves nothing to do, and says so in each form', () => {
	const quiet = showOf(TEXT.replace('59.5', '1').replace('curfew: "20:05"', 'curfew: "23:00"'));
	const { found } = lines(quiet, [
		began,
		[240, { k: 'song-ended', item: '1', how: 'played' }],
		[250, { k: 'show-ended' }],
	]);
	expect(found).toEqual([]);
	const page = { night: 'Small show', lines: found, ticked: new Set<string>() };
	expect(tomorrowMarkdown(page)).toContain('Nothing is to be done.');
	expect(JSON.parse(tomorrowJson(page))).toEqual({ lines: [] });
	const drawn = drawTomorrow({ ...page, picked: 0, note: null }, { columns: 80, rows: 24 }, PLAIN);
	expect(screenText(drawn)).toContain('Nothing is to be done.');
});

const PLAIN = { isAscii: false };

test('a new song in another tuning asks for strings, another set too; the next stock counts after the night', () => {
	const next = showOf(
		TEXT.replace(
			'{id: lantern,',
			'{id: deep, title: Deep, hands: {ash: {instrument: A1, tuning: drop C}}}\n  - {id: lantern,',
		)
			.replace('set: [', 'set: [deep, ')
			.replace('strings: [10, 13, 17, 26w, 36w, 46w]', 'strings: [11, 14, 18, 28w, 38w, 50w]'),
	);
	const { found } = lines(showOf(TEXT), [began, [9, { k: 'show-ended' }]], next);
	expect(said('restring', found)[0]).toEqual([
		'A1',
		'new set 11 14 18 28w 38w 50w',
		'Deep: drop C is too far from what it is strung for; the next show file gives it other gauges',
	]);
});

describe('words that would be something else', () => {
	const WORDS = [
		'=1+1',
		'@x|y',
		'<script>a</script>',
		'[a](javascript:b)',
		'\u202egnol',
		'\u001b[2J',
		'- [x] `c`',
		`very ${'long '.repeat(40)}name`,
	];
	test.each(WORDS)('%j stays words in every form', (word) => {
		const yaml = JSON.stringify(word);
		const hostile = showOf(
			TEXT.replace('name: Amber', `name: ${yaml}`)
				.replace('name: Ash', `name: ${yaml}`)
				.replace('title: Harbour', `title: ${yaml}`)
				.replace('title: Small show', `title: ${yaml}`)
				.replace('hired-from: Harrow Hire', `hired-from: ${yaml}`)
				.replace('name: Drive', `name: ${yaml}`),
		);
		const { found, facts } = lines(hostile, [
			...troubled.slice(0, 12),
			[312, { k: 'incident-described', incident: 'test:12', kind: 'hum', words: word }],
			...troubled.slice(13),
		]);
		expect(found.length).toBeGreaterThan(8);
		const page = { night: word, lines: found, ticked: new Set(found.slice(0, 1).map(tickOf)) };
		const markdown = tomorrowMarkdown(page);
		const tasks = markdown.split('\n').filter((line) => /^- \[[ x]\] /.test(line));
		expect(tasks).toHaveLength(found.length);
		expect(tasks.filter((line) => line.startsWith('- [x]'))).toHaveLength(1);
		const tables = readerMarkdown(nightsPage(nightsReport([facts])));
		const rows = tables.split('\n').filter((line) => line.startsWith('|'));
		const cells = (line: string) => line.replaceAll(/\\./g, '').split('|').length;
		let wanted = 0;
		for (const [place, line] of rows.entries()) {
			if (rows[place + 1]?.startsWith('| ---')) wanted = cells(line);
			expect(cells(line)).toBe(wanted);
		}
		for (const text of [markdown, tables]) {
			expect(text).not.toMatch(/<|(?<!\\)`|\u202e|(?<!\\)\]\(/u);
			expect(text).not.toContain('\u001b');
		}
		const csv = parse(tomorrowCsv(page), { relax_column_count: false }) as string[][];
		expect(csv).toHaveLength(found.length + 1);
		for (const cell of csv.flat()) expect(cell).not.toMatch(/^[=+\-@\t\r]/);
		expect(JSON.parse(tomorrowJson(page)).lines).toEqual(found);
		for (const columns of [12, 80, 200]) {
			for (const rowCount of [1, 5, 24]) {
				const drawn = drawTomorrow(
					{ ...page, picked: found.length - 1, note: null },
					{ columns, rows: rowCount },
					{ isAscii: true },
				);
				expect(drawn).toHaveLength(rowCount);
				// ECMA-48: nothing but printable signs may reach the terminal.
				for (const line of screenText(drawn).split('\n')) expect(line).toMatch(/^[ -~]*$/);
				for (const line of screenText(drawn).split('\n'))
					expect(line.length).toBeLessThanOrEqual(columns);
			}
		}
	});
});

test('a line is known again by what is to be done, not by its reason', () => {
	const { found } = lines(showOf(TEXT), troubled);
	expect(new Set(found.map(tickOf)).size).toBe(found.length);
	const [first] = found;
	if (first === undefined) throw new Error('there are lines');
	expect(tickOf({ ...first, why: 'another reason' })).toBe(tickOf(first));
	expect(tickOf({ ...first, text: 'another thing' })).not.toBe(tickOf(first));
});
