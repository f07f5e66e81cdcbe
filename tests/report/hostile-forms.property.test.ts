// Texts from outside break no form of a report: JSON by its schema (ajv), CSV read by csv-parse (RFC 4180), Markdown read
// by marked (CommonMark with GitHub's tables).

import { Ajv2020 } from 'ajv/dist/2020.js';
import { parse } from 'csv-parse/sync';
import * as fc from 'fast-check';
import { lexer, type Token, type Tokens } from 'marked';
import { describe, expect, test } from 'vitest';
import { cleanText } from '../../src/base/clean-text.ts';
import { factsOfNight } from '../../src/report/night-facts.ts';
import { type NightReport, nightReport } from '../../src/report/night-report.ts';
import { nightsHtml } from '../../src/report/nights-html.ts';
import { nightsPage } from '../../src/report/nights-page.ts';
import { nightsReport } from '../../src/report/nights-report.ts';
import { forReader, type Reader } from '../../src/report/reader.ts';
import { readerMarkdown } from '../../src/report/reader-markdown.ts';
import { readerPage } from '../../src/report/reader-page.ts';
import { nightsTableCsv, tableCsv } from '../../src/report/report-csv.ts';
import { reportJson } from '../../src/report/report-json.ts';
import { reportMarkdown } from '../../src/report/report-markdown.ts';
import { reportJsonSchema } from '../../src/report/report-shape.ts';
import { tomorrowLines } from '../../src/report/tomorrow.ts';
import {
	type TomorrowPage,
	tomorrowCsv,
	tomorrowJson,
	tomorrowMarkdown,
} from '../../src/report/tomorrow-forms.ts';
import { reportKeyTold } from '../../src/words/report-keys.ts';
import { hostileParts, PIECES } from './hostile-night.ts';

const RUNS = Number(process.env.PROPERTY_RUNS ?? 30);
const hostile = fc
	.array(fc.oneof({ weight: 4, arbitrary: fc.constantFrom(...PIECES) }, fc.string()), {
		minLength: 1,
		maxLength: 5,
	})
	.map((pieces) => pieces.join(''));

const TABLES = ['incidents', 'hand-overs', 'songs', 'work', 'strings'] as const;
const PLAIN = nightReport(hostileParts('plain'));

function holds(check: (report: NightReport, text: string) => void): void {
	const each = (text: string) => check(nightReport(hostileParts(text)), text);
	for (const piece of PIECES) each(piece);
	fc.assert(fc.property(hostile, each), { numRuns: RUNS });
}

test('the data is one document that fits its schema', () => {
	const fits = new Ajv2020({ allErrors: true }).compile(reportJsonSchema(reportKeyTold));
	holds((report) => {
		const data = JSON.parse(reportJson(report));
		expect([fits(data), fits.errors]).toEqual([true, null]);
		expect(data).toEqual({ format: 2, ...JSON.parse(JSON.stringify(report)) });
	});
});

describe('tables', () => {
	test.each(TABLES)('%s is read back, and no cell begins a formula', (name) => {
		const { length } = rowsOf(tableCsv(name, PLAIN));
		holds((report) => {
			const rows = rowsOf(tableCsv(name, report));
			expect(rows).toHaveLength(length);
			for (const cell of rows.flat()) {
				// Openings named by OWASP, "CSV Injection", spaces and quotes before them too.
				expect(cell).not.toMatch(/^[\s"]*[=+\-@\uff1d\uff0b\uff0d\uff20]/u);
			}
		});
	});

	test.each(TABLES)(
		'%s of several nights has the rows of each, behind its name and day',
		(name) => {
			holds((report, text) => {
				const [names = [], ...rows] = rowsOf(tableCsv(name, report));
				const nights = [
					{ night: cleanText(text), day: '2026-06-12', report },
					{ night: 'b', day: '2026-06-13', report },
				];
				const [allNames = [], ...all] = rowsOf(nightsTableCsv(name, nights));
				expect(allNames).toEqual(['night', 'day', ...names]);
				expect(all.map((cells) => cells.slice(2))).toEqual([...rows, ...rows]);
				expect(all.slice(rows.length).map(([night, day]) => [night, day])).toEqual(
					rows.map(() => ['b', '2026-06-13']),
				);
			});
		},
	);

	test('every text is had back by taking one mark off', () => {
		holds((report) => {
			const [names = [], ...rows] = rowsOf(tableCsv('incidents', report));
			const column = (name: string): string[] =>
				rows.map((row) => (row[names.indexOf(name)] ?? '').replace(/^'/, ''));
			expect(column('words')).toEqual(report.incidents.map(({ words }) => words.join('; ')));
			expect(column('song')).toEqual(report.incidents.map(({ song }) => song ?? ''));
			expect(column('player')).toEqual(report.incidents.map(({ player }) => player ?? ''));
			expect(column('remark')).toEqual(report.incidents.map(({ remark }) => remark ?? ''));
		});
	});
});

/** Strictly: as many cells in each row as there are names. */
function rowsOf(text: string): string[][] {
	return parse(text, { relax_quotes: false, relax_column_count: false });
}

const READERS: readonly Reader[] = [
	{ who: 'tech' },
	{ who: 'production' },
	{ who: 'player', id: 'ash' },
	{ who: 'hire', firm: null },
];

describe('pages', () => {
	test.each(READERS)('of $who have the same blocks whatever is written in them', (reader) => {
		const plain = skeleton(lexer(pageOf(PLAIN, reader)));
		holds((report, text) => {
			// A name with nothing in it to be seen is refused in a show file.
			if (cleanText(text).trim() === '') return;
			const page = pageOf(report, reader);
			expect(page).not.toMatch(/[^\n\x20-\uffff]/);
			const tokens = lexer(page);
			expect(skeleton(tokens)).toEqual(plain);
			const heading = tokens.find(({ type }) => type === 'heading') as Tokens.Heading;
			expect(spaced(textOf(heading.tokens))).toBe(spaced(cleanText(text)));
		});
	});
});

describe('several nights beside one another, and the list for tomorrow', () => {
	const nightsOf = (text: string) => {
		const parts = hostileParts(text);
		const report = nightReport(parts);
		const facts = factsOfNight({ report, steps: parts.steps, folder: '/', day: '2026-06-12' });
		return { parts, report, facts, beside: nightsReport([facts]) };
	};
	const tomorrowOf = (text: string): TomorrowPage => {
		const { parts, report, facts } = nightsOf(text);
		const { steps, dayOffsetMinutes } = parts;
		const asked = { nights: [facts], report, steps, dayOffsetMinutes, folder: '/', next: null };
		return { night: cleanText(text), lines: tomorrowLines(asked), ticked: new Set() };
	};
	const tagsOf = (page: string): readonly string[] =>
		page.match(/<\/?[a-z][a-z0-9]*/gi)!.filter((tag) => !/bdi$/.test(tag));
	const eachText = (check: (text: string) => void): void => {
		holds((_, text) => {
			if (cleanText(text).trim() !== '') check(text);
		});
	};

	test('the pages have the same blocks and the same elements whatever is written in them', () => {
		const plain = nightsOf('plain').beside;
		const blocks = skeleton(lexer(readerMarkdown(nightsPage(plain))));
		const tags = tagsOf(nightsHtml(plain));
		expect(blocks.length).toBeGreaterThan(5);
		eachText((text) => {
			const { beside } = nightsOf(text);
			expect(skeleton(lexer(readerMarkdown(nightsPage(beside))))).toEqual(blocks);
			const page = nightsHtml(beside);
			expect(tagsOf(page)).toEqual(tags);
			expect(page).not.toMatch(/[\u202a-\u202e\u2066-\u2069]|(?![\n\t])\p{Cc}/u);
		});
	});

	test('the list has the same tasks, rows and keys whatever is written in them', () => {
		const plain = tomorrowOf('plain');
		const blocks = skeleton(lexer(tomorrowMarkdown(plain)));
		expect(plain.lines.length).toBeGreaterThan(3);
		eachText((text) => {
			const page = tomorrowOf(text);
			expect(skeleton(lexer(tomorrowMarkdown(page)))).toEqual(blocks);
			const [names = [], ...rows] = rowsOf(tomorrowCsv(page));
			const whys = rows.map((cells) => (cells[names.indexOf('why')] ?? '').replace(/^'/, ''));
			expect(whys).toEqual(page.lines.map(({ why }) => why));
			expect(JSON.parse(tomorrowJson(page))).toEqual({ lines: page.lines });
		});
	});
});

/** Which cautions there are goes by what is written, so they are looked at apart. */
function pageOf(whole: NightReport, reader: Reader): string {
	const report = { ...whole, cautions: [] };
	return reader.who === 'tech'
		? reportMarkdown(forReader(report, reader))
		: readerMarkdown(readerPage(report, reader));
}

/** Blocks and what stands in them, without the texts. */
function skeleton(tokens: readonly Token[]): readonly unknown[] {
	return tokens.flatMap((token): readonly unknown[] => {
		switch (token.type) {
			case 'space':
				return [];
			case 'heading':
				return [['heading', token.depth, inline(token.tokens ?? [])]];
			case 'paragraph':
				return [['paragraph', inline(token.tokens ?? [])]];
			case 'list':
				return [['list', token.ordered, (token as Tokens.List).items.map(itemOf)]];
			case 'table': {
				const { header, rows } = token as Tokens.Table;
				return [
					['table', header.length, rows.map((row) => row.map(({ tokens: own }) => inline(own)))],
				];
			}
			default:
				return [token.type];
		}
	});
}

function itemOf({ task, tokens }: Tokens.ListItem): unknown {
	return [
		task,
		skeleton(
			tokens.map((one) => (one.type === 'text' ? { ...one, type: 'paragraph' } : one)) as Token[],
		),
	];
}

/** What else than text stands in a line; nothing may. */
function inline(tokens: readonly Token[]): readonly string[] {
	return tokens.map(({ type }) => type).filter((type) => type !== 'text' && type !== 'escape');
}

const ENTITIES: Readonly<Record<string, string>> = { '&lt;': '<', '&gt;': '>', '&amp;': '&' };

function textOf(tokens: readonly Token[]): string {
	return tokens
		.map((token) =>
			token.type === 'escape'
				? token.raw.slice(1)
				: token.raw.replace(/&(?:lt|gt|amp);/g, (entity) => ENTITIES[entity] ?? entity),
		)
		.join('');
}

/** A page runs spaces together. */
function spaced(text: string): string {
	return text.replace(/ +/g, ' ').trim();
}
