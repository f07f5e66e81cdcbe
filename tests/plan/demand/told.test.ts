// People have been told a plan: made again, it changes as little of it as it can.

import { describe, expect, test } from 'vitest';
import { toldEntries } from '../../../src/plan/demand/told.ts';
import { makePlan } from '../../../src/plan/make-plan.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { openSession } from '../../../src/session/open-session.ts';
import type { Session } from '../../../src/session/session.ts';
import { clubShow } from '../club-gear.ts';
import { allReady, mark, nightAfter, withEntries, withSongBegun } from '../night-at.ts';
import { slotLines } from '../plan-figures.ts';

const needs = (more = '') => `ash: {needs: {kind: electric-6, sounds: E standard${more}}}`;

const show = clubShow(`
songs:
  - {id: s1, title: S1, length: "4:00", hands: {ash: {instrument: A4}}}
  - {id: s2, title: S2, length: "4:00", hands: {${needs()}}}
  - {id: s3, title: S3, length: "4:00", hands: {ash: {instrument: A4}}}
  - {id: s4, title: S4, length: "4:00", hands: {${needs()}}}
set: [s1, s2, s3, s4]
`);

/** The plan, once people have been told the one before. */
function planAt(session: Session, at: string, before: Plan | null = null): Plan {
	const told = before === null ? [] : toldEntries({ session, nowMs: mark(at) }, before);
	return makePlan({ session: withEntries(session, ...told), nowMs: mark(at), plannedZeroMs: 0 });
}

const on = withSongBegun(nightAfter(show, allReady(show, '-01:00')), '00:00');
const first = planAt(on, '00:10');
const isOut = withEntries(on, { k: 'put-aside', at: 1000, instrument: 'A1', fault: null });
const isBack = withEntries(isOut, { k: 'brought-back', at: 20_000, instrument: 'A1' });

describe('the plan after', () => {
	test('is as told where that still does, though another would be as good', () => {
		expect(slotLines(first, 's2')).toEqual(['ash A1 E standard']);
		const without = planAt(isOut, '00:15', first);
		expect(slotLines(without, 's2')).toEqual(['ash A3 E standard']);
		expect(slotLines(planAt(isBack, '00:30', without), 's2')).toEqual(['ash A3 E standard']);
		expect(slotLines(planAt(isBack, '00:30'), 's2')).toEqual(['ash A1 E standard']);
	});

	test('changes only what must be changed', () => {
		const second = planAt(isOut, '00:15', first);
		const changed = second.slots.filter(({ section, player, instrument }) =>
			first.slots.some(
				(one) =>
					one.section.item === section.item &&
					one.player === player &&
					one.instrument !== instrument,
			),
		);
		expect(changed.map(({ section }) => section.song)).toEqual(['s2', 's4']);
	});

	test('gives up what was told rather than be late, or leave anybody without', () => {
		const told = planAt(isOut, '00:15', first);
		const broken = withEntries(isBack, {
			k: 'string-broke',
			at: mark('03:00'),
			incident: '1',
			instrument: 'A3',
			player: null,
		});
		const after = planAt(broken, '03:00', told);
		expect(slotLines(after, 's2')).toEqual(['ash A1 E standard']);
		expect(after.cost).toMatchObject({ missing: 0, lateness: 0 });
	});

	test('does not know of songs that were not in it', () => {
		const other = makePlan({ session: openSession(show), nowMs: 0, plannedZeroMs: 0 });
		expect(planAt(on, '00:10', { ...other, sections: [], slots: [] })).toEqual(first);
	});
});
