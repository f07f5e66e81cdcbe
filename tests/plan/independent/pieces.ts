// The pieces of work that a section's hand-overs ask for, and how each instrument hangs there afterwards.

import type { Numbered } from './holds.ts';
import type { LiveState, Section } from './live-state.ts';
import { secondsOfWork } from './seconds-of-work.ts';
import { type Standing, type Step, secondsOf } from './stints.ts';
import type { Busy } from './working-clock.ts';

export type Piece = {
	readonly instrument: string;
	/** Place of the section whose hand-over wants it. */
	readonly section: number;
	/** `whole` is done at once; `first` is the new pitches or strings, `last` the touch-up after it. */
	readonly part: 'whole' | 'first' | 'last';
	readonly isRestring: boolean;
	readonly seconds: number;
	readonly from: number;
	readonly wanted: number;
};

/** An instrument's side of the clock. */
export type Hanging = {
	readonly capo: number;
	readonly isToWipe: boolean;
	readonly readyAt: number | null;
	readonly backAt: number;
	readonly stringsDown: number;
	readonly recheck: number;
};

export type Rack = readonly Hanging[];

/** After the last song of a stint that ends with nothing in its place, or with itself: the way to the rack. */
const BACK_AFTER = 15;

/** Every instrument as it hangs before the first section. */
export function firstRack({ gear, now }: LiveState): Rack {
	return gear.map(({ capo, isToWipe, readyAt, backAt, stringsDown, recheck }) => {
		return { capo, isToWipe, readyAt, backAt: backAt ?? now, stringsDown, recheck };
	});
}

export type Prepared = {
	readonly rack: Rack;
	readonly pieces: readonly Piece[];
	readonly busy: readonly Busy[];
};

export type Playing = {
	readonly index: number;
	readonly standing: Standing;
	readonly step: Step;
	readonly rack: Rack;
};

/** The work for the hand-overs of a section, its own busy window, and the rack once they are made. */
export function prepared(model: Numbered, { index, standing, step, rack }: Playing): Prepared {
	const { state } = model;
	const section = state.sections[index]!;
	const hanging = comeBack(model, { index, standing, step, rack });
	const seconds = step.begun.reduce((sum, { hold }) => sum + secondsOf(model, hold), 0);
	const begins = section.isCue
		? section.start - seconds
		: Math.max(section.previousEnd, section.start - seconds);
	const wanted = section.isOn ? state.now : begins;
	const pieces: Piece[] = [];
	for (const { hold } of step.begun) {
		const i = hold.instrument;
		const { instrument, recheckNew } = state.gear[i]!;
		const before = hanging[i]!;
		const start = section.isOn ? Math.max(section.start, state.now) : section.start;
		const isSame = standing.tunings[i] === hold.tuning && before.capo === hold.capo;
		const isReady = before.readyAt !== null && isSame && start - before.readyAt <= before.recheck;
		if (!isReady) {
			const isRestring = before.stringsDown > 0;
			const use: Use = { section: index, wanted, start, back: Math.max(before.backAt, state.now) };
			const work = secondsOfWork({
				instrument,
				isIn: tuningNow(model, standing, i),
				capoOn: before.capo,
				isToWipe: before.isToWipe,
				stringsDown: before.stringsDown,
				open: hold.played.open,
				capo: hold.capo,
			});
			const recheck = isRestring ? recheckNew : before.recheck;
			pieces.push(...piecesOf({ ...use, ...work, recheck, isRestring, instrument: instrument.id }));
		}
	}
	for (const [player, hold] of step.next.hands.entries()) {
		if (hold === null) continue;
		const isBegun = step.begun.some((stint) => stint.player === player);
		const before = hanging[hold.instrument]!;
		const isNew = isBegun && before.stringsDown > 0;
		hanging[hold.instrument] = {
			...before,
			capo: hold.capo,
			isToWipe: true,
			readyAt: null,
			stringsDown: isBegun ? 0 : before.stringsDown,
			recheck: isNew ? state.gear[hold.instrument]!.recheckNew : before.recheck,
		};
	}
	const busy = seconds > 0 && !section.isOn ? [{ from: begins, to: section.start }] : [];
	return { rack: hanging, pieces, busy };
}

/** The rack once what is exchanged here is back on it, as far as the work for this section can use it. */
function comeBack(model: Numbered, { index, standing, step, rack }: Playing): Hanging[] {
	const { state } = model;
	const section = state.sections[index]!;
	const hanging = [...rack];
	for (const [player, held] of standing.hands.entries()) {
		if (held === null) continue;
		const isPutDownAlready = index === 0 && state.players[player]!.holds === null;
		if (isPutDownAlready) continue;
		const i = held.instrument;
		const isHandedAgain = step.begun.some(({ hold }) => hold.instrument === i);
		const has = step.next.hands[player]!;
		if (has !== null && has.instrument === i && !isHandedAgain) continue;
		const isAtOnce = section.isAfterInterval || isHandedAgain || has === null;
		const backAt = isAtOnce ? section.previousEnd + BACK_AFTER : section.start;
		hanging[i] = { ...hanging[i]!, backAt, isToWipe: true, readyAt: null };
	}
	return hanging;
}

type Use = {
	readonly section: number;
	readonly wanted: number;
	readonly start: number;
	readonly back: number;
};

type UseWork = Use & {
	readonly instrument: string;
	readonly all: number;
	readonly last: number;
	readonly canBeSplit: boolean;
	readonly recheck: number;
	readonly isRestring: boolean;
};

function piecesOf(use: UseWork): readonly Piece[] {
	const { instrument, section, wanted, start, back, all, last, recheck, isRestring } = use;
	const first = all - last;
	const common = { instrument, section, isRestring };
	const fresh = start - recheck;
	// To the millisecond: sums of tenths that are equal are not so to the last bit.
	if (use.canBeSplit && Math.round((fresh - back - first) * 1000) > 0) {
		return [
			{ ...common, part: 'first', seconds: first, from: back, wanted: wanted - last },
			{ ...common, isRestring: false, part: 'last', seconds: last, from: fresh, wanted },
		];
	}
	return [{ ...common, part: 'whole', seconds: all, from: Math.max(back, fresh - first), wanted }];
}

function tuningNow(model: Numbered, { tunings }: Standing, instrument: number): readonly number[] {
	return model.openOf(tunings[instrument]!);
}

/** The technician's own busy times of all sections: boards that are pressed for. */
export function boardWindows(sections: readonly Section[]): readonly Busy[] {
	return sections.flatMap(({ boardCues }) => boardCues.map((from) => ({ from, to: from + 5 })));
}
