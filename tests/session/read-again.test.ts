// The show file read again in the middle of a night: given what happened, when it is read, then the past
// stays, what is in use stays, and the rest is the file's.

import { describe, expect, test } from 'vitest';
import type { Entry } from '../../src/journal/entry.ts';
import { NEW } from '../../src/journal/record.ts';
import { apply, applyAll } from '../../src/session/apply.ts';
import { decide } from '../../src/session/decide.ts';
import { openSession } from '../../src/session/open-session.ts';
import type { Session } from '../../src/session/session.ts';
import { openFromPoint } from '../../src/session/settled.ts';
import { showDifferences } from '../../src/session/show-differences.ts';
import type { Show } from '../../src/showfile/show.ts';
import { showRecord } from '../../src/showfile/show-record.ts';
import { entryWords } from '../../src/words/entry-words.ts';
import { showFrom } from '../plan/show-from.ts';

type Parts = { instruments?: string; songs?: string; set?: string; players?: string };

const PLAYERS = '[{id: ash, name: Ash}, {id: bo, name: Bo}]';
const INSTRUMENTS = `
  - {id: A1, name: Amber, slot: "1", kind: electric-6, tuning: E standard}
  - {id: A2, name: Alder, slot: "2", kind: electric-6, tuning: E standard}`;
const SONGS = `
  - {id: one, title: One, length: "4:00", cues: [{at: V2}, {at: bridge}, {at: out}]}
  - {id: two, title: Two, length: "4:00"}
  - {id: three, title: Three, length: "4:00"}
  - {id: four, title: Four, length: "4:00"}`;

function show({ instruments = INSTRUMENTS, songs = SONGS, set, players = PLAYERS }: Parts): Show {
	return showFrom(
		`players: ${players}\ninstruments: ${instruments}\nsongs: ${songs}\nset: ${set ?? '[one, two, three, four]'}`,
	);
}

const BEGUN: Entry = { k: 'song-began', at: 0, item: '1' };
const ENDED: Entry = { k: 'song-ended', at: 240_000, how: 'played' };
const HANDED: Entry = { k: 'handed-over', at: 0, by: 'plan', player: 'ash', instrument: 'A1' };

const given = (...entries: readonly Entry[]): Session => applyAll(openSession(show({})), entries);

function whenRead(session: Session, read: Show) {
	const decision = decide(session, { do: 'read-show-again', show: read }, 300_000);
	if (!decision.ok) throw new Error(decision.why.code);
	return { entries: decision.entries, session: applyAll(session, decision.entries) };
}

const songs = (session: Session) =>
	session.list.map((item) => {
		if (item.kind === 'interval') return 'interval';
		const mark = item.key === session.next ? '>' : '';
		return item.isDropped ? `-${item.song}` : `${mark}${item.song}`;
	});

test('it is one entry with the whole show, and nothing when nothing differs', () => {
	const read = show({ songs: SONGS.replace('Two', 'Second') });
	expect(whenRead(given(BEGUN), read).entries).toEqual([
		{ k: 'show-read-again', at: 300_000, show: showRecord(read) },
	]);
	const again = decide(given(BEGUN), { do: 'read-show-again', show: show({}) }, 0);
	expect(again).toEqual({ ok: false, why: { code: 'nothing-new-in-file' } });
});

test('a record whose show is none that can be gone by changes nothing, and is told all the same', () => {
	const entry: Entry = { k: 'show-read-again', at: 0, show: { title: 'Quay' } };
	const session = given(BEGUN);
	expect(apply(session, entry)).toBe(session);
	expect(entryWords(entry, session.show, session)).toBe('the show file was reloaded');
});

test('who had something in hands for a song that is gone has nothing settled for one put in after it', () => {
	const taken = { k: 'handed-over', by: 'exchange', player: 'ash', instrument: 'A1' } as const;
	const only = show({ set: '[one]' });
	const waiting = apply(applyAll(openSession(show({ set: '[one, two]' })), [BEGUN, ENDED]), {
		...taken,
		at: 250_000,
	});
	expect(waiting.settled).toEqual({ item: '2', players: { ash: 0 } });
	const { session } = whenRead(waiting, only);
	const put = { do: 'insert-song', song: 'three', before: null, isEncore: false } as const;
	const decision = decide(session, put, 310_000);
	const after = decision.ok ? applyAll(session, decision.entries) : session;
	expect(after.next).toBe(NEW);
	expect(openFromPoint(after, NEW, 'ash')).toBe(0);
	expect(after.settled.players).toEqual({});
});

describe('the song that is on', () => {
	const at = (index: number): Entry => ({ k: 'cue-reached', at: 1, index });
	test('stays at the cue of the same name, wherever that is now', () => {
		const read = show({ songs: SONGS.replace('[{at: V2}, ', '[{at: V1}, {at: Ch}, {at: V2}, ') });
		expect(whenRead(given(BEGUN, at(2)), read).session.song?.value).toBe('point-4');
	});
	test('stays as many cues in as it has, where that name is gone', () => {
		const read = show({ songs: SONGS.replace(', {at: bridge}, {at: out}', '') });
		expect(whenRead(given(BEGUN, at(3)), read).session.song?.value).toBe('point-1');
	});
	test('stays although the file has it no more, and is told as such', () => {
		const read = show({ songs: SONGS.replace(/\n.*id: one.*/, ''), set: '[two, three]' });
		const { session } = whenRead(given(BEGUN, at(2)), read);
		expect(session.song?.value).toBe('point-2');
		expect(session.current).toBe('1');
		expect(songs(session)).toEqual(['one', '>two', 'three']);
		expect(showDifferences(given(BEGUN), read)).toContainEqual({
			code: 'stays',
			what: 'song',
			name: 'One',
		});
	});
});

describe('the list', () => {
	test('is what was made of it tonight where the file’s own has not changed', () => {
		const moved: Entry = { k: 'song-moved', at: 1, item: '4', before: '2', isEncore: false };
		const read = show({ songs: SONGS.replace('Two', 'Second') });
		expect(songs(whenRead(given(BEGUN, moved), read).session)).toEqual([
			'one',
			'>four',
			'two',
			'three',
		]);
	});
	test('is the file’s from here on where that has changed; the past stays', () => {
		const read = show({ set: '[four, one, three, interval: 20m, two]' });
		const { session } = whenRead(
			given(BEGUN, ENDED, { k: 'song-began', at: 300_000, item: '2' }),
			read,
		);
		expect(songs(session)).toEqual(['one', 'two', '>four', 'three']);
		expect(session.list[0]).toMatchObject({ key: '1', runs: [{ how: 'played' }] });
		expect(session.current).toBe('2');
	});
	test('keeps off what was dropped tonight', () => {
		const dropped: Entry = { k: 'song-dropped', at: 1, item: '3' };
		const read = show({ set: '[one, four, three, two]' });
		expect(songs(whenRead(given(BEGUN, dropped), read).session)).toEqual([
			'one',
			'-three',
			'>four',
			'two',
		]);
	});
	test('with nothing more to come ends the set', () => {
		const { session } = whenRead(given(BEGUN, ENDED), show({ set: '[one]' }));
		expect(session.phase.value).toBe('over');
	});
	test('that now has an interval next lets it begin, and everything comes back to the rack', () => {
		const read = show({ set: '[one, interval: 20m, two]' });
		const { entries, session } = whenRead(given(BEGUN, HANDED, ENDED), read);
		expect(entries.map(({ k }) => k)).toEqual(['show-read-again', 'came-back']);
		expect(session.phase.value).toBe('interval');
	});
});

describe('hands and rack', () => {
	const without = (id: string) => INSTRUMENTS.replace(new RegExp(`\\n.*id: ${id}.*`), '');
	test('what is in hands stays there although the file has it no more', () => {
		const read = show({ instruments: without('A1') });
		const { session } = whenRead(given(BEGUN, HANDED), read);
		expect(session.players.ash?.holds).toBe('A1');
		expect(session.show.instruments.map(({ id }) => id)).toEqual(['A2', 'A1']);
		expect(showDifferences(given(BEGUN, HANDED), read)).toEqual([
			{ code: 'stays', what: 'instrument', name: '1 Amber' },
		]);
	});
	test('it gives up its slot where the file gives that to another', () => {
		const read = show({ instruments: without('A1').replace('"2"', '"1"') });
		const { session } = whenRead(given(BEGUN, HANDED), read);
		expect(session.show.instruments.map(({ id, slot }) => [id, slot])).toEqual([
			['A2', '1'],
			['A1', null],
		]);
	});
	test('what is on the rack is gone with the file, and new ones are as at the load-in', () => {
		const read = show({
			instruments: `${without('A2')}\n  - {id: A3, name: Aspen, slot: "3", kind: bass-4, tuning: E standard}`,
		});
		const { session } = whenRead(given(BEGUN, HANDED), read);
		expect(Object.keys(session.instruments)).toEqual(['A1', 'A3']);
		expect(session.instruments.A3).toMatchObject({ value: 'racked', context: { capo: 0 } });
		expect(showDifferences(given(BEGUN, HANDED), read)).toEqual([
			{ code: 'added', what: 'instruments', names: ['3 Aspen'] },
			{ code: 'gone', what: 'instruments', names: ['2 Alder'] },
		]);
	});
	test('what is believed of an instrument stays', () => {
		const made: Entry = { k: 'made-ready', at: 5, instrument: 'A2', capo: 3 };
		const read = show({ instruments: INSTRUMENTS.replace('Alder', 'Elder') });
		expect(whenRead(given(made), read).session.instruments.A2?.context).toMatchObject({
			capo: 3,
			readyAtMs: 5,
		});
	});
	test('a player with something in hands stays, with a letter that is free', () => {
		const read = show({ players: '[{id: abe, name: Abe}, {id: bo, name: Bo}]' });
		const { session } = whenRead(given(BEGUN, HANDED), read);
		expect(session.show.players.map(({ id, key }) => [id, key])).toEqual([
			['abe', 'a'],
			['bo', 'b'],
			['ash', 'c'],
		]);
		expect(session.players.ash?.holds).toBe('A1');
	});
});
