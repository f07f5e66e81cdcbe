// A fresh battery in the same pack or pedal, through the real keys, and all that reads it: the rig view, a search for
// a fault, the report, tomorrow's list and the next night's file. Hours are capacity over draw (arithmetic).

import { describe, expect, test } from 'vitest';
import { nextNight } from '../../src/report/next-night.ts';
import { factsOfNight } from '../../src/report/night-facts.ts';
import { nightReport } from '../../src/report/night-report.ts';
import { nightSteps } from '../../src/report/night-steps.ts';
import { tomorrowLines } from '../../src/report/tomorrow.ts';
import { batteriesNow } from '../../src/rig/battery-now.ts';
import { writeShowFile } from '../../src/setlist/write-show-file.ts';
import { readShow } from '../../src/showfile/read-show.ts';
import { pressedNight } from '../night/pressed-night.ts';
import { showFrom } from '../plan/show-from.ts';
import { playedNight, ZERO_MS } from '../report/script-night.ts';
import { playShow } from './play.ts';

const show = showFrom(`
players: [{id: ash, name: Ash}, {id: bo, name: Bo}]
packs: [{id: P1, channel: G1, battery: {hours: 6, used: 4}}, {id: P2}]
boards: {bo: [{id: drive, name: Drive, power: {battery: 500 mAh, ma: 250, hours-used: 1}}]}
instruments:
  - {id: A1, name: Amber, slot: "1", kind: electric-6, tuning: E standard, pack: P1}
  - {id: B1, name: Birch, slot: "2", kind: electric-6, tuning: E standard,
     power: {battery: 500 mAh, ma: 50, hours-used: 3}}
songs:
  - {id: one, title: One, length: "60:00", hands: {ash: {instrument: A1}, bo: {instrument: B1}}}
  - {id: two, title: Two, length: "60:00"}
set: [one, two]
`);
const words = (screen: string) => screen.replace(/\s+/g, ' ');

describe('by the keys', () => {
	test('of the pack that is worn: w, the letter, 0; said in the footer, in the log, undone by u', () => {
		const { screen } = playShow(
			show,
			'00:00 space\n30:00 w a !screen 0 !screen\n30:05 tab tab tab tab tab !screen esc\n30:10 u tab tab tab tab tab !screen',
		);
		expect(words(screen)).toContain('- current pack is suspect 0 fresh battery');
		expect(words(screen)).toMatch(/LAST.*fresh battery in pack P1/);
		const packs = [...words(screen).matchAll(/pack P1 (\d[^,]*?)(?:,| SHORT)/g)].map(
			([, left]) => left,
		);
		expect(packs).toEqual(['6 h', '1 h 30 min']);
	});
	test('of anything else: w, 0, its number in the list, with the hours left', () => {
		const { screen } = playShow(show, '00:00 space\n30:00 w 0 !screen 3 !screen');
		expect(words(screen)).toContain('A fresh battery in what?');
		expect(words(screen)).toContain(
			'1 pack P1 1 h 30 min 2 pack P2 3 Bo Drive 30 min 4 2 Birch 6 h 30 min',
		);
		expect(words(screen)).toMatch(/LAST.*fresh battery in Bo Drive/);
	});
	test('where the show has no packs, w asks for the battery at once; where it has none at all it says so', () => {
		const bare = (more: string) =>
			showFrom(`
players: [{id: bo, name: Bo}]
instruments: [{id: B1, name: Birch, slot: "2", kind: electric-6, tuning: E standard${more}}]
songs: [{id: one, title: One, length: "4:00", hands: {bo: {instrument: B1}}}]
set: [one]
`);
		const active = playShow(
			bare(', power: {battery: 500 mAh, ma: 50}'),
			'00:00 space\n00:05 w !screen 1 !screen',
		);
		expect(words(active.screen)).toMatch(/LAST.*fresh battery in 2 Birch/);
		expect(words(playShow(bare(''), '00:00 space\n00:05 w !screen').screen)).toContain(
			'This show lists no packs and no batteries.',
		);
	});
});

describe('the hours', () => {
	const HOUR_MS = 3_600_000;
	const { night, press, pass } = pressedNight(show);
	const hours = (id: string) => {
		const left = batteriesNow(night.session(), night.screen()).find((one) => one.id === id);
		return Math.round((left?.hoursLeft ?? 0) * 10) / 10;
	};
	test('count from the change on, of a pack while it is worn', () => {
		press('space');
		pass(HOUR_MS / 2);
		expect([hours('P1'), hours('drive'), hours('B1')]).toEqual([1.5, 0.5, 6.5]);
		press('w', 'a', '0', 'w', '0', '3');
		expect([hours('P1'), hours('drive'), hours('B1')]).toEqual([6, 2, 6.5]);
		pass(HOUR_MS / 2);
		expect([hours('P1'), hours('drive'), hours('B1')]).toEqual([5.5, 1.5, 6]);
		press('w', 'a', '2');
		pass(HOUR_MS / 2);
		expect([hours('P1'), hours('drive'), hours('B1')]).toEqual([5.5, 1, 5.5]);
	});
});

test('what may have run out is likelier the fault, until it has a fresh battery', () => {
	const chance = (before: string) => {
		const { screen } = playShow(show, `00:00 space\n55:00 ${before} n b d !screen`);
		return Number(/Drive (\d+) %/.exec(screen)?.[1]);
	};
	const other = chance('m "low" enter');
	// Fresh and just changed: likelier than an untouched one, less than an empty one.
	expect(other).toBeGreaterThan(chance('w 0 3'));
});

describe('afterwards', () => {
	const script =
		'00:00 space\n30:00 w a 0\n30:10 w 0 3\n60:00 space\n60:30 space\n120:00 space\n120:10 q 1\n';
	const { records } = playedNight(show, script);
	const { steps, opened } = nightSteps(show, records);
	const report = nightReport({
		...{ show, night: 'n', isRehearsal: true, opened, steps, takenBack: 0 },
		...{ plannedZeroMs: ZERO_MS, dayOffsetMinutes: 0, damage: [] },
	});
	test('the report says it among the packs, and song by song', () => {
		expect(report.packs).toMatchObject([
			{ what: 'fresh-battery', pack: 'P1', player: 'Ash', from: null },
		]);
		expect(JSON.stringify(report)).toContain('fresh battery in Bo Drive');
	});
	test('the next file carries the hours used from the change on, and of the others with the night', () => {
		const { draft, carried } = nextNight({
			...{ night: 'n1', opened, steps, dayOffsetMinutes: 0 },
			dayOf: () => '2000-01-01',
		});
		const text = writeShowFile(draft);
		const next = readShow(() => Buffer.from(text), 'next.yaml').show!;
		expect(next.packs[0]?.battery).toEqual({ hours: 6, used: 1.5 });
		expect(next.boards.bo?.[0]?.power?.battery?.hoursUsed).toBe(1.5);
		expect(next.instruments[1]?.power?.battery?.hoursUsed).toBe(5);
		expect(carried.find(({ what }) => what === 'battery')?.text).toBe(
			"Hours used of batteries, with this night's: pack P1 1.5, Bo Drive 1.5, 2 Birch 5",
		);
	});
	test('what would not last the next show is on the list for tomorrow', () => {
		const facts = factsOfNight({ report, steps, folder: '/shows', day: '2000-01-01' });
		const lines = tomorrowLines({
			...{ nights: [facts], report, steps, dayOffsetMinutes: 0, folder: '/shows', next: null },
		});
		expect(
			lines.filter(({ text }) => text.startsWith('fresh battery')).map(({ text }) => text),
		).toEqual(['fresh battery in Bo Drive']);
	});
});
