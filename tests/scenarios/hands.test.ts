// What is in hands, through the real keys: said otherwise than planned, said to stay, named for a song to
// come; and songs gone back into. Times are our own, worked out by hand.

import { describe, expect, test } from 'vitest';
import { play, type State } from './play.ts';

const ready = '-01:00 !ready\n00:00 space\n';
const words = (screen: string): string => screen.replace(/\s+/g, ' ');

describe('x', () => {
	test('corrects what starting a song recorded, and keeps its time', () => {
		const { states } = play('wrong', `${ready}04:00 space\n04:15 space\n04:40 x 1 !state`);
		expect(states[0].players.ash).toMatchObject({ holds: 'A1', since: '00:04:15' });
		expect(states[0].instruments.A4).toMatchObject({ place: 'rack', ready: true });
	});
	test('corrects it even to what was held before', () => {
		const { states } = play('wrong', `${ready}04:00 space\n04:15 space\n04:40 x 2 !state`);
		expect(states[0].players.ash).toMatchObject({ holds: 'A2', since: '00:04:15' });
	});
	test('after it is an exchange again, with its own time', () => {
		const { states } = play(
			'wrong',
			`${ready}04:00 space\n04:15 space\n04:40 x 1\n04:50 x 3 !state`,
		);
		expect(states[0].players.ash).toMatchObject({ holds: 'A3', since: '00:04:50' });
		expect(states[0].instruments.A1.ready).toBe(false);
	});
	test('between songs closes the next one’s hand-over: starting it records nothing for them', () => {
		const { states } = play('wrong', `${ready}04:00 space\n04:05 x 3\n04:15 space !state`);
		expect(states[0].players.ash).toMatchObject({ holds: 'A3', since: '00:04:05' });
	});
	test('with what they have in hands keeps them on it, as if nothing had been handed', () => {
		const { states, screen } = play(
			'wrong',
			`${ready}04:00 space\n04:05 x 2 !state\n04:15 space !state\n04:16 tab*3 !screen`,
		);
		expect(states[0].players.ash).toMatchObject({ holds: 'A2', since: '00:00:00' });
		expect(states[1].players.ash).toMatchObject({ holds: 'A2', since: '00:00:00' });
		expect(screen).toContain('Ash keeps 2 Alder for Eighteen');
	});
	test('with it during a song keeps them on it for the coming one, until that is undone', () => {
		const { states } = play(
			'wrong',
			`${ready}02:00 x 2\n04:00 space\n04:15 space !state\n04:20 u u u\n04:30 space\n04:45 space !state`,
		);
		expect(states[0].players.ash.holds).toBe('A2');
		expect(states[1].players.ash.holds).toBe('A4');
	});
	test('with it in the last song before an interval says nothing of the song after, for which all comes back', () => {
		const { states, screen } = play(
			'interval',
			`${ready}01:00 x 2 !state !screen\n03:00 space\n03:05 !state\n11:00 space !state`,
		);
		expect(words(screen)).toContain('Ash keeps 2 Alder for One');
		for (const state of states.slice(0, 2))
			expect(state.players.ash.next).toMatchObject({ song: 'two', instrument: 'A1' });
		expect(states[2].players.ash.holds).toBe('A1');
	});
	test('with it says nothing either once an interval comes to stand before the song', () => {
		// Two is moved before the interval, Ash is to stay on A2 for it, and it is moved back.
		const { states } = play(
			'interval',
			`${ready}00:10 tab*2 down g up enter\n00:30 esc x 2 !state\n00:40 tab*2 g down enter !state`,
		);
		expect(states[0].players.ash.next).toMatchObject({ song: 'three' });
		expect(states[1].players.ash.next).toMatchObject({ song: 'two', instrument: 'A1' });
	});
	test('asks for the player only where several could have it', () => {
		expect(play('wrong', `${ready}02:00 x s a !state`).states[0].players.ash.holds).toBe('S1');
		expect(play('wrong', `${ready}02:00 x b - !state`).states[0].players.bo.holds).toBeNull();
		expect(play('wrong', `${ready}02:00 x b 5 !state`).states[0].players.bo.holds).toBe('B1');
	});
});

describe('a jump', () => {
	test('says what it skips, and an interval with it', () => {
		const { screen } = play('unnamed', `${ready}02:00 j "qua" !screen`);
		expect(screen).toContain('SKIPS Lantern');
		const far = play('unnamed', `${ready}02:00 j "gra" !screen enter\n04:00 d !state\n`);
		expect(far.screen).toContain('SKIPS Lantern, Quarry and the interval');
		expect(far.states[0].phase).toBe('changeover');
	});
	test('to a song of the list leaves those between unplayed, and tab changes nothing', () => {
		for (const tab of ['', ' tab']) {
			const { states } = play(
				'unnamed',
				`${ready}02:00 j "qua"${tab} enter\n04:00 d\n04:15 space !state`,
			);
			expect(states[0].song).toMatchObject({ id: 'quarry', position: 3, of: 4 });
		}
	});
});

describe('left', () => {
	test('into a song that was played makes it current again, and the first time stays', () => {
		const { states } = play(
			'wrong',
			`${ready}04:00 space\n04:15 space\n05:00 left !state\n09:00 space !state`,
		);
		expect(states[0]).toMatchObject({ phase: 'song', song: { id: 'seventeen' } });
		expect(states[1].played).toEqual([
			{ song: 'seventeen', state: 'played' },
			{ song: 'eighteen', state: 'cut-short' },
			{ song: 'seventeen', state: 'played' },
		]);
	});
	test('between songs takes up the one just ended; before the first there is none', () => {
		const { states } = play('wrong', `${ready}04:00 space\n04:05 left !state`);
		expect(states[0]).toMatchObject({ phase: 'song', song: { id: 'seventeen' } });
		expect(play('wrong', '-00:30 left !screen').screen).toContain('No song before this one.');
	});
	test('right after the last song says so', () => {
		const { screen } = play('wrong', `${ready}04:00 space\n04:15 space\n05:00 right !screen`);
		expect(screen).toContain('No song after this one. d ends it.');
	});
});

describe('a break', () => {
	test('is asked until it is answered, through space and time', () => {
		const { states, screen } = play(
			'break',
			`${ready}01:00 b 1\n01:30 !screen\n04:00 space\n04:10 !screen\n04:12 s !state`,
		);
		expect(screen.match(/STRING BREAK {2}Ash/g)?.length).toBeGreaterThanOrEqual(2);
		expect(states[0]).toMatchObject({ phase: 'changeover', players: { ash: { holds: 'S1' } } });
		expect(states[0].incidents[0]).toMatchObject({ standIn: 'S1', silence: 192 });
	});
	test('with one instrument only in hands asks for no slot, and takes it when it is typed', () => {
		const script = '00:00 x 1\n00:10 space\n01:00 b 1\n01:05 !state\n01:06 0 !state';
		const { states } = play('cue', script.replace('00:10 space\n', ''));
		expect(states[0].incidents).toMatchObject([{ instrument: 'A1', player: 'ash' }]);
		expect(states[1].incidents[0]).toMatchObject({ standIn: null });
	});
	test('put off with esc is asked no more', () => {
		const { screen, states } = play(
			'break',
			`${ready}01:00 b 1 esc !screen\n01:10 e 3 enter !state`,
		);
		expect(screen).not.toMatch(/STRING BREAK {2}Ash {2}slot/);
		expect(states[0].incidents[0]).toMatchObject({ string: 3, standIn: null });
	});
});

describe('another instrument named for a song, tonight', () => {
	/** Lantern picked in the list, while Harbour is on. */
	const open = `${ready}00:30 tab*2\n`;
	test('is named by player and slot, with what is on it then, and stands in its row', () => {
		const { screen } = play('set', `${open}00:33 x a s !screen enter\n00:40 !screen`);
		expect(words(screen)).toContain('Lantern tonight: Ash on S Spare, drop D, no capo');
		expect(screen).toMatch(/> +2 Lantern .*Ash tonight S Spare/);
	});
	test('is not without enter, and undone by one key', () => {
		expect(play('set', `${open}00:33 x a s esc\n00:40 !screen`).screen).not.toContain('tonight S');
		expect(play('set', `${open}00:33 x a s enter\n00:40 u !screen`).screen).not.toContain(
			'tonight S',
		);
	});
	test('is as the song says again with 0', () => {
		const { screen } = play('set', `${open}00:33 x a s enter\n00:40 x a 0 enter\n00:45 !screen`);
		expect(screen).not.toContain('tonight S');
	});
	test('hands nothing to anybody now, and not in a song that is on', () => {
		const { states } = play('set', `${open}00:33 x a s enter\n00:40 !state`);
		expect(states[0].players.ash).toMatchObject({ holds: 'A1', since: '00:00:00' });
		const on = play('set', `${open}00:33 up x !screen`);
		expect(on.screen).toContain('Harbour is on now');
	});
	test('is what it was after a kill', () => {
		const { screen } = play('set', `${open}00:33 x a s enter\n00:40 !kill\n00:41 tab*2 !screen`);
		expect(screen).toContain('Ash tonight S Spare');
	});
	test('elsewhere x says what is in hands', () => {
		const state: State = play('set', `${ready}00:33 x s a !state`).states[0];
		expect(state.players.ash.holds).toBe('S1');
	});
});
