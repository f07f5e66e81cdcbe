// A pack that is not to be trusted and a pedal that does not switch, through the real keys: what goes on,
// what is said, and that both outlast cues, undo and a kill. Seconds and places are our own.

import { describe, expect, test } from 'vitest';
import { showFrom } from '../plan/show-from.ts';
import { playShow, type State } from './play.ts';

const show = showFrom(`
players: [{id: ash, name: Ash}, {id: bo, name: Bo}]
packs:
  - {id: P1, channel: "11"}
  - {id: P2, channel: "12"}
  - {id: P3, channel: "13"}
  - {id: P4}
  - {id: P5, channel: "15", name: Belt}
boards: {bo: [{id: drive, name: Drive}, {id: boost, name: Boost}, {id: delay, name: Delay}]}
instruments:
  - {id: A1, name: Amber, slot: "1", kind: electric-6, for: [ash], tuning: E standard, pack: P1}
  - {id: A4, name: Anchor, slot: "4", kind: electric-6, for: [ash], tuning: drop D, pack: P1}
  - {id: B1, name: Birch, slot: "5", kind: electric-6, for: [bo], tuning: E standard, pack: P3}
songs:
  - {id: one, title: One, length: "4:00", hands: {ash: {instrument: A1}, bo: {instrument: B1}}}
  - {id: two, title: Two, length: "4:00", hands: {ash: {instrument: A1}}, board: {bo: {drive: on}},
     cues: [{at: V2, bo: {boost: on}}, {at: V3, bo: {}}]}
  - {id: three, title: Three, length: "4:00", hands: {ash: {instrument: A4}}, board: {bo: {delay: on}}}
set: [one, two, three]
`);
const second = '-01:00 !ready\n00:00 space\n04:00 space\n04:15 space\n';
const play = (script: string) => playShow(show, `${second}${script}`);
const warned = (state: State, code: string): readonly string[] =>
	state.warnings.flatMap((one: State) => (one.code === code ? [one.text] : []));
const words = (screen: string) => screen.replace(/\s+/g, ' ');

describe('a suspect pack', () => {
	const { states, screen } = play(
		'05:00 w a -\n05:02 !state\n05:10 w a 5\n05:12 !state !screen\n08:15 d\n08:30 space\n08:31 !state !screen\n09:00 m "low" enter\n09:10 !kill\n09:11 !state',
	);
	test('is worn until another is chosen, and said', () => {
		expect(states[0].players.ash.pack).toBe('P1');
		expect(states[0].packs).toMatchObject({ P1: { suspect: true }, P5: { suspect: false } });
		expect(warned(states[0], 'suspect-pack')).toEqual(['Ash is on pack P1, which is suspect']);
		expect(states[1].players.ash.pack).toBe('P5');
	});
	test('is put on by no hand-over: the other stays, and that is said', () => {
		expect(states[2].song.id).toBe('three');
		expect(states[2].players.ash).toMatchObject({ holds: 'A4', pack: 'P5' });
		expect(warned(states[2], 'suspect-pack')).toEqual([
			'Pack P1 of A4 is suspect; Ash stays on Belt',
		]);
		expect(words(screen)).toContain('4 Anchor is suspect; Ash stays on Belt.');
	});
	test('is so after a kill', () => {
		expect(states[3].players.ash.pack).toBe('P5');
		expect(states[3].packs.P1).toEqual({ suspect: true });
	});
	test('stands beside the hand-over that would have put it on', () => {
		expect(words(screen)).toContain('pack P1 SUSPECT, keep Belt');
	});
});

test('a suspect pack is cleared by its number, or by being chosen', () => {
	const { states, screen } = play(
		'05:00 w a -\n05:10 w - !screen 1\n05:13 !state\n05:20 w a -\n05:30 w a 1\n05:32 !state\n05:40 w - !screen',
	);
	expect(screen).toContain('1 P1  11  Ash  SUSPECT');
	expect(states[0].packs.P1).toEqual({ suspect: false });
	expect(states[1].packs.P1).toEqual({ suspect: false });
	expect(states[1].players.ash.pack).toBe('P1');
	expect(screen).toContain('No pack is suspect.');
});

test('the question names each pack, its channel and who wears it', () => {
	const { screen } = play('05:00 w a - !screen\n05:10 w a !screen');
	expect(screen).toContain('Ash has pack P1. Which one now?');
	expect(screen).toMatch(/1 P1 {2}11 {2}Ash {2}SUSPECT +2 P2 {2}12 +3 P3 {2}13 {2}Bo\n/);
	expect(screen).toMatch(/4 P4 +5 Belt {2}15\n/);
});

describe('a pack that a song names for its own part', () => {
	const own = showFrom(`
players: [{id: ash, name: Ash}]
packs: [{id: P1, channel: "11"}, {id: P2, channel: "12"}]
instruments:
  - {id: A1, name: Amber, slot: "1", kind: electric-6, tuning: E standard, pack: P1}
  - {id: A4, name: Anchor, slot: "4", kind: electric-6, tuning: drop D, pack: P1}
songs:
  - {id: one, title: One, length: "4:00", hands: {ash: A1}}
  - {id: two, title: Two, length: "4:00", hands: {ash: {instrument: A4, pack: P2}}}
set: [one, two]
`);
	const night = '-01:00 !ready\n00:00 space\n04:00 space\n';
	test.each([
		["by the song's start", '04:15 space'],
		['by enter', '04:10 enter'],
		['by x with the one that it names', '04:10 x 4'],
	])('is the one in the row, and on: %s', (_, keys) => {
		const { states, screen } = playShow(own, `${night}04:05 !screen !state\n${keys}\n04:20 !state`);
		expect(words(screen)).toMatch(/ASH now 4 Anchor for 2 Two .* PACK P2/);
		expect(states[0].players.ash.pack).toBe('P1');
		expect(states[1].players.ash).toMatchObject({ holds: 'A4', pack: 'P2' });
	});
	test('is on for that song alone: what is handed for another has its own', () => {
		const { states } = playShow(
			own,
			`${night}04:10 x 1 !state\n04:20 u\n04:25 enter\n05:00 !kill !state`,
		);
		expect(states[0].players.ash).toMatchObject({ holds: 'A1', pack: 'P1' });
		expect(states[1].players.ash).toMatchObject({ holds: 'A4', pack: 'P2' });
	});
	test('is put on by nothing while it is suspect, which is said', () => {
		const { states } = playShow(
			own,
			`${night}04:02 w a 2\n04:04 w a -\n04:06 w a 1\n04:15 space\n04:20 !state`,
		);
		expect(states[0].players.ash).toMatchObject({ holds: 'A4', pack: 'P1' });
		expect(warned(states[0], 'suspect-pack')).toEqual([
			'Pack P2 of A4 is suspect; Ash stays on P1',
		]);
	});
});

test('past the ninth, packs and pedals go by letters, as slots do', () => {
	const many = showFrom(`
players: [{id: ash, name: Ash}, {id: bo, name: Bo}]
packs: [${Array.from({ length: 12 }, (_, place) => `{id: P${place + 1}}`).join(', ')}]
boards: {bo: [${Array.from({ length: 11 }, (_, place) => `{id: p${place + 1}, name: Pedal ${place + 1}}`).join(', ')}]}
instruments: [{id: A1, name: Amber, slot: "1", kind: electric-6, tuning: E standard}]
songs: [{id: one, title: One, length: "4:00", hands: {ash: {instrument: A1}}}]
set: [one]
`);
	const { states, screen } = playShow(
		many,
		'00:00 space\n01:00 w a !screen b\n01:10 o !screen b\n01:20 f 0 A\n01:30 w a - !state\n01:40 w - b !state\n',
	);
	expect(words(screen)).toContain('9 P9 a P10 b P11 c P12');
	expect(words(screen)).toContain('a Pedal 10, shown off b Pedal 11, shown off');
	expect(states[0].players.ash.pack).toBe('P11');
	expect(states[0].packs.P11).toEqual({ suspect: true });
	expect(states[0].boards.bo).toMatchObject({ p10: { stuck: true }, p11: { on: true } });
	expect(states[1].packs.P11).toEqual({ suspect: false });
});

test('the desk is to be told of another channel until anything else is recorded, or it is undone', () => {
	const { states } = play(
		'05:00 w a 5\n05:02 !state\n05:05 m "low" enter\n05:08 !state\n05:10 u\n05:11 !state\n05:12 u\n05:13 !state\n05:20 w a 4\n05:22 !state\n05:30 w a 4\n05:32 !state',
	);
	const told = ['Ash changed packs; tell desk and radio coordinator: 11 → 15'];
	expect(states.map((state) => warned(state, 'pack-channel'))).toEqual([
		told,
		[],
		told,
		[],
		['Ash changed packs; tell desk and radio coordinator: 11 → pack P4'],
		[],
		[],
	]);
});

describe('a stuck pedal', () => {
	const { states, screen } = play(
		'04:20 f 0 !screen 1\n04:22 !state !screen\n05:00 space\n05:01 !state\n05:10 u\n05:11 !state\n05:12 space\n05:15 o 2\n05:20 !kill\n05:21 !state\n05:30 space\n05:31 !state\n08:15 space*2\n08:16 !state\n08:20 o 1\n08:22 !state\n08:30 r 0 !screen 1\n08:33 !state\n09:00 backspace\n09:10 q e',
	);
	const [marked, cue, undone, killed, last, next, seen, freed, over] = states.map(({ boards }) =>
		Object.entries(boards.bo as Record<string, { on: boolean; stuck: boolean }>).flatMap(
			([id, { on, stuck }]) =>
				on || stuck ? [`${id}${on ? ' on' : ''}${stuck ? ' stuck' : ''}`] : [],
		),
	);
	test('stays as it is believed at every cue and song, through undo of other steps and a kill', () => {
		expect(screen).toContain("Bo's board: which pedal is stuck?");
		expect(marked).toEqual(['drive on stuck']);
		expect(cue).toEqual(['drive on stuck', 'boost on']);
		expect(undone).toEqual(['drive on stuck']);
		expect(killed).toEqual(['drive on stuck']);
		expect(last).toEqual(['drive on stuck']);
		expect(next).toEqual(['drive on stuck', 'delay on']);
	});
	test('is said beside the board and under what to watch, and is an incident', () => {
		expect(screen).toContain('DRIVE STUCK on, rest off');
		expect(warned(states[1], 'stuck-pedal')).toEqual(["Bo's Drive does not switch, stays on"]);
		expect(states[0].incidents).toMatchObject([
			{ at: '00:04:20', kind: 'pedal', player: 'bo', pedal: 'drive' },
		]);
	});
	test('is otherwise once somebody saw it, and switches again once that is said', () => {
		expect(seen).toEqual(['drive stuck', 'delay on']);
		expect(freed).toEqual(['delay on']);
		expect(screen).toContain('1 Drive, off');
		expect(over).toEqual(['delay on']);
	});
});

test('where several have boards their letter comes first, and none are asked for where none is stuck', () => {
	const two = showFrom(`
players: [{id: ash, name: Ash}, {id: bo, name: Bo}]
boards: {ash: [{id: fuzz, name: Fuzz}], bo: [{id: drive, name: Drive}]}
instruments: [{id: A1, name: Amber, slot: "1", kind: electric-6, tuning: E standard}]
songs: [{id: one, title: One}]
set: [one]
`);
	const { states, screen } = playShow(
		two,
		'00:00 space\n00:05 r 0 !screen\n00:20 f 0 b 1\n00:22 !state\n00:30 r 0 b 1\n00:33 !state',
	);
	expect(screen).toContain('No pedal is marked stuck.');
	expect(states[0].boards).toEqual({
		ash: { fuzz: { on: false, stuck: false } },
		bo: { drive: { on: false, stuck: true } },
	});
	expect(states[1].boards.bo.drive.stuck).toBe(false);
});
