// What to ask next, when the work of a choice comes out later than it might: about slots that the late
// work hangs on and that could still be otherwise.

import type { Board } from './board.ts';
import type { Hands } from './clashes.ts';
import type { GearFigures } from './gear-figures.ts';
import type { Outlook } from './outlook.ts';
import type { Work } from './plan.ts';
import type { Said } from './possible-hands.ts';
import { onlyHand } from './possible-hands.ts';
import { preemptiveLateness } from './preemptive-lateness.ts';
import { samePitches } from './same-pitches.ts';
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

/** So many are looked into: what comes after them has less to do with it. */
const MOST = 16;

/**
 * Questions whether a slot shall have one of these hands, what the late work hangs on first; none where
 * nothing could be otherwise.
 *
 * @example
 * openQuestions({ outlook, figures: gearFigures(outlook, seating), board, hands: chosen.hands, weighed: weighed(outlook, choices) }) // => []
 */
export function openQuestions(asking: Asking): readonly Question[] {
	const late = latePieces(asking).map((work) => pieceOf(asking, work));
	const questions = late.flatMap((piece) => [
		...aboutSlots(asking, slotsOfPiece(asking, piece)),
		...aboutHolders(asking, piece),
	]);
	if (questions.length > 0) return distinct(questions).slice(0, MOST);
	const beside = aboutSlots(asking, slotsOfHandOvers(asking, late));
	return beside.length > 0 ? distinct(beside).slice(0, MOST) : aboutAnything(asking);
}

type Slot = { readonly seat: number; readonly section: number };

/** A piece of late work by its numbers. */
type LatePiece = Slot & { readonly work: Work; readonly instrument: number };

/**
 * The work that cannot be less late, in whatever order, as long as the choice stands; where the order
 * alone makes it later still, all that is done without a pause up to what is latest, and what could
 * have been done elsewhere with other work out of the way.
 */
function latePieces({ outlook, weighed }: Asking): readonly Work[] {
	const { work, clock } = weighed;
	const pieces = work.map((one) => ({
		work: one,
		seconds: one.seconds,
		releaseMs: one.fromMs,
		dueMs: one.wantedMs,
	}));
	const { critical, latenessMs } = preemptiveLateness(pieces, { nowMs: outlook.nowMs, clock });
	const latest = work.reduce((late, one) => (one.slackSeconds < late.slackSeconds ? one : late));
	if (latenessMs >= -latest.slackSeconds * 1000) return critical.map((one) => one.work);
	const last = work.indexOf(latest);
	const isPause = (place: number): boolean =>
		clock.at(work[place]?.startMs ?? 0) > clock.at(work[place - 1]?.finishMs ?? 0);
	let first = last;
	while (first > 0 && !isPause(first)) first -= 1;
	const block = work.slice(first, last + 1);
	const fromMs = Math.min(...block.map((one) => one.fromMs));
	const untilMs = Math.max(...block.map((one) => one.wantedMs));
	const around = work.filter((one) => one.finishMs > fromMs && one.startMs < untilMs);
	return [...new Set([...block, ...around])];
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
function slotsOfPiece(
	{ board, hands, weighed }: Asking,
	{ seat, section, instrument, work }: LatePiece,
): readonly Slot[] {
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
	return slots;
}

/**
 * Whether somebody has the instrument before: in a setting that would leave less to do first of all, else
 * at all, which makes its strings older and keeps it from the rack.
 */
function aboutHolders({ board, figures }: Asking, piece: LatePiece): readonly Question[] {
	const { seats } = board.seating;
	const { instrument, work } = piece;
	const to = settingGiven(board, piece);
	const isLess = (seat: Seat, hand: number): boolean =>
		figures.secondsBetween(instrument, seat.settingOf[hand] ?? 0, to) < work.seconds;
	let other: Question | null = null;
	for (let section = piece.section - 1; section >= 0; section -= 1) {
		for (const [place, seat] of seats.entries()) {
			const mine = possibleAt(board, { seat: place, section });
			const having = mine.filter((hand) => seat.instrumentOf[hand] === instrument);
			if (having.length === 0) continue;
			const question = { seat: place, section, hands: having };
			if (having.length === mine.length) return other === null ? [] : [other];
			if (having.some((hand) => isLess(seat, hand))) return [question];
			other ??= question;
		}
	}
	return other === null ? [] : [other];
}

function possibleAt({ seating, possible }: Board, { seat, section }: Slot): readonly number[] {
	const size = seating.seats[seat]?.size ?? 0;
	const row = possible[seat]?.subarray(section * size, (section + 1) * size) ?? [];
	return [...row.keys()].filter((hand) => row[hand] === 1);
}

function settingGiven({ seating }: Board, { instrument, work }: LatePiece): number {
	const settings = seating.settings[instrument] ?? [];
	return settings.findIndex(
		({ tuning, capo }) => capo === work.capo && samePitches(tuning, work.to),
	);
}

/** Hand-overs that keep the technician from the late work. */
function slotsOfHandOvers(
	{ outlook, board, weighed }: Asking,
	late: readonly LatePiece[],
): readonly Slot[] {
	const fromMs = Math.min(...late.map(({ work }) => work.fromMs));
	const untilMs = Math.max(...late.map(({ work }) => work.finishMs));
	return weighed.handOvers.flatMap((one) => {
		if (one.section.startMs <= fromMs || one.wantedMs >= untilMs) return [];
		const seat = board.seating.seats.findIndex(({ player }) => player === one.player);
		const section = outlook.sections.indexOf(one.section);
		return [
			{ seat, section },
			{ seat, section: section - 1 },
		];
	});
}

function aboutAnything(asking: Asking): readonly Question[] {
	const { seats } = asking.board.seating;
	const slots = asking.outlook.sections.flatMap((_, section) =>
		seats.map((_, seat) => ({ seat, section })),
	);
	return aboutSlots(asking, slots).slice(0, 1);
}

/** Whether they shall have what was given; of those that could have something else. */
function aboutSlots({ board, hands }: Asking, slots: readonly Slot[]): readonly Question[] {
	return slots
		.filter((slot) => slot.section >= 0 && onlyHand(board.seating, board.possible, slot) < 0)
		.map((slot) => ({ ...slot, hands: [hands[slot.seat]?.[slot.section] ?? 0] }));
}

function distinct(questions: readonly Question[]): readonly Question[] {
	const isSame = (one: Question, other: Question): boolean =>
		one.seat === other.seat &&
		one.section === other.section &&
		one.hands.join() === other.hands.join();
	return questions.filter(
		(one, place) => questions.findIndex((other) => isSame(one, other)) === place,
	);
}
