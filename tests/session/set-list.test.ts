// Tonight's list as it is changed on the way: given what happened, when a change is asked, then these
// entries, and so the list stands.

import { describe, expect, test } from 'vitest';
import type { Entry } from '../../src/journal/entry.ts';
import { apply, applyAll } from '../../src/session/apply.ts';
import type { Command } from '../../src/session/command.ts';
import { decide } from '../../src/session/decide.ts';
import { nextSongItem } from '../../src/session/find.ts';
import { openSession } from '../../src/session/open-session.ts';
import type { Session } from '../../src/session/session.ts';
import { placeBeside, placeNow, placesFor } from '../../src/session/set-places.ts';
import { showFrom } from '../plan/show-from.ts';

const show = showFrom(`
players: [{id: ash, name: Ash}]
instruments: [{id: A1, name: Amber, slot: "1", kind: electric-6, tuning: E standard}]
songs:
${['one', 'two', 'three', 'four', 'five', 'six', 'extra'].map((id) => `  - {id: ${id}, title: ${id}, length: "4:00"}`).join('\n')}
set:
  - one
  - {song: two, gap: 40s}
  - interval: 20m
  - three
  - four
  - encore: [five, six]
`);

// Keys of the list are those of the file's order: 1 one, 2 two, 3 the interval, 4 three, 5 four, 6 five, 7 six.
const BEGUN: Entry = { k: 'song-began', at: 0, item: '1' };
const ENDED: Entry = { k: 'song-ended', at: 240_000, how: 'played' };
const HANDED: Entry = { k: 'handed-over', at: 0, by: 'plan', player: 'ash', instrument: 'A1' };

const given = (...entries: readonly Entry[]): Session => applyAll(openSession(show), entries);

function when(session: Session, command: Command) {
	const decision = decide(session, command, 300_000);
	if (!decision.ok) return { why: decision.why, entries: [], session };
	return {
		why: null,
		entries: decision.entries,
		session: applyAll(session, decision.entries),
	};
}

/** The list in short: what is on in brackets, next with an arrow, the encore with a plus, dropped struck out. */
function lines(session: Session): string {
	return session.list
		.map((item) => {
			const arrow = item.key === session.next ? '>' : '';
			if (item.kind === 'interval') return `${arrow}interval`;
			const words = `${item.isEncore ? '+' : ''}${item.song}`;
			if (item.isDropped) return `-${words}-`;
			return item.key === session.current ? `[${words}]` : `${arrow}${words}`;
		})
		.join(' ');
}

describe('a song moved', () => {
	test('is one entry, keeps its gap, and the next song is the one now first', () => {
		const { entries, session } = when(given(BEGUN), {
			do: 'move-song',
			item: '2',
			before: '5',
			isEncore: false,
		});
		expect(entries).toEqual([
			{ k: 'song-moved', at: 300_000, item: '2', before: '5', isEncore: false },
		]);
		expect(lines(session)).toBe('[one] >interval three two four +five +six');
		expect(session.list.find(({ key }) => key === '2')).toMatchObject({ gapSeconds: 40 });
	});
	test('to the front of what is to come is next', () => {
		const { session } = when(given(BEGUN), {
			do: 'move-song',
			item: '5',
			before: '2',
			isEncore: false,
		});
		expect(lines(session)).toBe('[one] >four two interval three +five +six');
		expect(nextSongItem(session)?.song).toBe('four');
	});
	test('may go into the encore and out of it', () => {
		const { session } = when(given(BEGUN), {
			do: 'move-song',
			item: '5',
			before: '6',
			isEncore: true,
		});
		expect(lines(session)).toBe('[one] >two interval three +four +five +six');
		const out = when(session, { do: 'move-song', item: '6', before: '5', isEncore: false });
		expect(lines(out.session)).toBe('[one] >two interval three five +four +six');
	});
	test('stays where it is when it is on, was played, is an interval, or the place is past', () => {
		const session = given(BEGUN, ENDED, { k: 'song-began', at: 255_000, item: '2' });
		const to = (item: string, before: string | null) =>
			when(session, { do: 'move-song', item, before, isEncore: false }).why;
		expect(to('2', '5')).toEqual({ code: 'on-now', song: 'two' });
		expect(to('1', '5')).toEqual({ code: 'played', song: 'one' });
		expect(to('3', '5')).toEqual({ code: 'interval-stays' });
		expect(to('4', '1')).toEqual({ code: 'behind-what-is-on' });
		expect(to('4', '5')).toEqual({ code: 'there-already', song: 'three' });
	});
	test('away from before an interval between songs lets the interval begin, hands and all', () => {
		const { entries, session } = when(given(BEGUN, HANDED, ENDED), {
			do: 'move-song',
			item: '2',
			before: '5',
			isEncore: false,
		});
		expect(entries.map(({ k }) => k)).toEqual(['song-moved', 'came-back']);
		expect(session.phase.value).toBe('interval');
		expect(lines(session)).toBe('[one] interval >three two four +five +six');
		expect(session.players.ash?.holds).toBeNull();
	});
});

describe('a song dropped', () => {
	test('stays in sight, is not to come, and comes back where it stood', () => {
		const { entries, session } = when(given(BEGUN), { do: 'drop-song', item: '2' });
		expect(entries).toEqual([{ k: 'song-dropped', at: 300_000, item: '2' }]);
		expect(lines(session)).toBe('[one] -two- >interval three four +five +six');
		const back = when(session, { do: 'restore-song', item: '2' });
		expect(back.entries).toEqual([{ k: 'song-restored', at: 300_000, item: '2' }]);
		expect(lines(back.session)).toBe('[one] >two interval three four +five +six');
	});
	test('whose place was passed comes back as the next', () => {
		const dropped = when(given(BEGUN), { do: 'drop-song', item: '2' }).session;
		const later = applyAll(dropped, [ENDED, { k: 'song-began', at: 500_000, item: '4' }]);
		const { entries, session } = when(later, { do: 'restore-song', item: '2' });
		expect(entries).toEqual([
			{ k: 'song-moved', at: 300_000, item: '2', before: '5', isEncore: false },
		]);
		expect(lines(session)).toBe('one interval [three] >two four +five +six');
	});
	test('twice, or while it is on, is refused in words', () => {
		const { session } = when(given(BEGUN), { do: 'drop-song', item: '2' });
		expect(when(session, { do: 'drop-song', item: '2' }).why).toEqual({
			code: 'dropped-already',
			song: 'two',
		});
		expect(when(session, { do: 'drop-song', item: '1' }).why).toEqual({
			code: 'on-now',
			song: 'one',
		});
		expect(when(session, { do: 'restore-song', item: '4' }).why).toEqual({
			code: 'listed-already',
			song: 'three',
		});
	});
	test('as the last one to come ends the set, and brings it back from there', () => {
		const last = given(BEGUN, ENDED, { k: 'song-began', at: 500_000, item: '6' }, ENDED);
		expect(last.phase.value).toBe('changeover');
		const { session } = when(last, { do: 'drop-song', item: '7' });
		expect(session.phase.value).toBe('over');
		expect(session.next).toBeNull();
		const back = when(session, { do: 'restore-song', item: '7' }).session;
		expect(back.phase.value).toBe('changeover');
		expect(back.next).toBe('7');
	});
	test('with all after an interval leaves no interval to wait in', () => {
		const short = ['4', '5', '6', '7'].reduce<Session>(
			(session, item) => when(session, { do: 'drop-song', item }).session,
			given(BEGUN, ENDED, { k: 'song-began', at: 255_000, item: '2' }),
		);
		expect(apply(short, ENDED).phase.value).toBe('over');
	});
});

describe('a song put in', () => {
	test('stands where it was asked for, with a key of its own', () => {
		const { entries, session } = when(given(BEGUN), {
			do: 'insert-song',
			song: 'extra',
			before: '5',
			isEncore: false,
		});
		expect(entries).toEqual([
			{
				k: 'song-inserted',
				at: 300_000,
				song: 'extra',
				before: '5',
				isEncore: false,
			},
		]);
		expect(lines(session)).toBe('[one] >two interval three extra four +five +six');
	});
	test('may be one that was played already', () => {
		const session = given(BEGUN, ENDED);
		const again = when(session, { do: 'insert-song', song: 'one', before: '2', isEncore: false });
		expect(lines(again.session)).toBe('[one] >one two interval three four +five +six');
	});
});

describe('the encore', () => {
	test('takes a song at its end', () => {
		const { session } = when(given(BEGUN), { do: 'play-in-encore', item: '4' });
		expect(lines(session)).toBe('[one] >two interval four +five +six +three');
		expect(when(session, { do: 'play-in-encore', item: '4' }).why).toEqual({
			code: 'there-already',
			song: 'three',
		});
	});
	test('takes what was played for a second time', () => {
		const { entries } = when(given(BEGUN, ENDED), { do: 'play-in-encore', item: '1' });
		expect(entries).toMatchObject([
			{ k: 'song-inserted', song: 'one', before: null, isEncore: true },
		]);
	});
	test('is made where there was none, also when the set is over already', () => {
		const none = given(
			BEGUN,
			{ k: 'song-dropped', at: 1, item: '6' },
			{ k: 'song-dropped', at: 1, item: '7' },
		);
		expect(lines(when(none, { do: 'play-in-encore', item: '4' }).session)).toBe(
			'[one] >two interval four -+five- -+six- +three',
		);
		const over = given(BEGUN, ENDED, { k: 'song-began', at: 500_000, item: '7' }, ENDED);
		expect(over.phase.value).toBe('over');
		expect(when(over, { do: 'play-in-encore', item: '4' }).session.phase.value).toBe('changeover');
	});
});

describe('the places in what is to come', () => {
	test('are one before each item, two at the beginning of the encore, and the end', () => {
		expect(placesFor(given(BEGUN), '4')).toEqual([
			{ before: '2', isEncore: false },
			{ before: '3', isEncore: false },
			{ before: '5', isEncore: false },
			{ before: '6', isEncore: false },
			{ before: '6', isEncore: true },
			{ before: '7', isEncore: true },
			{ before: null, isEncore: true },
		]);
		expect(placeNow(given(BEGUN), '4')).toEqual({ before: '5', isEncore: false });
		expect(placeNow(given(BEGUN), '1')).toBeNull();
	});
	test('beside an item keep it company in the encore or before it', () => {
		const session = given(BEGUN);
		expect(placeBeside(session, '5', 'after')).toEqual({ before: '6', isEncore: false });
		expect(placeBeside(session, '6', 'before')).toEqual({ before: '6', isEncore: true });
		expect(placeBeside(session, '7', 'after')).toEqual({ before: null, isEncore: true });
		expect(placeBeside(session, '1', 'after')).toEqual({ before: '2', isEncore: false });
		expect(placeBeside(session, '3', 'after')).toEqual({ before: '4', isEncore: false });
	});
});
