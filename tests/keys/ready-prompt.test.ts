// What the ready key offers first: work that is worth doing now.

import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { showFrom } from '../plan/show-from.ts';
import { loadShow } from '../scenarios/load-show.ts';
import { playShow, type State } from '../scenarios/play.ts';

const show = loadShow(join(import.meta.dirname, '../../shows/club.yaml'));
const offered = (script: string) =>
	[...playShow(show, script).screen.matchAll(/Ready: enter for (\w) /g)].map(([, slot]) => slot);

test('an hour before the show each press of enter offers the next that wants work', () => {
	const script = '-60:00 t !screen enter t !screen enter t !screen enter t !screen';
	expect(offered(script)).toEqual(['1', '5', '8', '4']);
});

test('once all are ready it is the first again, since each will be stale by then', () => {
	expect(offered('-60:00 t 0\n-59:00 t !screen')).toEqual(['1']);
});

test('so near that it would last, what is ready but will be stale is offered as the list has it', () => {
	const early = '-20:00 t 5\n-10:00 t !screen';
	expect(offered(early)).toEqual(['5']);
});

test('during the show it is the first of the do-next list, however early', () => {
	const { states, screen } = playShow(
		show,
		'-01:00 !ready\n00:00 space\n00:30 !state\n00:31 t !screen',
	);
	const todo = (states[0] as { todo: { instrument: string }[] }).todo;
	const rack = (states[0] as { instruments: Record<string, { slot: string; place: string }> })
		.instruments;
	const first = todo.find(({ instrument }) => rack[instrument]?.place !== 'hands');
	expect(screen).toContain(`Ready: enter for ${rack[first?.instrument ?? '']?.slot} `);
});

describe('what marking ready records', () => {
	const due = showFrom(`
players: [{id: ash, name: Ash}]
instruments:
  - {id: A1, name: Amber, slot: "1", kind: electric-6, tuning: E standard}
  - {id: A2, name: Birch, slot: "2", kind: electric-6, tuning: E standard}
  - {id: A3, name: Coal, slot: "3", kind: electric-6, tuning: E standard}
  - {id: S1, name: Spare, slot: s, kind: electric-6, tuning: E standard, spare: true}
songs:
  - {id: one, title: One, length: "4:00", hands: {ash: A1}}
  - {id: two, title: Two, length: "4:00", hands: {ash: {instrument: A2, tuning: drop D, capo: 2}}}
  - {id: three, title: Three, length: "4:00", hands: {ash: A3}}
set: [one, two, three]
`);
	const play = (script: string) => playShow(due, `-01:00 !ready\n00:00 space\n${script}`);

	test('is said for each slot that has work due, strings that nothing waits for last', () => {
		const { screen } = play('00:10 b s\n00:20 t !screen');
		const lines = screen.split('\n').map((line) => line.trim());
		const from = lines.findIndex((line) => line.startsWith('Ready: enter for 2 Birch, or a slot'));
		expect(lines.slice(from + 1, from + 4)).toEqual([
			'2 Birch  drop D, capo 2',
			'1 Amber  restring',
			expect.stringMatching(/^SONG /),
		]);
	});

	test('is then recorded by its slot: tuning, capo and strings', () => {
		const { states } = play('00:10 b s\n00:20 t 2\n00:25 t 1\n00:27 !state');
		expect(states[0].instruments.A2).toMatchObject({ tuning: 'drop D', capo: 2, ready: true });
		expect(states[0].instruments.A1).toMatchObject({ stringsDown: [], ready: true });
	});

	test('is nothing after =, as it stands', () => {
		const { states, screen } = play('00:20 t = !screen 2\n00:23 !state');
		expect(screen).toContain('Ready as it is: which slot?');
		expect(states[0].instruments.A2).toMatchObject({ tuning: 'E standard', capo: 0, ready: true });
		expect(states[0].instruments.A2.readyAge).toBeLessThan(4);
		const job = states[0].todo.find((one: State) => one.instrument === 'A2');
		expect(job).toMatchObject({ to: 'drop D', capo: 2 });
	});

	test('is nothing after = for what cannot be ready as it stands', () => {
		const { states, screen } = play('00:10 b s\n00:20 t = 1 !screen !state');
		expect(screen).toContain('1 Amber has a string down: not ready as it stands.');
		expect(states[0].instruments.A1.stringsDown).toEqual([null]);
	});

	test('is nothing for all on the rack at once, before the show only', () => {
		const { states, screen } = playShow(
			due,
			'-02:00 t 0\n-01:58 !state\n00:00 space\n00:10 t 0 !screen',
		);
		expect(states[0].instruments.A2).toMatchObject({ tuning: 'E standard', capo: 0, ready: true });
		expect(screen).toContain('Nothing on the rack has the slot 0.');
	});
});
