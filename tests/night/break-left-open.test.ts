// A string broke and nobody answered before its song was over: what the next song's start records is what the
// tall row says.

import { expect, test } from 'vitest';
import type { Night } from '../../src/night/night.ts';
import { comingHandOvers } from '../../src/screen/coming.ts';
import { showFrom } from '../plan/show-from.ts';
import { pressedNight } from './pressed-night.ts';

const show = showFrom(`
players: [{id: ash, name: Ash, key: a}]
instruments:
  - {id: A1, slot: "1", kind: electric-6, tuning: E standard, instead: [S1, S2]}
  - {id: S1, slot: "2", kind: electric-6, tuning: E standard}
  - {id: S2, slot: "3", kind: electric-6, tuning: E standard}
songs:
  - {id: one, length: "3:00", hands: {ash: {instrument: A1}}}
  - {id: two, length: "3:00", hands: {ash: {instrument: A1}}}
  - {id: three, length: "3:00", hands: {ash: none}}
set: [one, two, three]
`);

const row = (night: Night) => comingHandOvers(night.screen())[0];

test('in the song it says what to take, after it what is handed for the next', () => {
	const { night, press } = pressedNight(show);
	press('t', '0', 'space', 'b', '1');
	expect(row(night)).toMatchObject({ kind: 'break', instrument: 'S1' });
	press('d');
	expect(row(night)).toMatchObject({ kind: 'hand-over', instrument: 'S1', for: 'A1' });
	expect(night.state()).toMatchObject({
		standIns: { ash: [{ instrument: 'S1' }, { instrument: 'S2' }] },
	});
	press('space');
	expect(night.session().players.ash?.holds).toBe('S1');
	expect(night.session().incidents).toMatchObject([{ standIn: 'S1', isOpen: false }]);
});

test('where the next song wants their hands empty it says that', () => {
	const { night, press } = pressedNight(show);
	press('t', '0', 'space', 'd', 'space', 'b', '1', 'd');
	expect(row(night)).toMatchObject({ kind: 'hand-over', instrument: null, status: 'hands empty' });
	press('space');
	expect(night.session().players.ash?.holds).toBeNull();
	expect(row(night)).toMatchObject({ kind: 'keeps', instrument: null });
});
