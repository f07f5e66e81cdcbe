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
