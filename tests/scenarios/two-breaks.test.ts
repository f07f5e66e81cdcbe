// A second break before the first is answered, and one on the backup of the first: the rows name what is to be
// taken, and the work that it takes stands first in the list. Times are our own; the seconds of each piece of
// work are common practice, no source.

import { describe, expect, test } from 'vitest';
import { comingHandOvers } from '../../src/screen/coming.ts';
import { pressedNight } from '../night/pressed-night.ts';
import { showFrom } from '../plan/show-from.ts';
import { playShow } from './play.ts';

const show = showFrom(`
players: [{id: ash, name: Ash, key: a}, {id: bo, name: Bo, key: b}]
instruments:
  - {id: A, name: Amber, slot: "1", kind: electric-6, tuning: E standard, for: [ash]}
  - {id: B, name: Birch, slot: "2", kind: electric-6, tuning: E standard, for: [bo]}
  - {id: S, name: Spare, slot: s, kind: electric-6, tuning: E standard, spare: true}
  - {id: T, name: Tern, slot: n, kind: electric-6, tuning: drop D}
songs:
  - {id: one, title: One, length: "5:00", hands: {ash: {instrument: A}, bo: {instrument: B}}}
  - {id: two, title: Two, length: "4:00", hands: {ash: {instrument: A}, bo: {instrument: B}}}
set: [one, two]
`);

test('with a break of each player open, both rows name a backup', () => {
	const { night, press } = pressedNight(show);
	press('t', '0', 'space');
	// A key reports a second one only when the first is answered; a foot switch may before.
	night.submit({ do: 'report-break', instrument: 'A' }, 'foot switch');
	night.submit({ do: 'report-break', instrument: 'B' }, 'foot switch');
	const rows = comingHandOvers(night.screen());
	expect(rows).toMatchObject([
		// Bo's is asked first: one spare is not promised to both.
		{ player: 'ash', kind: 'break', instrument: 'T' },
		{ player: 'bo', kind: 'break', instrument: 'S' },
	]);
	expect(rows.map(({ status }) => status)).not.toContain('NO BACKUP, PLAY ON');
});

describe('the backup of the first breaks too, in the same song', () => {
	const script =
		'-01:00 !ready\n00:00 space\n01:00 b 1 enter\n01:30 b s\n01:31 !state\n01:32 !screen --size 120x40';
	const { states, screen } = playShow(show, `${script}\n01:40 t enter\n01:41 !state`);
	const rows = screen.split('\n').map((line) => line.trimEnd());
	test('the work that it takes stands first in the list, wanted now', () => {
		// The touch-up and one string up, 45 s and 15; the walk is no work.
		expect(rows.find((line) => line.startsWith('ASH'))).toContain('TAKE N Tern');
		const first = rows.findIndex((line) => line.startsWith('TO DO'));
		const [what, when, forWhom] = rows.slice(first, first + 3);
		expect(what).toMatch(/ N Tern \+ {2}1:00$/);
		expect(when).toMatch(/ 1:00 short$/);
		expect(forWhom).toMatch(/ for Ash, song 1$/);
		expect(states[0].todo[0]).toMatchObject({
			...{ job: 'retune', instrument: 'T', to: 'E standard', capo: 0 },
			...{ player: 'ash', song: 'one', seconds: 60, slack: -60 },
		});
	});
	test('the ready key names it, and marks it ready in what it is to be in', () => {
		expect(states[1].instruments.T).toMatchObject({ ready: true, tuning: 'E standard' });
		expect(states[1].standIns.ash[0]).toMatchObject({ instrument: 'T', readyIn: 10 });
		expect(states[1].todo.map((one: { instrument: string }) => one.instrument)).not.toContain('T');
	});
});
