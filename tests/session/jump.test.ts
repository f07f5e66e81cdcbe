// Another song made the next one: given this list, when it is called, then these entries, and so the list
// stands and goes on.

import { describe, expect, test } from 'vitest';
import type { Entry } from '../../src/journal/entry.ts';
import { sectionsAhead } from '../../src/plan/demand/sections-ahead.ts';
import { apply, applyAll } from '../../src/session/apply.ts';
import type { Command } from '../../src/session/command.ts';
import { decide } from '../../src/session/decide.ts';
import { openSession } from '../../src/session/open-session.ts';
import { isSegue } from '../../src/session/segue.ts';
import type { Session } from '../../src/session/session.ts';
import { showFrom } from '../plan/show-from.ts';

const show = showFrom(`
players: [{id: ash, name: Ash}]
instruments: [{id: A1, name: Amber, slot: "1", kind: electric-6, tuning: E standard}]
songs:
${['one', 'two', 'three', 'four', 'five', 'six', 'extra'].map((id) => `  - {id: ${id}, title: ${id}, length: "4:00"${id === 'one' ? ', ends: segue' : ''}}`).join('\n')}
set:
  - one
  - {song: two, gap: 0s}
  - three
  - interval: 20m
  - four
  - encore: [five, six]
`);
const SECOND = 1000;

/** The night after these, one every ten minutes. */
function given(...asked: readonly Command[]): Session {
	return asked.reduce((session, command, index) => {
		const decision = decide(session, command, index * 600 * SECOND);
		if (!decision.ok) throw new Error(decision.why.code);
		return applyAll(session, decision.entries);
	}, openSession(show));
}

const step: Command = { do: 'step', handOvers: [] };
const call = (song: string, place?: 'before-next' | 'instead-of-next'): Command => ({
	do: 'choose-next',
	song,
	...(place === undefined ? {} : { place }),
});

/** The list in short: what is on or was last played in brackets, next with an arrow, the encore with a plus, passed over struck out. */
function lines(session: Session): string {
	return session.list
		.map((item) => {
			const arrow = item.key === session.next ? '>' : '';
			if (item.kind === 'interval') return `${arrow}interval`;
			const words = `${item.isEncore ? '+' : ''}${item.song}`;
			if (item.isPassedOver) return `-${words}-`;
			return item.key === session.current ? `[${words}]` : `${arrow}${words}`;
		})
		.join(' ');
}

const entriesFor = (session: Session, command: Command): readonly Entry[] => {
	const decision = decide(session, command, 9_000_000);
	return decision.ok ? decision.entries : [];
};

describe('one from off the list', () => {
	test('is put in directly after what is on, with a gap of 15 s; the next one stays', () => {
		const session = given(step, call('extra'));
		expect(lines(session)).toBe('[one] >extra two three interval four +five +six');
		expect(session.list.find(({ key }) => key === session.next)).toMatchObject({ gapSeconds: 15 });
	});
	test('goes before the first song, before an interval, and in an interval after it', () => {
		expect(lines(given(call('extra')))).toBe('>extra one two three interval four +five +six');
		const last = [step, step, { do: 'go-to-next-song' }] as const;
		expect(lines(given(...last, call('extra')))).toBe(
			'one two [three] >extra interval four +five +six',
		);
		expect(lines(given(...last, step, call('extra')))).toBe(
			'one two [three] interval >extra four +five +six',
		);
	});
	test('goes before the encore and is none of it, and in the encore it is', () => {
		const four = [step, step, { do: 'go-to-next-song' }, step, step] as const;
		const waiting = given(...four, step);
		expect(waiting.phase.value).toBe('encore');
		const called = given(...four, step, call('extra'));
		expect(lines(called)).toBe('one two three interval [four] >extra +five +six');
		expect(called.phase.value).toBe('changeover');
		expect(lines(given(...four, step, step, call('extra')))).toBe(
			'one two three interval four [+five] >+extra +six',
		);
	});
	test('comes after everything once the set is over', () => {
		const over = [step, call('six'), step, step, step] as const;
		expect(given(...over).phase.value).toBe('over');
		const called = given(...over, call('extra'));
		expect(lines(called)).toMatch(/\[\+six\] >\+extra$/);
		expect(called.phase.value).toBe('changeover');
	});
	test('takes the place of the next song where that is asked, an interval before it left where it is', () => {
		expect(lines(given(step, call('extra', 'instead-of-next')))).toBe(
			'[one] >extra -two- three interval four +five +six',
		);
		const before = given(step, step, { do: 'go-to-next-song' }, call('extra', 'instead-of-next'));
		expect(lines(before)).toBe('one two [three] >interval extra -four- +five +six');
	});
	test('of an old night, recorded without a gap, has the place of the song before which it stood', () => {
		const entry: Entry = {
			k: 'next-chosen',
			at: 1,
			item: '9',
			inserted: { song: 'extra', before: '2' },
		};
		expect(lines(apply(given(step), entry))).toBe(
			'[one] >extra -two- three interval four +five +six',
		);
	});
});

describe('one of the list', () => {
	test('is that item, and the list goes on after it; an interval between is passed over', () => {
		const session = given(step, call('four'));
		expect(lines(session)).toBe('[one] two three interval >four +five +six');
		expect(decide(session, step, 9_000_000)).toMatchObject({
			entries: [{ k: 'song-ended', how: 'played' }],
		});
		expect(given(step, call('four'), step).phase.value).toBe('changeover');
	});
	test('that was passed by is brought forward, and nothing is played again for it', () => {
		const session = given(step, call('three'), step, step, call('two'));
		expect(lines(session)).toBe('one [three] >two interval four +five +six');
	});
	test('that was dropped is on again, before the next one', () => {
		const session = given(step, { do: 'drop-song', item: '5' }, call('four'));
		expect(lines(session)).toBe('[one] >four two three interval +five +six');
	});
	test('that was played is played once more, put in like any other', () => {
		const session = given(step, step, call('one'));
		expect(lines(session)).toBe('one [two] >one three interval four +five +six');
		expect(session.list.filter((item) => item.kind === 'song')).toHaveLength(7);
	});
	test('that is next is refused, but after an interval it passes that over', () => {
		expect(decide(given(step), call('two'), 1)).toMatchObject({ ok: false });
		const last = given(step, step, { do: 'go-to-next-song' }, call('four'));
		expect(lines(last)).toBe('one two [three] interval >four +five +six');
	});
});

describe('a segue', () => {
	const ends = (session: Session) =>
		entriesFor(session, { do: 'finish-song', handOvers: [] }).map(({ k }) => k);
	test('goes straight on into the song that follows it in the list', () => {
		expect(ends(given(step))).toEqual(['song-ended', 'song-began']);
	});
	test('is one between neighbours of the list only, and not across a gap', () => {
		const [one, two, three] = openSession(show).list.filter((item) => item.kind === 'song');
		if (!one || !two || !three) throw new Error('the list is short');
		expect(isSegue(openSession(show), one, two)).toBe(true);
		expect(isSegue(openSession(show), one, { ...two, gapSeconds: 10 })).toBe(false);
		expect(isSegue(openSession(show), one, three)).toBe(false);
		expect(isSegue(openSession(show), two, three)).toBe(false);
	});
	test('holds into no other: not one put in, not one in its place, not one jumped to', () => {
		for (const called of [call('extra'), call('extra', 'instead-of-next'), call('three')]) {
			expect(ends(given(step, called))).toEqual(['song-ended']);
		}
	});
	test('gives one put in after it its gap, and the next song its own', () => {
		const session = given(step, call('extra'));
		const starts = sectionsAhead({ session, nowMs: 0, plannedZeroMs: 0 }).map(
			({ song, startMs }) => [song, startMs / SECOND],
		);
		expect(starts.slice(0, 3)).toEqual([
			['one', 0],
			['extra', 255],
			['two', 495],
		]);
	});
});

test('taken back, a call leaves nothing behind', () => {
	const session = given(step);
	const entries = entriesFor(session, call('extra'));
	expect(entries).toEqual([
		{
			k: 'next-chosen',
			at: 9_000_000,
			inserted: { song: 'extra', before: '2', gapSeconds: 15 },
		},
	]);
});
