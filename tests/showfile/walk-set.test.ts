// Who holds what along the set.

import { describe, expect, it } from 'vitest';
import { walkSet } from '../../src/showfile/walk-set.ts';
import { showFrom, smallShow } from './show-files.ts';

const SPARE = '  - {id: S1, slot: s, kind: electric-6, tuning: E standard, spare: true}';

/** One line a point of the set: what Ash and Bo hold, and who was given something. */
function walk(songs: string, set: string, more = SPARE): string[] {
	return walkSet(showFrom(smallShow({ songs, set, more }))).map(({ hands, given, cue }) => {
		const held = [...hands.values()].map((one) =>
			one ? `${one.instrument.id} ${one.tuning.name}${one.capo ? ` capo ${one.capo}` : ''}` : '-',
		);
		const names = given.map(({ player }) => player.name).join('+');
		return `${cue ? `${cue.at}: ` : ''}${held.join(' | ')}${names ? ` <- ${names}` : ''}`;
	});
}

describe('walking the set', () => {
	it('keeps what is not named, and counts what is given', () => {
		const songs = `  - {id: a, hands: {ash: A1, bo: C1}}
  - {id: b, hands: {ash: {instrument: A2, capo: 2}}}
  - {id: c, hands: {ash: none}}
  - {id: d}`;
		expect(walk(songs, '[a, b, c, d, a]')).toEqual([
			'A1 E standard | C1 E standard <- Ash+Bo',
			'A2 drop D capo 2 | C1 E standard <- Ash',
			'- | C1 E standard',
			'- | C1 E standard',
			'A1 E standard | C1 E standard <- Ash',
		]);
	});

	it('splits a song at a cue that hands over', () => {
		const songs = '  - {id: a, hands: {ash: A1}, cues: [{at: V2}, {at: Br, hand: {ash: A2}}]}';
		expect(walk(songs, '[a, a]')).toEqual([
			'A1 E standard | - <- Ash',
			'Br: A2 drop D | - <- Ash',
			'A1 E standard | - <- Ash',
			'Br: A2 drop D | - <- Ash',
		]);
	});

	it('gives everything anew after an interval', () => {
		expect(walk('  - {id: a, hands: {ash: A1}}\n  - {id: b}', '[a, interval: 5m, b]')[1]).toBe(
			'A1 E standard | - <- Ash',
		);
	});

	it('takes the first that fits for a part that names none, spares last', () => {
		const needs = (text: string) => `{needs: {kind: electric-6, ${text}}}`;
		const first = walk(`  - {id: a, hands: {ash: ${needs('sounds: E standard')}}}`, '[a]');
		expect(first).toEqual(['A1 E standard | - <- Ash']);
		const taken = walk(`  - {id: a, hands: {ash: ${needs('sounds: E standard')}, bo: A1}}`, '[a]');
		expect(taken).toEqual(['A2 E standard | A1 E standard <- Ash+Bo']);
		const preferred = walk(
			`  - {id: a, hands: {ash: ${needs('sounds: E standard, prefer: S1')}}}`,
			'[a]',
		);
		expect(preferred).toEqual(['S1 E standard | - <- Ash']);
	});

	it('leaves what is in hands there when it fits', () => {
		const songs = `  - {id: a, hands: {ash: A2}}
  - {id: b, hands: {ash: {needs: {kind: electric-6, sounds: drop D}}}}`;
		expect(walk(songs, '[a, b]')[1]).toBe('A2 drop D | -');
	});

	it('uses a capo rather than another tuning', () => {
		const songs =
			'  - {id: a, hands: {ash: {needs: {kind: electric-6, sounds: "G2 C3 F3 Bb3 D4 G4"}}}}';
		expect(walk(songs, '[a]')).toEqual(['A1 E standard capo 3 | - <- Ash']);
	});

	it('takes the same again after an interval, the named one instead of its backup', () => {
		const songs = `  - {id: a, hands: {ash: A1, bo: C1}}
  - {id: b, hands: {bo: A1}}
  - {id: c, hands: {ash: none}}
  - {id: d}`;
		expect(walk(songs, '[a, b, c, interval: 5m, d, d]')).toEqual([
			'A1 E standard | C1 E standard <- Ash+Bo',
			'A1 E standard | S1 E standard <- Bo',
			// An unnamed song never gives the original back.
			'- | S1 E standard',
			'- | A1 E standard <- Bo',
			'- | A1 E standard',
		]);
	});

	it('puts what is kept after an interval before what another is named there', () => {
		const songs = `  - {id: a, hands: {bo: A1}}
  - {id: b, hands: {ash: A1}}`;
		expect(walk(songs, '[a, interval: 5m, b]')[1]).toBe('S1 E standard | A1 E standard <- Ash+Bo');
	});

	it('asks again for what could not be had above, a cue included', () => {
		const bass = '{needs: {kind: bass-4, sounds: E standard}}';
		const songs = `  - {id: a, hands: {ash: A1, bo: C1}, cues: [{at: Br, hand: {ash: ${bass}}}]}
  - {id: b, hands: {bo: none}}
  - {id: c}`;
		expect(walk(songs, '[a, b, c]')).toEqual([
			'A1 E standard | C1 E standard <- Ash+Bo',
			'Br: - | C1 E standard',
			'C1 E standard | - <- Ash',
			'C1 E standard | -',
		]);
	});

	it('plays a named one that another has on what stands in its list, best first', () => {
		const songs = '  - {id: a, hands: {ash: B1, bo: B1}}';
		const rack = (instead: string) =>
			`${SPARE}\n  - {id: B1, kind: electric-6, tuning: E standard, instead: ${instead}}`;
		const boHas = (instead: string) => walk(songs, '[a]', rack(instead))[0]?.split(' | ')[1];
		expect(boHas('[A2, S1]')).toBe('A2 E standard <- Ash+Bo');
		expect(boHas('[{instrument: A2, tuning: D standard, capo: 2}, S1]')).toBe(
			'A2 whole step down capo 2 <- Ash+Bo',
		);
		// A bass never sounds like it.
		expect(boHas('[C1, S1]')).toBe('S1 E standard <- Ash+Bo');
		expect(boHas('[]')).toBe('- <- Ash');
	});
});
