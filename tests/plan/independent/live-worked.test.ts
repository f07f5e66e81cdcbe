// Plans of a night under way, by cases worked out by hand; times on the show clock.

import { expect, test } from 'vitest';
import { stateBeforeDoors } from './before-doors.ts';
import { bestLive } from './best-live.ts';
import type { Cell, Gear, LiveState, Played, Section } from './live-state.ts';
import { orderShown } from './order-shown.ts';
import { boardWindows } from './pieces.ts';
import { showOf } from './show-of.ts';
import { pitchesOf } from './sounding.ts';
import { withRestrings } from './with-restrings.ts';
import { workingClock } from './working-clock.ts';

const SHOW = showOf(`format: rackside/1
show: {title: By hand}
players: [{id: ash}]
instruments:
  - {id: A1, kind: electric-6, tuning: E standard}
  - {id: A4, kind: electric-6, tuning: drop D}
  - {id: S1, kind: electric-6, tuning: E standard, spare: true}
songs: [{id: one, hands: {ash: A1}}]
set: [one]
`);

const TUNINGS = Object.fromEntries(
	SHOW.instruments.map(({ id, tuning }) => [id, pitchesOf(tuning)]),
);

function has(instrument: string, capo = 0, open = TUNINGS[instrument]!): Played {
	return { instrument, open, capo };
}

function named(played: Played): Cell {
	return { demand: { kind: 'named', ...played }, isAsAbove: false };
}

function unnamed(played: Played): Cell {
	return { demand: { kind: 'named', ...played }, isAsAbove: true };
}

function section(key: string, start: number, given: Partial<Section> & { ash: Cell }): Section {
	const { ash, ...others } = given;
	return {
		key,
		start,
		previousEnd: start - 15,
		gap: 15,
		isCue: false,
		isAfterInterval: false,
		isOn: false,
		cells: { ash },
		boardCues: [],
		...others,
	};
}

type Now = {
	readonly now: number;
	readonly holds: Played;
	readonly sections: readonly Section[];
	readonly gear?: Readonly<Record<string, Partial<Gear>>>;
	readonly worked?: LiveState['worked'];
};

function night({ now, holds, sections, gear = {}, worked = null }: Now): LiveState {
	const before = stateBeforeDoors(SHOW);
	return {
		...before,
		now,
		players: [{ id: 'ash', holds, putDown: null, hasBegun: true }],
		gear: before.gear.map((one) => ({
			...one,
			readyAt: null,
			isToWipe: one.instrument.id === holds.instrument,
			...gear[one.instrument.id],
		})),
		sections,
		whenMissing: 'keeps',
		worked,
	};
}

const BROKEN = { stringsDown: 1, isToWipe: true, backAt: 1285 };

function afterBreak(now: number, since: number | null): LiveState {
	return night({
		now,
		holds: has('S1'),
		sections: [section('next', 1710, { ash: named(has('A1')) })],
		gear: { A1: BROKEN },
		worked: since === null ? null : { instrument: 'A1', since },
	});
}

test('a restring of 270 s is wanted by the next song that names the broken one', () => {
	const { best, untimed } = withRestrings(afterBreak(1305, null));
	const [plan] = best.plans;
	expect(untimed).toEqual([]);
	expect(plan!.slots[0]).toMatchObject({ how: 'named', played: { instrument: 'A1' } });
	expect(plan!.pieces).toMatchObject([{ isRestring: true, part: 'whole', seconds: 270 }]);
	const clock = workingClock(plan!.busy);
	const [shown] = orderShown(plan!.pieces, { now: 1305, clock, intervalEnds: null });
	expect(shown).toMatchObject({ finish: 1575, slack: 120 });
});

test('nobody has marked it at 24:00: late by half a minute, planned while somebody may be at it', () => {
	const busy = withRestrings(afterBreak(1440, 1285));
	expect(busy.best.cost).toMatchObject({ substituted: 0, lateness: 30 });
	const free = withRestrings(afterBreak(1440, null));
	expect(free.best.cost).toMatchObject({ substituted: 1, lateness: 0, backup: 0, handOvers: 0 });
	expect(free.untimed).toEqual(['A1']);
	const wanted = withRestrings(afterBreak(1695, 1285));
	expect(wanted.best.plans[0]!.slots[0]).toMatchObject({ how: 'substituted', isHandOver: false });
});

test('the next song wants the broken one with a capo: the backup stays, its capo moves', () => {
	const sections = [
		section('four', 615, { ash: named(has('A1', 2)) }),
		section('five', 810, { ash: named(has('A1')) }),
		section('nine', 1800, { ash: named(has('A1')) }),
	];
	const gear = { A1: { ...BROKEN, backAt: 550 } };
	const { best } = withRestrings(night({ now: 551, holds: has('S1'), sections, gear }));
	const [plan] = best.plans;
	expect(plan!.slots.map(({ played, isHandOver }) => [played, isHandOver])).toEqual([
		[has('S1', 2), false],
		[has('S1', 0), false],
		[has('A1', 0), true],
	]);
	expect(best.cost).toMatchObject({ substituted: 2, backup: 0, handOvers: 1 });
	expect(plan!.pieces).toMatchObject([
		{ part: 'first', isRestring: true, seconds: 225, from: 551, wanted: 1740 },
		{ part: 'last', isRestring: false, seconds: 45, from: 1500, wanted: 1785 },
	]);
});

test('a skipped song leaves its cell to the next, unless what is in hands sounds so', () => {
	const quarry = section('quarry', 255, { ash: unnamed(has('A4')) });
	const first = bestLive(night({ now: 120, holds: has('A1'), sections: [quarry] }));
	expect(first.plans[0]!.slots[0]).toMatchObject({ how: 'named', played: { instrument: 'A4' } });
	const inDropD = has('S1', 0, TUNINGS.A4);
	const gear = { S1: { open: TUNINGS.A4! } };
	const kept = bestLive(night({ now: 120, holds: inDropD, sections: [quarry], gear }));
	expect(kept.plans[0]!.slots[0]).toMatchObject({ how: 'kept', isHandOver: false });
	expect(kept.cost).toMatchObject({ substituted: 0, handOvers: 0, lateness: 0 });
});

test('a slot for which nothing is left takes nothing out of hands', () => {
	const sections = [
		section('next', 600, { ash: named(has('A4')) }),
		section('then', 900, { ash: named(has('A1')) }),
	];
	const out = { canBeHad: false };
	const { cost, plans } = bestLive(
		night({ now: 500, holds: has('A1'), sections, gear: { A4: out, S1: out } }),
	);
	// A1 itself would do in drop D, and is retuned: 60 s and a wipe from 10:00, wanted at 9:45.
	expect(plans[0]!.slots[0]).toMatchObject({ how: 'substituted', isHandOver: true });
	expect(cost).toMatchObject({ missing: 0, substituted: 1 });
	const floating = { ...SHOW.instruments[0]!, bridge: 'floating' } as const;
	const fixed = bestLive(
		night({
			now: 500,
			holds: has('A1'),
			sections,
			gear: { A4: out, S1: out, A1: { instrument: floating } },
		}),
	);
	expect(fixed.cost).toMatchObject({ missing: 1, substituted: 0, handOvers: 0 });
	expect(fixed.plans[0]!.slots[1]).toMatchObject({ how: 'named', isHandOver: false });
});

test('what breaks in hands is restrung only once it is out of them', () => {
	const sections = [
		section('next', 1000, { ash: named(has('A1')) }),
		section('then', 2000, { ash: named(has('A1')) }),
	];
	const out = { canBeHad: false };
	const gear = { A1: { stringsDown: 1 }, A4: out, S1: out };
	const { best, untimed } = withRestrings(night({ now: 900, holds: has('A1'), sections, gear }));
	// It stays in hands, nothing else being left, and on the rack it would be too late for either song.
	expect(untimed).toEqual(['A1']);
	expect(best.cost).toMatchObject({ missing: 2, handOvers: 0 });
});

test('what people were told counts before backups and hand-overs', () => {
	const cell: Cell = {
		demand: {
			kind: 'needs',
			instrumentKind: 'electric-6',
			sounds: TUNINGS.A1!,
			features: [],
			prefer: 'A1',
		},
		isAsAbove: false,
	};
	const state = night({
		now: 0,
		holds: has('A1'),
		sections: [section('next', 600, { ash: cell })],
	});
	expect(bestLive(state).plans[0]!.slots[0]!.played).toEqual(has('A1'));
	const told = { ...state, told: { 'next ash': has('S1') } };
	expect(bestLive(told)).toMatchObject({ cost: { changed: 0, handOvers: 1, preference: 15 } });
});

test('a song that is on with its hand-over open wants its work now', () => {
	const on = section('on', 600, { ash: named(has('A4')), isOn: true });
	const { cost, plans } = bestLive(night({ now: 610, holds: has('A1'), sections: [on] }));
	expect(plans[0]!.pieces).toMatchObject([
		{ instrument: 'A4', seconds: 45, from: 610, wanted: 610 },
	]);
	expect(cost.lateness).toBe(45);
	expect(boardWindows([{ ...on, boardCues: [620] }])).toEqual([{ from: 620, to: 625 }]);
});
