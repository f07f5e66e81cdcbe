// The list view as a working list, through the real keys: songs moved, dropped, put in and kept for the
// encore while a song is on. Times are our own, worked out by hand.

import { describe, expect, test } from 'vitest';
import { play, type State } from './play.ts';

/** Into the song that is on first, with the list view open and the next song picked. */
const OPEN = '-01:00 !ready\n00:00 space\n00:30 tab*2\n';

const playSet = (keys: string) => play('set', `${OPEN}${keys}`);
const last = (keys: string): State => playSet(keys).states.at(-1);
/** What comes, by stepping through all of it: each song's id as it begins. */
function coming(keys: string): string[] {
	const steps = Array.from(
		{ length: 20 },
		(_, index) => `1:${20 + index}:00 space\n1:${20 + index}:01 !state`,
	);
	const { states } = playSet(`${keys}\n${steps.join('\n')}`);
	const ids = states
		.filter(({ phase }: State) => phase === 'song')
		.map(({ song }: State) => song.id as string);
	return ids.filter((id, index) => id !== ids[index - 1]);
}

describe('a song is moved', () => {
	test('several places with one hold, up and down and enter', () => {
		expect(coming('00:33 g down*2 enter')).toEqual([
			'gravel',
			'tissel',
			'lantern',
			'kestrel',
			'rainfall',
			'anchorage',
		]);
	});
	test('by a key held down, each repeat a place, in one step of the night', () => {
		const held = '00:33 g\n00:34 down*4@33ms\n00:35 enter';
		expect(coming(held).slice(0, 4)).toEqual(['gravel', 'tissel', 'kestrel', 'lantern']);
		expect(coming(`${held}\n00:36 u`)[0]).toBe('lantern');
	});
	test('and put down again with esc, or left alone for five seconds, was not moved', () => {
		expect(coming('00:33 g down esc')[0]).toBe('lantern');
		expect(coming('00:33 g down\n00:40 enter')[0]).toBe('lantern');
	});
	test('with its gap', () => {
		const { screen } = playSet('00:33 g down enter !screen');
		expect(screen).toMatch(/Lantern +8:55 +0:40 +Ash 4/);
		expect(screen).toMatch(/Gravel +next +4:15 +0:15/);
	});
	test('but not the one that is on', () => {
		const { screen } = playSet('00:33 up g !screen');
		expect(screen).toContain('Harbour is on now. d ends it.');
	});
	test('shows while it is held what it would come to', () => {
		const { screen } = playSet('00:33 g down*2 !screen');
		expect(screen).toContain('Lantern: 4 of 7, after Tissel');
		expect(screen).toMatch(/Ash: 4 .*handed in 12:3[56], 0:40 after Tissel ends/);
		expect(screen).toMatch(/> +4 Lantern +here\?/);
	});
});

describe('a song is dropped', () => {
	test('after a question that says what then follows', () => {
		const { screen, states } = playSet('00:33 k !screen enter !state');
		expect(screen).toContain('Drop Lantern?  Then Gravel is 2 of 6, after Harbour, gap 0:15');
		expect(states[0]).toMatchObject({ song: { of: 6 } });
		expect(states[0].played).toEqual([{ song: 'lantern', state: 'dropped' }]);
		expect(states[0].players.ash.next).toMatchObject({ song: 'kestrel', instrument: 'A1' });
	});
	test('and is not without enter', () => {
		expect(last('00:33 k esc').song.of).toBe(7);
		expect(coming('00:33 k esc')[0]).toBe('lantern');
	});
	test('stays in sight, and the same key takes it on again', () => {
		const { screen } = playSet('00:33 k enter\n00:40 !screen');
		expect(screen).toMatch(/> +Lantern +dropped/);
		expect(coming('00:33 k enter\n00:40 k')[0]).toBe('lantern');
		expect(coming('00:33 k enter\n00:40 u')[0]).toBe('lantern');
	});
});

describe('a song is put in', () => {
	test('after the picked one, with the words of a jump', () => {
		const { screen, states } = playSet('00:33 p "old"\n00:36 !screen\n00:37 enter !state');
		expect(screen).toContain('Add after Lantern');
		expect(screen).toContain('3 of 8, after Lantern');
		expect(screen).toMatch(/Bo: 7 .*capo 3: work 0:55/);
		expect(states[0].song.of).toBe(8);
		expect(coming('00:33 p "old" enter').slice(0, 3)).toEqual(['lantern', 'oldmill', 'gravel']);
	});
	test('before it with tab', () => {
		expect(coming('00:33 p tab "old" enter').slice(0, 2)).toEqual(['oldmill', 'lantern']);
		expect(coming('00:33 p "old" tab enter').slice(0, 2)).toEqual(['oldmill', 'lantern']);
	});
	test('as a hand-over to come, with its work', () => {
		const state = last('00:33 p tab "old" enter');
		expect(state.players.bo.next).toMatchObject({ song: 'oldmill', instrument: 'B3', capo: 3 });
		expect(state.todo.some((one: State) => one.instrument === 'B3')).toBe(true);
	});
});

describe('the encore', () => {
	test('takes the picked song at its end', () => {
		expect(coming('00:33 h').slice(-2)).toEqual(['anchorage', 'lantern']);
		expect(coming('00:33 h')[0]).toBe('gravel');
	});
	test('takes the one that is on once more', () => {
		expect(coming('00:33 up h').slice(-2)).toEqual(['anchorage', 'harbour']);
	});
});

describe('the keys of the show', () => {
	test('work in the list view: a break is answered while a song is held', () => {
		const state = last('00:33 g down b 1\n00:36 enter');
		expect(state.incidents[0]).toMatchObject({ kind: 'string-break', instrument: 'A1' });
		expect(state.players.ash.holds).not.toBe('A1');
		expect(state.song.of).toBe(7);
	});
	test('right changes the song and space steps, whatever row is picked', () => {
		expect(last('00:33 down*2 right').song.id).toBe('lantern');
		expect(last('00:33 g down space').phase).toBe('changeover');
	});
	test('of the list view say elsewhere where they belong', () => {
		const { screen } = play('set', '00:00 space\n00:10 g !screen');
		expect(screen).toContain('Only in the list view. tab goes there.');
	});
});

describe('after a kill', () => {
	test('the list is what was made of it', () => {
		const { states } = playSet(
			'00:33 g down enter\n00:40 p "old" enter\n00:50 !state\n00:51 !kill\n00:51 !state',
		);
		const kept = ({ song, phase, cue, played }: State) => ({ song, phase, cue, played });
		expect(kept(states[1])).toEqual(kept(states[0]));
		expect(states[1].players.bo.next.song).toBe('oldmill');
		expect(coming('00:33 g down enter\n00:40 p "old" enter\n00:51 !kill').slice(0, 3)).toEqual([
			'gravel',
			'lantern',
			'oldmill',
		]);
	});
});
