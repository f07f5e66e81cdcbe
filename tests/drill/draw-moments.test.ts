// The moments of a drill: drawn by a seed, none answered before somebody answers it, each answered by its keys.

import { describe, expect, test } from 'vitest';
import { drawMoments } from '../../src/drill/draw-moments.ts';
import type { DrillMoment } from '../../src/drill/moment.ts';
import { openTrial } from '../../src/drill/trial-night.ts';
import { keyOfAction } from '../../src/keys/key-choices.ts';
import { isAsAsked } from '../../src/session/as-asked.ts';
import type { Session } from '../../src/session/session.ts';
import type { Show } from '../../src/showfile/show.ts';
import { DRILL, DRILL_KINDS, type DrillKind } from '../../src/words/drill.ts';
import { EXAMPLES, exampleShow, handClock } from './example-shows.ts';
import { pressesOf } from './presses-of.ts';

const KINDS = Object.keys(DRILL_KINDS) as DrillKind[];
const keyOf = (id: string) => keyOfAction(id, {});

function drawn(show: Show, draw: { seed: number; count: number; kinds?: readonly DrillKind[] }) {
	const { handMs } = handClock();
	return drawMoments({ show, handMs }, { ...draw, keyOf });
}

/** What the night was when it happened, and is after these keys, pressed so many milliseconds later. */
function answered(show: Show, moment: DrillMoment, { keys = moment.keys, afterMs = 1000 } = {}) {
	const { handMs, pass } = handClock();
	const { night, clock } = openTrial({ show, handMs }, moment.strike);
	clock.run(1);
	pass(afterMs);
	const before = night.session();
	expect(moment.isAnswered(before)).toBe(false);
	for (const key of pressesOf(keys)) {
		pass(400);
		night.press(key);
	}
	return { before, after: night.session(), isRight: moment.isAnswered(night.session()) };
}

/** What a show has for each kind, as one reads its file: packs, boards, songs in which several change. */
const WITHOUT: Readonly<Record<(typeof EXAMPLES)[number], readonly DrillKind[]>> = {
	'club.yaml': [],
	'festival.yaml': [],
	'first.yaml': ['two-players', 'pack', 'stuck-pedal'],
	'folk.yaml': ['pack', 'stuck-pedal'],
};

const holdsIn = ({ players }: Session) => Object.values(players).map(({ holds }) => holds);

/** What makes a moment one of its kind, told by the night before and after it. */
const IS_OF_KIND: Readonly<Record<DrillKind, (before: Session, after: Session) => boolean>> = {
	'break-retune': (before, after) =>
		holdsIn(after).some((id) => {
			const tuning = ({ instruments }: Session) =>
				instruments[id ?? '']?.context.tuning.notes.join();
			return !holdsIn(before).includes(id) && tuning(before) !== tuning(after);
		}),
	audible: (before, after) => {
		const listed = before.list.findIndex(({ key }) => key === before.next);
		return after.next !== before.next && after.next !== before.list[listed]?.key;
	},
	skip: (before, after) =>
		after.list.some(
			(item) =>
				item.kind === 'song' && item.key === before.next && item.runs.at(-1)?.how === 'skipped',
		),
	'two-players': (before, after) =>
		holdsIn(after).filter((id) => !holdsIn(before).includes(id)).length >= 2,
	pack: (before, after) => after.suspectPacks.length === before.suspectPacks.length + 1,
	'second-break': (before, after) =>
		before.incidents.length === 1 &&
		after.incidents.length === 2 &&
		Object.values(before.instruments).some(
			({ value, context }) => value === 'onBench' && context.stringsDown.length > 0,
		),
	'wrong-guitar': (_, after) => !Object.keys(after.players).every((id) => isAsAsked(after, id)),
	'stuck-pedal': (before, after) =>
		Object.keys(after.boards).some(
			(id) => after.boards[id]?.context.stuck.length !== before.boards[id]?.context.stuck.length,
		),
};

describe.each(EXAMPLES)('in %s', (file) => {
	const show = exampleShow(file);
	const ofKind = new Map(
		KINDS.map((kind) => [kind, drawn(show, { seed: 7, count: 2, kinds: [kind] })]),
	);
	const all = [...ofKind.values()].flat();

	test('there is all to drill that its file has', () => {
		const missing = KINDS.filter((kind) => ofKind.get(kind)?.length === 0);
		expect(missing).toEqual(WITHOUT[file]);
		expect(all).toHaveLength(2 * (KINDS.length - missing.length));
	});

	test('each moment is what it is called, and is answered by its keys, at once and in the last moment', () => {
		for (const moment of all) {
			const { kind } = moment;
			const { before, after, isRight } = answered(show, moment);
			expect([kind, isRight, IS_OF_KIND[kind](before, after)]).toEqual([kind, true, true]);
			const late = answered(show, moment, { afterMs: 27_000 });
			expect([kind, late.isRight]).toEqual([kind, true]);
		}
	});

	test('no moment is answered by keys that only look, nor by half of its own', () => {
		for (const { keys, ...moment } of all) {
			for (const others of [['tab', 'tab'], ['i'], keys.slice(0, -1)]) {
				const { isRight } = answered(show, { keys, ...moment }, { keys: others });
				expect([moment.words.happens, others, isRight]).toEqual([
					moment.words.happens,
					others,
					false,
				]);
			}
		}
	});

	test('the sentences of all have room at 80 columns', () => {
		for (const { words } of all) {
			expect(words.happens.length).toBeLessThanOrEqual(74);
			expect(DRILL.missed(words.right).length).toBeLessThanOrEqual(74);
		}
	});

	test('one looks on for a few seconds of the same night before it happens', () => {
		for (const { lead, strike } of all) {
			expect(strike.atMs - lead.atMs).toBeGreaterThanOrEqual(4 * 8 * 1000 - 1);
			expect(strike.records.slice(0, lead.records.length)).toEqual(lead.records);
		}
	});
});

test('the same seed gives the same moments, another one others', () => {
	const show = exampleShow('club.yaml');
	const said = (seed: number) =>
		drawn(show, { seed, count: 8 }).map(({ kind, words, strike, keys }) => [
			kind,
			words,
			strike.atMs,
			keys,
		]);
	expect(said(3)).toEqual(said(3));
	expect(said(3)).not.toEqual(said(4));
	expect(said(3)).toHaveLength(8);
	expect(new Set(said(3).map(([kind]) => kind)).size).toBe(8);
});

test('they come in the order of the show, each kind once before one comes again', () => {
	const moments = drawn(exampleShow('club.yaml'), { seed: 11, count: 12 });
	const times = moments.map(({ strike }) => strike.atMs);
	expect(times).toEqual(times.toSorted((one, other) => one - other));
	const counts = KINDS.map((kind) => moments.filter((one) => one.kind === kind).length);
	expect(Math.min(...counts)).toBe(1);
	expect(Math.max(...counts)).toBe(2);
});

test('the keys are those that the user has chosen', () => {
	const { handMs } = handClock();
	const show = exampleShow('club.yaml');
	const [moment] = drawMoments(
		{ show, handMs },
		{ seed: 1, count: 1, kinds: ['audible'], keyOf: (id) => keyOfAction(id, { jump: 'g' }) },
	);
	expect(moment?.keys[0]).toBe('g');
});
