// What stands beside a card's tall letters: an instrument's slot and name are never parted by the end of a line.

import { expect, test } from 'vitest';
import { detailRows, detailsBelow } from '../../src/screen/card-details.ts';
import { handOverCards } from '../../src/screen/cards.ts';
import { rowText } from '../../src/screen/row.ts';
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
	expect(detailsBelow(state, card!, below).map(rowText)).toEqual(lines);
});

test('where not even a part is whole, the name still is', () => {
	const [card] = handOverCards(staying()).now;
	expect(detailRows(staying(), card!, { columns: 16, rows: 4 }).map(rowText)).toEqual([
		'E std',
		'backup for',
		'1 Amber',
	]);
});
