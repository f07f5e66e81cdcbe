// Why an instrument that is strung otherwise is no backup: what is said of it names the tuning that its strings are for.

import { expect, test } from 'vitest';
import { planBeforeDoors } from '../../src/plan/plan-before-doors.ts';
import { planJson } from '../../src/report/plan-json.ts';
import { showFrom } from '../showfile/show-files.ts';

// Strings for a lower tuning are heavier, and what sounds higher than they are for is too much for them: common practice.
const RAISED = '{instrument: A1, tuning: drop D, capo: 2}';

test.each([
	['electric-6', 'drop C', 'A1', 'strung for E standard, too lightly'],
	['bass-4', 'half-step down', RAISED, 'strung for E standard, too heavily'],
])('for %s in %s played as %s', (kind, tuning, played, words) => {
	const show = showFrom(`format: rackside/1
players: [{id: ash, name: Ash, plays: guitar}]
instruments:
  - {id: A1, name: Amber, slot: "1", kind: ${kind}, tuning: ${tuning}}
  - {id: A2, name: Basil, slot: "2", kind: ${kind}, tuning: E standard}
songs: [{id: harbour, title: Harbour, length: "4:00", hands: {ash: ${played}}}]
set: [harbour]
`);
	const { warnings } = planJson(planBeforeDoors(show), show);
	expect(warnings.map(({ text }) => text)).toContain(`No backup for A1 in Harbour: A2 is ${words}`);
});
