// What a card says, whatever it is drawn in: who is on one, what goes on, what comes off and where to.

import { expect, test } from 'vitest';
import { offTexts } from '../../src/screen/card-off.ts';
import { handOverCards } from '../../src/screen/cards.ts';
import { showFrom } from '../plan/show-from.ts';
import { playShow } from '../scenarios/play.ts';
import { staying } from './pressed-states.ts';
import { afterABreak, handOverOfThree, interval, middleOfASong } from './states.ts';

test('all who change at the next moment have a card, the others none', () => {
	const { now, rest } = handOverCards(middleOfASong());
	expect(now.map(({ label, instrument }) => [label, instrument])).toEqual([
		['ASH', 'i4'],
		['BO', 'i7'],
	]);
	expect(rest.map(({ player, kind }) => [player, kind])).toEqual([['cleo', 'keeps']]);
	expect(handOverCards(handOverOfThree()).now).toHaveLength(3);
});

test('the capo is an act where something is to be done, the pack is said where it is swapped', () => {
	const [ash, bo] = handOverCards(middleOfASong()).now;
	expect(ash).toMatchObject({ capoWords: 'no capo', isCapoToDo: false, pack: 'PACK P2' });
	expect(bo).toMatchObject({ capoWords: 'CAPO ON 3', isCapoToDo: true, pack: '' });
	expect(handOverCards(interval()).now[0]).toMatchObject({ instrument: 'i1', pack: '' });
});

test('what comes off goes back to its slot, with the next work on it', () => {
	const state = middleOfASong();
	const [ash] = handOverCards(state).now;
	expect(ash?.off).toMatchObject({ least: '1', words: '1 Amber to slot 1', next: null });
	const [work] = state.plan.work;
	const later = { ...work!, instrument: 'i1', beginByMs: state.nowMs + 750_000 };
	const again = { ...state, plan: { ...state.plan, work: [later] } };
	const off = handOverCards(again).now[0]!.off!;
	expect(offTexts(again, off)).toEqual([
		'1 Amber to slot 1, then TOUCH UP drop D, start within  12:30',
		'1 Amber to slot 1, then TOUCH UP drop D within  12:30',
		'1 Amber to slot 1, then TOUCH UP drop D',
		'1 Amber to slot 1',
	]);
});

test('what comes off goes to whoever gets it next', () => {
	const state = middleOfASong();
	const [ash, bo] = state.plan.handOvers;
	const plan = { ...state.plan, handOvers: [ash!, { ...bo!, instrument: 'i1' }] };
	expect(handOverCards({ ...state, plan }).now[0]?.off?.words).toBe('1 Amber to Bo');
});

test('after a break only whose sound is gone has one; what broke goes to the bench', () => {
	const { now, rest } = handOverCards(afterABreak());
	expect(now).toMatchObject([{ kind: 'break', off: { words: '1 Amber to the bench' } }]);
	expect(rest.map(({ player }) => player)).toEqual(['bo', 'cleo']);
});

test('who stays on something with its capo to be moved has a card, and nothing comes off', () => {
	const [ash] = handOverCards(staying()).now;
	expect(ash).toMatchObject({ kind: 'stays', capoWords: 'CAPO ON 2', isCapoToDo: true, off: null });
});

test('the capo of a backup is said once, as what is to be done', () => {
	const show = showFrom(`
players: [{id: ash, name: Ash}]
instruments:
  - {id: A, name: Amber, slot: "1", kind: electric-6, tuning: E standard}
  - {id: B, name: Birch, slot: "2", kind: electric-6, tuning: E standard}
songs: [{id: one, title: One, length: "3:00", hands: {ash: {instrument: A, capo: 3}}}]
set: [one]
`);
	const { screen } = playShow(show, '-01:00 t 1 enter\n00:00 space\n01:00 b\n01:02 !screen\n');
	const card = screen.slice(0, screen.indexOf('STRING BREAK  Ash'));
	expect(card).toContain('CAPO ON 3');
	expect(card).not.toMatch(/\bcapo 3/);
});

test('all who change in one gap, and who stays on what they have, have the same moment', () => {
	// Ash has a backup and keeps it; Bo gets another one. The gap is longer than the hand-over.
	const show = showFrom(`
players: [{id: ash, name: Ash}, {id: bo, name: Bo, key: n}]
instruments:
  - {id: A, name: Amber, slot: "1", kind: electric-6, for: [ash], tuning: E standard}
  - {id: S, name: Spare, slot: "2", kind: electric-6, for: [ash], tuning: E standard}
  - {id: B, name: Birch, slot: "3", kind: bass-4, tuning: E standard}
  - {id: C, name: Coal, slot: "4", kind: bass-4, tuning: drop D}
songs:
  - {id: one, title: One, length: "3:00", hands: {ash: {instrument: A}, bo: {instrument: B}}}
  - {id: two, title: Two, length: "3:00", hands: {ash: {instrument: A}, bo: {instrument: C}}}
set: [one, {song: two, gap: 40s}]
`);
	const night = '-01:00 t 0\n-00:30 enter enter\n00:00 space\n00:30 b 1 enter\n';
	const { screen } = playShow(show, `${night}01:00 !screen\n`);
	expect(screen).toMatch(/^ASH +in +2:25 2 Spare for 2 Two +KEEPS 2$/m);
	expect(screen).toMatch(/^BO +in +2:25 4 Coal for 2 Two/m);
});

test('the number of a song goes before its title is cut: K Broom for 9 Orchard Wall has no room at 80 columns', () => {
	const show = showFrom(`
players: [{id: ivo, name: Ivo}]
instruments:
  - {id: I1, name: Burdock, slot: "8", kind: bass-4, tuning: E standard}
  - {id: I3, name: Broom, slot: "k", kind: bass-4, tuning: drop D}
songs:
  - {id: glass, title: Glasshouse, length: "4:00", hands: {ivo: {instrument: I1}}}
  - {id: orchard, title: Orchard Wall, length: "4:00", hands: {ivo: {instrument: I3}}}
set: [glass, orchard]
`);
	const script = '-01:00 !ready\n00:00 space\n00:10 !screen\n';
	expect(playShow(show, script).screen).toMatch(/^IVO .* K Broom for Orchard Wall {2}READY/m);
	expect(playShow(show, script.replace('!screen', '!screen --size 120x40')).screen).toMatch(
		/^IVO .* K Broom for 2 Orchard Wall/m,
	);
});

test('a ready one in a long tuning says its capo below where that has no room beside it', () => {
	const rows = Array.from({ length: 7 }, (_, at) => at + 1);
	const show = showFrom(`
players: [{id: nell, name: Nell}]
instruments:
${rows.map((at) => `  - {id: N${at}, name: Campion, slot: "${at}", kind: acoustic-6, tuning: DADGAD}`).join('\n')}
songs:
  - {id: one, title: One, length: "4:00", hands: {nell: {instrument: N1}}}
  - {id: two, title: Two, length: "4:00", hands: {nell: {instrument: N2, capo: 2}}}
set: [one, two]
`);
	const { screen } = playShow(show, '-01:00 !ready\n00:00 space\n00:20 t 2\n00:30 !screen\n');
	expect(screen).toMatch(/^1 {3}Nell {3}2 \+ DADGAD .*\n.*\n {2}DADGAD {5}capo 2/m);
	// A row of the rack view cuts the tuning, never the capo.
	const rack = playShow(show, '-01:00 !ready\n00:00 space\n00:20 t 2\n00:30 tab !screen\n');
	expect(rack.screen).toMatch(/^ *2 \+ Campion .*c2 .*rack/m);
});
