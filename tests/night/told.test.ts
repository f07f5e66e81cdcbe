// People have been told who plays what: a night under way changes as little of it as it can, and knows it
// still after a new start.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Entry } from '../../src/journal/entry.ts';
import { makePlan } from '../../src/plan/make-plan.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { clubShow } from '../plan/club-gear.ts';
import { slotLines } from '../plan/plan-figures.ts';
import { showFrom } from '../plan/show-from.ts';
import { playShow } from '../scenarios/play.ts';
import { RUNS } from '../session/walk.ts';
import { pressedNight } from './pressed-night.ts';

const OPEN = '{needs: {kind: electric-6, sounds: E standard}}';

/** Ash and Bo may both have any of the three in the middle of the rack; one song in two says which. */
const shared = showFrom(`
players:
  - {id: ash, name: Ash, plays: guitar}
  - {id: bo, name: Bo, plays: guitar}
instruments:
  - {id: A4, name: Anvil, slot: "4", kind: electric-6, for: [ash], tuning: drop D}
  - {id: B4, name: Birch, slot: "5", kind: electric-6, for: [bo], tuning: drop D}
  - {id: X1, name: Dace, slot: "1", kind: electric-6, tuning: E standard}
  - {id: X2, name: Flint, slot: "2", kind: electric-6, tuning: E standard}
  - {id: X3, name: Heath, slot: "3", kind: electric-6, tuning: E standard}
songs:
  - {id: s1, title: Harbour, length: "4:00", hands: {ash: {instrument: A4}, bo: {instrument: B4}}}
  - {id: s2, title: Lantern, length: "4:00", hands: {ash: ${OPEN}, bo: ${OPEN}}}
  - {id: s3, title: Gravel, length: "4:00", hands: {ash: {instrument: A4}, bo: {instrument: B4}}}
  - {id: s4, title: Pilot, length: "4:00", hands: {ash: ${OPEN}, bo: ${OPEN}}}
set: [s1, {song: s2, gap: 60s}, {song: s3, gap: 60s}, {song: s4, gap: 60s}]
`);

type Pressed = ReturnType<typeof pressedNight>;

function tolds({ night }: Pressed): readonly Extract<Entry, { k: 'plan-told' }>[] {
	return night.records().flatMap(({ e }) => e.filter((entry) => entry.k === 'plan-told'));
}

/** The plan as it would be of how things stand, had nobody been told anything. */
function planUntold({ night }: Pressed): Plan {
	const session = { ...night.session(), told: {} };
	return makePlan({ session, nowMs: night.nowMs(), plannedZeroMs: 0 });
}

function begun(show = shared): Pressed {
	const pressed = pressedNight(show);
	pressed.night.submit({ do: 'make-all-ready' }, 'script');
	pressed.press('space');
	return pressed;
}

describe('what people were told', () => {
	test('is written down with the step that begins the first song, and then only when it changes', () => {
		const before = pressedNight(shared);
		before.night.submit({ do: 'make-all-ready' }, 'script');
		before.press('f', '1', 'enter', 'r', '1');
		expect(tolds(before)).toEqual([]);
		const night = begun();
		const [first] = tolds(night);
		expect(Object.keys(first!.slots)).toEqual(['2 0 ash', '2 0 bo', '4 0 ash', '4 0 bo']);
		night.press('m', 'a', 'enter', 't', 'enter', 'i');
		expect(tolds(night)).toEqual([first]);
		night.press('f', '1', 'enter');
		expect(tolds(night).map(({ slots }) => Object.keys(slots))).toEqual([
			Object.keys(first!.slots),
			['2 0 ash', '4 0 ash'],
		]);
	});

	test('is nothing in a show that names everything, but for what stands in', () => {
		const show = clubShow(`
songs:
  - {id: s1, title: S1, length: "4:00", hands: {ash: {instrument: A4}}}
  - {id: s2, title: S2, length: "4:00", hands: {ash: {instrument: A1}}}
set: [s1, s2]
`);
		const night = begun(show);
		night.press('space', 'x', '3');
		expect(tolds(night)).toEqual([]);
		const short = begun(show);
		short.press('f', '1', 'enter', 'space');
		expect(tolds(short).map(({ slots }) => Object.keys(slots))).toEqual([['2 0 ash']]);
	});

	test('is also what a cue leaves open, though every song names what it begins with', () => {
		const show = clubShow(`
songs:
  - {id: s1, title: S1, length: "4:00", hands: {ash: {instrument: A4}}}
  - id: s2
    title: S2
    length: "4:00"
    hands: {ash: {instrument: A4}}
    cues: [{at: solo, hand: {ash: ${OPEN}}}]
set: [s1, s2]
`);
		const night = begun(show);
		expect(tolds(night).map(({ slots }) => Object.keys(slots))).toEqual([['2 1 ash']]);
		night.press('f', '1', 'enter', 'r', '1');
		const atCue = slotLines(night.night.plan(), 's2')[1];
		expect(atCue).toBe('ash A3 E standard');
		expect(slotLines(planUntold(night), 's2')[1]).toBe('ash A1 E standard');
	});

	test('holds for everybody whom a loss does not concern', () => {
		const night = begun();
		expect(slotLines(night.night.plan(), 's4')).toEqual(['ash X1 E standard', 'bo X2 E standard']);
		night.press('f', '1', 'enter');
		expect(slotLines(night.night.plan(), 's4')).toEqual(['ash X3 E standard', 'bo X2 E standard']);
		expect(slotLines(planUntold(night), 's4')).toEqual(['ash X2 E standard', 'bo X3 E standard']);
	});

	test('holds still when what was lost is back, and says in the log what it changed', () => {
		const night = begun();
		night.press('f', '1', 'enter', 'r', '1');
		expect(slotLines(night.night.plan(), 's2')).toEqual(['ash X3 E standard', 'bo X2 E standard']);
		expect(slotLines(planUntold(night), 's2')).toEqual(['ash X1 E standard', 'bo X2 E standard']);
		const [last, ...earlier] = [...night.night.screen().log].map(({ words }) => words);
		expect(last).toBe('1 Dace back on the rack');
		expect(earlier.slice(0, 2)).toEqual([
			'Ash gets 3 Heath for Lantern and Pilot, not 1 Dace',
			'1 Dace out tonight',
		]);
	});

	test('stands in a record of its own, after the step that it is told of', () => {
		const night = begun();
		night.press('f', '1', 'enter');
		const [step, told] = night.night.records().slice(-2);
		expect(step?.e.map(({ k }) => k)).toEqual(['put-aside']);
		expect(told?.e).toMatchObject([{ k: 'plan-told', of: step?.id }]);
	});

	test('is taken back and put back with its step', () => {
		const night = begun();
		const told = night.night.session().told;
		night.press('f', '1', 'enter');
		const after = night.night.session().told;
		expect(after).not.toEqual(told);
		night.press('u');
		expect(night.night.session().told).toEqual(told);
		expect(slotLines(night.night.plan(), 's2')).toEqual(['ash X1 E standard', 'bo X2 E standard']);
		night.press('y');
		expect(night.night.session().told).toEqual(after);
		night.press('u', 'u');
		expect(night.night.session().phase.value).toBe('before');
	});

	test('gives way to what the technician hands over: it stays in hands as long as the other was to', () => {
		const show = clubShow(`
songs:
  - {id: s1, title: S1, length: "4:00", hands: {ash: ${OPEN}}}
  - {id: s2, title: S2, length: "4:00", hands: {ash: ${OPEN}}}
  - {id: s3, title: S3, length: "4:00", hands: {ash: {instrument: A4}}}
  - {id: s4, title: S4, length: "4:00", hands: {ash: ${OPEN}}}
set: [s1, s2, s3, s4]
`);
		const night = begun(show);
		expect(slotLines(night.night.plan(), 's2')).toEqual(['ash A1 E standard']);
		night.press('x', '3');
		const lines = () => ['s2', 's4'].flatMap((song) => slotLines(night.night.plan(), song));
		expect(lines()).toEqual(['ash A3 E standard', 'ash A1 E standard']);
		night.press('d');
		expect(lines()).toEqual(['ash A3 E standard', 'ash A1 E standard']);
	});
});

const KEYS =
	'space|d|right|left|u|y|enter|i|f 1 enter|f 2 enter|r 1|r 2|x 1|x 3|b 4 3|b 4 0|b 2 1|b 1|t 1'.split(
		'|',
	);

test('a new start, or a look, at any moment leads to the same plan', () => {
	const pressed = fc.array(fc.constantFrom(...KEYS), { maxLength: 14 });
	fc.assert(
		fc.property(pressed, fc.constantFrom('!kill', '!state'), (keys, act) => {
			const clock = (index: number) => String(1 + index).padStart(2, '0');
			// Prompts, and that one of them was put off, do not outlive the program.
			const lines = keys.map((one, index) => `${clock(index)}:00 ${one}\n${clock(index)}:10 esc`);
			const states = (between: string) =>
				playShow(
					shared,
					[
						'-01:00 !ready\n00:00 space',
						...lines,
						between,
						'20:00 !state\n20:10 esc\n20:20 f 3 enter\n20:30 !state\n21:00 space',
					].join('\n'),
				).states.slice(-3);
			expect(states(`${clock(keys.length)}:30 ${act}`)).toEqual(states('# nothing'));
		}),
		{ numRuns: RUNS },
	);
}, 120_000);
