// Which packs go on with what is handed together. That a pack is on one player at a time, and that exchanging it
// takes both, is common practice.

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type HandedWithPack, packsHanded } from '../../src/session/packs-handed.ts';

type Worn = Readonly<Record<string, { holds: string | null; pack: string | null }>>;

const handed = (players: Worn, all: readonly HandedWithPack[], suspectPacks: string[] = []) =>
	packsHanded({ players, suspectPacks }, all);
const give = (player: string, instrument: string | null, pack: string | null): HandedWithPack => ({
	player,
	instrument,
	pack,
});

const both: Worn = { ash: { holds: 'A1', pack: 'P1' }, bo: { holds: 'B1', pack: 'P2' } };

test('the pack of an instrument goes on, and stays off where another player plays on it', () => {
	expect(handed(both, [give('bo', 'B3', 'P3')])).toEqual([{ worn: 'P3', wearer: null }]);
	expect(handed(both, [give('bo', 'S1', 'P1')])).toEqual([{ worn: 'P2', wearer: 'ash' }]);
	const bare: Worn = { ...both, bo: { holds: 'B1', pack: null } };
	expect(handed(bare, [give('bo', 'S1', 'P1')])).toEqual([{ worn: null, wearer: 'ash' }]);
});

test('whose hands are empty or emptied is in nobody’s way, and their pack goes with what is taken from them', () => {
	const resting: Worn = { ...both, ash: { holds: null, pack: 'P1' } };
	expect(handed(resting, [give('bo', 'S1', 'P1')])).toEqual([{ worn: 'P1', wearer: null }]);
	expect(handed(both, [give('ash', null, null), give('bo', 'S1', 'P1')])[1]).toEqual({
		worn: 'P1',
		wearer: null,
	});
	expect(handed(both, [give('bo', 'A1', 'P1')])).toEqual([{ worn: 'P1', wearer: null }]);
});

test('who had nothing in hands while their pack went to another has none', () => {
	const gone: Worn = { ash: { holds: null, pack: 'P1' }, bo: { holds: 'S1', pack: 'P1' } };
	expect(handed(gone, [give('ash', 'A1', 'P1')])).toEqual([{ worn: null, wearer: 'bo' }]);
});

test('packs are exchanged where both are given others; of two for one pack the first has it', () => {
	expect(handed(both, [give('ash', 'B2', 'P2'), give('bo', 'A2', 'P1')])).toEqual([
		{ worn: 'P2', wearer: null },
		{ worn: 'P1', wearer: null },
	]);
	expect(handed(both, [give('ash', 'A5', 'P5'), give('bo', 'A6', 'P5')])).toEqual([
		{ worn: 'P5', wearer: null },
		{ worn: 'P2', wearer: 'ash' },
	]);
	// Who keeps theirs is in the way of the one before.
	const three: Worn = { ...both, cleo: { holds: 'C1', pack: 'P3' } };
	expect(handed(three, [give('bo', 'A2', 'P1'), give('ash', 'C2', 'P3')])).toEqual([
		{ worn: 'P2', wearer: 'ash' },
		{ worn: 'P1', wearer: 'cleo' },
	]);
});

test('a suspect pack never goes on: what is worn stays, and nobody is in the way', () => {
	expect(handed(both, [give('bo', 'S1', 'P1')], ['P1'])).toEqual([{ worn: 'P2', wearer: null }]);
});

test('whatever is handed to whomever, a pack that was on one player is never on two', () => {
	const PACKS = ['P1', 'P2', 'P3', 'P4'];
	const PLAYERS = ['ash', 'bo', 'cleo', 'dax'];
	const pack = fc.option(fc.constantFrom(...PACKS));
	const night = fc.record({
		packs: fc.shuffledSubarray(PACKS, { minLength: 4 }),
		bare: fc.subarray(PLAYERS),
		empty: fc.subarray(PLAYERS),
		handed: fc.shuffledSubarray(PLAYERS, { minLength: 1 }),
		wanted: fc.array(pack, { minLength: 4, maxLength: 4 }),
		emptied: fc.subarray(PLAYERS),
	});
	fc.assert(
		fc.property(night, ({ packs, bare, empty, handed: who, wanted, emptied }) => {
			const players = Object.fromEntries(
				PLAYERS.map((id, at) => [
					id,
					{
						holds: empty.includes(id) ? null : `${id}1`,
						pack: bare.includes(id) ? null : (packs[at] ?? null),
					},
				]),
			);
			const all = who.map((id, at) =>
				give(id, emptied.includes(id) ? null : `${id}2`, wanted[at] ?? null),
			);
			const after = { ...players };
			for (const [at, { worn }] of handed(players, all).entries()) {
				const { player = '', instrument = null } = all[at] ?? {};
				after[player] = { holds: instrument, pack: worn };
			}
			const playing = Object.values(after).flatMap(({ holds, pack: worn }) =>
				holds !== null && worn !== null ? [worn] : [],
			);
			expect(new Set(playing).size).toBe(playing.length);
		}),
	);
});
