// Where only the best stand-in of each slot is read, planning stops once it is known: it has to be the same
// one, with the same costs, as when the first handful are all planned.

import { join } from 'node:path';
import { expect, test } from 'vitest';
import { slotStandIns } from '../../../src/plan/backups/slot-stand-ins.ts';
import { planBeforeDoors } from '../../../src/plan/plan-before-doors.ts';
import { readyAtZero } from '../../../src/plan/timed-choice/before-doors.ts';
import { loadShow } from '../../scenarios/load-show.ts';
import { chanceShow, evening } from '../oracle/chance-show.ts';

const example = (name: string) =>
	loadShow(join(import.meta.dirname, '../../../shows', `${name}.yaml`));

const SHOWS = [
	...['club', 'folk', 'festival'].map((name) => [name, example(name)] as const),
	...[0, 1, 2].map((seed) => [`chance ${seed}`, chanceShow(seed, evening(10, 2, 0.7))] as const),
];

test.each(SHOWS)(
	'the best of %s, and how many more',
	(_, show) => {
		const plan = planBeforeDoors(show);
		const all = slotStandIns(readyAtZero(show), { plan, costs: 'handful' });
		const best = slotStandIns(readyAtZero(show), { plan, costs: 'best' });
		const read = (standIns: (typeof all)[number]['standIns']) => [standIns[0], standIns.length];
		expect(best.map(({ standIns }) => read(standIns))).toEqual(
			all.map(({ standIns }) => read(standIns)),
		);
		expect(all.some(({ standIns }) => standIns.length > 1)).toBe(true);
	},
	60_000,
);
