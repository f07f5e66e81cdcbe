// The run sheet as paper, in Debian's browser: printed at both sizes and read back by poppler, looked at by axe-core
// (WCAG 2.2) and html-validate (the HTML standard). Where these programs are not there, that is said.

import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import axe from 'axe-core';
import { HtmlValidate } from 'html-validate';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { foundBrowser, pdfOf } from '../../src/cli/sheet/browser-pdf.ts';
import { planBeforeDoors } from '../../src/plan/plan-before-doors.ts';
import type { Paper } from '../../src/report/html-page.ts';
import type { Sheet } from '../../src/report/sheet.ts';
import { sheetBeforeDoors } from '../../src/report/sheet-before-doors.ts';
import { sheetHtml } from '../../src/report/sheet-html.ts';
import type { SheetPage } from '../../src/report/sheet-pages.ts';
import { readShow } from '../../src/showfile/read-show.ts';
import type { Show } from '../../src/showfile/show.ts';
import { type Browsing, HAS_BROWSER, openBrowser } from './browser.ts';
import { rackShow } from './small-show.ts';

const SHOWS = join(import.meta.dirname, '../../shows');

function exampleShow(name: string): Show {
	const { show, problems } = readShow((file) => readFileSync(join(SHOWS, file)), name);
	if (!show) throw new Error(JSON.stringify(problems));
	return show;
}

/** Whatever a name may hold that could break a page: markup, escapes, another direction of writing, no end. */
const HOSTILE = [
	'<script>alert(1)</script>',
	'"><img src=http://x.test/ onerror=alert(1)>',
	'</style></title>&lt;&#60;',
	'\u001b[31mred\u0007\u202eback',
	'שלום עולם',
	'Unbroken'.repeat(40),
	'e\u0301\u200d\u{1f3b8} = {{x}}',
] as const;

function hostileShow(): Show {
	let at = 0;
	const next = () => HOSTILE[at++ % HOSTILE.length]!;
	const show = rackShow();
	return {
		...show,
		title: HOSTILE[2],
		venue: next(),
		notes: next(),
		players: show.players.map((one) => ({ ...one, name: next() })),
		techs: show.techs.map((one) => ({ ...one, name: next() })),
		instruments: show.instruments.map((one) => ({
			...one,
			name: next(),
			leave: next(),
			notes: next(),
			case: next(),
		})),
		packs: show.packs.map((one) => ({ ...one, name: next(), channel: next() })),
		boards: Object.fromEntries(
			Object.entries(show.boards).map(([player, pedals]) => [
				player,
				pedals.map((one) => ({ ...one, name: next() })),
			]),
		),
		songs: show.songs.map((song) => ({
			...song,
			title: next(),
			notes: next(),
			starts: song.starts === 'drums' ? next() : song.starts,
			cues: song.cues.map((cue) => ({ ...cue, at: next(), say: next() })),
		})),
	};
}

function sheetFor(show: Show): Sheet {
	return sheetBeforeDoors(show, planBeforeDoors(show));
}

/** Every page that there is of this show. */
function everyPage({ players }: Show): readonly SheetPage[] {
	return [
		{ kind: 'run' },
		{ kind: 'rack' },
		{ kind: 'radio' },
		...players.flatMap(({ id }): readonly SheetPage[] => [
			{ kind: 'cues', player: id },
			{ kind: 'floor', player: id },
		]),
	];
}

function pageFor(
	sheet: Sheet,
	{
		paper = null,
		hasBoards = false,
		pages = everyPage(sheet.show),
	}: {
		readonly paper?: Paper | null;
		readonly hasBoards?: boolean;
		readonly pages?: readonly SheetPage[];
	} = {},
): string {
	return sheetHtml(sheet, {
		pages,
		version: 'version 3, 7F3A9C',
		since: null,
		choice: { players: null, isChangesOnly: false },
		hasBoards,
		paper,
	});
}

const shows = {
	club: () => exampleShow('club.yaml'),
	festival: () => exampleShow('festival.yaml'),
	folk: () => exampleShow('folk.yaml'),
	hostile: hostileShow,
};

test('is HTML as the standard has it', async () => {
	const validate = new HtmlValidate({
		extends: ['html-validate:recommended', 'html-validate:document'],
	});
	for (const make of Object.values(shows)) {
		const sheet = sheetFor(make());
		for (const pages of [undefined, [{ kind: 'rack' }] as const]) {
			const html = pageFor(sheet, pages ? { pages } : { hasBoards: true });
			const { results } = await validate.validateString(html);
			const found = results.flatMap(({ messages }) =>
				messages.map(({ ruleId, message, line, column }) => ({ ruleId, message, line, column })),
			);
			expect(found).toEqual([]);
		}
	}
});

/** What axe-core has against the page, run in it: the rules, and what they were broken by. */
const COMPLAINTS = `axe.run().then(({ violations }) =>
	violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html).slice(0, 3)]))`;

type Letters = Readonly<Record<'smallest' | 'slot' | 'tuning' | 'song', number>>;

/** The least sizes in points, of all that has text and of what is looked for first. */
const LETTERS = `(() => {
	const points = (node) => (Number.parseFloat(getComputedStyle(node).fontSize) * 72) / 96;
	const hasText = (node) => [...node.childNodes].some((one) => one.nodeType === 3 && one.textContent.trim());
	const least = (nodes) => Math.min(...nodes.map(points));
	const all = (query) => [...document.querySelectorAll(query)];
	return {
		smallest: least(all('body *').filter(hasText)),
		slot: least(all('.changes .slot')),
		tuning: least(all('.changes .tuning')),
		song: least(all('h3')),
	};
})()`;

describe.skipIf(!HAS_BROWSER)('in a browser', () => {
	let browsing: Browsing;
	beforeAll(async () => {
		browsing = await openBrowser();
	}, 120_000);
	afterAll(() => browsing.close());

	const opened = async (name: string, html: string) => {
		const path = join(browsing.folder, `${name}.html`);
		writeFileSync(path, html);
		const page = await browsing.context.newPage();
		const heard: string[] = [];
		page.on('console', (message) => heard.push(message.text()));
		page.on('pageerror', ({ message }) => heard.push(message));
		page.on('request', (request) => heard.push(request.url()));
		page.on('dialog', (dialog) => heard.push(dialog.message()));
		const url = pathToFileURL(path).href;
		await page.goto(url);
		return { page, heard, url };
	};

	test.each(Object.keys(shows) as (keyof typeof shows)[])(
		'%s: asks for nothing, says nothing, fits every width, and axe has no complaint',
		async (name) => {
			const { page, heard, url } = await opened(name, pageFor(sheetFor(shows[name]())));
			for (const colorScheme of ['light', 'dark'] as const) {
				for (const width of [390, 1280]) {
					await page.emulateMedia({ colorScheme });
					await page.setViewportSize({ width, height: 900 });
					const wide = await page.evaluate<number>(
						'document.documentElement.scrollWidth - document.documentElement.clientWidth',
					);
					expect({ width, over: Math.max(0, wide) }).toEqual({ width, over: 0 });
				}
				await page.evaluate(axe.source);
				const found = await page.evaluate<unknown>(COMPLAINTS);
				expect(found).toEqual([]);
			}
			expect(heard).toEqual([url]);
			await page.close();
		},
		120_000,
	);

	test('no letter is smaller than 14 points, and slot and tuning are larger than all beside them', async () => {
		const { page } = await opened('letters', pageFor(sheetFor(shows.club())));
		await page.emulateMedia({ media: 'print' });
		const { smallest, slot, tuning, song } = await page.evaluate<Letters>(LETTERS);
		expect(smallest).toBeGreaterThanOrEqual(13.99);
		// A capital is about 0.7 of its size high; 5.8 mm fill 20 minutes of arc at a metre (see DEVELOPERS.md).
		for (const size of [slot, tuning]) expect(size * 0.7 * (25.4 / 72)).toBeGreaterThan(5.8);
		expect(Math.min(slot, tuning)).toBeGreaterThan(song);
		await page.close();
	}, 120_000);

	/** The printed file's pages as words with their places, and its size in points. */
	const printed = (html: string, name: string) => {
		const browser = foundBrowser(process.env);
		const bytes = browser === null ? null : pdfOf(browser, html);
		if (bytes === null) throw new Error('not printed');
		const path = join(browsing.folder, `${name}.pdf`);
		writeFileSync(path, bytes);
		const info = execFileSync('pdfinfo', [path], { encoding: 'utf8' });
		const boxes = execFileSync('pdftotext', ['-bbox', path, '-'], { encoding: 'utf8' });
		const pages = boxes
			.split('<page ')
			.slice(1)
			.map((page) =>
				[
					...page.matchAll(
						/<word xMin="(.*?)" yMin="(.*?)" xMax="(.*?)" yMax="(.*?)">(.*?)<\/word>/g,
					),
				].map(([, left, top, right, bottom, word]) => ({
					left: Number(left),
					top: Number(top),
					right: Number(right),
					bottom: Number(bottom),
					word: unescaped(word!),
				})),
			);
		return {
			pages,
			count: Number(/^Pages: +(\d+)$/m.exec(info)?.[1]),
			size: /^Page size: +([\d.]+) x ([\d.]+)/m.exec(info)!.slice(1).map(Number),
		};
	};

	// ISO 216: 210 by 297 mm; ANSI/ASME Y14.1, size A: 8.5 by 11 in.
	const SIZES = { a4: [210, 297].map((mm) => (mm / 25.4) * 72), letter: [8.5 * 72, 11 * 72] };

	test.each([
		['club', 'a4'],
		['club', 'letter'],
		['festival', 'a4'],
		['folk', 'letter'],
	] as const)(
		'%s on %s: every song is on the paper, nothing is cut, no row goes over two pages',
		(name, paper) => {
			const whole = pageFor(sheetFor(shows[name]()), { paper, hasBoards: true });
			const { pages, count, size } = printed(whole, `${name}-${paper}`);
			// Of the cue sheet's tables only the first shows its head; the others' are heard.
			const html = whole.replaceAll(/(<table class="further">.*?)<thead>.*?<\/thead>/gs, '$1');
			for (const [at, points] of SIZES[paper].entries()) {
				expect(Math.abs((size[at] ?? 0) - points)).toBeLessThan(1);
			}
			expect(count).toBe(pages.length);
			// Every page has its number and the version, and something besides.
			for (const [at, words] of pages.entries()) {
				const foot = words.filter(({ top }) => top > (size[1] ?? 0) - 45).map(({ word }) => word);
				expect(foot.slice(0, 3).join(' ')).toBe('version 3, 7F3A9C,');
				expect(foot.slice(-3).join(' ')).toBe(`${at + 1} / ${count}`);
				expect(words.length).toBeGreaterThan(foot.length);
				// The margins are 12 mm at the sides and at the top.
				const margin = (12 / 25.4) * 72 - 1;
				for (const { left, right, top } of words) {
					expect(left).toBeGreaterThan(margin);
					expect(right).toBeLessThan((size[0] ?? 0) - margin);
					expect(top).toBeGreaterThan(margin - 8);
				}
			}
			// Every word of the file as often on the paper, feet and repeated heads aside.
			const wanted = wordCounts(textOf(html.slice(html.indexOf('<body'))));
			const found = wordCounts(
				pages
					.flat()
					.map(({ word }) => word)
					.join(' '),
			);
			const missing = [...wanted].filter(([word, times]) => (found.get(word) ?? 0) < times);
			expect(missing).toEqual([]);
			// A row stands whole on one page.
			const texts = pages.map((words) => wordCounts(words.map(({ word }) => word).join(' ')));
			const rows = [...html.matchAll(/<article[^>]*>(.*?)<\/article>/gs)].map(([, row]) =>
				wordCounts(textOf(row!)),
			);
			expect(rows.length).toBeGreaterThan(5);
			for (const row of rows) {
				const isWhole = texts.some((page) =>
					[...row].every(([word, times]) => (page.get(word) ?? 0) >= times),
				);
				expect({ row: [...row.keys()].join(' '), isWhole }).toMatchObject({ isWhole: true });
			}
		},
		180_000,
	);

	test('hostile names stay inside the paper', () => {
		const { pages, size, count } = printed(
			pageFor(sheetFor(hostileShow()), { paper: 'a4' }),
			'hostile',
		);
		expect(count).toBe(pages.length);
		for (const { left, right } of pages.flat()) {
			expect(left).toBeGreaterThan(0);
			expect(right).toBeLessThan(size[0] ?? 0);
		}
		const text = pages
			.flat()
			.map(({ word }) => word)
			.join('');
		expect(text).toContain('<script>alert(1)</script>');
		expect(text.replaceAll(/[^A-Za-z]/g, '')).toContain('UnbrokenUnbrokenUnbroken');
	}, 180_000);
});

/** The text of markup, elements apart. */
function textOf(markup: string): string {
	return unescaped(markup.replaceAll(/<\/?(bdi|strong)[^>]*>/g, '').replaceAll(/<[^>]*>/g, ' '));
}

function unescaped(text: string): string {
	return text
		.replaceAll('&lt;', '<')
		.replaceAll('&gt;', '>')
		.replaceAll('&quot;', '"')
		.replaceAll('&#39;', "'")
		.replaceAll('&apos;', "'")
		.replaceAll('&amp;', '&');
}

/** How often each word is there; browsers break words behind a hyphen, and set what is not broken as one. */
function wordCounts(text: string): ReadonlyMap<string, number> {
	const words = text.split(/[\s-]+/).filter((word) => word !== '');
	return new Map(
		Object.entries(Object.groupBy(words, (word) => word)).map(([word, all]) => [word, all!.length]),
	);
}
