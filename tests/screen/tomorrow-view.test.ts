// What is to be done before the next show, at the sizes of the live screen: with few lines and with many.

import { expect, test } from 'vitest';
import { tickOf } from '../../src/report/tomorrow-forms.ts';
import type { TomorrowKind, TomorrowLine } from '../../src/report/tomorrow-line.ts';
import { rowWidth, screenText } from '../../src/screen/row.ts';
import { drawTomorrow } from '../../src/screen/tomorrow-view.ts';
import { BUY, CARRY, REPAIR, RESTRING, TELL } from '../../src/words/tomorrow.ts';
import { expectDrawn } from './expect-drawn.ts';

const SIZES = [
	{ columns: 80, rows: 24 },
	{ columns: 120, rows: 40 },
	{ columns: 200, rows: 60 },
];

const line = (kind: TomorrowKind, name: string | null, said: readonly [string, string]) =>
	({
		...{ kind, instrument: name === null ? null : name.toLowerCase() },
		slot: name === null ? null : name.slice(0, 1).toLowerCase(),
		...{ name, text: said[0], why: said[1] },
	}) satisfies TomorrowLine;

const FEW: readonly TomorrowLine[] = [
	line('restring', 'Amber', [RESTRING.set('10 13 17 26w 36w 46w'), RESTRING.among([3], '11.1 h')]),
	line('repair', 'Dace', [REPAIR.fault('jack'), REPAIR.found('21:04 in Lantern', 'Ash')]),
	line('buy', null, [
		BUY.text(3, '10'),
		`${BUY.stock(1, 0)}; ${BUY.restringing(1)}; ${BUY.breaks(0.3, 3, 3)}`,
	]),
	line('tell', 'Dace', [TELL.player('Ash', 'D Dace'), TELL.fault('jack')]),
	line('carry-over', 'Ember', [CARRY.tuning('drop D'), CARRY.file('E standard')]),
];
const MANY = Array.from({ length: 30 }, (_, place) =>
	line('repair', `Guitar ${place}`, [REPAIR.out, REPAIR.found('21:04 in Lantern', null)]),
);

const few = {
	night: 'Quay Street, 2026-06-12',
	lines: FEW,
	ticked: new Set([FEW[1]].map((one) => (one ? tickOf(one) : ''))),
	picked: 2,
	note: null,
};

test.each(SIZES)('few lines at $columns by $rows, each with its reason', (size) => {
	const drawn = drawTomorrow(few, size, { isAscii: false });
	for (const row of drawn) expect(rowWidth(row)).toBeLessThanOrEqual(size.columns);
	expectDrawn(`tomorrow-few-${size.columns}x${size.rows}`, screenText(drawn));
});

test('the picked line of many is in sight with its reason', () => {
	const size = { columns: 80, rows: 24 };
	const view = { ...few, lines: MANY, picked: 25 };
	expectDrawn('tomorrow-many-80x24', screenText(drawTomorrow(view, size, { isAscii: false })));
});
