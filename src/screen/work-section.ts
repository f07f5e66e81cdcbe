// What to do next, in the order in which to do it: the first line that wants it now is what the ready key
// names.

import { fitWidth } from '../base/display-width.ts';
import type { Work } from '../plan/plan.ts';
import { offsetWords } from '../showfile/instrument-strings.ts';
import type { Instrument } from '../showfile/show.ts';
import { playerName } from '../showfile/shown-names.ts';
import { retuneSteps } from '../tuning/retune-steps.ts';
import type { Tuning } from '../tuning/tuning.ts';
import { durationWords } from './duration-words.ts';
import { stateMark } from './instrument-words.ts';
import { slotLabel, slotWords, songPlace } from './named-in-show.ts';
import { type Area, placeAt, type Row, span } from './row.ts';
import type { ScreenState } from './screen-state.ts';
import { showClock } from './show-clock-words.ts';
import { shortTuning } from './tuning-words.ts';

/** Below this the line has no room for how long it takes and what is to spare. */
const LEAST_WIDE_COLUMNS = 74;

const right = (text: string, columns: number) => fitWidth(text, columns, { align: 'right' });

/** A line for each piece of work, as many as there are rows; the last says how many more there are. */
export function workSection(state: ScreenState, { columns, rows }: Area): Row[] {
	const { work } = state.plan;
	if (work.length === 0) {
		return [
			placeAt(columns, [
				[0, doLabel(state)],
				[10, [span('nothing to do', 'dim')]],
			]),
		];
	}
	const shown = work.slice(0, rows);
	return [
		...shown.map((one, index) => {
			const more = index === rows - 1 && work.length > rows ? work.length - rows : 0;
			return workRow(state, one, { columns, isFirst: index === 0, more });
		}),
		...(work.length < rows ? stepRows(state, shown) : []),
	];
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
	const words = `slot ${slotLabel(show, first.instrument)}: ${said.join('; ')}`;
	return [[span(`${' '.repeat(STEPS_AT)}${words}`, 'dim')]];
}

function stepWords({ bridge }: Instrument, from: Tuning, to: Tuning): string {
	const { steps } = retuneSteps(from.notes, to.notes, bridge);
	const moves = steps.filter(({ move }) => move !== 0);
	const words = moves.map((step) => `${step.string} ${step.how} to ${step.to}`).join(', ');
	return `string ${words}${bridge === 'floating' ? '; then all, twice round' : ''}`;
}

const STEPS_AT = 10;

type Line = { readonly columns: number; readonly isFirst: boolean; readonly more: number };

function workRow(state: ScreenState, work: Work, { columns, isFirst, more }: Line): Row {
	const { show } = state.session;
	const isDue = work.beginByMs <= state.nowMs;
	const isLate = work.slackSeconds < 0;
	// What is still in somebody's hands cannot be begun, however late.
	const style = (isDue || isLate) && work.fromMs <= state.nowMs ? 'accent' : 'plain';
	const slack = `${right(durationWords(Math.abs(work.slackSeconds)), 6)} ${isLate ? 'LATE' : 'spare'}`;
	const label = more > 0 ? `+${more} more` : '';
	const isNarrow = columns < 50;
	const held = state.session.instruments[work.instrument];
	// What is still in somebody's hands cannot be begun: the mark says so.
	const mark = held === undefined ? '' : ` ${stateMark(show, held, state.nowMs)}`;
	const name = isNarrow ? slotLabel : slotWords;
	const slot = `${name(show, work.instrument)}${mark}`;
	const job = workWords(state, work);
	const isShort = isNarrow || (columns >= LEAST_WIDE_COLUMNS && columns < 80);
	const begin = `${isShort ? 'by' : 'begin by'} ${right(showClock(state, work.beginByMs), isNarrow ? 7 : 8)}`;
	if (columns < LEAST_WIDE_COLUMNS) {
		const beginAt = columns - begin.length;
		return placeAt(columns, [
			[0, [span(isFirst ? 'DO' : '', 'title')]],
			[3, [span(`${slot} ${job}`, style)]],
			...(beginAt < 16 ? [] : [[beginAt, [span(begin, style)]] as const]),
		]);
	}
	const { place } = songPlace(state.session, work.section.item);
	const forWhom = `for ${playerName(show, work.player)}, ${place}`;
	const from = work.fromMs > state.nowMs ? ` from ${showClock(state, work.fromMs)}` : '';
	return placeAt(columns, [
		[0, isFirst ? doLabel(state) : [span(label, 'dim')]],
		[10, [span(slot, style)]],
		[19, [span(job, style)]],
		[43, [span(right(durationWords(work.seconds), 5))]],
		[50, [span(begin, style)]],
		[isShort ? 62 : 68, [span(slack, style)]],
		[84, [span(`${forWhom}${from}`, 'dim')]],
	]);
}

/** A plan that is not known to be the best says so in a word. */
function doLabel({ plan }: ScreenState): Row {
	return [span('DO', 'title'), ...(plan.isProved ? [] : [span(' rough', 'dim')])];
}

/** The work in words: `retune drop D capo 2`. */
function workWords(state: ScreenState, { job, to, capo }: Work): string {
	const tuning = shortTuning(state.session.show, to);
	const capoWords = capo > 0 ? ` capo ${capo}` : '';
	switch (job) {
		case 'capo':
			return capo > 0 ? `put capo ${capo} on` : 'take the capo off';
		case 'retune':
			return `retune ${tuning}${capoWords}`;
		case 'restring':
			return `restring ${tuning}`;
		default:
			return `touch-up ${tuning}${capoWords}`;
	}
}
