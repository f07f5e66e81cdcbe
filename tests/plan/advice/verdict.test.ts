// Whether a night works, in its first sentence; and what would mend one that does not. Figures worked out
// by hand; the seconds of each piece of work are common practice, no source.

import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { mendOf } from '../../../src/plan/advice/mend.ts';
import { isWorking, shortfallOf } from '../../../src/plan/advice/shortfall.ts';
import { verdict } from '../../../src/plan/advice/verdict.ts';
import { planBeforeDoors } from '../../../src/plan/plan-before-doors.ts';
import type { Show } from '../../../src/showfile/show.ts';
import { verdictWords } from '../../../src/words/advice.ts';
import { loadShow } from '../../scenarios/load-show.ts';
import { clubShow } from '../club-gear.ts';
import { showFrom } from '../show-from.ts';

function sentence(show: Show): string {
	const plan = planBeforeDoors(show);
	return verdictWords(show, verdict(show, { plan, mend: mendOf(show, plan) }));
}

const example = (name: string) =>
	loadShow(join(import.meta.dirname, '../../../shows', `${name}.yaml`));

/** Whether the show, with the change, really has nothing missing, late, too tight or past the curfew. */
function works(show: Show): boolean {
	return isWorking(shortfallOf(show, planBeforeDoors(show)));
}

describe('the example shows, checked by hand', () => {
	test('the club night: Lantern and Gravel fill their gaps to the second', () => {
		// Harbour 0:00 to 4:00; no gap is given before Lantern, so 15 s, and Ash changes A1 for A4: 15 s.
		// Lantern ends 7:45; again 15 s, and A4 for A1. Everywhere else a gap is longer than its hand-overs
		// (Salt Marsh 20 s for one), or nobody changes, or it is a segue that nobody changes in (Low Tide
		// keeps A4). The work: A1 back at 4:15 wants 60 s until 7:45; the twelve-string 180 s, in hands at
		// 16:35, begun by 13:35 after that; Bo's Birch, back at 16:50, 60 s until 20:05; in the second half
		// A4, in hands at 1:07:40, has since the interval. It ends 1:41:25 after 20:30, 22:11, before 22:45.
		expect(sentence(example('club'))).toBe(
			'The show works. Tightest: before Lantern at 20:34, one hand-over, nothing left; one more is as tight.',
		);
	});
	test('the folk night: twelve seconds of hand-over in fifteen', () => {
		// Mill Race 0:00 to 3:20. Under the Hedge 15 s later gives Bo the resonator, whose hand-over takes
		// 12 s in this file: 3 s are left. The others: Salt Road 40 s for two of 15; Barley Moon 45 for two;
		// Five-barred Gate 40 for 10 and 15; Stubble Fire 20 for 12; Lamps 60 for two of 15. The nearest work
		// is Bo's capo for Salt Road: Rowan is back on the rack at 3:35 and wanted at 7:50.
		expect(sentence(example('folk'))).toBe(
			'The show works. Tightest: before Under the Hedge at 19:03, one hand-over, 0:03 left.',
		);
	});
});

describe("two techs' worth of hand-overs at one song", () => {
	const show = clubShow(`
songs:
  - {id: one, title: One, length: "6:00", hands: {ash: {instrument: A1}, bo: {instrument: B1}, cleo: {instrument: C1}}}
  - {id: two, title: Two, length: "4:00"}
  - {id: three, title: Three, length: "4:00", hands: {ash: {instrument: A4}, bo: {instrument: B3}, cleo: {instrument: C2}}}
set: [one, two, {song: three, gap: 30s}]
`);
	test('says so, and that 15 s more are enough', () => {
		// Three of 15 s in 30 s. All three were made ready at zero, and are 10:45 old at Three's start.
		expect(sentence(show)).toMatch(
			/^The show does not work: before Three: 3 hand-overs, gap 0:30, 0:15 short\. This fixes it: 0:15 more before Three\.$/,
		);
	});
	test('what is said to be enough is', () => {
		const mend = mendOf(show, planBeforeDoors(show));
		expect(mend?.isEachEnough).toBe(true);
		for (const change of mend?.changes ?? []) expect(works(change.show)).toBe(true);
	});
	test('less would not be', () => {
		const less = { ...show, set: show.set.map((item) => ({ ...item, gapSeconds: 44 })) };
		expect(works(less as Show)).toBe(false);
	});
});

describe('a tuning that cannot be reached in time', () => {
	const show = showFrom(`
players: [{id: ash, name: Ash}]
instruments:
  - {id: A, name: Amber, slot: "1", kind: electric-6, tuning: E standard, for: [ash]}
  - {id: B, name: Birch, slot: "2", kind: electric-6, tuning: E standard, for: [ash]}
songs:
  - {id: one, title: One, length: "2:00", hands: {ash: {instrument: A}}}
  - {id: two, title: Two, length: "0:50", hands: {ash: {instrument: B}}}
  - {id: three, title: Three, length: "2:00", hands: {ash: {instrument: A, tuning: open D}}}
set: [one, two, three]
`);
	test('is late by what is missing, and each way out was planned', () => {
		// Amber is back at 2:15 and wants a wipe and three strings changed, 15 + 45 + 75 = 135 s; the
		// hand-over at Three begins 3:05. Done 4:30, 85 s of work too late, and with so much more of a gap it fits.
		const plan = planBeforeDoors(show);
		const said = sentence(show);
		expect(said).toContain('1 Amber is 1:25 short for Three');
		const mend = mendOf(show, plan);
		expect(mend?.isMended).toBe(true);
		expect(mend?.changes.map(({ kind }) => kind)).toContain('gap');
		for (const change of mend?.changes ?? []) expect(works(change.show)).toBe(true);
	});
});

describe('a night with a curfew that no longer fits', () => {
	const song = (id: string, length: string) =>
		`  - {id: ${id}, title: ${id[0]?.toUpperCase()}${id.slice(1)}, length: "${length}", hands: {ash: {instrument: A1}}}`;
	const show = (curfew: string) =>
		clubShow(`
show: {title: Late, start: "22:00", curfew: "${curfew}"}
songs:
${song('one', '4:00')}
${song('two', '5:00')}
${song('three', '3:00')}
${song('four', '6:00')}
set: [one, two, three, four]
`);
	test('the songs to leave out are said, the shortest that is enough first', () => {
		// 18 minutes and three gaps of 15 s: 18:45. Until 22:15 are 15 minutes, so 3:45 is too much. One
		// song less is a gap less: leaving out Three gives 15:30, not enough; One 14:30, Two 13:30.
		expect(sentence(show('22:15'))).toBe(
			'The show does not work: the set ends 3:45 after the curfew. Any one of these fixes it: drop One (4:00); or drop Two (5:00); or drop Four (6:00).',
		);
	});
	test('where one is not enough, two are', () => {
		// Until 22:10 are 10 minutes. Four left out leaves 12:30; Three, the shortest,
		// is then enough: 9:15.
		expect(sentence(show('22:10'))).toBe(
			'The show does not work: the set ends 8:45 after the curfew. Together these fix it: drop Four (6:00); and drop Three (3:00).',
		);
	});
});

test('a night without anything to do says that', () => {
	const show = clubShow(`songs: [{id: one, title: One, length: "4:00"}]\nset: [one]\n`);
	expect(sentence(show)).toBe('The show works. Nothing is to be done between songs.');
});
