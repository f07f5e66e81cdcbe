// Whether what is in hands sounds like what a song asks for, so that nothing need be handed.

import { expect, test } from 'vitest';
import { openSession } from '../../src/session/open-session.ts';
import { soundsSo } from '../../src/session/sounds-so.ts';
import { showFrom } from '../plan/show-from.ts';

const show = showFrom(`
players: [{id: ash, name: Ash}]
instruments:
  - {id: A1, name: Amber, slot: "1", kind: electric-6, tuning: E standard,
     instead: [K1, {instrument: B1, tuning: B standard, capo: 5}]}
  - {id: K1, name: Kelp, slot: "2", kind: acoustic-6, tuning: E standard}
  - {id: B1, name: Bass, slot: "3", kind: baritone-6, tuning: B standard}
  - {id: N1, name: Nylon, slot: "4", kind: nylon-6, tuning: E standard}
  - {id: A2, name: Alder, slot: "5", kind: electric-6, tuning: E standard}
songs: [{id: one, title: One, hands: {ash: {instrument: A1, capo: 2}}}]
set: [one]
`);
const session = openSession(show);
const part = show.songs[0]!.parts.ash!;
const sounds = (id: string, capo: number, stringsDown: readonly null[] = []) => {
	const instrument = show.instruments.find((one) => one.id === id)!;
	const state = session.instruments[id]!;
	return soundsSo(
		show,
		{ instrument, state: { ...state, context: { ...state.context, capo, stringsDown } } },
		part,
	);
};

test.each([
	['the same kind with the capo', 'A2', 2, true],
	['the same kind without it', 'A2', 0, false],
	['another kind that is played instead', 'K1', 2, true],
	['another kind that is not', 'N1', 2, false],
	['what the file says of a tuning is believed', 'B1', 5, true],
	['and of its capo', 'B1', 3, false],
])('%s', (_, id, capo, isSo) => {
	expect(sounds(id, capo)).toBe(isSo);
});

test('with a string down nothing sounds so', () => {
	expect(sounds('A2', 2, [null])).toBe(false);
});
