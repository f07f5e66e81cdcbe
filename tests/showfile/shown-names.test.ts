// What a show calls its things, and what stands in a sentence where it does not have them.

import { join } from 'node:path';
import { expect, test } from 'vitest';
import { instrumentName, playerName, songTitle } from '../../src/showfile/shown-names.ts';
import { loadShow } from '../scenarios/load-show.ts';

const show = loadShow(join(import.meta.dirname, '../scenarios/shows/opening.yaml'));

test('players, songs and instruments go by their names', () => {
	expect(playerName(show, 'ash')).toBe('Ash');
	expect(songTitle(show, 'lantern')).toBe('Lantern');
	expect(instrumentName(show, 'A1')).toBe('Amber');
});

test('an id that the show does not have stands for itself', () => {
	expect(playerName(show, 'lou')).toBe('lou');
	expect(songTitle(show, 'oldmill')).toBe('oldmill');
	expect(instrumentName(show, 'Z9')).toBe('Z9');
});
