// The report as a page: whole, without script or network, valid, and the same whatever names a file holds.

import fc from 'fast-check';
import { HtmlValidate } from 'html-validate';
import { describe, expect, test } from 'vitest';
import { nightReport } from '../../src/report/night-report.ts';
import { nightSteps } from '../../src/report/night-steps.ts';
import { reportHtml } from '../../src/report/report-html.ts';
import { timelineFor } from '../../src/report/timeline-of-night.ts';
import { busyNight } from './busy-night.ts';
import { CLUB_NIGHT, pages, renamed, scriptReport, TECH } from './looked-at-nights.ts';

const club = scriptReport(CLUB_NIGHT);

describe.each(pages())('the page of %s', (_, report, reader) => {
	const page = reportHtml(report, reader);

	test('is valid HTML by html-validate', async () => {
		const validator = new HtmlValidate({ extends: ['html-validate:standard'] });
		const { results } = await validator.validateString(page);
		expect(results.flatMap(({ messages }) => messages)).toEqual([]);
	});

	test('has no script, no handler and nothing to be loaded', () => {
		expect(page).not.toMatch(/<script|<link|<img|<iframe|\son[a-z]+=|https?:|url\((?!#)|@import/i);
		expect(page).toContain('default-src &#39;none&#39;');
		expect(page).toMatch(/<html lang="en">/);
		for (const rule of ['prefers-color-scheme: dark', '@media print']) expect(page).toContain(rule);
	});

	test('names every song, and every mark of the picture again in its table', () => {
		const table = page.slice(page.indexOf('<details'), page.indexOf('</details>'));
		for (const { title } of report.songs) expect(page).toContain(`>${title}`);
		const titles = [...page.matchAll(/<title>([^<]*)<\/title>/g)].slice(1).map(([, said]) => said!);
		expect(titles.length).toBeGreaterThan(10);
		for (const said of titles) expect(table).toContain(said);
	});
});

test('the picture has a lane for each player and each instrument, without gap or overlap in what is drawn', () => {
	const { lanes, fromMs, toMs } = timelineFor(club, TECH);
	expect(lanes.map(({ name }) => name)).toEqual([
		'Songs',
		...club.players.map(({ name }) => name),
		...club.instruments.map(({ instrument }) => instrument),
	]);
	for (const { kind, stretches } of lanes) {
		if (kind !== 'instrument') continue;
		const edges = stretches.flatMap((one) => [one.fromMs, one.toMs]);
		expect(edges[0]).toBe(fromMs);
		expect(edges.at(-1)).toBe(Math.min(toMs, club.lanes.toMs));
		for (let place = 2; place < edges.length; place += 2)
			expect(edges[place]).toBe(edges[place - 1]);
	}
});

test('both breaks and the missed cue are marks with words', () => {
	const moments = timelineFor(club, TECH).lanes.flatMap((lane) =>
		lane.moments.map((one) => [lane.name, one.what, one.words]),
	);
	expect(moments).toEqual([
		['Songs', 'cue', 'missed cues quiet part, out'],
		['4 Anchor', 'break', 'string 2'],
		['S Spare', 'break', 'string 5'],
	]);
});

test('an instrument waits from when it is not ready until it is ready or handed, and only if it is handed again', () => {
	const { load, lanes } = timelineFor(club, TECH);
	const waitingAt = (atMs: number): number =>
		lanes.filter(({ kind, stretches }) => {
			if (kind !== 'instrument') return false;
			const on = stretches.find((one) => one.fromMs <= atMs && atMs < one.toMs);
			const isWaiting = ['recheck', 'not-ready', 'work'].includes(on?.what ?? '');
			return isWaiting && stretches.some((one) => one.what === 'hands' && one.fromMs >= atMs);
		}).length;
	expect(load?.some(({ waiting }) => waiting > 0)).toBe(true);
	for (const { fromMs, toMs, waiting } of load ?? []) {
		expect(waitingAt(fromMs)).toBe(waiting);
		expect(waitingAt((fromMs + toMs) / 2)).toBe(waiting);
	}
});

test('no name can change what the page is made of', () => {
	const tags = (page: string): readonly string[] =>
		page.match(/<\/?[a-z]+/gi)!.filter((tag) => !/text|svg|path|bdi/.test(tag));
	const usual = tags(reportHtml(renamed(club, 'x'), TECH));
	const hostile = fc.oneof(
		fc.string({ unit: 'binary', minLength: 1 }),
		fc.constantFrom(
			'</title></g></svg><script>alert(1)</script>',
			'"><img src=x onerror=alert(1)>',
			'\u202eright to left\u202c אבג',
			'\u001b[2J\u001b]0;x\u0007',
			'x'.repeat(5000),
			'&lt;b&gt;',
			'}</style><b>',
		),
	);
	fc.assert(
		fc.property(hostile, (name) => {
			const page = reportHtml(renamed(club, name), TECH);
			expect(tags(page)).toEqual(usual);
			expect(page).not.toMatch(/[\u202a-\u202e\u2066-\u2069]|(?![\n\t])\p{Cc}/u);
		}),
		{ numRuns: 40 },
	);
});

test('a night of 10,000 records is a page of at most 2 MB, made in at most a second', () => {
	const night = busyNight(10_000);
	const report = nightReport({
		...{ show: night.show, night: 'busy', isRehearsal: false, dayOffsetMinutes: 0, damage: [] },
		...nightSteps(night.show, night.records),
		plannedZeroMs: null,
	});
	reportHtml(club, TECH);
	const began = performance.now();
	const page = reportHtml(report, TECH);
	const ms = performance.now() - began;
	process.stdout.write(`10,000 records: ${page.length} bytes, ${ms.toFixed(0)} ms\n`);
	expect(Buffer.byteLength(page)).toBeLessThanOrEqual(2_000_000);
	expect(ms).toBeLessThan(1000);
});
