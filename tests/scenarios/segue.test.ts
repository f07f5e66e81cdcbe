// A song that goes straight on into the next, and a guitar that changes hands inside a song: what `d`
// and `x` do about it, through the real keys. Times are our own, worked out by hand.

import { describe, expect, test } from 'vitest';
import { play } from './play.ts';

describe('done at a segue', () => {
	test('goes straight on, with the hand-overs of the next song', () => {
		const [state] = play(
			'segue',
			'-01:00 !ready\n00:00 space\n00:30 space*2@1000ms\n02:00 d',
		).states;
		expect(state).toMatchObject({ phase: 'song', song: { id: 'two' } });
		expect(state.players.ash).toMatchObject({ holds: 'A4', since: '00:00:31' });
		expect(state.players.bo).toMatchObject({ holds: 'B3', since: '00:02:00' });
		expect(state.played).toEqual([{ song: 'one', state: 'played' }]);
	});
	test('gives who was to change at a cue passed by what the next song wants of them', () => {
		const [state] = play('segue', '-01:00 !ready\n00:00 space\n02:00 d').states;
		expect(state.players.ash).toMatchObject({ holds: 'A4', since: '00:02:00' });
	});
	test('is one step to take back', () => {
		const [state] = play('segue', '-01:00 !ready\n00:00 space\n02:00 d\n02:02 u').states;
		expect(state).toMatchObject({ phase: 'song', song: { id: 'one' }, cue: { index: 0 } });
		expect(state.players.bo.holds).toBe('B1');
	});
	test('ends a song that is no segue in the change-over', () => {
		const [state] = play('segue', '-01:00 !ready\n00:00 space\n02:00 d\n04:00 d').states;
		expect(state).toMatchObject({ phase: 'changeover', song: { id: 'two' } });
	});
});

describe('an exchange in a song with a hand-over of its own later', () => {
	test('leaves that one to be recorded when its cue is reached', () => {
		const [state] = play(
			'segue',
			'-01:00 !ready\n00:00 space\n01:10 x 2\n01:20 space\n02:00 space',
		).states;
		expect(state.cue.at).toBe('bridge');
		expect(state.players.ash).toMatchObject({ holds: 'A4', since: '00:02:00' });
	});
	test('stands where that cue names somebody else', () => {
		const [state] = play(
			'segue',
			'-01:00 !ready\n00:00 space\n01:10 x 7\n01:20 space\n02:00 space',
		).states;
		expect(state.cue.at).toBe('bridge');
		expect(state.players.bo).toMatchObject({ holds: 'B3', since: '00:01:10' });
	});
	test('after that cue settles that one, also when the song goes back and over it again', () => {
		const [state] = play(
			'segue',
			'-01:00 !ready\n00:00 space\n01:00 space*2@1000ms\n02:30 x 2\n02:40 backspace\n02:41 space',
		).states;
		expect(state.cue.at).toBe('bridge');
		expect(state.players.ash.holds).toBe('A2');
	});
});

describe('what stands in no row is not recorded', () => {
	// `right` records no hand-over, so those of the song that is on stay open.
	const open = '-01:00 !ready\n00:00 right\n';
	test('at a cue while the hand-over of the song is still open; enter records it after', () => {
		const { states, screen } = play(
			'segue',
			`${open}00:30 space\n00:31 !screen\n00:32 space !state !screen\n00:40 enter enter !state`,
		);
		const [before, after] = screen.split(/(?=^ASH)/m);
		expect(before).toMatch(/^ASH 1 Amber +0:\d\d late/);
		expect(after).toMatch(/^ASH 4 Acorn +in +0:00/);
		expect(states[0].cue.at).toBe('bridge');
		expect(states[0].players.ash).toMatchObject({ holds: null, next: { instrument: 'A4' } });
		expect(states[1].players).toMatchObject({ ash: { holds: 'A4' }, bo: { holds: 'B1' } });
	});
	test('at the song that a segue goes straight on to', () => {
		const keys = `${open}00:30 space*3@1000ms\n02:00 !screen space !state`;
		const { states, screen } = play('segue', keys);
		expect(screen).toMatch(/ BO 5 Birch +in/);
		expect(states[0]).toMatchObject({ phase: 'song', song: { id: 'two' } });
		expect(states[0].players.bo).toMatchObject({ holds: null, next: { instrument: 'B3' } });
	});
});
