// Which slot to ask about next, when the work of a choice comes out later than it might: one that the
// late work hangs on and that could still be otherwise.

import type { Board } from './board.ts';
import type { Hands } from './clashes.ts';
import type { GearFigures } from './gear-figures.ts';
import type { Outlook } from './outlook.ts';
import type { Work } from './plan.ts';
import type { Said } from './possible-hands.ts';
import { onlyHand } from './possible-hands.ts';
import { preemptiveLateness } from './preemptive-lateness.ts';
import type { Seat } from './seats.ts';
import type { Weighed } from './weighed.ts';

export type Question = Omit<Said, 'isIt'>;

/** A choice and what is possible around it. */
export type Asking = {
	readonly outlook: Outlook;
	readonly figures: GearFigures;
	readonly board: Board;
	readonly hands: Hands;
	readonly weighed: Weighed;
};

/**
 * The question whether a slot shall have one of these hands; null where nothing could be otherwise.
 *
 * @example
 * openQuestion({ outlook, figures: gearFigures(outlook, seating), board, hands: chosen.hands, weighed: weighed(session, outlook, choices) }) // => null
 */
export function openQuestion(asking: Asking): Question | null {
	const late = latePieces(asking).map((work) => pieceOf(asking, work));
	for (const piece of late) {
		const question = aboutPiece(asking, piece) ?? aboutSetting(asking, piece);
		if (question !== null) return question;
	}
	return aboutHandOvers(asking, late) ?? aboutAnything(asking);
}

type Slot = { readonly seat: number; readonly section: number };

/** A piece of late work by its numbers. */
type LatePiece = Slot & { readonly work: Work; readonly instrument: number };

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

function pieceOf({ outlook, board }: Asking, work: Work): LatePiece {
	return {
		work,
		seat: board.seating.seats.findIndex(({ player }) => player === work.player),
		section: outlook.sections.indexOf(work.section),
		instrument: outlook.show.instruments.findIndex(({ id }) => id === work.instrument),
	};
}

/** What the work is for, what was in those hands before, what else is handed over, and who had it last. */
function aboutPiece(
	asking: Asking,
	{ seat, section, instrument, work }: LatePiece,
): Question | null {
	const { board, hands, weighed } = asking;
	const { seats } = board.seating;
	const slots = [
		{ seat, section },
		{ seat, section: section - 1 },
	];
	for (const one of weighed.handOvers) {
		if (one.section !== work.section) continue;
		slots.push({ seat: seats.findIndex(({ player }) => player === one.player), section });
	}
	for (let before = section - 1; before >= 0; before -= 1) {
		const holder = seats.findIndex(
			(one, other) => one.instrumentOf[hands[other]?.[before] ?? 0] === instrument,
		);
		if (holder < 0) continue;
		slots.push({ seat: holder, section: before }, { seat: holder, section: before + 1 });
		break;
	}
	return aboutFirstOpen(asking, slots);
}

/** Whether somebody has the instrument before in a setting that would leave less to do. */
function aboutSetting({ board, figures }: Asking, piece: LatePiece): Question | null {
	const { seating, possible } = board;
	const { instrument, work } = piece;
	const to = settingGiven(board, piece);
	for (let section = piece.section - 1; section >= 0; section -= 1) {
		for (let place = 0; place < seating.seats.length; place += 1) {
			const { size, instrumentOf, settingOf } = seating.seats[place] as Seat;
			const row = section * size;
			const having: number[] = [];
			let mayHaveOther = false;
			let isLess = false;
			for (let hand = 0; hand < size; hand += 1) {
				if (possible[place]?.[row + hand] !== 1) continue;
				if (instrumentOf[hand] !== instrument) {
					mayHaveOther = true;
					continue;
				}
				having.push(hand);
				const seconds = figures.secondsBetween(instrument, settingOf[hand] ?? 0, to);
				if (seconds < work.seconds) isLess = true;
			}
			if (having.length > 0 && !mayHaveOther) return null;
			if (isLess) return { seat: place, section, hands: having };
		}
	}
	return null;
}

function settingGiven({ seating }: Board, { instrument, work }: LatePiece): number {
	const settings = seating.settings[instrument] ?? [];
	return settings.findIndex(({ tuning, capo }) => tuning === work.to && capo === work.capo);
}

/** Hand-overs that keep the technician from the late work. */
function aboutHandOvers(asking: Asking, late: readonly LatePiece[]): Question | null {
	const { outlook, board, weighed } = asking;
	const fromMs = Math.min(...late.map(({ work }) => work.fromMs));
	const untilMs = Math.max(...late.map(({ work }) => work.finishMs));
	const slots = weighed.handOvers.flatMap((one) => {
		if (one.section.startMs <= fromMs || one.wantedMs >= untilMs) return [];
		const seat = board.seating.seats.findIndex(({ player }) => player === one.player);
		const section = outlook.sections.indexOf(one.section);
		return [
			{ seat, section },
			{ seat, section: section - 1 },
		];
	});
	return aboutFirstOpen(asking, slots);
}

function aboutAnything(asking: Asking): Question | null {
	const { seats } = asking.board.seating;
	const slots = asking.outlook.sections.flatMap((_, section) =>
		seats.map((_, seat) => ({ seat, section })),
	);
	return aboutFirstOpen(asking, slots);
}

function aboutFirstOpen({ board, hands }: Asking, slots: readonly Slot[]): Question | null {
	const open = slots.find(
		(slot) => slot.section >= 0 && onlyHand(board.seating, board.possible, slot) < 0,
	);
	return open === undefined ? null : { ...open, hands: [hands[open.seat]?.[open.section] ?? 0] };
}
