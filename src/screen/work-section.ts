// What to do next, in the order in which to do it: the first line that wants it now is what the ready key
// names.

import { displayWidth, fitWidth } from '../base/display-width.ts';
import { minutesSeconds } from '../base/duration.ts';
import type { IdleWork, Work } from '../plan/plan.ts';
import { offsetWords } from '../showfile/instrument-strings.ts';
import type { Instrument } from '../showfile/show.ts';
import { playerName, shownInstrument } from '../showfile/shown-names.ts';
import { retuneSteps } from '../tuning/retune-steps.ts';
import type { Tuning } from '../tuning/tuning.ts';
import {
	type CountdownRoom,
	forPlace,
	moreWords,
	NOTHING_TO_DO,
	neededWords,
	PLACES,
	startColumns,
	startWords,
	stringSteps,
} from '../words/stage.ts';
import { toPutRight } from '../words/to-put-right.ts';
import { withSigns } from '../words/tuning-names.ts';
import { stateMark } from './instrument-marks.ts';
import { instrumentOf, slotLabel, songPlace } from './named-in-show.ts';
import { type Area, placeAt, type Row, span } from './row.ts';
import type { ScreenState } from './screen-state.ts';
import { firstThatFits, tallRows } from './tall-glyphs.ts';
import { isToBegin, isWanted, peggedWork, workNow, workWords } from './work-words.ts';

/** Below this the line has no room for how long it takes and what is left. */
const LEAST_WIDE_COLUMNS = 74;

const right = (text: string, columns: number) => fitWidth(text, columns, { align: 'right' });

/** The first piece tall where there is room and it can be begun, and a line for each other piece, as many as there are rows, restrings that nothing waits for last; the last line says how many more there are. */
export function workSection(
	state: ScreenState,
	{ columns, rows, isAscii }: Area & { readonly isAscii: boolean },
): Row[] {
	const { idle } = state.plan;
	const work = workNow(state);
	const all = [...work, ...idle];
	if (all.length === 0) {
		return [
			placeAt(columns, [
				[0, toDoLabel(state)],
				[10, [span(toPutRight(state.plan.warnings) ?? NOTHING_TO_DO, 'dim')]],
			]),
		];
	}
	const [first, ...later] = all;
	const isTall = rows >= LEAST_TALL_ROWS && columns >= LEAST_TALL_COLUMNS;
	const head =
		isTall && first && canBegin(state, first) ? tallPiece(state, first, { columns, isAscii }) : [];
	const listed = head.length === 0 ? all : later;
	const room = rows - head.length;
	const shown = all.slice(0, all.length - listed.length + room);
	return [
		...head,
		...listed.slice(0, room).map((one, index) => {
			const more = index === room - 1 && listed.length > room ? listed.length - room : 0;
			const isAgain = shown.filter(({ instrument }) => instrument === one.instrument).length > 1;
			const isFirst = head.length === 0 && index === 0;
			return workRow(state, one, { columns, isFirst, more, isAgain });
		}),
		...(listed.length < room ? stepRows(state, work) : []),
	];
}

/** From this size on the first piece is in tall letters. */
const LEAST_TALL_ROWS = 6;
const LEAST_TALL_COLUMNS = 110;
const TALL_ROWS = 3;
/** Slot and job in tall letters, then how long it takes and how long it can wait in small ones. */
const TALL_JOB_AT = 18;
const TALL_WORDS_COLUMNS = 32;

/** Whether hands can be put to it now: in tall letters what cannot be reads as an order. */
function canBegin({ session, nowMs }: ScreenState, work: Work | IdleWork): boolean {
	const isThere = session.instruments[work.instrument]?.value !== 'inHands';
	return isThere && (!isWanted(work) || work.fromMs - nowMs < 1000);
}

/** The one thing to do now; nothing where its words are too long for it. */
function tallPiece(
	state: ScreenState,
	work: Work | IdleWork,
	{ columns, isAscii }: { readonly columns: number; readonly isAscii: boolean },
): Row[] {
	const { show } = state.session;
	const timed = isWanted(work) ? work : null;
	const style = timed !== null && isToBegin(state, timed) ? 'accent' : 'plain';
	const at = columns - TALL_WORDS_COLUMNS;
	const jobs = [...workWords(state, work), ...peggedWork(state, work)];
	const job = firstThatFits(jobs.map(withSigns), at - TALL_JOB_AT - 2);
	const slot = instrumentOf(show, work.instrument)?.slot ?? null;
	if (job === null || slot === null) return [];
	const look = { style, scale: 1, isAscii } as const;
	const mark = stateMark(state.session, work.instrument, state.nowMs);
	const slotRows = tallRows(slot, look);
	const jobRows = tallRows(job, look);
	const words: readonly Row[] = [
		[
			span(
				`${shownInstrument(show, work.instrument)} ${mark}  ${minutesSeconds(work.seconds)}`,
				style,
			),
		],
		timed === null ? [] : [span(startOf(state, timed, 'whole'), style)],
		timed === null ? [] : [span(servedBy(state, timed, TALL_WORDS_COLUMNS), 'dim')],
	];
	return Array.from({ length: TALL_ROWS }, (_, line) =>
		placeAt(columns, [
			[0, line === 0 ? toDoLabel(state) : []],
			[10, slotRows[line] ?? []],
			[TALL_JOB_AT, jobRows[line] ?? []],
			[at, words[line] ?? []],
		]),
	);
}

/** How the first piece is tuned, where a row is left over: its steps, and what its strings stand off. */
function stepRows({ session }: ScreenState, work: readonly Work[]): Row[] {
	const { show } = session;
	const [first] = work;
	const instrument = show.instruments.find(({ id }) => id === first?.instrument);
	const state = instrument && session.instruments[instrument.id];
	if (!first || !instrument || !state) return [];
	const said = [
		// First: of the steps the end may be cut.
		offsetWords(show, { instrument, tuning: first.to, player: first.player }),
		first.job === 'retune' ? stepWords(instrument, state.context.tuning, first.to) : '',
	].filter((words) => words !== '');
	if (said.length === 0) return [];
	const words = `${shownInstrument(show, first.instrument)}: ${said.join('; ')}`;
	return [[span(`${' '.repeat(STEPS_AT)}${words}`, 'dim')]];
}

function stepWords({ bridge }: Instrument, from: Tuning, to: Tuning): string {
	const steps = retuneSteps(from.notes, to.notes, bridge);
	return stringSteps(
		steps.filter(({ move }) => move !== 0),
		bridge === 'floating',
	);
}

const STEPS_AT = 10;

type Line = {
	readonly columns: number;
	readonly isFirst: boolean;
	readonly more: number;
	/** There is other work on the same instrument beside it: which song each is for is said where there is room for that alone. */
	readonly isAgain: boolean;
};

function workRow(state: ScreenState, work: Work | IdleWork, line: Line): Row {
	const { show } = state.session;
	const { columns, isFirst, more, isAgain } = line;
	const timed = isWanted(work) ? work : null;
	const style = timed !== null && isToBegin(state, timed) ? 'accent' : 'plain';
	const isNarrow = columns < 50;
	// What is still in somebody's hands cannot be begun: the mark says so.
	const mark = stateMark(state.session, work.instrument, state.nowMs);
	const at = columnsAt(columns);
	const jobs = workWords(state, work);
	const room = at.seconds - at.job - 1;
	const job = jobs.find((words) => displayWidth(words) <= room) ?? jobs.at(-1) ?? '';
	const isWide = columns >= LEAST_WIDE_COLUMNS;
	const isShort = isWide && columns < LEAST_START_COLUMNS;
	const countdown = isNarrow ? 'least' : isShort ? 'short' : 'whole';
	const start = timed ? startOf(state, timed, countdown) : '';
	if (!isWide) {
		const startAt = columns - startColumns(countdown);
		return placeAt(columns, [
			[0, [span(isFirst ? PLACES.toDo : '', 'title')]],
			[6, [span(`${slotLabel(show, work.instrument)} ${mark} ${job}`, style)]],
			...(startAt < 20 || start === '' ? [] : [[startAt, [span(start, style)]] as const]),
		]);
	}
	const label = more > 0 ? moreWords(more) : '';
	const place = timed === null ? '' : forPlace(songPlace(state.session, timed.section.item).place);
	// At the row's end, so that the numbers keep their cells.
	const placeStart = columns - displayWidth(place);
	const hasPlace =
		isAgain && columns < LEAST_USE_COLUMNS && at.start + displayWidth(start) < placeStart;
	return placeAt(columns, [
		[0, isFirst ? toDoLabel(state) : [span(label, 'dim')]],
		[10, [span(shownInstrument(show, work.instrument), style)]],
		[at.mark, [span(mark, style)]],
		[at.job, [span(job, style)]],
		[at.seconds, [span(right(minutesSeconds(work.seconds), 5))]],
		[at.start, [span(start, style)]],
		...(hasPlace && place !== '' ? [[placeStart, [span(place, 'dim')]] as const] : []),
		...(timed === null
			? []
			: [[at.use, [span(servedBy(state, timed, columns - at.use), 'dim')]] as const]),
	]);
}

/** Below this there is no room for the whole countdown. */
const LEAST_START_COLUMNS = 80;
/** From this width on there is room for whom it is. */
const LEAST_USE_COLUMNS = 100;
/** From this width on longer names and work are whole, and for whom it is fits beside them. */
const LEAST_LONG_COLUMNS = 110;

function columnsAt(columns: number) {
	return columns < LEAST_LONG_COLUMNS
		? { mark: 20, job: 22, seconds: 44, start: 50, use: columns < LEAST_USE_COLUMNS ? columns : 77 }
		: { mark: 23, job: 25, seconds: 51, start: 57, use: 84 };
}

/**
 * One countdown, to the latest start; past it, where it is in time all the same and only what comes after it is
 * late, it stays at nothing. Where it will be late itself, the working time that is short.
 */
function startOf({ nowMs }: ScreenState, work: Work, room: CountdownRoom): string {
	const untilSeconds = Math.max(0, Math.trunc((work.beginByMs - nowMs) / 1000));
	const short = Math.trunc(work.shortSeconds);
	const shortSeconds = short > 0 ? short : null;
	return startWords({ untilSeconds, shortSeconds }, room);
}

/** For whom, the song's place, and how long it has to wait, in so many columns. */
function servedBy(
	{ session, nowMs }: ScreenState,
	{ section, player, fromMs }: Work,
	columns: number,
): string {
	const { place } = songPlace(session, section.item);
	const texts = neededWords(playerName(session.show, player), place, (fromMs - nowMs) / 1000);
	return texts.find((words) => displayWidth(words) <= columns) ?? texts.at(-1) ?? '';
}

/** A plan that is not known to be the best says so by a sign. */
function toDoLabel({ plan }: ScreenState): Row {
	return [span(PLACES.toDo, 'title'), ...(plan.isProved ? [] : [span(' ≈', 'dim')])];
}
