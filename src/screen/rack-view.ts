// The whole rack, a line for each instrument: what it is in, how ready it is, where it is.

import { displayWidth } from '../base/display-width.ts';
import { minutesSeconds } from '../base/duration.ts';
import type { Session } from '../session/session.ts';
import { driftOn } from '../session/warmth.ts';
import type { Instrument } from '../showfile/show.ts';
import { playerName } from '../showfile/shown-names.ts';
import { stateWords, WHERE_WORDS } from '../words/instrument-state.ts';
import { JOB_WORDS } from '../words/stage.ts';
import { driftCell, HEADINGS, legendLines, nextUse, SPARE } from '../words/views.ts';
import { centsWords } from '../words/warmth.ts';
import { markStyle, STAGED_MARK, stateMark } from './instrument-marks.ts';
import { tuningOf } from './pegs.ts';
import { placeAt, type Row, span } from './row.ts';
import type { ScreenState } from './screen-state.ts';
import { isTouchedUp } from './work-words.ts';

/** Where the columns begin: the last one, what comes next, needs its place most. */
function columnsAt(columns: number) {
	return columns < 90
		? { state: 16, tuning: 36, place: 44, next: 56 }
		: { state: 22, tuning: 42, place: 54, next: 68 };
}

/** From this width on there is room for how far each can have gone. */
const WITH_DRIFT_COLUMNS = 118;
/** From this width on there is room for what a countdown means. */
const WITH_EARLIEST_COLUMNS = 100;
const DRIFT_AT = 98;

/** Names of the columns. */
export function rackHeading(columns: number, { session }: ScreenState): Row {
	const at = columnsAt(columns);
	const hasDrift = session.show.instruments.some((one) => driftOf(session, one, columns) !== '');
	return placeAt(columns, [
		[2, [span(HEADINGS.rack, 'title')]],
		[at.state, [span(HEADINGS.state, 'dim')]],
		[at.tuning, [span(HEADINGS.tunedTo, 'dim')]],
		[at.place, [span(HEADINGS.where, 'dim')]],
		[at.next, [span(HEADINGS.nextUse, 'dim')]],
		...(hasDrift ? [[DRIFT_AT, [span(HEADINGS.drift, 'dim')]] as const] : []),
	]);
}

/** How far it can have gone since it was made ready; empty where nothing can be said, or not here. */
function driftOf(session: Session, instrument: Instrument, columns: number): string {
	const drift = columns < WITH_DRIFT_COLUMNS ? null : driftOn(session, instrument);
	return drift === null ? '' : driftCell(drift.worst.string, centsWords(drift.worst.cents));
}

/** One row for each instrument, in the rack's order. */
export function rackRows(state: ScreenState, columns: number): Row[] {
	return state.session.show.instruments.map((one) => rackRow(state, one, columns));
}

function rackRow(state: ScreenState, instrument: Instrument, columns: number): Row {
	const { session, plan, nowMs } = state;
	const { show } = session;
	const one = session.instruments[instrument.id];
	if (one === undefined) return [];
	const mark = stateMark(session, instrument.id, nowMs);
	const holder = show.players.find(({ id }) => session.players[id]?.holds === instrument.id);
	const place = holder ? playerName(show, holder.id) : WHERE_WORDS[one.value];
	const next = plan.handOvers.find(({ instrument: id }) => id === instrument.id);
	// Work for a later use is not said beside the next one, as if that had to wait for it.
	const work =
		plan.work.find(
			({ instrument: id, wantedMs }) =>
				id === instrument.id && (next === undefined || wantedMs <= next.wantedMs),
		) ?? plan.idle.find(({ instrument: id }) => id === instrument.id);
	const handed = next ? nextUse(playerName(show, next.player), (next.wantedMs - nowMs) / 1000) : '';
	const job = work ? JOB_WORDS[isTouchedUp(state, work) ? 'touch-up' : work.job] : '';
	const timed = work ? `${job} ${minutesSeconds(work.seconds)}` : '';
	const spare = instrument.spare ? `, ${SPARE}` : '';
	const at = columnsAt(columns);
	// How long the work takes is not cut to a part of it.
	const uses = [timed, job].map((todo) => [handed, todo].filter((one) => one !== '').join(' '));
	const use = uses.find((words) => displayWidth(words) <= columns - at.next) ?? handed;
	const room = at.place - at.tuning - 1;
	const drift = driftOf(session, instrument, columns);
	return placeAt(columns, [
		[2, [span(`${instrument.slot?.toUpperCase() ?? ' '} ${mark} ${instrument.name}`)]],
		[at.state, [span(stateWords(session, instrument.id, nowMs), markStyle(mark))]],
		[at.tuning, [span(tuningOf(state, one, room))]],
		[at.place, [span(`${place}${spare}`, 'dim')]],
		[at.next, [span(use, 'dim')]],
		...(drift === '' ? [] : [[DRIFT_AT, [span(drift)]] as const]),
	]);
}

/** What the marks mean, and what else is said in short, a row each. */
export function legendRows(columns: number): readonly Row[] {
	return legendLines(STAGED_MARK, columns >= WITH_EARLIEST_COLUMNS).map((text) => [
		span(text, 'dim'),
	]);
}
