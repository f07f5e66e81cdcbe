// Judges who plays what, section by section by the rules of the enumeration: whether it may be so at all, what
// work it makes, and what it costs. For plans of any size; only the order of the work is searched for.

import { type Cost, costOf, NO_COUNTS, plus } from './cost.ts';
import { type Numbered, numbered } from './holds.ts';
import { leastWorst } from './least-worst.ts';
import type { LiveState, Played } from './live-state.ts';
import { type Hands, type Joint, jointMoves } from './moves.ts';
import { boardWindows, firstRack, type Piece, prepared } from './pieces.ts';
import { firstStanding, type Stint, stepOf } from './stints.ts';
import { type Busy, workingClock } from './working-clock.ts';

/** What each player plays, in the order of sections and of players; null for nothing, undefined for what the rules leave them. */
export type Plays = readonly (readonly (Played | null | undefined)[])[];

export type Judged = {
	readonly cost: Cost;
	/** In the order of sections and of players. */
	readonly joints: readonly Joint[];
	/** The stints that begin, section by section. */
	readonly begun: readonly (readonly Stint[])[];
	readonly pieces: readonly Piece[];
	readonly busy: readonly Busy[];
};

/** What these plays come to; the place of the section that nobody may play so where there is one. */
export function judge(state: LiveState, plays: Plays): Judged | { readonly refusedAt: number } {
	const model = numbered(state);
	let standing = firstStanding(model);
	let rack = firstRack(state);
	let counts = NO_COUNTS;
	const joints: Joint[] = [];
	const begun: (readonly Stint[])[] = [];
	const pieces: Piece[] = [];
	const busy: Busy[] = [];
	for (const [index, now] of plays.entries()) {
		const joint = jointOf(model, { index, hands: standing.hands, now });
		if (joint === null) return { refusedAt: index };
		const step = stepOf(model, index, standing, joint);
		const work = prepared(model, { index, standing, step, rack });
		joints.push(joint);
		begun.push(step.begun);
		pieces.push(...work.pieces);
		busy.push(...work.busy);
		counts = plus(counts, step.counts);
		rack = work.rack;
		standing = step.next;
	}
	const clock = workingClock([...boardWindows(state.sections), ...busy]);
	const lateMs = Math.max(0, Math.round(leastWorst(pieces, clock) * 1000));
	return { cost: costOf(counts, lateMs), joints, begun, pieces, busy };
}

type Section = {
	readonly index: number;
	readonly hands: Hands;
	readonly now: Plays[number];
};

/** The moves that come to these plays; null where none do. */
function jointOf(model: Numbered, { index, hands, now }: Section): Joint | null {
	const holds = now.map((played) => (played ? model.holdOf(played) : null));
	const found = jointMoves(model, index, hands).find((joint) =>
		joint.every(({ hold }, player) => now[player] === undefined || hold === holds[player]),
	);
	return found ?? null;
}
