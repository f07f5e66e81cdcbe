// A night with eleven events, and what its readers ask of it afterwards. Each question is answered from the form of each
// reader whom it concerns, by that form alone: the answer stands in one sentence or row of it, as Markdown and as a page.
// Times in the answers come from the script's own times, by hand; those of silence and of the night are read again from the
// journal's entries here, without the report.

import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Entry } from '../../src/journal/entry.ts';
import { nightReport } from '../../src/report/night-report.ts';
import { nightSteps } from '../../src/report/night-steps.ts';
import type { Reader } from '../../src/report/reader.ts';
import { readerMarkdown } from '../../src/report/reader-markdown.ts';
import { readerPage } from '../../src/report/reader-page.ts';
import { reportHtml } from '../../src/report/report-html.ts';
import { reportMarkdown } from '../../src/report/report-markdown.ts';
import { nightOf } from './script-night.ts';

const NAME = 'toll-house.txt';
const script = readFileSync(new URL(`../rehearsals/${NAME}`, import.meta.url), 'utf8');
/** The script's zero is the planned start. */
const PLANNED_MS = Date.UTC(2026, 4, 8, 20);
const { show, records } = nightOf(NAME, script, PLANNED_MS);
const report = nightReport({
	...{ show, night: '2026-05-08', isRehearsal: false, ...nightSteps(show, records) },
	...{ plannedZeroMs: PLANNED_MS, dayOffsetMinutes: 0, damage: [] },
});

const READERS = {
	tech: { who: 'tech' },
	production: { who: 'production' },
	ash: { who: 'player', id: 'ash' },
	bo: { who: 'player', id: 'bo' },
	cleo: { who: 'player', id: 'cleo' },
	pier: { who: 'hire', firm: 'Pier Backline' },
	quay: { who: 'hire', firm: 'Quay Sound' },
} as const satisfies Readonly<Record<string, Reader>>;
type Who = keyof typeof READERS;

type Question = {
	readonly question: string;
	/** By reader: answers, each as the pieces of one line, in order. */
	readonly answers: Readonly<Partial<Record<Who, readonly (readonly string[])[]>>>;
};

const RAN = ['Began 20:03, 3:00 late', 'ended 20:51, 4:45 late', '1:45 over'];
const CURFEW = ['Curfew 20:50: passed by 1:30'];
const LOST = [
	['3:00 before the first song'],
	['0:25 before Tissel: hand-over to Bo late'],
	['2:40 interval before Weather Eye'],
	['0:15 in Low Tide: no sound on 2 Kestrel'],
];
const TO_TELL = [
	['Ash: 2 Kestrel cannot be played as it is (faulty: electronics)'],
	['Cleo: 5 Coal cannot be played as it is (string 4 broke)'],
	['Pier Backline: 2 Kestrel', 'serial PB-0417'],
	['Quay Sound: 5 Coal', 'serial QS-2210'],
	['whoever has the radio list: pack P2 is suspect'],
];
const TO_BUY = [
	['1 x 17', '0 in stock', '1 broke'],
	['2 x 105w', '0 in stock', 'restringing takes 1', '1 broke'],
];
const KESTREL = ['2 Kestrel: repair: electronics'];
const COAL = ['5 Coal: restring (string 4 broken)'];
const DELAY = ["Bo's board: Delay is stuck on"];
const PACK = ['Pack P2: suspect'];

const QUESTIONS: readonly Question[] = [
	{ question: 'Did it run to time?', answers: { production: [RAN], tech: [RAN] } },
	{ question: 'What did the overrun come to?', answers: { production: [CURFEW], tech: [CURFEW] } },
	{ question: 'Where was time lost, and why?', answers: { production: LOST, tech: LOST } },
	{
		question: 'What happened in song 7, and how long was it silent?',
		answers: {
			tech: [
				['song 7 Low Tide', 'no sound', 'Ash', '2 Kestrel', 'backup S Spare', 'down for 0:28'],
			],
			production: [['No sound in song 7 Low Tide (2 Kestrel): sound back after 0:28, on S Spare']],
			ash: [['No sound in song 7 Low Tide (2 Kestrel): sound back after 0:28, on S Spare']],
		},
	},
	{
		question: 'What happened in song 2, and how long was it silent?',
		answers: {
			tech: [['song 2 Lantern', 'string break', '1 Amber', 'string 3', 'down for 0:14']],
			production: [
				['String 3 broke in song 2 Lantern (1 Amber): sound back after 0:14, on S Spare'],
			],
			ash: [['String 3 broke in song 2 Lantern (1 Amber): sound back after 0:14, on S Spare']],
		},
	},
	{
		question: 'What happened to the bass, and how long was it silent?',
		answers: {
			tech: [['song 10 Staithe Road', 'Cleo', '5 Coal', 'string 4', 'down for 0:21']],
			production: [['String 4 broke in song 10 Staithe Road (5 Coal): sound back after 0:21']],
			cleo: [['String 4 broke in song 10 Staithe Road (5 Coal): sound back after 0:21, on W Wren']],
		},
	},
	{
		question: 'Who was told that night?',
		answers: {
			tech: [
				['song 2 Lantern', 'told the monitor desk'],
				['song 3 Gravel', 'the radio desk was told'],
				['song 7 Low Tide', 'the front desk was told'],
			],
		},
	},
	{ question: 'Who must be told?', answers: { production: TO_TELL, tech: TO_TELL } },
	{ question: 'What must be bought?', answers: { production: TO_BUY, tech: TO_BUY } },
	{
		question: 'What is to be mended before the next show?',
		answers: {
			tech: [KESTREL, COAL, DELAY, PACK],
			production: [KESTREL, COAL, DELAY, PACK],
			ash: [['Before the next show: 2 Kestrel: repair: electronics']],
			bo: [['Before the next show', ...DELAY, ...PACK]],
			cleo: [['Before the next show', ...COAL]],
		},
	},
	{
		question: 'Which items of the hire firm are damaged, and which are not?',
		answers: {
			pier: [
				['20:38: 2 Kestrel: no sound'],
				['2 Kestrel', 'PB-0417', 'Marl Guitars', 'repair: electronics'],
				['W Wren', 'PB-0991', 'no fault noted'],
			],
			quay: [
				['20:49: 5 Coal: string 4 broke'],
				['5 Coal', 'QS-2210', 'restring (string 4 broken)'],
			],
		},
	},
	{
		question: 'How long were the items of the hire firm played?',
		answers: {
			// From 37:30 to 38:54, and from 49:21 to the last end at 51:30; 5 Coal in both parts, to 49:00.
			pier: [
				['2 Kestrel', '0:01 h'],
				['W Wren', '0:02 h'],
			],
			quay: [['5 Coal', '0:36 h']],
		},
	},
	{
		question: 'What does Ash need to know?',
		answers: { ash: [['Ash: 9 songs on 3 instruments'], ['Before the next show: 2 Kestrel']] },
	},
	{
		question: 'Which hand-overs were late?',
		answers: {
			tech: [['20:14', 'Tissel', 'Bo', '4 Heron', '0:40 of 0:25, late']],
			production: [['before Tissel: hand-over to Bo late']],
			bo: [['3 of 7 hand-overs came late, sorry for that']],
			ash: [['no hand-over noted as late']],
			cleo: [['no hand-over noted as late']],
		},
	},
	{
		question: 'Which cue was missed?',
		answers: {
			tech: [['song 5 Salt Marsh', 'out']],
			bo: [['Missed in Salt Marsh, sorry: cue out']],
		},
	},
	{
		question: 'Who had the wrong instrument, and for how long?',
		// From 42:20, where the song began, to 42:54.
		answers: { tech: [['Bo had 3 Birch', '0:34', 'Copper Wire wants 4 Heron in open G']] },
	},
	{
		question: 'What was not played, and what was called?',
		answers: {
			tech: [['8', 'Quarry', 'skipped'], ['20:41: Copper Wire is next']],
			production: [['9 songs played; not played: Quarry']],
		},
	},
	{
		question: 'Which pack is Bo on, and which is in doubt?',
		answers: {
			tech: [['Bo has P4, before P2'], ['P2 is suspect (Bo)']],
			bo: [['On pack P4 since 20:11, before that P2', 'Pack P2: suspect']],
			production: [PACK],
		},
	},
	{
		question: 'Which pedal is stuck, and since when?',
		answers: {
			tech: [["20:34: Bo's Delay is stuck on"]],
			bo: [['Delay stuck in song 6 Weather Eye']],
			production: [['20:34: Delay stuck in song 6 Weather Eye']],
		},
	},
	{
		question: 'How does the next show find the rack?',
		answers: {
			tech: [
				['2 Kestrel: is on the bench'],
				['5 Coal: is on the bench'],
				['S Spare: is in drop D', 'the show file gives E standard'],
			],
		},
	},
	{
		question: 'When was the broken guitar ready again?',
		// Broken at 8:00, restrung at 12:30.
		answers: { tech: [['song 2 Lantern', '1 Amber', 'ready again after 4:30']] },
	},
	{
		question: 'What did the house ask for?',
		answers: { tech: [['the house asks for quieter changes']] },
	},
];

/** What is nobody's business but the technician's, and what a player or a firm should not read of the others. */
const GOSSIP: Readonly<Partial<Record<Who, readonly string[]>>> = {
	production: ['told the monitor desk', 'was told', 'quieter'],
	ash: ['told', 'quieter', 'Bo', 'Cleo', 'Lou', 'PB-0417', 'Pier', 'passed by', 'stuck', 'lost'],
	bo: ['told', 'quieter', 'Ash', 'Cleo', 'Lou', 'Kestrel', 'Pier', 'passed by', 'no sound'],
	cleo: ['told', 'quieter', 'Ash', 'Bo', 'Lou', 'Kestrel', 'QS-2210', 'passed by', 'late,'],
	pier: [
		'told',
		'Ash',
		'Bo',
		'Cleo',
		'Lou',
		'late',
		'Spare',
		'Coal',
		'sound back',
		'curfew passed',
	],
	quay: ['told', 'Ash', 'Bo', 'Cleo', 'Lou', 'late', 'Wren', 'Kestrel', 'sound back'],
};

const MARKDOWN = Object.fromEntries(
	Object.entries(READERS).map(([who, reader]) => {
		const text =
			reader.who === 'tech' ? reportMarkdown(report) : readerMarkdown(readerPage(report, reader));
		return [who, text.replace(/\\(?=[^\w\s])/g, '').split('\n')];
	}),
);
const PAGES = Object.fromEntries(
	Object.entries(READERS).map(([who, reader]) => [who, linesOf(reportHtml(report, reader))]),
);

/** What somebody reads of a page, a line for each paragraph, row and item. */
function linesOf(html: string): readonly string[] {
	return html
		.replace(/<style>.*?<\/style>/s, '')
		.replace(/<\/?(?:p|li|tr|h\d|title|figcaption|summary)(?=[ >])[^>]*>/g, '\n')
		.replace(/<\/?bdi[^>]*>/g, '')
		.replace(/<[^>]+>/g, ' ')
		.replaceAll('&#39;', "'")
		.replaceAll('&quot;', '"')
		.replaceAll('&amp;', '&')
		.split('\n');
}

/** A line that has all of these in this order. */
function hasLine(lines: readonly string[], pieces: readonly string[]): boolean {
	return lines.some((line) => {
		let from = 0;
		return pieces.every((piece) => {
			const at = line.indexOf(piece, from);
			from = at + piece.length;
			return at >= 0;
		});
	});
}

describe.each(QUESTIONS)('$question', ({ answers }) => {
	test.each(Object.entries(answers))('%s finds it', (who, lines) => {
		for (const pieces of lines) {
			expect([hasLine(MARKDOWN[who] ?? [], pieces), pieces]).toEqual([true, pieces]);
			expect([hasLine(PAGES[who] ?? [], pieces), pieces]).toEqual([true, pieces]);
		}
	});
});

test.each(Object.entries(GOSSIP))('%s does not read what is for others', (who, words) => {
	for (const form of [MARKDOWN[who] ?? [], PAGES[who] ?? []]) {
		for (const word of words) {
			const at = new RegExp(`(?<![A-Za-z])${word}(?![A-Za-z])`);
			expect([word, form.filter((line) => at.test(line))]).toEqual([word, []]);
		}
	}
});

describe('the answers are those of the journal', () => {
	const entries = records.flatMap(({ e }) => e);
	const of = <Kind extends Entry['k']>(k: Kind) =>
		entries.filter((entry): entry is Extract<Entry, { k: Kind }> => entry.k === k);

	test('eleven events are in it', () => {
		expect(of('song-began')[0]?.at).toBe(PLANNED_MS + 180_000);
		expect(of('string-broke').map(({ instrument }) => instrument)).toEqual(['a1', 'c1']);
		expect(of('pack-changed').map(({ pack }) => pack)).toEqual(['P4']);
		expect(of('pedal-stuck').map(({ pedal }) => pedal)).toEqual(['delay']);
		expect(of('next-chosen')).toHaveLength(1);
		expect(of('hand-over-corrected').map(({ instrument }) => instrument)).toEqual(['b1']);
		expect(of('fault-sought').map(({ player }) => player)).toEqual(['ash']);
		expect(of('cue-reached').map(({ at }) => (at - PLANNED_MS) / 1000)).toEqual([240, 1230]);
	});

	test('each silence is from the break to what stood in for it', () => {
		const broke = of('string-broke').map(({ at }) => at);
		const stoodIn = of('handed-over').filter(({ by }) => by === 'stand-in');
		const next = (fromMs: number): number =>
			((stoodIn.find(({ at }) => at > fromMs)?.at ?? 0) - fromMs) / 1000;
		expect(broke.map(next)).toEqual([14, 21]);
		const [noted] = of('incident-noted').slice(-1);
		const [heard] = of('fault-tested').slice(-1);
		expect([noted, heard].map((one) => ((one?.at ?? 0) - PLANNED_MS) / 1000)).toEqual([2310, 2338]);
		expect(report.incidents.map(({ silenceSeconds }) => silenceSeconds)).toEqual([
			...[14, null, null, 28, 21],
		]);
	});

	test('it ended 4:45 later than the running order of the file says', () => {
		const seconds = { lengths: 180 + 210 + 195 + 180 + 240 + 210 + 225 + 180 + 200 + 240 };
		const gaps = 20 + 30 + 25 + 30 + 480 + 40 + 30 + 30 + 60;
		const lastEnd = of('song-ended').at(-1)?.at ?? 0;
		expect((lastEnd - PLANNED_MS) / 1000 - seconds.lengths - gaps).toBe(285);
	});
});
