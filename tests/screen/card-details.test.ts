// What stands beside a card's tall letters: an instrument's slot and name are never parted by the end of a line.

import { join } from 'node:path';
import { expect, test } from 'vitest';
import { detailRows, detailsBelow } from '../../src/screen/card-details.ts';
import { handOverCards } from '../../src/screen/cards.ts';
import { rowText } from '../../src/screen/row.ts';
import { loadShow } from '../scenarios/load-show.ts';
import { playShow } from '../scenarios/play.ts';
import { playOn, staying, takenAway } from './pressed-states.ts';

test.each([
	['play on', playOn(), ['next 9 Bracken, E std;', 'K Broom takes 0:10']],
	['taken away', takenAway(), ['Ash has 2 Basalt;', 'backup 3 Coral']],
])('%s', (_, state, lines) => {
	const [card] = handOverCards(state).now;
	const area = { columns: 26, rows: 3 };
	expect(detailRows(state, card!, area).map(rowText)).toEqual(lines);
	// No more rows than the words need: what comes off stands under them.
	const below = { ...area, isNamed: true, hasCapo: true };
	const parted = lines.map((line) => line.replace(/;$/, ''));
	expect(detailsBelow(state, card!, below).map(rowText)).toEqual(parted);
});

test('where not even a part is whole, the name still is', () => {
	const [card] = handOverCards(staying()).now;
	expect(detailRows(staying(), card!, { columns: 16, rows: 4 }).map(rowText)).toEqual([
		'E std',
		'backup for',
		'1 Amber',
	]);
});

test('play on names the capo of what comes next, and never parts it', () => {
	const show = loadShow(join(import.meta.dirname, '../../shows/folk.yaml'));
	const { screen } = playShow(
		show,
		'-01:00 !ready\n00:00 space\n03:20 space\n03:35 space\n07:11 b 4\n07:13 !screen',
	);
	expect(screen).toMatch(/^BO +DOWN .*PLAY ON/m);
	expect(screen).toMatch(/ next 5 Rowan, E std,$/m);
	expect(screen).toMatch(/ CAPO 2;$/m);
	expect(screen).toMatch(/ R Tin Can takes 0:53$/m);
});
