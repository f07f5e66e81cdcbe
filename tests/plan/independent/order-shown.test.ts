// The order of the list of work, by cases worked out by hand.

import { expect, test } from 'vitest';
import { orderShown, type ShownPiece } from './order-shown.ts';
import { workingClock } from './working-clock.ts';

const clock = workingClock([]);

function piece(instrument: string, given: Partial<ShownPiece>): ShownPiece {
	return { instrument, section: 0, part: 'whole', seconds: 60, from: 0, wanted: 600, ...given };
}

function names(pieces: readonly ShownPiece[], now: number, intervalEnds: number | null = null) {
	return orderShown(pieces, { now, clock, intervalEnds }).map(({ piece: { instrument, part } }) =>
		part === 'whole' ? instrument : `${instrument} ${part}`,
	);
}

test('in an interval of twenty minutes the restring and the re-pitching come before the touch-ups', () => {
	const pieces = [
		piece('A1', { from: 300, wanted: 1170 }),
		piece('B1', { from: 300, wanted: 1170 }),
		piece('A2', { section: 2, part: 'first', seconds: 225, from: 15, wanted: 1700 }),
		piece('A2', { section: 2, part: 'last', seconds: 45, from: 1500, wanted: 1745 }),
		piece('A4', { section: 2, part: 'first', seconds: 75, from: 15, wanted: 1700 }),
		piece('A4', { section: 2, part: 'last', seconds: 45, from: 900, wanted: 1745 }),
	];
	expect(names(pieces, 0, 1200)).toEqual([
		'A2 first',
		'A4 first',
		'A1',
		'B1',
		'A2 last',
		'A4 last',
	]);
	// A touch-up that may be begun at any time still comes after them, and before them outside of an interval.
	const free = pieces.map((one) => (one.part === 'whole' ? { ...one, from: 0 } : one));
	expect(names(free, 20, 1200).slice(0, 3)).toEqual(['A2 first', 'A4 first', 'A1']);
	expect(names(free, 20).slice(0, 3)).toEqual(['A1', 'B1', 'A2 first']);
	// Where they would make a touch-up late they wait.
	const short = free.map((one) => (one.part === 'whole' ? { ...one, wanted: 150 } : one));
	expect(names(short, 20, 1200).slice(0, 3)).toEqual(['A1', 'B1', 'A2 first']);
});

test('the worst lateness is least, then all of it, then the time wanted decides', () => {
	const long = piece('long', { seconds: 100, wanted: 100 });
	const short = piece('short', { seconds: 10, wanted: 105 });
	// Long first is late by 5 s, short first by 10.
	expect(names([short, long], 0)).toEqual(['long', 'short']);
	// All late alike whichever comes first, 40 s at worst; the short one first makes less of it in all.
	const both = [
		piece('long', { seconds: 100, wanted: 70 }),
		piece('short', { seconds: 10, wanted: 70 }),
	];
	expect(names(both, 0)).toEqual(['short', 'long']);
	const early = [piece('b', { wanted: 400 }), piece('a', { wanted: 300 })];
	expect(names(early, 0)).toEqual(['a', 'b']);
});

test('what may not yet be begun comes after what may, unless that makes it late', () => {
	const later = piece('later', { from: 100, wanted: 300 });
	const now = piece('now', { wanted: 500 });
	expect(names([later, now], 0)).toEqual(['now', 'later']);
	const pressing = piece('pressing', { from: 30, wanted: 90 });
	expect(names([pressing, now], 0)).toEqual(['pressing', 'now']);
});
