// What can still be best once a choice is known: slots empty, or hand-overs too long for their gap, that
// the known choice does without weigh more than all lateness, so nothing with more of them is looked at.

import type { Board } from './board.ts';
import { boardWith } from './board.ts';
import type { Counts } from './criteria.ts';
import { MISSING, OVER_GAP } from './criteria.ts';
import type { Steps } from './steps.ts';
import { BEGINS, IS_MISSING } from './steps.ts';

/**
 * The board without the steps that lead to more slots missing, or more hand-overs over their gap, than
 * these counts, those of a choice on it, say.
 *
 * @example
 * worthwhile(board, chosen.counts).steps[0].to.length // => 3
 */
export function worthwhile(board: Board, counts: Counts): Board {
	const isMissing: Test = (steps, step) => ((steps.flags[step] ?? 0) & IS_MISSING) !== 0;
	const isOver: Test = (steps, step, { seat, section }) => {
		if (((steps.flags[step] ?? 0) & BEGINS) === 0) return false;
		const instrument = board.seating.seats[seat]?.instrumentOf[steps.to[step] ?? 0] ?? 0;
		const seconds = board.seating.handOverSeconds[instrument] ?? 0;
		return seconds > (board.seating.gapSeconds[section] ?? 0);
	};
	const whole = without(board, isMissing, counts[MISSING] ?? 0);
	return without(whole, isOver, counts[OVER_GAP] ?? 0);
}

type Place = { readonly seat: number; readonly section: number };
type Test = (steps: Steps, step: number, place: Place) => boolean;

/** Without such steps where others are possible, if the count is no more than where none is. */
function without(board: Board, isSuch: Test, count: number): Board {
	let surely = 0;
	let isAny = false;
	const isOpen = board.steps.map((steps, seat) => {
		const open = new Uint8Array(board.seating.sectionCount);
		eachStep(board, seat, (section, step) => {
			if (isSuch(steps, step, { seat, section })) isAny = true;
			else open[section] = 1;
		});
		surely += open.filter((one) => one === 0).length;
		return open;
	});
	if (!isAny || count > surely) return board;
	const steps = board.steps.map((all, seat) =>
		filtered(board, seat, (section, step) => {
			return isOpen[seat]?.[section] === 0 || !isSuch(all, step, { seat, section });
		}),
	);
	return boardWith(board, steps) ?? board;
}

/** Every step that is possible. */
function eachStep(
	{ seating, steps, possible }: Board,
	seat: number,
	visit: (section: number, step: number) => void,
): void {
	const { size, start } = seating.seats[seat] as Board['seating']['seats'][number];
	const { first, to } = steps[seat] as Steps;
	const open = possible[seat] as Uint8Array;
	for (let section = 0; section < seating.sectionCount; section += 1) {
		const row = section * size;
		for (let before = 0; before < size; before += 1) {
			const isFrom = section === 0 ? before === start : open[row - size + before] === 1;
			if (!isFrom) continue;
			const end = first[row + before + 1] ?? 0;
			for (let step = first[row + before] ?? 0; step < end; step += 1) {
				if (open[row + (to[step] ?? 0)] === 1) visit(section, step);
			}
		}
	}
}

function filtered(
	board: Board,
	seat: number,
	isKept: (section: number, step: number) => boolean,
): Steps {
	const all = board.steps[seat] as Steps;
	const size = board.seating.seats[seat]?.size ?? 0;
	const first = new Int32Array(all.first.length);
	const kept: number[] = [];
	for (let at = 0; at + 1 < all.first.length; at += 1) {
		first[at] = kept.length;
		const end = all.first[at + 1] ?? 0;
		for (let step = all.first[at] ?? 0; step < end; step += 1) {
			if (isKept(Math.floor(at / size), step)) kept.push(step);
		}
	}
	first[all.first.length - 1] = kept.length;
	return {
		first,
		to: Int16Array.from(kept, (step) => all.to[step] ?? 0),
		flags: Uint8Array.from(kept, (step) => all.flags[step] ?? 0),
		preference: Uint8Array.from(kept, (step) => all.preference[step] ?? 0),
		tie: Uint8Array.from(kept, (step) => all.tie[step] ?? 0),
	};
}
