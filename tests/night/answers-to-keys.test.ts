// What the screen answers to keys whose effect it would not show otherwise.

import { expect, test } from 'vitest';
import { showFrom } from '../plan/show-from.ts';
import { pressedNight } from './pressed-night.ts';

const show = showFrom(`
show: {title: Answers, recheck-after: 8m}
players: [{id: ash, name: Ash, key: h}, {id: bo, name: Bo, key: n}]
packs: [{id: P1}, {id: P2}]
instruments:
  - {id: A, name: Amber, slot: "1", kind: electric-6, tuning: E standard, pack: P1}
  - {id: B, name: Birch, slot: "2", kind: electric-6, tuning: E standard, pack: P2}
  - {id: C, name: Cobble, slot: "3", kind: electric-6, tuning: drop D, pack: P1}
songs:
  - {id: one, title: One, length: "12:00", hands: {ash: {instrument: A}, bo: {instrument: B}}}
  - {id: two, title: Two, length: "4:00", hands: {ash: {instrument: C}}}
set: [one, two]
`);

function begun() {
	const { night, press, pass } = pressedNight(show);
	press('t', '0', 'space');
	return { night, press, pass, said: () => night.screen().message };
}

test('u says what it took back', () => {
	const { press, said } = begun();
	press('d', 'u');
	expect(said()).toBe('Taken back: One ended. y redo.');
	press('u');
	expect(said()).toBe('Taken back: One began and 2 more. y redo.');
});

test('t says where the mark will be too old for the song', () => {
	const { press, pass, said } = begun();
	press('t', '3');
	expect(said()).toBe('3 Cobble is ready now; touch it up again before Two.');
	pass(6 * 60_000);
	press('t', '3');
	expect(said()).toBeNull();
});

test('a fresh battery clears no suspect pack, and says so', () => {
	const { press, said } = begun();
	press('w', 'h', '-', 'w', 'h', '0');
	expect(said()).toBe('Fresh battery in P1. It is still suspect: w - clears it.');
	press('w', 'n', '0');
	expect(said()).toBeNull();
});

test('x says from whom something was taken', () => {
	const { press, said } = begun();
	press('x', 'n', '1');
	expect(said()).toMatch(/^Ash no longer has 1 Amber\./);
});

test('an answer to a question that has closed is told so', () => {
	const { night, press, pass, said } = begun();
	press('b');
	expect(night.screen().prompt?.lines).toEqual(['Ash 1 Amber   Bo 2 Birch']);
	pass(5_000);
	press('3');
	expect(night.session().incidents).toEqual([]);
	expect(said()).toBe('Too late for 3: the question had closed. Nothing was logged. b asks again.');
	press('3');
	expect(said()).toBe('3 does nothing here. ? shows all keys.');
});

test('nor does such an answer do what its key does elsewhere, but a break is one', () => {
	const { night, press, pass, said } = begun();
	const kinds = () => night.session().incidents.map(({ kind }) => kind);
	press('q');
	expect(night.screen().prompt?.choices.map(({ key }) => key)).toContain('enter');
	pass(9_000);
	press('enter');
	expect(said()).toBe(
		'Too late for enter: the question had closed. Nothing was logged. q asks again.',
	);
	expect(night.session().players.ash?.holds).toBe('A');
	press('w');
	pass(6_000);
	press('n');
	expect(said()).toMatch(/^Too late for n: .* w asks again\.$/);
	// Long after it is a key like any other.
	press('q');
	pass(20_000);
	press('i');
	expect(kinds()).toEqual([null]);
});

test('what enter logs early is no backup in the song that is on', () => {
	const { night, press } = begun();
	press('enter', 'enter');
	const [line] = night.screen().log;
	expect(line?.words).toBe('Ash has 3 Cobble, drop D, early for Two');
});

test('what was worked on in hands is not marked ready, and its key is named', () => {
	const { press, said } = begun();
	press('t', '1');
	expect(said()).toBe('Ash has 1 Amber: not to be marked ready. c logs its tuning or capo.');
});

test.each([
	['2', 'E standard', 2],
	['drop D', 'drop D', 0],
	['drop D 2', 'drop D', 2],
	['drop D, capo 2', 'drop D', 2],
	['capo 3', 'E standard', 3],
	['D2 A2 D3 G3 A3 D4', 'DADGAD', 0],
	['D2 A2 D3 G3 A3 D4 5', 'DADGAD', 5],
])('c takes %s', (typed, tuning, capo) => {
	const { night, press } = pressedNight(show);
	press('c', '1', ...[...typed].map((one) => (one === ' ' ? 'space' : one)), 'enter');
	expect(night.session().instruments.A?.context).toMatchObject({ tuning: { name: tuning }, capo });
});
