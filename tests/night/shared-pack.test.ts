// Two players on one wireless pack: said at once, and as long as it is so.

import { expect, test } from 'vitest';
import { warningWords } from '../../src/words/warnings.ts';
import { showFrom } from '../plan/show-from.ts';
import { pressedNight } from './pressed-night.ts';

const show = showFrom(`
show: {title: Packs}
packs: [{id: P1}, {id: P2}]
players:
  - {id: ash, name: Ash, key: h}
  - {id: bo, name: Bo, key: n}
instruments:
  - {id: A1, name: Amber, slot: 1, kind: electric-6, tuning: E standard, pack: P1}
  - {id: B1, name: Basalt, slot: 2, kind: electric-6, tuning: E standard, pack: P2}
songs:
  - {id: one, title: One, length: "4:00", hands: {ash: {instrument: A1}, bo: {instrument: B1}}}
set: [one]
`);

test('a pack that another player wears is said at once, stands as a warning, and goes with one u', () => {
	const { night, press } = pressedNight(show);
	const warned = () =>
		night
			.plan()
			.warnings.flatMap((one) => (one.code === 'shared-pack' ? [warningWords(show, one)] : []));
	press('space');
	expect(warned()).toEqual([]);
	press('w', 'n', '1');
	expect(night.screen().message).toBe('Ash and Bo are both on pack P1.');
	expect(warned()).toEqual(['Ash and Bo are both on pack P1']);
	press('m', 'o', 'enter');
	expect(night.screen().message).toBeNull();
	expect(warned()).toHaveLength(1);
	press('u', 'u');
	expect(warned()).toEqual([]);
});
