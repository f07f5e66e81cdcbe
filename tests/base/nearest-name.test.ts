import { expect, test } from 'vitest';

import { nearestName } from '../../src/base/nearest-name.ts';

test.each([
	['lenght', ['title', 'length', 'tempo'], 'length'],
	['tpye', ['kind', 'type'], 'type'],
	['Tunning', ['tuning', 'times'], 'tuning'],
	['gage', ['gauge'], 'gauge'],
	['TEMPO', ['title', 'tempo'], 'tempo'],
	['zwölf', ['zwo\u0308lf'], 'zwo\u0308lf'],
	['songs', ['song', 'sings'], 'song'],
])('%s was probably meant to be %s', (typed, names, meant) => {
	expect(nearestName(typed, names)).toBe(meant);
});

test.each([
	['A1', ['A2', 'B1']],
	['on', ['off', 'no']],
	['amp', ['set', 'rack']],
	['colour', ['title', 'length']],
	['x'.repeat(65), ['x'.repeat(64)]],
	['tuning', []],
	['', ['a', 'on']],
])('%s is near none of %j', (typed, names) => {
	expect(nearestName(typed, names)).toBeNull();
});
