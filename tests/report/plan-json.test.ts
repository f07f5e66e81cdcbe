// The plan before the doors, as the document that scripts read. Figures worked out by hand.

import { describe, expect, test } from 'vitest';
import { planBeforeDoors } from '../../src/plan/plan-before-doors.ts';
import { planJson } from '../../src/report/plan-json.ts';
import { clubShow } from '../plan/club-gear.ts';
import { showFrom } from '../plan/show-from.ts';

const show = clubShow(`
show: {title: Four songs, start: "20:00", curfew: "20:15"}
songs:
  - {id: harbour, title: Harbour, length: "4:00", hands: {ash: {instrument: A1}}}
  - {id: lantern, title: Lantern, length: "3:30", hands: {ash: {instrument: A4, tuning: drop D}}}
  - id: gravel
    title: Gravel
    length: "3:45"
    hands: {ash: {instrument: A1}, bo: {needs: {kind: acoustic-6, sounds: E standard}}}
  - {id: ferry, title: Ferry, length: "4:00", hands: {cleo: {instrument: C1, tuning: drop D}, bo: none}}
set: [harbour, lantern, {song: gravel, gap: 33s}, ferry]
`);

const document = planJson(planBeforeDoors(show), show);

test('is plain JSON, the same each time', () => {
	expect(JSON.parse(JSON.stringify(document))).toEqual(document);
	expect(JSON.stringify(planJson(planBeforeDoors(show), show))).toBe(JSON.stringify(document));
});

test('says that it is proved, and what it costs', () => {
	expect(document.proved).toBe(true);
	expect(document.bound).toBeNull();
	expect(document.cost).toEqual({
		missing: 0,
		substituted: 0,
		overGap: 0,
		lateness: 0,
		backup: 0,
		handOvers: 2,
		retunings: 1,
		preference: 0,
	});
});

test('has a slot for whoever plays, the string with the highest number first', () => {
	expect(document.slots.find(({ player }) => player === 'bo')).toEqual({
		song: 'gravel',
		position: 3,
		point: 0,
		player: 'bo',
		instrument: 'B3',
		tuning: 'E standard',
		pitches: ['E2', 'A2', 'D3', 'G3', 'B3', 'E4'],
		capo: 0,
		handOver: true,
		for: null,
	});
	expect(document.slots.filter(({ song }) => song === 'ferry')).toHaveLength(2);
	expect(document.slots.at(-2)).toMatchObject({ player: 'ash', instrument: 'A1', handOver: false });
});

test('has the work with its marks on the show clock', () => {
	// Ferry begins at 12:18: one string, 15 s, is put in its new pitch early; the touch-up of 40 s is not
	// fresh before -2:42.
	const [first, , last] = document.work;
	expect(first).toEqual({
		job: 'retune',
		instrument: 'C1',
		player: 'cleo',
		song: 'ferry',
		to: 'drop D',
		capo: 0,
		seconds: 15,
		from: '-01:00:00',
		wanted: '00:11:23',
		start: '-01:00:00',
		finish: '-00:59:45',
		slack: 4268,
		beginBy: '00:11:08',
	});
	expect([first, last]).toMatchObject([
		{ instrument: 'C1' },
		{ job: 'touch-up', instrument: 'C1', seconds: 40, from: '-00:02:42', wanted: '00:12:03' },
	]);
	// Gravel begins at 4:15 + 3:30 + 33 s = 8:18; two hand-overs are 30 s.
	expect(document.work[1]).toEqual({
		job: 'touch-up',
		instrument: 'A1',
		player: 'ash',
		song: 'gravel',
		to: 'E standard',
		capo: 0,
		seconds: 60,
		from: '00:04:15',
		wanted: '00:07:48',
		start: '00:04:15',
		finish: '00:05:15',
		slack: 153,
		beginBy: '00:06:48',
	});
});

test('has what could stand in at each hand-over, as the rack will be then', () => {
	const at = (song: string) =>
		document.standIns.filter((one) => one.song === song && one.player === 'ash');
	expect(at('harbour')[0]).toEqual({
		song: 'harbour',
		position: 1,
		point: 0,
		player: 'ash',
		for: 'A1',
		instrument: 'S1',
		readyIn: 10,
		why: 'same tuning, ready',
		reasons: [{ code: 'same-tuning' }, { code: 'ready' }],
		later: [],
		costs: [],
	});
	// At Lantern Ash gives A1 back, in another tuning, to be wiped, 10 + 15 + 60 s; the spare is ready, but for
	// one string.
	expect(at('lantern').map(({ instrument, readyIn, why }) => [instrument, readyIn, why])).toEqual([
		['S1', 70, 'retune one string'],
		['A2', 80, 'retune one string and capo 1'],
		['A1', 85, 'retune one string'],
		['B1', 70, 'retune one string, for Bo'],
		['B3', 70, 'retune one string, acoustic, for Bo'],
	]);
	// Bo is to have B3 from Gravel on, so it is nobody else's stand-in then.
	expect(at('gravel').map(({ instrument }) => instrument)).not.toContain('B3');
});

test('takes work that is done by then into account', () => {
	const night = clubShow(`
songs:
  - {id: s1, title: S1, length: "4:00", hands: {ash: {instrument: A1}}}
  - {id: s2, title: S2, length: "4:00", hands: {ash: {instrument: A4}}}
  - {id: s3, title: S3, length: "4:00", hands: {bo: {instrument: B1}}}
  - {id: s4, title: S4, length: "4:00", hands: {ash: {instrument: A1}}}
set: [s1, s2, s3, s4]
`);
	const { standIns } = planJson(planBeforeDoors(night), night);
	// A1 comes back at 4:15 for s4, and is wiped and touched up at once: ready again as s3 begins.
	expect(
		standIns.find(({ song, instrument }) => song === 's3' && instrument === 'A1'),
	).toMatchObject({
		readyIn: 10,
		why: 'same tuning, ready, for Ash',
	});
});

test('warns of what is tight and of a set that runs past the curfew', () => {
	expect(document.warnings).toEqual([
		{
			code: 'no-stand-in',
			player: 'cleo',
			instrument: 'C1',
			songs: ['ferry'],
			leftOut: [{ code: 'other-strings', instrument: 'C2', tuning: 'B standard' }],
			text: 'No backup for C1 in Ferry: C2 is strung for B standard',
		},
		{
			code: 'tight-gap',
			song: 'lantern',
			handOvers: 1,
			seconds: 15,
			gapSeconds: 15,
			text: 'Before Lantern: hand-over 0:15, gap 0:15, nothing left',
		},
		{
			code: 'tight-gap',
			song: 'gravel',
			handOvers: 2,
			seconds: 30,
			gapSeconds: 33,
			text: 'Before Gravel: 2 hand-overs 0:30, gap 0:33, 0:03 left',
		},
		{
			code: 'tight-gap',
			song: 'ferry',
			handOvers: 1,
			seconds: 15,
			gapSeconds: 15,
			text: 'Before Ferry: hand-over 0:15, gap 0:15, nothing left',
		},
		{ code: 'short-curfew', overSeconds: 78, text: 'The set ends 1:18 after the curfew' },
	]);
});

describe('the hour before the first song', () => {
	const early = (tuning: string, parts = `{ash: {instrument: A1, tuning: ${tuning}}}`) =>
		planBeforeDoors(
			clubShow(`songs: [{id: s1, title: S1, length: "4:00", hands: ${parts}}]\nset: [s1]\n`),
		);

	test('what the first song wants in the tuning of the file is ready at zero', () => {
		expect(early('E standard').work).toEqual([]);
	});

	test('what it wants otherwise is re-pitched at any time, touched up no earlier than it stays fresh', () => {
		expect(early('drop D').work).toMatchObject([
			{
				job: 'retune',
				isEarly: true,
				seconds: 15,
				fromMs: -3_600_000,
				wantedMs: -60_000,
				slackSeconds: 3525,
				beginByMs: -75_000,
			},
			{
				job: 'touch-up',
				isEarly: false,
				seconds: 45,
				fromMs: -900_000,
				wantedMs: -15_000,
				slackSeconds: 840,
				beginByMs: -60_000,
			},
		]);
	});

	test('strings with less than an hour in hands stay fresh for less long', () => {
		const show = showFrom(`
players: [{id: ash, name: Ash}]
instruments:
  - {id: N, name: N, slot: "1", kind: electric-6, tuning: E standard, strung: {hours: 0.5}}
songs: [{id: s1, title: S1, length: "4:00", hands: {ash: {instrument: N, tuning: drop D}}}]
set: [s1]
`);
		const { work } = planBeforeDoors(show);
		expect(work.map(({ fromMs }) => fromMs)).toEqual([-3_600_000, -300_000]);
	});
});

const floating = clubShow(`
songs: [{id: s1, title: S1, length: "4:00", hands: {ash: {instrument: A3, tuning: drop D}}}]
set: [s1]
`);

test('a slot on something else than the song names says for what', () => {
	const { slots, warnings } = planJson(planBeforeDoors(floating), floating);
	expect(slots).toMatchObject([{ player: 'ash', instrument: 'S1', for: 'A3', tuning: 'drop D' }]);
	expect(warnings.filter(({ code }) => code === 'missing')).toEqual([]);
});

test('a slot with nothing playable says so, with what it should have been', () => {
	const missing = {
		...floating,
		instruments: floating.instruments.map((one) =>
			one.id === 'A3' ? { ...one, instead: [] } : one,
		),
	};
	const { slots, standIns, warnings } = planJson(planBeforeDoors(missing), missing);
	expect(slots).toMatchObject([{ player: 'ash', instrument: null, tuning: 'drop D' }]);
	expect(standIns[0]).toMatchObject({ for: 'A3', instrument: 'A4', why: 'same tuning, ready' });
	expect(warnings[0]).toEqual({
		code: 'missing',
		song: 's1',
		player: 'ash',
		instrument: 'A3',
		why: { code: 'floating-bridge', instrument: 'A3', tuning: 'E standard' },
		standIn: 'A4',
		text: 'Nothing for Ash in S1; backup A4: A3 has a floating bridge and is in E standard',
	});
});

test('says what each stand-in costs later', () => {
	const night = clubShow(`
songs:
  - {id: s1, title: Harbour, length: "4:00", hands: {ash: {instrument: A1}}}
  - {id: s2, title: Lantern, length: "3:30", hands: {ash: {instrument: A4}}}
  - {id: s3, title: Gravel, length: "3:30", hands: {ash: {instrument: A1}}}
set: [s1, s2, s3]
`);
	const { standIns } = planJson(planBeforeDoors(night), night);
	const laterOf = (instrument: string) =>
		standIns.find((one) => one.song === 's1' && one.instrument === instrument)?.later;
	expect(laterOf('S1')).toEqual([]);
	// A4 tuned up for Harbour comes back 4:15 and is wanted in drop D: wipe and one string, 75 s, so 5:30, in
	// hands 15 s later. The restring of A1 would make that later, and gives way: Gravel is without A1.
	expect(laterOf('A4')).toEqual([
		'Ash plays a backup in Gravel',
		'no drop D guitar for Lantern until 5:45',
	]);
});

test('a slot has the cents that its player’s strings stand off, one a pitch, and no field without any', () => {
	const sweet = { ...show, offsets: [{ player: 'ash', tuning: 'drop D', cents: { 3: -3 } }] };
	const { slots } = planJson(planBeforeDoors(sweet), sweet);
	const cents = slots.map((slot) => [slot.song, slot.player, slot.cents]);
	expect(cents.filter(([, , one]) => one !== undefined)).toEqual([
		['lantern', 'ash', [0, 0, 0, -3, 0, 0]],
	]);
});

test('stand-ins of a song that hands over at a cue say for which of its points they are', () => {
	const cued = clubShow(`
songs:
  - id: one
    title: One
    length: "4:00"
    hands: {ash: {instrument: A1}}
    cues: [{at: V2}, {at: solo, hand: {ash: A4}}]
set: [one]
`);
	const { standIns } = planJson(planBeforeDoors(cued), cued);
	const points = standIns.map((one) => `${one.for} at ${one.point}`);
	expect([...new Set(points)]).toEqual(['A1 at 0', 'A4 at 2']);
});
