// An interval with more to do than fits before its end: what can be done early comes first, what is to be
// fresh after it. Seconds of work are common practice, no source.

import { describe, expect, test } from 'vitest';
import { play, type State } from './play.ts';

const interval = '-01:00 !ready\n00:00 space\n02:00 b 1 enter\n03:00 space\n';
const jobsOf = ({ todo }: State): string[] =>
	todo.map((one: State) => `${one.job} ${one.instrument}`);

describe('at its start', () => {
	const { states, screen } = play('twenty', `${interval}03:20 !state !screen --size 120x40\n`);
	test('restring and new tuning stand first, then the touch-ups, and nothing is late', () => {
		const jobs = jobsOf(states[0]);
		expect(jobs.slice(0, 2).toSorted()).toEqual(['restring A1', 'retune A4']);
		expect(jobs.slice(2, 4).toSorted()).toEqual(['touch-up A2', 'touch-up B1']);
		expect(jobs.slice(4)).toEqual(['touch-up A4', 'touch-up A1']);
		for (const { slack } of states[0].todo) expect(slack).toBeGreaterThanOrEqual(0);
	});
	test('the screen says the work itself, the touch-ups with how long they wait to stay fresh', () => {
		expect(screen).toMatch(/TO DO .* 4 Acorn \+ {2}0:45\n.* start within .*\n.* for Ash, song 3/);
		expect(screen).toMatch(/1 Amber +x RESTRING, E std +3:45 +start within/);
		expect(screen).toMatch(/4 Acorn +\+ TOUCH UP drop C +0:45 .*for Ash, song 3, wait 8:5[45]/);
	});
});

describe('marking ready what is too early for its touch-up', () => {
	const { states, screen } = play(
		'twenty',
		`${interval}04:30 t !screen 4\n04:32 !state !screen\n09:00 t 1\n09:02 !state\n14:00 t 4\n14:02 !state\n`,
	);
	const [retuned, restrung, touched] = states;
	test('says for each slot what it records', () => {
		expect(screen).toMatch(/^ +4 Acorn {2}drop C, no touch-up yet$/m);
		expect(screen).toMatch(/^ +1 Amber {2}restring, no touch-up yet$/m);
	});
	test('records pitches alone: it is in drop C, not ready, and its touch-up stands in the list', () => {
		expect(retuned.instruments.A4).toMatchObject({
			tuning: 'drop C',
			ready: false,
			readyAge: null,
			stale: false,
		});
		expect(jobsOf(retuned)).not.toContain('retune A4');
		expect(retuned.todo.find((one: State) => one.instrument === 'A4')).toMatchObject({
			job: 'touch-up',
			to: 'drop C',
			seconds: 45,
		});
		expect(screen).toContain('4 Acorn in drop C, touch-up later');
	});
	test('records strings alone', () => {
		expect(restrung.instruments.A1).toMatchObject({
			place: 'rack',
			stringsDown: [],
			ready: false,
		});
		expect(jobsOf(restrung)).not.toContain('restring A1');
		expect(jobsOf(restrung)).toContain('touch-up A1');
	});
	test('once the touch-up stays fresh, that is recorded too', () => {
		expect(touched.instruments.A4).toMatchObject({ tuning: 'drop C', ready: true });
		expect(jobsOf(touched)).not.toContain('touch-up A4');
	});
	test('is undone like any other', () => {
		const { states: undone } = play('twenty', `${interval}04:30 t 4\n04:35 u !state\n`);
		expect(undone[0].instruments.A4.tuning).toBe('drop D');
		expect(jobsOf(undone[0])).toContain('retune A4');
	});
});
