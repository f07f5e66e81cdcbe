// The pages of a report and of several nights in a real browser: what a reader sees on a phone and a laptop, in light and dark, and on paper.

import { execFileSync } from 'node:child_process';
import { statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import axe from 'axe-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { factsOfNight } from '../../src/report/night-facts.ts';
import { nightReport } from '../../src/report/night-report.ts';
import { nightsHtml } from '../../src/report/nights-html.ts';
import { nightsReport } from '../../src/report/nights-report.ts';
import { reportHtml } from '../../src/report/report-html.ts';
import { type Browsing, HAS_BROWSER, openBrowser } from './browser.ts';
import { hostileParts } from './hostile-night.ts';
import { CLUB_NIGHT, pages, renamed, scriptReport, TECH } from './looked-at-nights.ts';

const SIZES = { phone: { width: 360, height: 740 }, laptop: { width: 1280, height: 800 } };

// What is asked in the page, as text: the browser's own things are not among those of the program's types.
const OPEN_TABLE = "document.querySelectorAll('details').forEach((one) => { one.open = true; })";
const SEEN = `(() => {
	const { documentElement: whole } = document;
	return {
		wide: whole.scrollWidth - whole.clientWidth,
		paper: getComputedStyle(whole).backgroundColor,
	};
})()`;
const SHOWN = `(() => {
	const mark = document.activeElement;
	const said = mark.querySelector('p');
	const { width, height, left, right } = said.getBoundingClientRect();
	return {
		isSame: said.textContent === mark.querySelector('title').textContent,
		isSeen: width > 20 && height > 10 && left >= 0 && right <= innerWidth,
	};
})()`;
/** A margin of the paper in pixels, 12 mm at 96 to the inch: what reaches further is not printed. */
const MARGIN_PX = 45;
const BEYOND_PAPER = `[...document.querySelectorAll('text, bdi, p, td, th, h1, h2, li')]
	.filter((one) => {
		const { left, right, width } = one.getBoundingClientRect();
		return width > 0 && (left < -${MARGIN_PX} || right > innerWidth + ${MARGIN_PX});
	})
	.map((one) => one.textContent)`;
const VIOLATIONS = `axe.run().then(({ violations }) =>
	violations.map(({ id, nodes }) => [id, nodes[0].html]))`;

describe.skipIf(!HAS_BROWSER)('in a browser', () => {
	let browsing: Browsing;
	beforeAll(async () => {
		browsing = await openBrowser();
	});
	afterAll(() => browsing.close());

	describe.each(pages())('the page of %s', (name, report, reader) => {
		const opened = async (size: keyof typeof SIZES, colorScheme: 'light' | 'dark') => {
			const file = join(browsing.folder, `${name.replaceAll(' ', '-')}.html`);
			writeFileSync(file, reportHtml(report, reader));
			const page = await browsing.context.newPage();
			const said: string[] = [];
			page.on('console', (message) => said.push(message.text()));
			page.on('pageerror', ({ message }) => said.push(message));
			page.on('request', (request) => said.push(request.url()));
			await page.setViewportSize(SIZES[size]);
			await page.emulateMedia({ colorScheme });
			await page.goto(`file://${file}`);
			return { page, file, said };
		};

		test.each([
			['phone', 'light'],
			['phone', 'dark'],
			['laptop', 'light'],
			['laptop', 'dark'],
		] as const)(
			'on a %s in %s loads nothing, complains of nothing and is no wider than the screen',
			async (size, scheme) => {
				const { page, file, said } = await opened(size, scheme);
				await page.evaluate(OPEN_TABLE);
				const seen = await page.evaluate<{ wide: number; paper: string }>(SEEN);
				expect(seen.wide).toBe(0);
				expect(seen.paper).toBe(scheme === 'light' ? 'rgb(255, 255, 255)' : 'rgb(20, 19, 15)');
				const picture = join(browsing.folder, 'page.png');
				await page.screenshot({ path: picture, fullPage: true });
				expect(statSync(picture).size).toBeGreaterThan(20_000);
				expect(said).toEqual([`file://${file}`]);
				await page.close();
			},
		);

		test.each(['light', 'dark'] as const)('axe finds nothing against it in %s', async (scheme) => {
			const { page } = await opened('laptop', scheme);
			// Its policy keeps every script out of the page itself; the test's own is let in by the debugger.
			await page.evaluate(axe.source);
			const found = await page.evaluate(VIOLATIONS);
			expect(found).toEqual([]);
			await page.close();
		});

		test('every mark is reached by the tab key and then shows its sentence, within the screen', async () => {
			const { page } = await opened('phone', 'light');
			const marks = await page.locator('.m[tabindex="0"]').count();
			expect(marks).toBeGreaterThan(10);
			await page.locator('.skip a').focus();
			for (let press = 0; press < Math.min(marks, 30); press += 1) {
				await page.keyboard.press('Tab');
				const shown = await page.evaluate(SHOWN);
				expect(shown).toEqual({ isSame: true, isSeen: true });
			}
			await page.close();
		});

		test.each(['A4', 'Letter'] as const)(
			'on %s every song is on the paper, and nothing is cut',
			async (format) => {
				const { page } = await opened('laptop', 'dark');
				// A browser leaves out of the file what is beyond the paper, so it is asked before.
				await page.emulateMedia({ media: 'print' });
				await page.setViewportSize({ width: format === 'A4' ? 703 : 725, height: 900 });
				expect(await page.evaluate(BEYOND_PAPER)).toEqual([]);
				await page.setViewportSize(SIZES.laptop);
				await page.emulateMedia({ media: null });
				const pdf = join(browsing.folder, `${format}.pdf`);
				await page.pdf({ path: pdf, format, preferCSSPageSize: true });
				await page.close();
				const info = execFileSync('pdfinfo', [pdf], { encoding: 'utf8' });
				// ISO 216 and ANSI Y14.1, in points.
				expect(info).toMatch(
					format === 'A4' ? /595\.\d+ x 842\.\d+|595\.\d+ x 841\.\d+/ : /612 x 792/,
				);
				const text = execFileSync('pdftotext', ['-raw', pdf, '-'], { encoding: 'utf8' });
				for (const { title } of report.songs) expect(text.replace(/\s+/g, ' ')).toContain(title);
				const [width = 0, height = 0] = info
					.match(/Page size: +([\d.]+) x ([\d.]+)/)!
					.slice(1)
					.map(Number);
				const boxes = execFileSync('pdftotext', ['-bbox', pdf, '-'], { encoding: 'utf8' });
				const words = [
					...boxes.matchAll(
						/<word xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)"/g,
					),
				];
				expect(words.length).toBeGreaterThan(100);
				for (const [, left, top, right, bottom] of words) {
					expect(Number(left)).toBeGreaterThanOrEqual(0);
					expect(Number(top)).toBeGreaterThanOrEqual(0);
					expect(Number(right)).toBeLessThanOrEqual(width);
					expect(Number(bottom)).toBeLessThanOrEqual(height);
				}
			},
		);
	});

	test.each([
		['phone', 'light', 'Three nights'],
		['laptop', 'dark', 'Three nights'],
		['phone', 'dark', 'x'.repeat(3000)],
		['laptop', 'light', '\u202eאבג דהו '.repeat(20)],
	] as const)(
		'several nights on a %s in %s load nothing, are no wider than the screen, and axe finds nothing',
		async (size, scheme, title) => {
			const parts = hostileParts(title);
			const { steps } = parts;
			const report = nightReport(parts);
			const night = factsOfNight({ report, steps, folder: '/', day: '2026-06-12' });
			const file = join(browsing.folder, 'nights.html');
			writeFileSync(file, nightsHtml(nightsReport([night, { ...night, day: '2026-06-13' }])));
			const page = await browsing.context.newPage();
			const said: string[] = [];
			page.on('console', (message) => said.push(message.text()));
			page.on('request', (request) => said.push(request.url()));
			await page.setViewportSize(SIZES[size]);
			await page.emulateMedia({ colorScheme: scheme });
			await page.goto(`file://${file}`);
			expect((await page.evaluate<{ wide: number }>(SEEN)).wide).toBe(0);
			await page.evaluate(axe.source);
			expect(await page.evaluate(VIOLATIONS)).toEqual([]);
			expect(said).toEqual([`file://${file}`]);
			await page.close();
		},
	);

	test.each([
		['very long', 'x'.repeat(3000)],
		['of many words', 'so many words '.repeat(100)],
		['right to left', '\u202eאבג דהו '.repeat(20)],
		['markup', '</title></svg><img src=x onerror=alert(1)><b>'],
	])('names that are %s make no page wider than a phone', async (_, name) => {
		const file = join(browsing.folder, 'hostile.html');
		writeFileSync(file, reportHtml(renamed(scriptReport(CLUB_NIGHT), name), TECH));
		const page = await browsing.context.newPage();
		const said: string[] = [];
		page.on('console', (message) => said.push(message.text()));
		page.on('request', (request) => said.push(request.url()));
		await page.setViewportSize(SIZES.phone);
		await page.goto(`file://${file}`);
		await page.evaluate(OPEN_TABLE);
		expect((await page.evaluate<{ wide: number }>(SEEN)).wide).toBe(0);
		expect(said).toEqual([`file://${file}`]);
		await page.close();
	});
});
