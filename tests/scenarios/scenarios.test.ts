// A technician's worst and best moments, minute by minute, through the real keys. Times and counts are
// our own and were worked out by hand; the seconds for each piece of work are common practice, no source.

import { describe, expect, test } from 'vitest';
import { play, type State } from './play.ts';

const readyAll = '-01:00 !ready\n';
const todoOf = (state: State, instrument: string): State =>
	state.todo.find((one: State) => one.instrument === instrument);

describe('a clean opening', () => {
	const { states } = play(
		'opening',
		`${readyAll}00:00 space\n04:00 space\n04:00 !state\n04:15 space\n04:15 !state\n05:30 t 1\n07:45 space\n08:00 space\n08:00 !state`,
	);
	test('the song ends on one key, and what stands next is at once the change-over', () => {
		expect(states[0].phase).toBe('changeover');
		expect(states[0].song).toMatchObject({ id: 'harbour', position: 1, of: 3 });
	});
	test('the next song hands the drop D over and wants the first guitar back in time', () => {
		const state = states[1];
		expect(state.players.ash).toMatchObject({ holds: 'A4', since: '00:04:15', planned: 'A4' });
		expect(state.players.ash.next).toMatchObject({
			song: 'gravel',
			instrument: 'A1',
			in: 210,
			ready: false,
		});
		expect(state.players.bo.holds).toBe('B1');
		expect(state.players.cleo.holds).toBe('C1');
		expect(todoOf(state, 'A1')).toMatchObject({
			seconds: 60,
			wanted: '00:07:45',
			slack: 150,
			beginBy: '00:06:45',
		});
	});
	test('it is handed over with a ready mark of two and a half minutes and no warning', () => {
		expect(states[2].players.ash).toMatchObject({ holds: 'A1', since: '00:08:00' });
		expect(
			states[2].warnings.filter((one: State) => one.player === 'ash' || one.instrument === 'A1'),
		).toEqual([]);
		expect(states[2].instruments.A1).toMatchObject({ place: 'hands', readyAge: null });
	});
});

describe('a string breaks with a stand-in ready', () => {
	const before = `${readyAll}00:00 space\n04:00 space*2\n08:15 space*2\n12:30 space*2\n16:45 space*2\n18:00 t s\n20:45 space\n21:00 space\n`;
	const { states, screen } = play(
		'break',
		`${before}21:10 b 1\n21:11 !state\n21:25 enter\n21:40 e 3 enter\n21:45 !state\n24:00 !state\n28:15 space\n28:16 !state !screen\n28:30 space\n28:30 !state\n29:00 t 1\n29:01 !state`,
	);
	test('the ready one is offered first', () => {
		expect(states[0].song.id).toBe('six');
		expect(states[0].standIns.ash[0]).toMatchObject({ instrument: 'S1', readyIn: 10 });
		expect(states[0].standIns.ash[0].why).toContain('ready');
		expect(states[0].instruments.A1.stringsDown).toEqual([null]);
	});
	test('the restring is first in the list, with two minutes to spare', () => {
		expect(states[1].players.ash.holds).toBe('S1');
		expect(states[1].instruments.A1).toMatchObject({ place: 'bench', stringsDown: [3] });
		expect(states[1].todo[0]).toMatchObject({
			job: 'restring',
			instrument: 'A1',
			seconds: 270,
			wanted: '00:28:15',
			slack: 120,
			beginBy: '00:23:45',
		});
		expect(states[1].incidents[0]).toMatchObject({
			at: '00:21:10',
			kind: 'string-break',
			player: 'ash',
			instrument: 'A1',
			string: 3,
			standIn: 'S1',
			silence: 15,
		});
	});
	test('half a minute late is said in words, with the stand-in named', () => {
		expect(todoOf(states[2], 'A1').slack).toBe(-30);
		const late = states[2].warnings.find((one: State) => one.code === 'late');
		expect(late.text).toContain('A1');
		expect(late.text).toContain('S1');
		expect(states[2].players.ash.next).toMatchObject({ song: 'seven', instrument: 'A1' });
	});
	test('not marked by when it is wanted, it cannot be had: the backup is kept, and that is said', () => {
		expect(states[3].players.ash).toMatchObject({
			holds: 'S1',
			stays: { song: 'seven', instrument: 'S1', capo: 0, for: 'A1' },
		});
		expect(screen).toMatch(/^ASH .*S Spare for 7 Seven +KEEPS S$/m);
		expect(screen).toContain('backup for 1 Amber');
	});
	test('what is not restrung is never recorded as handed over', () => {
		expect(states[4].players.ash.holds).toBe('S1');
		expect(states[4].instruments.A1.place).toBe('bench');
	});
	test('ready records the restring as done', () => {
		expect(states[5].instruments.A1).toMatchObject({ place: 'rack', ready: true, stringsDown: [] });
	});
});

describe('another song is called', () => {
	const before = '-01:00 !ready\n00:00 space\n04:00 space\n16:30 t 7\n43:55 space\n';
	const { states, screen } = play(
		'audible',
		`${before}47:28.4 j "old"\n47:29.9 !screen\n47:30 enter\n47:30.2 !state\n47:36 u\n47:36.1 !state\n47:38 j "old" enter\n` +
			'47:55 d\n47:55.5 !state\n48:40 enter space\n48:42 !state\n51:40 space\n51:41 !state\n51:55 space\n55:55 space\n56:10 space\n56:11 !state\n1:00:10 space',
	);
	test('while typing it shows that the guitar is stale and what that costs', () => {
		expect(screen).toContain('Old Mill');
		expect(screen).toContain('RECHECK');
		expect(screen).toMatch(/work 0:55, handed in 1:(09|10), 0:4[45] after Eleven en/);
	});
	test('what tab would do is offered, and nothing is skipped', () => {
		expect(screen).toMatch(/tab in place of Rainfall/i);
		expect(screen).not.toContain('SKIPS');
	});
	test('it is put in before the next song', () => {
		expect(todoOf(states[0], 'B3')).toMatchObject({ seconds: 55, capo: 3 });
		expect(states[0].song.of).toBe(5);
	});
	test('taking it back leaves everything else alone', () => {
		expect(states[1].song.of).toBe(4);
		expect(todoOf(states[1], 'B3')).toBeUndefined();
	});
	test('it is handed over and played, and the song that was next comes after it', () => {
		expect(states[3].song).toMatchObject({ id: 'oldmill', position: 3, of: 5 });
		expect(states[3].players.bo).toMatchObject({ holds: 'B3' });
		expect(states[3].instruments.B3.capo).toBe(3);
		expect(states.at(-1).phase).toBe('over');
		expect(states.at(-1).played).toEqual([
			{ song: 'warm', state: 'played' },
			{ song: 'eleven', state: 'played' },
			{ song: 'oldmill', state: 'played' },
			{ song: 'rainfall', state: 'played' },
			{ song: 'after', state: 'played' },
		]);
		expect(states[4].song).toMatchObject({ id: 'oldmill' });
		expect(states[5].song).toMatchObject({ id: 'after', position: 5, of: 5 });
	});
	test('with tab it takes its place, which is said before enter and is dropped at the end', () => {
		const instead = play(
			'audible',
			`${before}47:28 j "old" tab\n47:30 !screen\n47:31 enter !state\n47:55 d\n48:40 enter space\n51:40 space\n51:55 space\n55:55 space`,
		);
		expect(instead.screen).toContain('SKIPS Rainfall');
		expect(instead.screen).toMatch(/tab before Rainfall/i);
		expect(instead.states[0].song.of).toBe(5);
		expect(instead.states.at(-1).played).toEqual([
			{ song: 'warm', state: 'played' },
			{ song: 'eleven', state: 'played' },
			{ song: 'oldmill', state: 'played' },
			{ song: 'after', state: 'played' },
			{ song: 'rainfall', state: 'dropped' },
		]);
	});
});

test('one skip too many inside a segue is taken back by one key', () => {
	const { states, screen } = play(
		'skip',
		`${readyAll}00:00 space\n01:30 right*3\n01:33 u\n01:33 !state\n01:36 !screen`,
	);
	const state = states[0];
	expect(state.song.id).toBe('sixteen');
	expect(state.played).toEqual([
		{ song: 'fourteen', state: 'cut-short' },
		{ song: 'fifteen', state: 'skipped' },
	]);
	expect(state.players.ash.holds).toBe('A4');
	expect(state.players.ash.planned).toBe('A1');
	expect(state.players.ash.next).toMatchObject({ song: 'sixteen', instrument: 'A1', in: 0 });
	expect(screen).toMatch(/^ASH +0:0\d late 1 Amber for 3 Sixteen/m);
});

describe('the wrong guitar', () => {
	test('the mismatch is said at once, and put right by another exchange', () => {
		const { states, screen } = play(
			'wrong',
			`${readyAll}00:00 space\n02:00 space\n02:10 x 1\n02:10.5 !screen\n02:10.6 !state\n02:26 x 4\n02:26.5 !state`,
		);
		expect(screen).toContain('E standard');
		expect(screen).toContain('drop D');
		expect(states[0].warnings.find((one: State) => one.code === 'wrong-tuning').text).toContain(
			'drop D',
		);
		expect(states[1].players.ash).toMatchObject({ holds: 'A4', since: '00:02:26' });
		expect(states[1].instruments.A1).toMatchObject({ place: 'rack', ready: false, readyAge: null });
	});
	test('a hand-over recorded by enter is corrected, and keeps its time', () => {
		const { states } = play(
			'wrong',
			`${readyAll}00:00 space\n02:00 space\n02:12 enter\n02:20 x 1\n02:21 !state`,
		);
		expect(states[0].players.ash).toMatchObject({ holds: 'A1', since: '00:02:12' });
		expect(states[0].instruments.A4).toMatchObject({ place: 'rack', ready: true, readyAge: 201 });
		expect(states[0].instruments.A2.place).toBe('rack');
	});
});

test('a missed cue is healed by the next key, a repeat by one back, a foot by a correction', () => {
	const { states } = play(
		'cue',
		`${readyAll}00:00 space\n00:52 space\n00:53 !state\n01:20 space\n01:50 space\n02:10 space\n02:30 backspace\n02:31 !state\n03:10 o 2\n03:11 !state\n03:20 d\n03:21 !state`,
	);
	const off = { on: false, stuck: false };
	expect(states[0].cue).toEqual({ index: 1, of: 6, at: 'Ch1' });
	expect(states[0].boards.bo).toEqual({
		drive: { on: true, stuck: false },
		boost: off,
		delay: off,
	});
	expect(states[1].cue.at).toBe('solo');
	expect(states[1].boards.bo).toMatchObject({
		drive: { on: true },
		boost: { on: true },
		delay: { on: true },
	});
	expect(states[2].cue.at).toBe('solo');
	expect(states[2].boards.bo.boost.on).toBe(false);
	expect(states[3].played).toEqual([{ song: 'eleven', state: 'played' }]);
});

describe('power and a towel', () => {
	test('after a kill the night stands where it stood, and ages have grown by the gap', () => {
		const { states } = play(
			'cue',
			`${readyAll}00:00 space\n00:52 space\n01:00 b 1\n01:05 enter\n01:10 !state\n01:35 !kill\n01:35 !state`,
		);
		const [before, after] = states;
		expect(after).toMatchObject({
			song: before.song,
			cue: before.cue,
			boards: before.boards,
			incidents: before.incidents,
		});
		expect(after.players.ash.holds).toBe(before.players.ash.holds);
		expect(after.instruments.A2.readyAge).toBe(before.instruments.A2.readyAge + 25);
	});
	test('thirty spaces within a second are one step, and so is a held one', () => {
		const { states } = play(
			'cue',
			`${readyAll}00:00 space\n01:00 space*30@33ms\n01:05 !state\n01:06 u\n01:07 !state\n02:00 space\n02:00.5 space*20@33ms\n02:05 !state\n02:10 l\n02:12 space\n02:13 x\n02:14 !state\n02:20 l esc\n02:22 space\n02:23 !state`,
		);
		expect(states[0].cue.index).toBe(1);
		expect(states[1].cue.index).toBe(0);
		expect(states[2].cue.index).toBe(1);
		expect(states[3].cue.index).toBe(1);
		expect(states[4].cue.index).toBe(2);
	});
});

test('three changes for one pair of hands: the last has 38 seconds, the gap three', () => {
	const { states } = play(
		'three',
		`12:40.1 !state\n`.replace(
			'12:40.1 !state\n',
			'-01:00 !ready\n00:00 space\n17:00 a enter\n17:10 !state\n17:20 u\n17:21 !state',
		),
	);
	const [doubted, undone] = states;
	const work = ['M1', 'R1', 'U1'].map((id) => todoOf(doubted, id));
	expect(work.reduce((sum: number, one: State) => sum + one.seconds, 0)).toBe(135);
	for (const one of work) expect(one.wanted).toBe('00:20:03');
	expect(Math.min(...work.map((one: State) => one.slack))).toBe(38);
	expect(doubted.instruments.M1).toMatchObject({ ready: false, readyAge: null });
	expect(doubted.warnings.find((one: State) => one.code === 'tight-gap').text).toContain(
		'0:03 left',
	);
	expect(undone.instruments.M1.readyAge).toBe(18 * 60 + 21);
});

describe('an interval', () => {
	const before = `${readyAll}00:00 space\n03:00 space\n`;
	test('puts everything back on the rack, whence it is trusted to be after 15 s', () => {
		const { states } = play('interval', `${before}03:01 !state`);
		expect(states[0]).toMatchObject({ phase: 'interval', song: { id: 'one' } });
		expect(states[0].players.bo).toMatchObject({
			holds: null,
			next: { song: 'two', instrument: 'B1' },
		});
		expect(states[0].instruments.B1.place).toBe('rack');
		// Wipe and touch-up, 60 s from 03:15; the hand-overs of three players, 45 s, are before 11:00.
		expect(todoOf(states[0], 'B1')).toMatchObject({ seconds: 60, wanted: '00:10:15' });
	});
	test('gives who keeps the same again when the next song starts', () => {
		const { states } = play('interval', `${before}11:00 space\n11:01 !state`);
		expect(states[0].players).toMatchObject({
			ash: { holds: 'A1' },
			bo: { holds: 'B1' },
			cleo: { holds: 'C1' },
		});
	});
	test('gone on from at once, it leaves their hand-overs open', () => {
		const { states } = play(
			'interval',
			`${before}04:00 right\n04:02 !state\n04:05 enter*2\n04:07 !state`,
		);
		expect(states[0].players.bo).toMatchObject({ holds: null, planned: 'B1' });
		expect(states[1].players).toMatchObject({
			ash: { holds: 'A1' },
			bo: { holds: 'B1' },
			cleo: { holds: 'C1' },
		});
	});
	test('after it, one key gives and takes away', () => {
		const { states } = play(
			'interval',
			`${before}11:00 space\n14:00 space\n14:15 space\n14:16 !state\n17:15 space\n17:20 enter\n17:21 !state`,
		);
		expect(states[0].players.bo.holds).toBeNull();
		expect(states[1].players.ash).toMatchObject({ holds: 'A4', since: '00:17:20' });
	});
	test('a capo that the player moves on what they keep is on once the song starts, and asks nobody', () => {
		const { states } = play(
			'interval',
			`${before}11:00 space\n14:00 space\n14:15 space\n17:15 space\n17:30 space\n20:30 space\n20:45 space\n20:46 !state\n20:50 u\n20:51 !state`,
		);
		expect(states[0].song.id).toBe('five');
		expect(states[0].players.ash).toMatchObject({ holds: 'A4', since: '00:17:30' });
		expect(states[0].instruments.A4.capo).toBe(2);
		expect(states[0].warnings).toEqual([]);
		expect(states[1].instruments.A4.capo).toBe(0);
	});
});
