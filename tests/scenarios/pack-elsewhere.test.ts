// A spare whose own pack is on another player, through the real keys: what is said before is what is recorded,
// by enter, by space, as a backup and by x, and it outlasts undo, a kill and the report.

import { describe, expect, test } from 'vitest';
import { packWords } from '../../src/words/report.ts';
import { pressedNight } from '../night/pressed-night.ts';
import { showFrom } from '../plan/show-from.ts';
import { playShow, type State } from './play.ts';
import { reportOfShow } from './report-of.ts';

const show = showFrom(`
players: [{id: ash, name: Ash}, {id: bo, name: Bo}]
packs: [{id: P1, channel: "11"}, {id: P2, channel: "12"}, {id: P3}]
instruments:
  - {id: A1, name: Amber, slot: "1", kind: electric-6, for: [ash], tuning: E standard, pack: P1}
  - {id: B1, name: Birch, slot: "5", kind: electric-6, for: [bo], tuning: E standard, pack: P2}
  - {id: S1, name: Spruce, slot: s, kind: electric-6, tuning: drop D, pack: P1}
songs:
  - {id: one, title: One, length: "4:00", hands: {ash: {instrument: A1}, bo: {instrument: B1}}}
  - {id: two, title: Two, length: "4:00", hands: {bo: {instrument: S1}}}
  - {id: three, title: Three, length: "4:00", hands: {bo: {instrument: B1}}}
set: [one, two, three]
`);
const bare = showFrom(`
players: [{id: ash, name: Ash}, {id: bo, name: Bo}]
packs: [{id: P1, channel: "11"}, {id: P2, channel: "12"}]
instruments:
  - {id: A1, name: Amber, slot: "1", kind: electric-6, for: [ash], tuning: E standard, pack: P1}
  - {id: B1, name: Birch, slot: "5", kind: electric-6, for: [bo], tuning: E standard}
  - {id: S1, name: Spruce, slot: s, kind: electric-6, tuning: drop D, pack: P1}
songs:
  - {id: one, title: One, length: "4:00", hands: {ash: {instrument: A1}, bo: {instrument: B1}}}
  - {id: two, title: Two, length: "4:00", hands: {bo: {instrument: S1}}}
set: [one, two]
`);

const begun = '-01:00 !ready\n00:00 space\n';
const play = (script: string) => playShow(show, `${begun}${script}`);
const words = (screen: string) => screen.replace(/\s+/g, ' ');
const warned = (state: State, code: string): readonly string[] =>
	state.warnings.flatMap((one: State) => (one.code === code ? [one.text] : []));

describe('handed as planned', () => {
	test.each([
		['enter', '04:10 enter'],
		['space', '04:15 space'],
	])('by %s: the card says that the pack stays, and so it is', (_, keys) => {
		const { states, screen } = play(
			`04:00 space\n04:05 !screen\n${keys}\n04:20 !state l !screen\n04:30 !kill\n04:31 !state`,
		);
		expect(words(screen)).toContain('pack: keep P2 (P1 on Ash)');
		expect(states[0].players).toMatchObject({
			ash: { holds: 'A1', pack: 'P1' },
			bo: { holds: 'S1', pack: 'P2' },
		});
		expect(words(screen)).toContain('Bo has S Spruce, drop D, keeps pack P2');
		expect(warned(states[0], 'shared-pack')).toEqual([]);
		expect(states[1].players.bo).toMatchObject({ holds: 'S1', pack: 'P2' });
	});
	test('and taken back, the other is on as before; handed the next, its own', () => {
		const { states } = play(
			'04:00 space\n04:10 enter u !state\n04:15 space\n08:15 space\n08:30 space\n08:31 !state',
		);
		expect(states[0].players.bo).toMatchObject({ holds: 'B1', pack: 'P2' });
		expect(states[1].players.bo).toMatchObject({ holds: 'B1', pack: 'P2' });
	});
});

describe('given out of turn', () => {
	test('as the backup at a break: the card says it before, and so it is', () => {
		const { states, screen } = play('01:00 b 5 !screen\n01:05 enter !state\n01:06 u !state');
		expect(words(screen)).toContain('pack: keep P2 (P1 on Ash)');
		expect(states[0].players.bo).toMatchObject({ holds: 'S1', pack: 'P2' });
		expect(states[1].players.bo.pack).toBe('P2');
	});
	test('by x: said before the key that records it', () => {
		const { screen } = play(
			'01:10 x !screen s !screen esc\n01:20 x b !screen esc\n01:30 x 5 !screen',
		);
		const [slots = '', players = '', bos = '', done = ''] = screen.split(/(?<=LAST.*\n.*\n)/);
		// The spare may be either's: whose is asked next.
		expect(slots).toContain('What is in hands now?');
		expect(slots).not.toContain('S Spruce pack');
		expect(players).toContain('Who has S Spruce?\n  Bo pack: keep P2 (P1 on Ash)');
		expect(bos).toContain('Bo has now: slot, or - for none\n  S Spruce pack: keep P2 (P1 on Ash)');
		expect(done).not.toContain('Birch PACK');
	});
	test('by x: said at once as what was done last', () => {
		const { states, screen } = play('01:10 x s b !screen\n01:11 !state');
		expect(words(screen)).toMatch(/LAST.*Bo has S Spruce.*, keeps pack P2/);
		expect(states[0].players.bo).toMatchObject({ holds: 'S1', pack: 'P2' });
	});
	test('as a correction of what was handed just now', () => {
		const { states, screen } = play('00:10 x s b !state !screen');
		expect(states[0].players.bo).toMatchObject({ holds: 'S1', pack: 'P2' });
		expect(words(screen)).toMatch(/LAST.*Bo has S Spruce.*, keeps pack P2/);
	});
});

describe('to a player without a pack', () => {
	test('the act is that none goes on; it stands under WATCH until one is', () => {
		const { states, screen } = playShow(
			bare,
			`${begun}04:00 space\n04:05 !screen\n04:10 enter !state !screen l !screen l\n04:12 !kill\n04:13 !state\n04:15 space\n04:20 w b 2 !state\n`,
		);
		expect(words(screen)).toContain('NO PACK (P1 on Ash)');
		expect(states[0].players).toMatchObject({
			ash: { pack: 'P1' },
			bo: { holds: 'S1', pack: null },
		});
		expect(words(screen)).toContain('Bo has S Spruce, drop D, no pack on');
		expect(warned(states[0], 'no-pack')).toEqual(['Bo has no pack on: P1 is on Ash']);
		expect(words(screen)).toMatch(/WATCH.*Bo has no pack on: P1 is on Ash/);
		expect(states[1].players.bo).toMatchObject({ holds: 'S1', pack: null });
		expect(warned(states[1], 'no-pack')).toHaveLength(1);
		expect(states[2].players.bo.pack).toBe('P2');
		expect(warned(states[2], 'no-pack')).toEqual([]);
	});
});

test('whatever is swapped after whatever was done with packs: what the question says is what is recorded', () => {
	const KEYS = { ash: 'a', bo: 'b' } as const;
	const before = [
		[],
		['w', 'a', '3'],
		['w', 'b', '1'],
		['w', 'b', '-'],
		['w', 'a', '-'],
		['x', 's', 'b'],
		['x', 'a', '-'],
	];
	let said = 0;
	for (const keys of before) {
		for (const [player, letter] of Object.entries(KEYS)) {
			// What is for somebody else is handed all the same, and not listed.
			const own = show.instruments.filter((one) => one.for?.includes(player) ?? true);
			for (const { id, slot, name } of own) {
				const { night, press, pass } = pressedNight(show);
				press('t', '0', 'space', ...keys);
				pass(70_000);
				const worn = () => night.session().players[player]?.pack ?? null;
				const was = worn();
				press('x', letter);
				const line = night.screen().prompt?.lines.join('\n') ?? '';
				press(slot ?? '');
				if (night.session().players[player]?.holds !== id) continue;
				const [, words = ''] = new RegExp(`${name} (.*?)(?:   |$)`, 'm').exec(line) ?? [];
				const put = /^PACK (P\d)/.exec(words)?.[1];
				const told = put ?? (words.startsWith('NO PACK') ? null : was);
				expect([keys, player, id, words, worn()]).toEqual([keys, player, id, words, told]);
				if (words !== '') said += 1;
			}
		}
	}
	expect(said).toBeGreaterThan(5);
});

describe('the report', () => {
	const packsOf = (of: typeof show, script: string) =>
		reportOfShow(of, `${begun}${script}`).packs.map(
			(one) => `${one.what} ${one.packId}: ${packWords(one)}`,
		);
	test('lists a pack that was left off, with what was kept and why', () => {
		const handed = ['left-off P1: Bo kept P2: P1 was on Ash'];
		expect(packsOf(show, '04:00 space\n04:10 enter\n')).toEqual(handed);
		expect(packsOf(show, '04:00 space\n04:15 space\n')).toEqual(handed);
		expect(packsOf(show, '01:00 b 5\n01:05 enter\n')).toEqual(handed);
		expect(packsOf(show, '01:10 x s b\n')).toEqual(handed);
		expect(packsOf(bare, '04:00 space\n04:10 enter\n')).toEqual([
			'left-off P1: Bo had no pack on: P1 was on Ash',
		]);
	});
	test('lists one that was left off as suspect', () => {
		expect(
			packsOf(
				show,
				'00:05 w b 3\n01:00 w b 2\n01:01 w b -\n01:10 w b 3\n04:00 space\n04:15 space\n08:15 space\n08:30 space\n',
			),
		).toContain('left-off P2: Bo kept P3: P2 was suspect');
	});
	test('lists none that went on', () => {
		expect(packsOf(show, '')).toEqual([]);
	});
});

test('a pack that is kept although it is suspect is said to be so on the card', () => {
	const { screen } = play('02:00 w b -\n02:10 !screen');
	// Wrapped, not cut, where the row beside the tall letters has no room for all.
	expect(screen).toMatch(/pack: keep P2 SUSPECT \(P1\n.* on Ash\)/);
});

test('two on one pack, of whom one is not heard, come before work that is late', () => {
	const { screen } = playShow(show, '00:00 space\n00:10 w b 1\n03:50 !screen');
	expect(screen).toMatch(/^WATCH \+\d+ +Ash and Bo are both on pack P1/m);
	expect(playShow(show, '00:00 space\n03:50 !screen').screen).toMatch(/^WATCH.* short for Two/m);
});

test('two who wear each other’s packs after a mix-up are told so until they have their own', () => {
	const standard = showFrom(`
players: [{id: ash, name: Ash}, {id: bo, name: Bo}]
packs: [{id: P1, channel: "11"}, {id: P2, channel: "12"}]
instruments:
  - {id: A1, name: Amber, slot: "1", kind: electric-6, for: [ash], tuning: E standard, pack: P1}
  - {id: B1, name: Birch, slot: "5", kind: electric-6, for: [bo], tuning: E standard, pack: P2}
  - {id: S1, name: Spruce, slot: s, kind: electric-6, tuning: E standard, pack: P1}
songs:
  - {id: one, title: One, length: "4:00", hands: {ash: {instrument: A1}, bo: {instrument: B1}}}
set: [one]
`);
	const { states, screen } = playShow(
		standard,
		'-01:00 t 0\n-00:38 enter enter\n-00:15 x a 5\n00:00 space\n00:20 x a 1\n00:24 x b 5 !state !screen\n00:30 w a 1\n00:32 w b 2 !state\n',
	);
	const said = "Ash and Bo wear each other's packs: Ash P2, Bo P1";
	expect(states[0].players).toMatchObject({
		ash: { holds: 'A1', pack: 'P2' },
		bo: { holds: 'B1', pack: 'P1' },
	});
	expect(warned(states[0], 'crossed-packs')).toEqual([said]);
	expect(screen).toMatch(new RegExp(`^WATCH.*${said}`, 'm'));
	expect(warned(states[1], 'crossed-packs')).toEqual([]);
});
