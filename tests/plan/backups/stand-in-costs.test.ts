// What a stand-in costs later puts it behind another that costs nothing, before the string has gone as well
// as after. Figures worked out by hand; the seconds of each piece of work are common practice, no source.

import { describe, expect, test } from 'vitest';
import { standInsWithCosts } from '../../../src/plan/backups/stand-in-costs.ts';
import type { Session } from '../../../src/session/session.ts';
import { allReady, mark, nightAfter, planAt, withEntries, withSongBegun } from '../night-at.ts';
import { showFrom } from '../show-from.ts';

const show = showFrom(`
players: [{id: ash, name: Ash}, {id: bo, name: Bo}]
instruments:
  - {id: A, name: A, slot: "1", kind: electric-6, tuning: E standard, for: [ash]}
  - {id: P, name: P, slot: "2", kind: electric-6, tuning: E standard, instead: []}
  - {id: Q, name: Q, slot: "3", kind: electric-6, tuning: E standard}
songs:
  - {id: one, title: One, length: "8:00", hands: {ash: {instrument: A}}}
  - {id: two, title: Two, length: "4:00", hands: {bo: {instrument: P}}}
set: [one, two]
`);
const ready = nightAfter(show, allReady(show, '-01:00'));
const on = withSongBegun(ready, '00:00');

function told(session: Session, at: string) {
	const asked = { session, nowMs: mark(at), plannedZeroMs: 0, plan: planAt(session, at) };
	return standInsWithCosts({ ...asked, player: 'ash' }).map(({ instrument, later }) => ({
		instrument,
		later,
	}));
}

// P stands before Q on the rack, and Bo wants it later than a restring takes, 270 s. But Ash keeps in Two
// what they have, and nothing is played instead of P, so that Bo would go without.
const best = [
	{ instrument: 'Q', later: [] },
	{ instrument: 'P', later: [{ code: 'missing', player: 'bo', songs: ['two'] }] },
];

describe('of two that are as good now, the one that leaves somebody without later is the second', () => {
	test('during a song, before the break and after it', () => {
		const broke = { k: 'string-broke', incident: '1', instrument: 'A', player: 'ash' } as const;
		expect(told(on, '01:00')).toEqual(best);
		expect(told(withEntries(on, { ...broke, at: mark('01:00') }), '01:00')).toEqual(best);
	});

	test('before the song that it is for, and in the plan when it has broken on the rack', () => {
		const broke = { k: 'string-broke', incident: '1', instrument: 'A', player: null } as const;
		expect(told(ready, '-00:30')).toEqual(best);
		// Broken there, the plan has Q handed over for it by itself, and P is what could take over from that.
		const broken = withEntries(ready, { ...broke, at: mark('-00:30') });
		expect(planAt(broken, '-00:30').slots[0]).toMatchObject({ instrument: 'Q', for: 'A' });
		expect(told(broken, '-00:30')).toEqual(best.slice(1));
	});
});

test('not to be had any more, what is to be handed over is missing later where nothing can be restrung in time', () => {
	const short = showFrom(`
players: [{id: ash, name: Ash}]
instruments:
  - {id: A, name: A, slot: "1", kind: electric-6, tuning: E standard, instead: []}
  - {id: S, name: S, slot: s, kind: electric-6, tuning: E standard}
songs:
  - {id: one, title: One, length: "2:00", hands: {ash: {instrument: S}}}
  - {id: two, title: Two, length: "2:00", hands: {ash: {instrument: A}}}
  - {id: three, title: Three, length: "2:00", hands: {ash: {instrument: S}}}
  - {id: four, title: Four, length: "2:00", hands: {ash: {instrument: A}}}
set: [one, two, three, four]
`);
	const ended = withEntries(withSongBegun(nightAfter(short, allReady(short, '-01:00')), '00:00'), {
		k: 'song-ended',
		at: mark('02:00'),
		how: 'played',
	});
	// Two begins 2:15 and is played on S, that Ash keeps. A, broken 2:05, would be restrung 6:35; Four wants it
	// 6:30, 15 s before it begins 6:45, and nothing is played instead.
	expect(told(ended, '02:05')).toEqual([
		{ instrument: 'S', later: [{ code: 'missing', player: 'ash', songs: ['four'] }] },
	]);
});
