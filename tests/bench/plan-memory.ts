// A process of its own, so that its memory is its own: makes up shows, plans them when asked to, and prints
// the most memory that it had, in kilobytes.

import { planBeforeDoors } from '../../src/plan/plan-before-doors.ts';
import { chanceShow, evening } from '../plan/oracle/chance-show.ts';

const [what = 'read'] = process.argv.slice(2);
for (const named of [0.85, 0.5]) {
	for (let seed = 0; seed < 6; seed += 1) {
		const show = chanceShow(seed, evening(40, 3, named));
		if (what === 'plan') planBeforeDoors(show);
	}
}
process.stdout.write(String(process.resourceUsage().maxRSS));
