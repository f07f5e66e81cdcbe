// A pedal that does not switch is said by word, now and for the point to come.

import { expect, test } from 'vitest';
import { boardSection } from '../../src/screen/board-section.ts';
import { rowText } from '../../src/screen/row.ts';
import { middleOfASong } from './states.ts';

/** Bo's board in the middle of Gravel, whose next point wants DRIVE and DELAY. */
function rows(stuck: Readonly<Record<string, boolean>>, area: { columns: number; rows: number }) {
	const state = middleOfASong();
	const board = state.session.boards.bo;
	if (!board) throw new Error('Bo has a board');
	const states = Object.entries(stuck).map(([id, on]) => [id, { on }]);
	const pedals = { ...board.context.pedals, ...Object.fromEntries(states) };
	const boards = { bo: { ...board, context: { pedals, stuck: Object.keys(stuck) } } };
	return boardSection({ ...state, session: { ...state.session, boards } }, area).map(rowText);
}

test('stuck off it stands with what is on; at the cue, what the song wants of it too', () => {
	const [now, next] = rows({ drive: false }, { columns: 120, rows: 2 });
	expect(now).toContain('DRIVE STUCK off, rest off');
	expect(next).toContain('DELAY (time dotted-eighth) on, DRIVE on (STUCK off)');
});

test('stuck on it stays on for a cue that leaves it out, which wants it off', () => {
	const [now, next] = rows({ boost: true }, { columns: 120, rows: 2 });
	expect(now).toContain('BOOST STUCK on');
	expect(next).toContain('BOOST off (STUCK on)');
	expect(next).toContain('DRIVE');
});

test('it is read from 60 columns on, in one row or two', () => {
	for (const columns of [60, 80, 120, 200])
		for (const count of [1, 2])
			for (const row of rows({ delay: true }, { columns, rows: count }))
				expect(row).toMatch(/STUCK/);
});

test('beside a pedal that is stuck off, what is on is said to be on, however little room there is', () => {
	for (const columns of [60, 80, 120, 200])
		for (const count of [1, 2])
			for (const row of rows({ drive: false }, { columns, rows: count }))
				expect(row).not.toMatch(/(?<! on), (DRIVE STUCK off)/);
});

test('stuck on, it has its own word beside what else is on', () => {
	const [, next] = rows({ drive: true }, { columns: 120, rows: 2 });
	expect(next).toContain('DELAY (time dotted-eighth) on, DRIVE STUCK on');
});

test('what is now and what is asked next never stand so close that they read as one', () => {
	const state = middleOfASong();
	const board = state.session.boards.bo;
	if (!board) throw new Error('Bo has a board');
	// Names of every length, so that one of them fills its place to the last cell.
	for (let length = 1; length <= 20; length += 1) {
		const pedals = state.session.show.boards.bo!.map((pedal) =>
			pedal.id === 'drive' ? { ...pedal, name: 'x'.repeat(length) } : pedal,
		);
		const show = { ...state.session.show, boards: { bo: pedals } };
		const boards = { bo: { ...board, context: { ...board.context, stuck: ['drive'] } } };
		const [row] = boardSection(
			{ ...state, session: { ...state.session, show, boards } },
			{ columns: 80, rows: 1 },
		).map(rowText);
		expect(row).toMatch(/\S {2,}(at |next)/);
	}
});
