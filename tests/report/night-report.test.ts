// A night told as history, and what its report then says.

import { describe, expect, test } from 'vitest';
import type { Entry } from '../../src/journal/entry.ts';
import { recordBeside } from '../../src/journal/new-record.ts';
import type { JournalRecord } from '../../src/journal/record.ts';
import { type NightReport, nightReport } from '../../src/report/night-report.ts';
import { nightSteps } from '../../src/report/night-steps.ts';
import { tableCsv } from '../../src/report/report-csv.ts';
import { reportJson } from '../../src/report/report-json.ts';
import { reportMarkdown } from '../../src/report/report-markdown.ts';
import { entryWords } from '../../src/words/entry-words.ts';
import { smallShow } from './small-show.ts';

/** 20:00 UTC of some day. */
const ZERO = Date.UTC(2026, 5, 12, 20);
const show = smallShow();

/** Entries without their moment, seconds from the first song's start before them. */
type Told = readonly [
	seconds: number,
	...entries: readonly (Omit<Entry, 'at'> & { at?: number })[],
];

function records(...night: readonly Told[]): JournalRecord<Entry>[] {
	return night.map(([seconds, ...entries], index) =>
		recordBeside({
			...{ s: index + 1, w: 'test', at: { wallMs: ZERO + seconds * 1000, upMs: seconds * 1000 } },
			e: entries.map((entry) => ({ at: ZERO + seconds * 1000, ...entry }) as Entry),
		}),
	);
}

function reportOf(...night: readonly Told[]): NightReport {
	return nightReport({
		show,
		night: 'n1',
		isRehearsal: false,
		...nightSteps(show, records(...night)),
		plannedZeroMs: ZERO,
		dayOffsetMinutes: 0,
		damage: [],
	});
}

const handed = (player: string, instrument: string | null, by: 'plan' | 'exchange' | 'stand-in') =>
	({ k: 'handed-over', player, instrument, by }) as Omit<Entry, 'at'>;

const opening: Told[] = [
	[-60, { k: 'made-ready', instrument: 'A1' } as Omit<Entry, 'at'>],
	[
		0,
		{ k: 'song-began', item: '1' } as Omit<Entry, 'at'>,
		handed('ash', 'A1', 'plan'),
		handed('cleo', 'C1', 'plan'),
	],
];

const broken: Told[] = [
	[100, { k: 'string-broke', incident: '1', instrument: 'A1', player: 'ash' } as Omit<Entry, 'at'>],
	[115, { ...handed('ash', 'S1', 'stand-in'), incident: '1' } as Omit<Entry, 'at'>],
	[130, { k: 'incident-described', incident: '1', string: 3 } as Omit<Entry, 'at'>],
];

test('what a hand-over took while the program was off is not known', () => {
	const night = (between: Told[]) =>
		reportOf(
			...opening,
			[240, { k: 'song-ended', how: 'played' } as Omit<Entry, 'at'>],
			...between,
			[320, handed('ash', 'A4', 'plan')],
			[330, { k: 'song-began', item: '2' } as Omit<Entry, 'at'>],
		).handOvers.at(-1);
	// Lantern's gap is 30 s.
	expect(night([])).toMatchObject({ wantedSeconds: 30, takenSeconds: 80, isLate: true });
	const off = { k: 'resumed', seconds: 60, boot: '' } as Omit<Entry, 'at'>;
	expect(night([[310, off]])).toMatchObject({ takenSeconds: null, isLate: null });
	// The clock of the night goes on when the machine's is set.
	const set = { k: 'clock-set', bySeconds: 3600 } as Omit<Entry, 'at'>;
	expect(night([[310, set]])).toMatchObject({ takenSeconds: 80, isLate: true });
});

describe('songs', () => {
	const report = reportOf(
		...opening,
		[240, { k: 'song-ended', how: 'played' } as Omit<Entry, 'at'>],
		[270, { k: 'song-began', item: '3' } as Omit<Entry, 'at'>],
		[300, { k: 'song-ended', how: 'cut-short' } as Omit<Entry, 'at'>],
		[301, { k: 'show-ended' } as Omit<Entry, 'at'>],
	);

	test('have their times and what became of them, the one passed over too', () => {
		expect(report.songs.map(({ title, state }) => [title, state])).toEqual([
			['Harbour', 'played'],
			['Lantern', 'dropped'],
			['=Gravel|x', 'cut-short'],
			['Tide', 'dropped'],
		]);
		expect(report.songs[0]?.runs).toEqual([
			{
				began: { mark: '00:00:00', clock: '20:00:00', atMs: ZERO },
				ended: { mark: '00:04:00', clock: '20:04:00', atMs: ZERO + 240_000 },
				seconds: 240,
				how: 'played',
				gapSeconds: null,
			},
		]);
		expect(report.isOver).toBe(true);
	});

	test('of a night left open are not dropped', () => {
		expect(reportOf(...opening).songs.map(({ state }) => state)).toEqual([
			'on',
			'to-come',
			'to-come',
			'to-come',
		]);
	});
});

test('a hand-over says how old its ready mark was', () => {
	const [ash, cleo] = reportOf(...opening).handOvers;
	expect(ash).toMatchObject({
		player: 'Ash',
		instrument: '1 Amber',
		tuning: 'E standard',
		by: 'plan',
	});
	expect([ash?.readyAgeSeconds, cleo?.readyAgeSeconds]).toEqual([60, null]);
});

describe('a string break', () => {
	const report = reportOf(...opening, ...broken);

	test('is an incident with its song, string, stand-in and silence', () => {
		expect(report.incidents).toMatchObject([
			{ position: 1, song: 'Harbour', string: 3, standIn: 'S Spare', silenceSeconds: 15 },
		]);
		expect(report.stringsBroken).toEqual([
			{ instrument: '1 Amber', instrumentId: 'A1', count: 1, strings: [3] },
		]);
		expect(report.isClean).toBe(false);
	});

	test('is work for tomorrow until it is restrung', () => {
		expect(report.tomorrow.join()).toContain('restring (string 3 broken)');
		const after = reportOf(...opening, ...broken, [
			400,
			{ k: 'made-ready', instrument: 'A1', isRestrung: true } as Omit<Entry, 'at'>,
		]);
		expect(after.tomorrow.join()).not.toContain('restring');
	});

	test('taken back never happened', () => {
		const undone = reportOf(...opening, ...broken, [
			140,
			{ k: 'taken-back', of: 'test:5' } as Omit<Entry, 'at'>,
		]);
		expect(undone.incidents[0]?.string).toBeNull();
	});
});

describe('a wrong instrument', () => {
	const gap: Told = [240, { k: 'song-ended', how: 'played' } as Omit<Entry, 'at'>];

	test('is told with how long it was held', () => {
		const report = reportOf(
			...opening,
			gap,
			[250, handed('ash', 'S1', 'exchange')],
			[266, handed('ash', 'A4', 'exchange')],
		);
		expect(report.wrongHolds).toMatchObject([
			{
				player: 'Ash',
				held: 'S Spare in E standard',
				wanted: '4 Anchor in drop D',
				seconds: 16,
			},
		]);
	});

	test('that is corrected takes the place of what was recorded', () => {
		const report = reportOf(
			...opening,
			gap,
			[252, handed('ash', 'A4', 'plan')],
			[260, { k: 'hand-over-corrected', player: 'ash', instrument: 'S1' } as Omit<Entry, 'at'>],
		);
		expect(report.handOvers.at(-1)).toMatchObject({
			at: { mark: '00:04:12' },
			instrument: 'S Spare',
			correctedFrom: '4 Anchor',
		});
		expect(report.wrongHolds).toMatchObject([{ at: { mark: '00:04:12' }, seconds: null }]);
	});
});

describe('the first sentence', () => {
	const end: Told = [301, { k: 'show-ended' } as Omit<Entry, 'at'>];
	const songEnd: Told = [240, { k: 'song-ended', how: 'played' } as Omit<Entry, 'at'>];

	test.each([
		['Clean show: nothing went wrong.', [...opening, songEnd, end]],
		['The night is still open. Nothing has gone wrong so far.', [...opening, songEnd]],
		['The night is still open. No song has been played yet.', []],
		['The show was closed, and no song was played.', [end]],
	])('%s', (words, night) => {
		expect(reportMarkdown(reportOf(...night))).toContain(`\n${words}\n`);
	});
});

test('a pack that is suspect to the end, or an instrument found faulty, is something to look at', () => {
	const end = [
		[240, { k: 'song-ended', how: 'played' }],
		[301, { k: 'show-ended' }],
	] as unknown as readonly Told[];
	const suspect: Told = [
		40,
		{ k: 'pack-suspected', player: 'ash', pack: 'P1' } as Omit<Entry, 'at'>,
	];
	const cleared: Told = [60, { k: 'pack-cleared', pack: 'P1' } as Omit<Entry, 'at'>];
	const faulty: Told = [
		70,
		{ k: 'put-aside', instrument: 'A4', fault: 'crackle' } as Omit<Entry, 'at'>,
	];
	for (const [trouble, needs] of [
		[suspect, 'Pack P1: suspect'],
		[faulty, '4 Anchor: repair'],
	] as const) {
		const report = reportOf(...opening, trouble, ...end);
		expect(report.isClean).toBe(false);
		expect(report.tomorrow.join()).toContain(needs);
		expect(reportMarkdown(report)).toContain('\nThere is something to look at below.\n');
	}
	expect(reportOf(...opening, suspect, cleared, ...end).isClean).toBe(true);
});

describe('a song played on something else than asked for', () => {
	const gap: Told = [240, { k: 'song-ended', how: 'played' } as Omit<Entry, 'at'>];
	const begin: Told = [270, { k: 'song-began', item: '2' } as Omit<Entry, 'at'>];

	test('has a line with how long', () => {
		const report = reportOf(...opening, gap, begin, [
			370,
			{ k: 'song-ended', how: 'played' } as Omit<Entry, 'at'>,
		]);
		expect(report.otherThanAsked).toMatchObject([
			{
				position: 2,
				player: 'Ash',
				played: '1 Amber in E standard',
				asked: '4 Anchor in drop D',
				seconds: 100,
			},
		]);
		expect(reportMarkdown(report)).toContain('in E standard for 1:40; the show file says');
	});

	test('has none when the right one comes with the start', () => {
		const [seconds, ...entries] = begin;
		const right: Told = [seconds, ...entries, handed('ash', 'A4', 'plan')];
		expect(reportOf(...opening, gap, right).otherThanAsked).toEqual([]);
	});

	test('has none when it is said later that the right one was in hands from the start', () => {
		const since = { ...handed('ash', 'A4', 'exchange'), at: ZERO + 270_000 };
		const end: Told = [
			370,
			{ k: 'song-ended', how: 'played' } as Omit<Entry, 'at'>,
			{ k: 'song-began', item: '3' } as Omit<Entry, 'at'>,
		];
		const report = reportOf(...opening, gap, begin, end, [400, since]);
		expect(report.otherThanAsked).toMatchObject([{ position: 3 }]);
		expect(report.handOvers.at(-1)).toMatchObject({
			at: { mark: '00:04:30' },
			song: 'Lantern',
			instrument: '4 Anchor',
		});
	});
});

test('memos, boards and times away are told apart', () => {
	const report = reportOf(
		...opening,
		[10, { k: 'memo-written', words: '=low\u001b[31m <hum>' } as Omit<Entry, 'at'>],
		[20, { k: 'pedal-corrected', player: 'ash', pedal: 'drive', on: true } as Omit<Entry, 'at'>],
		[50, { k: 'resumed', seconds: 25, boot: '' } as Omit<Entry, 'at'>],
	);
	expect(report.memos[0]?.words).toBe('memo: =low␛[31m <hum>');
	expect(report.boardsCorrected[0]?.words).toBe("Ash's Drive is on (corrected)");
	expect(report.gaps[0]?.words).toBe('resumed after up to 0:25 off');
	expect(report.cautions.join()).toContain('safety earth');
});

test('a pedal that does not switch and a suspect pack stand in what tomorrow needs, while they do', () => {
	const before: Told[] = [
		...opening,
		[20, { k: 'pedal-corrected', player: 'ash', pedal: 'drive', on: true } as Omit<Entry, 'at'>],
		[30, { k: 'pedal-stuck', incident: '1', player: 'ash', pedal: 'drive' } as Omit<Entry, 'at'>],
		[40, { k: 'pack-suspected', player: 'ash', pack: 'P1' } as Omit<Entry, 'at'>],
		[
			45,
			{ k: 'incident-described', incident: '1', words: 'foot switch loose' } as Omit<Entry, 'at'>,
		],
	];
	const report = reportOf(...before, [300, { k: 'show-ended' } as Omit<Entry, 'at'>]);
	expect(report.tomorrow).toEqual([
		"Ash's board: Drive is stuck on",
		'Pack P1: suspect, check battery and channel',
	]);
	expect(report.incidents).toMatchObject([
		{ kind: 'pedal', player: 'Ash', words: ['Drive is stuck', 'foot switch loose'] },
	]);
	expect(report.isClean).toBe(false);
	expect(reportMarkdown(report)).toContain("Ash's Drive is stuck on");
	const mended = reportOf(
		...before,
		[50, { k: 'pedal-freed', player: 'ash', pedal: 'drive' } as Omit<Entry, 'at'>],
		[60, { k: 'pack-cleared', pack: 'P1' } as Omit<Entry, 'at'>],
	);
	expect(mended.tomorrow).toEqual([]);
	expect(mended.incidents).toHaveLength(1);
	const page = reportMarkdown(mended);
	expect(page).toContain("Ash's Drive works again");
	expect(page).toContain('pack P1 is fine again');
});

describe('on paper', () => {
	const report = reportOf(...opening, ...broken, [
		150,
		{ k: 'memo-written', words: '<script>x</script>' } as Omit<Entry, 'at'>,
	]);

	test('a page shows what happened in a song, and nothing that a browser would run', () => {
		const page = reportMarkdown(report);
		const song = page.slice(page.indexOf('## Song 1: Harbour'));
		expect(song).toContain('20:01: string break on 1 Amber, Ash');
		expect(song).toContain('Ash has S Spare, backup for 1 Amber');
		expect(page).toContain('# Small &lt;b&gt;show&lt;/b&gt;');
		expect(page).not.toMatch(/<script|<b>/);
	});

	test('tables carry one row each, and no formula', () => {
		expect(tableCsv('incidents', report).split('\r\n')).toHaveLength(3);
		expect(tableCsv('incidents', report)).toContain(
			'"string break","Ash","1 Amber","3","S Spare","15"',
		);
		expect(tableCsv('hand-overs', report).split('\r\n')).toHaveLength(5);
	});

	test('JSON is one document', () => {
		expect(JSON.parse(reportJson(report))).toMatchObject({
			format: 2,
			night: 'n1',
		});
	});
});

test('a kind of a newer version has words too', () => {
	expect(entryWords({ k: 'moon-rose', at: 0 } as unknown as Entry, show)).toContain('moon-rose');
});

test('a list changed on the way is told, and a dropped song takes no number', () => {
	const entry = (one: object) => one as Omit<Entry, 'at'>;
	const report = reportOf(
		...opening,
		[10, entry({ k: 'song-moved', item: '4', before: '2', isEncore: false })],
		[20, entry({ k: 'song-dropped', item: '2' })],
		[30, entry({ k: 'song-inserted', item: '5', song: 'lantern', before: null, isEncore: true })],
		[40, entry({ k: 'song-dropped', item: '3' })],
		[50, entry({ k: 'song-restored', item: '3' })],
	);
	expect(report.songs[0]?.happened.map(({ words }) => words)).toEqual(
		expect.arrayContaining([
			'Tide moved before Lantern',
			'Lantern dropped',
			'Lantern added at the end of the encore',
			'=Gravel|x dropped',
			'=Gravel|x added again',
		]),
	);
	expect(report.songs.map(({ position, song, state }) => [position, song, state])).toEqual([
		[1, 'harbour', 'on'],
		[2, 'tide', 'to-come'],
		[null, 'lantern', 'dropped'],
		[3, 'gravel', 'to-come'],
		[4, 'lantern', 'to-come'],
	]);
	expect(reportMarkdown(report)).toMatch(/\| - \| Lantern/);
});

test('what the file has no more after it was read again still has its name, and the reading is told', () => {
	const entry = (one: object) => one as Omit<Entry, 'at'>;
	const { instruments } = show;
	const without = { ...show, instruments: instruments.filter(({ id }) => id !== 'A1') };
	const report = reportOf(
		...opening,
		[240, entry({ k: 'song-ended', how: 'played' })],
		[255, entry({ k: 'song-began', item: '2' }), handed('ash', 'A4', 'plan')],
		[300, entry({ k: 'show-read-again', show: without })],
	);
	expect(report.handOvers[0]).toMatchObject({ instrument: '1 Amber' });
	expect(report.songs[1]?.happened.at(-1)?.words).toBe(
		'the show file was reloaded; instruments gone: 1 Amber',
	);
});

test('who stays, what is named for tonight and what was called next have their words', () => {
	const words = (entry: Omit<Entry, 'at'>) => entryWords({ ...entry, at: 0 } as Entry, show);
	const stayed = { k: 'stayed', item: '2', player: 'ash', instrument: 'S1' };
	expect(words({ ...stayed, capo: 2 } as Omit<Entry, 'at'>)).toBe(
		'Ash keeps S Spare for Lantern, capo 2',
	);
	expect(words({ ...stayed, instrument: null } as Omit<Entry, 'at'>)).toBe(
		'Ash keeps hands empty for Lantern',
	);
	const tuning = { name: 'drop D', notes: ['D2', 'A2', 'D3', 'G3', 'B3', 'E4'] };
	const part = { kind: 'named', instrument: 'S1', tuning, capo: 0, leave: null, pack: null };
	const named = { k: 'named-tonight', item: '2', player: 'ash' };
	expect(words({ ...named, part } as Omit<Entry, 'at'>)).toBe(
		'Lantern tonight: Ash has S Spare, drop D',
	);
	expect(words({ ...named, part: null } as Omit<Entry, 'at'>)).toBe(
		'Lantern tonight: Ash as the song says',
	);
	const called = { k: 'next-chosen', item: '9', inserted: { song: 'tide', before: '2' } };
	expect(words(called as Omit<Entry, 'at'>)).toBe('Tide added in place of Lantern');
});
