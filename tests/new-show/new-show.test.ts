// Questions and answers, pressed key by key.

import { describe, expect, test } from 'vitest';
import { lineText } from '../../src/keys/text-line.ts';
import {
	asked,
	keptOf,
	type NewShow,
	paste,
	press,
	startNewShow,
} from '../../src/new-show/new-show.ts';
import { writeShowFile } from '../../src/setlist/write-show-file.ts';
import { readShow } from '../../src/showfile/read-show.ts';
import type { Show } from '../../src/showfile/show.ts';
import { ALL, BEGINNING, keysOf, pressed, pressesBesidesNames } from './lamplit.ts';

/** The file as it stands, read; where it names no song yet, which no show may lack, with one added for it. */
function showOf(state: NewShow): Show {
	const { draft } = state.making;
	const song = draft.set.length === 0 ? 'songs: [{id: first}]\nset: [first]\n' : '';
	const text = `${writeShowFile(draft)}\n${song}`;
	const { show, problems } = readShow(() => Buffer.from(text), 'new.yaml');
	if (show === null) throw new Error(`${JSON.stringify(problems)}\n${text}`);
	return show;
}

const type = (text: string): readonly string[] =>
	[...text].map((letter) => (letter === ' ' ? 'space' : letter));

describe('the whole way', () => {
	const done = pressed(keysOf(...ALL));
	const show = showOf(done);

	test('ends with a file to be written', () => expect(done.end).toBe('done'));

	test('says what was answered', () => {
		expect(show).toMatchObject({
			...{ title: 'Lamplit Ferries', date: '2026-11-30' },
			...{ startMinutes: 20 * 60 + 30, curfewMinutes: 22 * 60 + 45 },
		});
		expect(show.players.map(({ name, plays }) => [name, plays])).toEqual([
			['Maren', 'guitar'],
			['Osk', 'guitar'],
			['Tilde', 'bass'],
		]);
		expect(show.instruments.map((one) => [one.slot, one.name, one.kind, one.tuning.name])).toEqual([
			['1', 'Kestrel', 'electric-6', 'E standard'],
			['2', 'Plover', 'electric-6', 'drop D'],
			['3', 'Sandpiper', 'electric-6', 'half-step down'],
			['4', 'Curlew', 'acoustic-6', 'E standard'],
			['5', 'Dunlin', 'bass-4', 'E standard'],
			['6', 'Knot', 'bass-4', 'E standard'],
		]);
		expect(show.set).toHaveLength(10);
		expect(show.set.at(-1)).toMatchObject({ song: 'ebb', isEncore: true });
		expect(show.songs[0]?.parts).toMatchObject({
			maren: { instrument: 'kestrel' },
			osk: { instrument: 'sandpiper' },
			tilde: { instrument: 'dunlin' },
		});
		expect(Object.keys(show.songs[1]?.parts ?? {})).toEqual(['maren']);
		expect(show.songs[3]?.parts.maren).toMatchObject({ instrument: 'curlew', capo: 2 });
		expect(show.songs[7]?.parts.maren).toEqual({ kind: 'none' });
	});

	test('takes fewer than 150 presses besides names', () => {
		expect(pressesBesidesNames(...ALL)).toBeLessThan(150);
	});

	test('back to the first question, one answer a press, and every file on the way can be read', () => {
		let state = pressed(keysOf('show', 'players', 'rack', 'songs', 'order', 'hands'));
		let answers = state.answers.length;
		expect(answers).toBeGreaterThan(60);
		for (; answers > 0; answers -= 1) {
			state = asked(state).isText ? pressed(['ctrl-u', 'backspace'], state) : press(state, 'u');
			expect(state.answers).toHaveLength(answers - 1);
			showOf(state);
		}
		expect(state.making.place).toEqual({ ask: 'title' });
		expect(press(press(state, 'ctrl-u'), 'backspace').message).toMatch(/first question/);
	});
});

describe('taking back', () => {
	test('puts the answer into its field, to be changed', () => {
		const state = pressed([...type('Lantren'), 'enter', 'backspace']);
		expect(state.making.place.ask).toBe('title');
		expect(lineText(state.line)).toBe('Lantren');
	});

	test('erases first what is typed', () => {
		const state = pressed([...type('A'), 'enter', ...type('x'), 'backspace']);
		expect(state.making.place.ask).toBe('date');
		expect(state.answers).toHaveLength(1);
	});

	test('u is a letter where text is typed', () => {
		expect(lineText(pressed(['u']).line)).toBe('u');
	});

	test('takes back one hand-over of a song, not all of them', () => {
		const before = pressed(keysOf('show', 'players', 'rack', 'songs', 'order'));
		const two = pressed(['2', '4'], before);
		const one = press(two, 'u');
		expect(one.making.draft.songs[0]?.hands.maren).toMatchObject({ instrument: 'plover' });
		expect(one.making.place.ask).toBe('hands');
	});
});

describe('what can be known is offered', () => {
	const players = keysOf('show', 'players');

	test('the next free slot, also after one was chosen', () => {
		const state = pressed([
			...players,
			...type('One'),
			'tab',
			'4',
			'enter',
			'enter',
			'enter',
			'enter',
		]);
		expect(state.making.draft.instruments[0]?.slot).toBe('4');
		expect(state.making.slot).toBe('1');
	});

	test('a slot that something has, and one that cannot be, are refused', () => {
		const one = pressed([...players, ...type('One'), 'enter', 'enter', 'enter', 'enter']);
		expect(pressed(['tab', '1'], one).message).toBe('Slot 1 has One.');
		for (const key of ['0', '=', '-', 'space', 'u', '!'])
			expect(pressed(['tab', key], one).message).toMatch(/can't be a slot/);
	});

	test('the kind is that of the one before, the tuning what its kind is usually in', () => {
		const bass = [...type('Low'), 'enter', '8', 'enter'];
		const state = pressed([...players, ...bass, ...type('Lower'), 'enter', 'enter']);
		expect(state.making.draft.instruments.map(({ kind, tuning }) => [kind, tuning])).toEqual([
			['bass-5', 'B standard'],
			['bass-5', 'B standard'],
		]);
	});

	test('something else is asked for its notes, and the file can be read until then', () => {
		const asked = pressed([...players, ...type('Saw'), 'enter', 'f']);
		showOf(asked);
		expect(press(asked, 'enter').message).toMatch(/type its notes/);
		const state = pressed([...type('D3 A3'), 'enter'], asked);
		expect(showOf(state).instruments[0]?.tuning.notes).toEqual(['D3', 'A3']);
	});

	test('whose it is, is not asked where one alone plays its kind', () => {
		const state = pressed([...players, ...type('Low'), 'enter', '7', 'enter']);
		expect(state.making.place.ask).toBe('instrument');
	});

	test('a length behind the title is not asked for', () => {
		const state = pressed([...players, 'enter', ...type('Lantern 4:05'), 'enter']);
		expect(state.making.place.ask).toBe('song');
		expect(state.making.draft.songs[0]).toMatchObject({ title: 'Lantern', seconds: 245 });
	});

	test('245 is as many seconds, as in a table', () => {
		const state = pressed([
			...players,
			'enter',
			...type('Lantern'),
			'enter',
			...type('245'),
			'enter',
		]);
		expect(state.making.draft.songs[0]?.seconds).toBe(245);
	});

	test('a title given again is the same song at another place', () => {
		const state = pressed([
			...[...players, 'enter', ...type('Lantern'), 'enter', 'enter'],
			...[...type('lantern'), 'enter'],
		]);
		expect(state.making.draft.songs).toHaveLength(1);
		expect(state.making.draft.set).toHaveLength(2);
	});

	test('an instrument goes to the one whose it can be', () => {
		const state = pressed([...keysOf('show', 'players', 'rack', 'songs', 'order'), '3']);
		// The third is Osk's alone, though Maren is picked.
		expect(state.making.draft.songs[0]?.hands.osk).toMatchObject({ instrument: 'sandpiper' });
	});
});

describe('an instrument has one pair of hands', () => {
	test('what another had goes, and that is said', () => {
		const before = pressed([
			...keysOf('show', 'players', 'rack', 'songs', 'order'),
			'4',
			'down',
			'4',
		]);
		expect(before.making.draft.songs[0]?.hands).toMatchObject({
			maren: { kind: 'none' },
			osk: { instrument: 'curlew' },
		});
		expect(before.message).toBe('Maren had Curlew, and has nothing in this song now.');
	});
});

describe('the order', () => {
	const before = pressed(keysOf('show', 'players', 'rack', 'songs'));
	const titles = (state: NewShow) =>
		state.making.draft.set.map((item) => (item.kind === 'song' ? item.song : 'interval'));

	test('a song goes where it is carried', () => {
		const state = pressed(['down', 'g', 'up', 'enter'], before);
		expect(titles(state).slice(0, 3)).toEqual(['lantern', 'harbour-lights', 'gravel-road']);
	});

	test('an interval stands after the picked song, with its length', () => {
		const state = pressed(['down', 'p', ...type('25m'), 'enter'], before);
		expect(titles(state)[2]).toBe('interval');
		expect(showOf(state).set[2]).toEqual({ kind: 'interval', seconds: 1500 });
	});

	test('no interval before an encore', () => {
		const down = Array<string>(8).fill('down');
		const first = pressed([...down, 'p', 'enter', 'down', 'down', 'h'], before);
		expect(titles(first)).not.toContain('interval');
		expect(first.message).toMatch(/^The interval is gone/);
		const other = pressed([...down, 'down', 'h', 'up', 'p', 'enter'], before);
		expect(titles(other)).not.toContain('interval');
	});

	test('an interval is carried no further than where one can be', () => {
		const one = pressed(['p', 'enter', 'down', 'g', 'up'], before);
		expect(one.message).toMatch(/between two songs/);
		expect(titles(one)[1]).toBe('interval');
		expect(titles(pressed(['down', 'enter'], one))[2]).toBe('interval');
	});

	test('an interval goes with the song that it stood before', () => {
		const state = pressed(['p', 'enter', 'k'], before);
		expect(titles(state)).not.toContain('interval');
	});

	test('a song that is dropped is gone from the catalogue too', () => {
		const state = press(before, 'k');
		expect(titles(state)).not.toContain('harbour-lights');
		expect(state.making.draft.songs.map(({ id }) => id)).not.toContain('harbour-lights');
	});
});

test('a slot with a letter is said in capitals, as the live screen shows it', () => {
	let state = pressed(keysOf('show', 'players'));
	for (let slot = 1; slot <= 9; slot += 1)
		state = ['N', 'enter', 'enter', 'enter', 'enter'].reduce(press, state);
	expect(asked(state).title).toMatch(/^Slot [A-Z]:/);
	expect(asked(['N', 'enter'].reduce(press, state)).title).toMatch(/^What is [A-Z] N\?$/);
});

describe('what is typed', () => {
	test.each([
		['20:30', '20:30'],
		['2030', '20:30'],
		['20.30', '20:30'],
		['20h30', '20:30'],
		['8:30pm', '20:30'],
		['9 PM', '21:00'],
		['12:15am', '00:15'],
		['8', '08:00'],
	])('%s is the time %s', (text, start) => {
		const state = pressed(['enter', 'enter', ...type(text), 'enter']);
		expect(state.making.draft.start).toBe(start);
	});

	test.each([
		['a day that is none', ['enter', ...type('2026-02-30'), 'enter'], 'date'],
		['a time that is none', ['enter', 'enter', ...type('25:00'), 'enter'], 'start'],
		['no player', [...keysOf('show'), 'enter'], 'player'],
		['no song', [...keysOf('show', 'players'), 'enter', 'enter'], 'song'],
	])('%s is refused in a sentence, and the question stands', (_, keys, place) => {
		const state = pressed(keys);
		expect(state.making.place.ask).toBe(place);
		expect(state.message).toMatch(/^[A-Z].*\.$/);
	});

	test.each([
		'Ash',
		'Ásgerður',
		'山田',
		'🎸🧑‍🎤',
		'none',
		'at',
		'say',
		'constructor',
		'"]: {',
		'- - #',
	])('a player and an instrument called %s can be read again', (name) => {
		const state = pressed(keysOf('show'));
		const after = [
			...['paste', 'enter', 'enter', 'paste', 'enter', 'enter', 'enter'],
			...['paste', 'enter', 'enter', 'enter', 'enter', 'enter'],
		].reduce((one, key) => (key === 'paste' ? paste(one, name) : press(one, key)), state);
		const { players, instruments } = showOf(after);
		// One without a letter or a figure is refused.
		const known = /[\p{L}\p{N}]/u.test(name) ? [name] : [];
		expect([...new Set(players.map((one) => one.name))]).toEqual(known);
		expect(instruments.map((one) => one.name)).toEqual(known);
	});

	test('escapes and reordering signs are shown, never sent', () => {
		const state = paste(startNewShow(BEGINNING, null), 'A\u001b[2J\u202eB\r\nC');
		expect(lineText(state.line)).toBe('A␛[2J·B C');
	});

	test('a list pasted into one title is told how it goes in', () => {
		const state = paste(pressed([...keysOf('show', 'players'), 'enter']), 'One 3:30\nTwo 4:00\n');
		expect(state.message).toMatch(/--list/);
		expect(state.making.draft.songs).toEqual([]);
	});

	test('pasted text goes into fields only', () => {
		const kind = pressed([...keysOf('show', 'players'), ...type('One'), 'enter']);
		const state = paste(kind, '7\n');
		expect(state.making).toBe(kind.making);
		expect(state.message).toMatch(/only be pasted/);
	});
});

describe('what is left is offered again', () => {
	const left = pressed([...keysOf('show', 'players'), ...type('Kest'), 'esc']);

	test('esc leaves and keeps every answer and what was typed', () => {
		expect(left.end).toBe('left');
		expect(keptOf(left)).toEqual({ answers: left.answers, typed: 'Kest' });
	});

	test('enter goes on where it was left', () => {
		const again = press(startNewShow(BEGINNING, keptOf(left)), 'enter');
		expect(again.making).toEqual(left.making);
		expect(lineText(again.line)).toBe('Kest');
	});

	test('n begins anew, and nothing is kept in the place of the other before the first answer', () => {
		const offered = startNewShow(BEGINNING, keptOf(left));
		expect(keptOf(offered)).toBeNull();
		const anew = press(offered, 'n');
		expect(anew.making.place.ask).toBe('title');
		expect(anew.answers).toEqual([]);
	});

	test('answers that are none any more end where they are', () => {
		const kept = { answers: ['Title', '', 'not a time', 'more'], typed: '' };
		const again = press(startNewShow(BEGINNING, kept), 'enter');
		expect(again.answers).toEqual(['Title', '']);
	});
});
