// What a report says of the edges of what its journal holds: how long work took, until when something was wrong, which songs
// were not as planned. Each expectation is counted by hand from the times of its script.

import { describe, expect, test } from 'vitest';
import { measuredPieces } from '../../src/report/measured-pieces.ts';
import { type NightReport, nightReport } from '../../src/report/night-report.ts';
import { type NightStep, nightSteps } from '../../src/report/night-steps.ts';
import { readerMarkdown } from '../../src/report/reader-markdown.ts';
import { readerPage } from '../../src/report/reader-page.ts';
import { tableCsv } from '../../src/report/report-csv.ts';
import { reportHtml } from '../../src/report/report-html.ts';
import { reportMarkdown } from '../../src/report/report-markdown.ts';
import { loadShow } from '../scenarios/load-show.ts';
import { playedNight, ZERO_MS } from './script-night.ts';

const FESTIVAL = 'festival.yaml';

function played(
	script: string,
	file: string = FESTIVAL,
): { readonly report: NightReport; readonly steps: readonly NightStep[] } {
	const { show, records } = playedNight(
		loadShow(new URL(`../../shows/${file}`, import.meta.url).pathname),
		script,
	);
	const told = nightSteps(show, records);
	const report = nightReport({
		...{ show, night: 'n', isRehearsal: false, ...told },
		...{ plannedZeroMs: ZERO_MS, dayOffsetMinutes: 0, damage: [] },
	});
	return { report, steps: told.steps };
}

/** Gravel and Harbour on 1 Amber, 3 Birch and 5 Coal, then Lantern on 2 Anchor and 6 Clinker, from 8:30 on. */
const TO_LANTERN = `
-05:00 t 0
-00:30 enter
00:00 space
03:50 space
04:10 space
05:00 space
06:00 space
07:00 space
08:10 space
08:30 space
`;

describe('how long work took', () => {
	const { report, steps } = played(`${TO_LANTERN}11:00 t 1\n11:02 t 5\n`);
	const taken = report.work.flatMap(({ instrumentId, takenSeconds, at }) =>
		at.atMs >= ZERO_MS ? [[instrumentId, takenSeconds]] : [],
	);

	test('the second of two marks at the end has no beginning in the journal', () => {
		// Both came back at 8:30.
		expect(taken).toEqual([
			['A1', 150],
			['C1', null],
		]);
		const touchUps = measuredPieces(report, steps).filter(({ work }) => work !== 'hand-over');
		expect(touchUps.map(({ shown, seconds }) => [shown, seconds])).toEqual([['1 Amber', 150]]);
	});

	test('two hand-overs noted with one key after the other have an equal share of their gap', () => {
		// From 8:10 to 8:24.
		const night = played(`${TO_LANTERN.replace('08:30 space\n', '')}08:20 enter 2\n08:24 enter\n`);
		const given = measuredPieces(night.report, night.steps);
		expect(given.map(({ work, seconds }) => [work, seconds])).toEqual([
			['hand-over', 7],
			['hand-over', 7],
		]);
	});

	test('a piece is told with the song or gap in which it was done, and late for whom', () => {
		const [amber] = report.work.filter(({ at }) => at.atMs >= ZERO_MS);
		expect(amber).toMatchObject({ doneIn: { position: 3, song: 'Lantern' }, doneBefore: null });
		expect(reportMarkdown(report)).toContain(
			'| 12:11 | in song 3 Lantern | 1 Amber | touch-up, E standard | 2:30 of 1:00 |',
		);
		const between = played(`${TO_LANTERN}12:00 space*3\n12:10 t 1\n`).report;
		expect(between.work.at(-1)).toMatchObject({ doneIn: null, doneBefore: 'Quarry' });
		expect(tableCsv('work', between)).toContain('"Quarry"');
	});
});

describe('a pedal that was stuck', () => {
	const stuck = `${TO_LANTERN}09:00 f 0 2 enter\n12:00 space*3\n12:20 space\n`;
	const page = (report: NightReport, id: string | null): string =>
		id === null
			? readerMarkdown(readerPage(report, { who: 'production' }))
			: readerMarkdown(readerPage(report, { who: 'player', id }));

	test('is told until when and in which song', () => {
		const { report } = played(`${stuck}14:00 r 0 2\n`);
		const until = 'until 12:14, in song 4 Quarry';
		expect(report.incidents[0]?.later).toMatchObject({
			outSeconds: 300,
			backIn: { position: 4, song: 'Quarry' },
		});
		expect(reportMarkdown(report)).toContain(`song 3 Lantern, pedal, Bo, Echo is stuck ${until}`);
		expect(page(report, null)).toContain(`12:09: Echo stuck in song 3 Lantern, ${until}.`);
		expect(page(report, 'bo')).toContain(`Echo stuck in song 3 Lantern, ${until}.`);
		expect(reportHtml(report, { who: 'tech' })).toContain(`Echo is stuck ${until}`);
	});

	test('is stuck to the end where nobody put it right', () => {
		const { report } = played(stuck);
		expect(report.incidents[0]?.later).toMatchObject({ backAt: null, backIn: null });
		expect(page(report, null)).toContain('Echo stuck in song 3 Lantern, to the end.');
	});
});

describe('a wrong instrument in hands', () => {
	const wrong = `${TO_LANTERN}08:40 x 1\n`;
	const seconds = (script: string) => played(script).report.wrongHolds.map((one) => one.seconds);

	test('is wrong for its song and no longer', () => {
		// Typed as a correction of what Ash was given at 8:30; Lantern ends at 12:00, Quarry is the next.
		expect(seconds(`${wrong}12:00 d\n12:20 space\n16:00 space\n`)).toEqual([210]);
	});

	test('is wrong until it is put right', () => {
		expect(seconds(`${wrong}09:40 x 2\n12:00 d\n`)).toEqual([70]);
	});

	test('is wrong until it is taken out of those hands for another player', () => {
		expect(seconds(`${wrong}09:00 x b 1\n11:00 t 5\n`)[0]).toBe(30);
	});

	test('is wrong through a song that was left by mistake and taken up again', () => {
		expect(seconds(`${wrong}09:00 right\n09:05 left\n12:00 d\n`)).toEqual([210]);
	});

	test('is still wrong where the song is on at the end of what is known', () => {
		expect(seconds(wrong)).toEqual([null]);
	});
});

test('a ready mark is for the tuning in which it was made', () => {
	// S is marked as it stands, in E standard, and starting Lantern hands it in drop D for the broken Anchor.
	const { report } = played(
		`-05:00 t 0\n-00:30 enter\n00:00 space\n02:00 f 2 enter\n03:50 space\n04:10 space\n08:00 d\n08:30 space\n`,
	);
	const spare = report.handOvers.find(({ instrumentId }) => instrumentId === 'S1');
	expect(spare).toMatchObject({ tuning: 'drop D', readyIn: 'E standard, no capo' });
	expect(spare?.readyAgeSeconds).not.toBeNull();
	expect(reportMarkdown(report)).toContain('| not ready (was in E standard, no capo) |');
	const amber = report.handOvers.find(({ instrumentId }) => instrumentId === 'A1');
	expect(amber?.readyIn).toBeNull();
	expect(tableCsv('hand-overs', report)).toContain('"E standard, no capo"');
});

describe('songs that were not as planned', () => {
	const { report } = played(
		`-00:30 enter\n00:00 space\n02:00 j "quarry" enter\n03:50 space\n04:10 space\n08:00 space\n`,
	);

	test('passed over: once in the table, once at their place of the night, once for production', () => {
		const text = reportMarkdown(report);
		for (const [place, title] of [
			[2, 'Harbour'],
			[3, 'Lantern'],
		]) {
			expect(text.split(`| ${place} | ${title} | skipped |`)).toHaveLength(2);
			expect(text.split(`## Song ${place}: ${title}\n\n- skipped\n`)).toHaveLength(2);
		}
		const production = readerMarkdown(readerPage(report, { who: 'production' }));
		expect(production).toContain('2 songs played; not played: Harbour, Lantern');
	});

	test('begun and left at once: for production too', () => {
		const left = played(`-00:30 enter\n00:00 space\n00:03 right\n04:00 space\n`).report;
		const production = readerMarkdown(readerPage(left, { who: 'production' }));
		expect(production).toContain('begun and skipped: Gravel');
	});

	test('added and moved: every list of songs says so, with how long the file gives it', () => {
		const night = played(
			`-00:30 enter\n00:00 space\n02:00 j "old mill" enter\n03:50 d\n04:10 space\n08:00 d\n`,
			'club.yaml',
		).report;
		const mill = night.songs.find(({ song }) => song === 'oldmill');
		expect(mill).toMatchObject({ planned: null, isAdded: true });
		const length = mill?.lengthSeconds ?? 0;
		expect(length).toBeGreaterThan(0);
		const minutes = `${Math.floor(length / 60)}:${String(length % 60).padStart(2, '0')}`;
		const row = reportMarkdown(night)
			.split('\n')
			.find((line) => line.includes('| Old Mill |'));
		expect(row).toMatch(new RegExp(`\\| 3:50 \\| ${minutes} \\|.*\\| added \\|$`));
		const readers = [{ who: 'production' }, { who: 'player', id: 'ash' }] as const;
		for (const reader of readers) {
			const rows = reportHtml(night, reader).split('<tr');
			expect(rows.find((line) => line.includes('Old Mill') && line.includes('added'))).toBeTruthy();
		}
		expect(readerMarkdown(readerPage(night, { who: 'production' }))).toContain('added: Old Mill');
	});
});
