// Which slot to ask about next, when the work of a choice comes out later than it might: one that the
// late work hangs on and that could still be otherwise.

import type { Board } from './board.ts';
import type { Hands } from './clashes.ts';
import type { Outlook } from './outlook.ts';
import type { Work } from './plan.ts';
import { onlyHand } from './possible-hands.ts';
import { preemptiveLateness } from './preemptive-lateness.ts';
import type { Weighed } from './weighed.ts';

export type Question = { readonly seat: number; readonly section: number; readonly hand: number };

/** A choice and what is possible around it. */
export type Asking = {
	readonly outlook: Outlook;
	readonly board: Board;
	readonly hands: Hands;
	readonly weighed: Weighed;
};

/**
 * The question whether a slot shall have what it was given; null where nothing could be otherwise.
 *
 * @example
 * openQuestion({ outlook, board, hands: chosen.hands, weighed: weighed(session, outlook, choices) }) // => null
 */
export function openQuestion(asking: Asking): Question | null {
	const { board, hands, outlook } = asking;
	const { seating } = board;
	const isOpen = ({ seat, section }: Omit<Question, 'hand'>): boolean =>
		section >= 0 && onlyHand(seating, board.possible, { seat, section }) < 0;
	const everything = outlook.sections.flatMap((_, section) =>
		seating.seats.map((_, seat) => ({ seat, section })),
	);
	const found = [...slotsOfLateWork(asking), ...everything].find(isOpen);
	return found ? { ...found, hand: hands[found.seat]?.[found.section] ?? 0 } : null;
}

/** What the late work is for, what was in those hands before, and who had the instrument last. */
function slotsOfLateWork(asking: Asking): readonly Omit<Question, 'hand'>[] {
	const { outlook, board, hands, weighed } = asking;
	const { seats } = board.seating;
	return latePieces(asking).flatMap(({ player, section, instrument }) => {
		const seat = seats.findIndex((one) => one.player === player);
		const place = outlook.sections.indexOf(section);
		const number = outlook.show.instruments.findIndex(({ id }) => id === instrument);
		const slots = [
			{ seat, section: place },
			{ seat, section: place - 1 },
		];
		const given = weighed.handOvers.filter((one) => one.section === section);
		for (const one of given) {
			slots.push({ seat: seats.findIndex((other) => other.player === one.player), section: place });
		}
		for (let before = place - 1; before >= 0; before -= 1) {
			const holder = seats.findIndex(
				(one, other) => one.instrumentOf[hands[other]?.[before] ?? 0] === number,
			);
			if (holder < 0) continue;
			slots.push({ seat: holder, section: before }, { seat: holder, section: before + 1 });
			break;
		}
		return slots;
	});
}

/** The work that cannot be less late, in whatever order, as long as the choice stands. */
function latePieces({ outlook, weighed }: Asking): readonly Work[] {
	const pieces = weighed.work.map((work) => ({
		work,
		seconds: work.seconds,
		releaseMs: work.fromMs,
		dueMs: work.wantedMs,
	}));
	const { critical } = preemptiveLateness(pieces, { nowMs: outlook.nowMs, clock: weighed.clock });
	return critical.map(({ work }) => work);
}
