// The order in which work is shown, against all orders of some pieces made up by chance: in one piece and in
// two, with hands that are busy now and then, in an interval and outside of one.

import { describe, expect, test } from 'vitest';
import { freeClock } from '../../../src/plan/schedule/free-clock.ts';
import { orderWork } from '../../../src/plan/schedule/order-work.ts';
import { orderShown, type ShownPiece } from '../independent/order-shown.ts';
import { type Busy, workingClock } from '../independent/working-clock.ts';
import { type Chance, chance } from '../oracle/chance.ts';

const CASES = Number(process.env.ORDER_CASES ?? 400);
const NOW = 100;
const INTERVAL_ENDS = 700;

type Case = { readonly pieces: readonly ShownPiece[]; readonly busy: readonly Busy[] };

function chanceCase(dice: Chance, isBusy: boolean): Case {
	const count = 3 + dice.below(5);
	const room = dice.of([15, 40, 120]);
	const pieces: ShownPiece[] = [];
	for (let section = 0; pieces.length < count; section += 1) {
		const common = { instrument: `i${section}`, section };
		const from = dice.is(0.5) ? dice.below(NOW) : dice.below(NOW + count * 60);
		const seconds = 15 + dice.below(60);
		const wanted = Math.max(from, NOW) + seconds + dice.below(count * room);
		if (pieces.length + 1 < count && dice.is(0.4)) {
			const back = Math.min(from, dice.below(NOW + 60));
			const last = 10 + dice.below(40);
			const fresh = Math.max(NOW, back) + seconds + 90 + dice.below(200);
			const due = Math.max(wanted, fresh) + last;
			pieces.push(
				{ ...common, part: 'first', seconds, from: back, wanted: due - last },
				{ ...common, part: 'last', seconds: last, from: fresh, wanted: due },
			);
		} else {
			pieces.push({ ...common, part: 'whole', seconds, from, wanted });
		}
	}
	return { pieces, busy: isBusy ? windows(dice) : [] };
}

function windows(dice: Chance): readonly Busy[] {
	const busy: Busy[] = [];
	for (let time = dice.below(90); time < 900; time += 20 + dice.below(150)) {
		const to = time + 5 + dice.below(40);
		busy.push({ from: time, to });
		time = to;
	}
	return busy;
}

type Line = { readonly piece: ShownPiece; readonly start: number; readonly finish: number };

function planned({ pieces, busy }: Case, isInterval: boolean): readonly Line[] {
	const uses = new Map(pieces.map(({ section }) => [section, {}]));
	const timed = orderWork(
		pieces.map((piece) => ({
			piece,
			seconds: piece.seconds,
			releaseMs: piece.from * 1000,
			dueMs: piece.wanted * 1000,
			isEarly: piece.part === 'first',
			of: uses.get(piece.section)!,
		})),
		{
			nowMs: NOW * 1000,
			clock: freeClock(busy.map(({ from, to }) => ({ fromMs: from * 1000, untilMs: to * 1000 }))),
			intervalEndsMs: isInterval ? INTERVAL_ENDS * 1000 : null,
		},
	);
	return timed.map(({ piece: { piece }, startMs, finishMs }) => ({
		piece,
		start: startMs / 1000,
		finish: finishMs / 1000,
	}));
}

function figures(lines: readonly Line[]) {
	const lates = lines.map(({ piece, finish }) => Math.max(0, finish - piece.wanted));
	return { worst: Math.max(...lates), inAll: lates.reduce((sum, late) => sum + late, 0) };
}

function names(lines: readonly Line[]): readonly string[] {
	return lines.map(({ piece: { instrument, part } }) => `${instrument} ${part}`);
}

/** The pieces by the order that the list goes by where nothing is late in it. */
function ranked({ pieces }: Case, isInterval: boolean): readonly ShownPiece[] {
	const rank = ({ part, from, wanted }: ShownPiece): readonly number[] => [
		isInterval && part === 'first' && from < INTERVAL_ENDS ? 0 : 1,
		from > NOW ? 1 : 0,
		wanted,
	];
	return pieces.toSorted((one, other) => {
		const [mine, theirs] = [rank(one), rank(other)];
		return mine.map((n, i) => n - theirs[i]!).find((n) => n !== 0) ?? 0;
	});
}

/** Whether no other order comes to these figures. */
function isOnly({ pieces, busy }: Case, { worst, inAll }: ReturnType<typeof figures>): boolean {
	const clock = workingClock(busy);
	let found = 0;
	const goOn = (rest: readonly ShownPiece[], free: number, late: number): void => {
		if (rest.length === 0) found += 1;
		for (const piece of rest) {
			const isHeld = piece.part === 'last' && rest.some((one) => isFirstOf(one, piece));
			if (isHeld || found > 1) continue;
			const end = Math.max(free, clock.workedAt(piece.from)) + piece.seconds;
			const by = Math.max(0, clock.momentAt(end) - piece.wanted);
			if (by > worst || late + by > inAll) continue;
			goOn(
				rest.filter((one) => one !== piece),
				end,
				late + by,
			);
		}
	};
	goOn(pieces, clock.workedAt(NOW), 0);
	return found === 1;
}

function isFirstOf(one: ShownPiece, last: ShownPiece): boolean {
	return one.part === 'first' && one.section === last.section;
}

describe.each([
	['free hands', false],
	['hands that are busy now and then', true],
])('%s', (_, isBusy) => {
	describe.each([
		['between songs', null],
		['in an interval', INTERVAL_ENDS],
	])('%s', (__, intervalEnds) => {
		const isInterval = intervalEnds !== null;
		const cases = Array.from({ length: CASES }, (___, seed) => {
			const asked = chanceCase(chance(seed), isBusy);
			const when = { now: NOW, clock: workingClock(asked.busy), intervalEnds };
			const best = orderShown(asked.pieces, when);
			return { seed, asked, best, mine: planned(asked, isInterval) };
		});

		test('no order is less late at its worst', () => {
			for (const { seed, best, mine } of cases) {
				expect({ seed, worst: figures(mine).worst }).toEqual({ seed, worst: figures(best).worst });
			}
			expect(cases.filter(({ best }) => figures(best).worst > 0).length).toBeGreaterThan(CASES / 5);
		});

		test('nor, of those, in all', () => {
			for (const { seed, best, mine } of cases) {
				expect({ seed, ...figures(mine) }).toEqual({ seed, ...figures(best) });
			}
		});

		test('the order is the one wished where nothing stands against it, or the only one that is so good', () => {
			let decided = 0;
			let only = 0;
			for (const { seed, asked, best, mine } of cases) {
				const wished = ranked(asked, isInterval);
				const isWished = best.every(({ piece }, place) => piece === wished[place]);
				if (!isWished && !isOnly(asked, figures(best))) continue;
				decided += 1;
				if (!isWished) only += 1;
				expect({ seed, order: names(mine) }).toEqual({ seed, order: names(best) });
			}
			expect(decided).toBeGreaterThan(CASES / 2);
			expect(only).toBeGreaterThan(CASES / 40);
		});
	});
});

test('each touch-up follows what is done early for the same', () => {
	for (let seed = 0; seed < CASES; seed += 1) {
		const mine = planned(chanceCase(chance(seed), seed % 2 === 0), seed % 3 === 0);
		const pieces = mine.map(({ piece }) => piece);
		for (const last of pieces.filter(({ part }) => part === 'last')) {
			const first = pieces.findIndex((one) => isFirstOf(one, last));
			expect(first).toBeGreaterThanOrEqual(0);
			expect(first).toBeLessThan(pieces.indexOf(last));
		}
	}
});
