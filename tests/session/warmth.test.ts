// Given what was made ready and which temperatures were typed, which instruments are named first, and by
// how much: a third to two thirds (from memory) of the figures by hand: 600 × log2(1 − expansion × modulus × kelvins / stress), with
// 12e-6 and 203.4 GPa of music wire; the stress is 4 × 7850 × (length × pitch)², whatever the gauge.

import { describe, expect, test } from 'vitest';
import type { Entry } from '../../src/journal/entry.ts';
import { apply, applyAll } from '../../src/session/apply.ts';
import { openSession } from '../../src/session/open-session.ts';
import type { Session } from '../../src/session/session.ts';
import { driftOn, warmedRack } from '../../src/session/warmth.ts';
import { driftWords, stageDriftWords } from '../../src/words/warmth.ts';
import { showFrom } from '../showfile/show-files.ts';

// Plain strings throughout: 25.5 in at G3 506.03 MPa, 24.75 in at G3 476.70 MPa.
const show = (stage: string) =>
	showFrom(`
format: rackside/1
players: [{id: ash, name: Ash}]
instruments:
  - {id: A1, slot: "1", kind: other, tuning: "G3 B3 E4", scale: 25.5 in, strings: [10, 13, 17]}
  - {id: A2, slot: "2", kind: other, tuning: "G3 B3 E4", scale: 24.75 in, strings: [10, 13, 17]}
  - {id: N1, slot: "3", kind: nylon-6, tuning: E standard, scale: 650 mm}
songs: [{id: one, length: "3:00", hands: {ash: A1}}]
set: [one]
${stage}
`);
const STAGE = 'stage: {soundcheck: 18, temperature: 26}';

const ready = (instrument: string, at: number): Entry => ({ k: 'made-ready', at, instrument });
const typed = (celsius: number, at: number): Entry => ({ k: 'all-doubted', at, celsius });

function nightOf(stage: string, ...entries: readonly Entry[]): Session {
	return applyAll(openSession(show(stage)), entries);
}

function on(session: Session, id: string): string | null {
	const instrument = session.show.instruments.find((one) => one.id === id);
	const drift = instrument ? driftOn(session, instrument) : null;
	return drift && stageDriftWords(drift);
}

function warmthWords(session: Session, celsius: number): string | null {
	return driftWords(session.show, warmedRack(session, celsius));
}

describe('nothing made ready yet', () => {
	test('counts from soundcheck, the slackest first', () => {
		// Eight degrees: −34.06 c on the longer scale, −36.20 on the shorter.
		const said =
			'8 °C warmer: touch first 2 A2 (string 3, 12 to 24 c flat), 1 A1 (string 3, 11 to 23 c).';
		expect(warmthWords(nightOf(STAGE), 26)).toBe(said);
	});

	test('counts from what was typed before, where the file says nothing', () => {
		const said =
			'2 °C warmer: touch first 2 A2 (string 3, 3 to 6 c flat), 1 A1 (string 3, 3 to 6 c).';
		expect(warmthWords(nightOf('', typed(24, 0)), 26)).toBe(said);
		expect(warmthWords(nightOf(''), 26)).toBeNull();
	});
});

describe('made ready at different temperatures', () => {
	const session = nightOf(
		STAGE,
		typed(24, 0),
		ready('A2', 1000),
		typed(28, 2000),
		ready('A1', 3000),
	);

	test('each counts from its own, and the order follows it', () => {
		// At 26 °C: A2 two degrees warmer, −8.9 c; A1 two colder, +8.3.
		expect(warmthWords(session, 26)).toBe(
			'since each was ready: touch first 2 A2 (+2 °C, string 3, 3 to 6 c flat), 1 A1 (-2 °C, string 3, 3 to 6 c sharp).',
		);
		// At 28 °C A1 cannot have moved: A2 four degrees, −17.9 c.
		expect(warmthWords(session, 28)).toBe(
			'4 °C warmer: touch first 2 A2 (string 3, 6 to 12 c flat).',
		);
	});

	test('the page of each says since when', () => {
		expect(on(session, 'A1')).toBeNull();
		expect(on(session, 'A2')).toBe(
			'stage 4 °C warmer than when made ready at 24 °C: string 3, 6 to 12 c flat',
		);
		expect(on(session, 'N1')).toBeNull();
	});
});

describe('made ready with nothing typed', () => {
	const began: Entry = { k: 'song-began', at: 60_000, item: '1' };

	test('before the first song it still counts from soundcheck, to the stage as expected', () => {
		expect(on(nightOf(STAGE, ready('A1', 0)), 'A1')).toBe(
			'stage expected 8 °C warmer than at soundcheck: string 3, 11 to 23 c flat',
		);
	});

	test('during the show it was made ready on the stage as expected', () => {
		const session = nightOf(STAGE, began, ready('A1', 61_000));
		expect(on(session, 'A1')).toBeNull();
		expect(on(apply(session, typed(30, 70_000)), 'A1')).toBe(
			'stage 4 °C warmer than expected when made ready: string 3, 6 to 11 c flat',
		);
	});

	test('what is in hands cannot be made ready, and keeps its mark', () => {
		const handed: Entry = {
			k: 'handed-over',
			at: 2000,
			by: 'plan',
			player: 'ash',
			instrument: 'A1',
		};
		const session = nightOf(STAGE, typed(24, 0), ready('A1', 1000), handed, typed(26, 3000));
		expect(apply(session, ready('A1', 4000)).readyMarks.A1).toEqual({ atMs: 1000, celsius: 24 });
	});
});
