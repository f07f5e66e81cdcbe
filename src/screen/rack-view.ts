// The whole rack, a line for each instrument: what it is in, how ready it is, where it is.

import type { Session } from '../session/session.ts';
import { driftOn } from '../session/warmth.ts';
import type { Instrument } from '../showfile/show.ts';
import { playerName } from '../showfile/shown-names.ts';
import { centsWords } from '../words/warmth.ts';
import { durationWords } from './duration-words.ts';
import { MARK_WORDS, markStyle, STAGED_MARK, stateMark, stateWords } from './instrument-words.ts';
import { placeAt, type Row, span } from './row.ts';
import type { ScreenState } from './screen-state.ts';
import { showClock } from './show-clock-words.ts';
import { tuningThatFits } from './tuning-words.ts';
import { JOB_WORDS } from './work-section.ts';

const PLACE_WORDS = {
	cased: 'case',
	racked: 'rack',
	staged: 'staged',
	inHands: 'in hands',
	onBench: 'bench',
	out: 'out',
} as const;

/** Where the columns begin: the last one, what comes next, needs its place most. */
function columnsAt(columns: number) {
	return columns < 90
		? { state: 16, tuning: 35, place: 44, next: 56 }
		: { state: 22, tuning: 42, place: 54, next: 68 };
}

/** From this width on there is room for how far each can have gone. */
const WITH_DRIFT_COLUMNS = 118;
/** Where the to-do list says from when. */
const WITH_EARLIEST_COLUMNS = 100;
const DRIFT_AT = 98;

/** Names of the columns. */
export function rackHeading(columns: number, { session }: ScreenState): Row {
	const at = columnsAt(columns);
	const hasDrift = session.show.instruments.some((one) => driftCell(session, one, columns) !== '');
	return placeAt(columns, [
		[2, [span('RACK', 'title')]],
		[at.state, [span('state', 'dim')]],
		[at.tuning, [span('in', 'dim')]],
		[at.place, [span('where', 'dim')]],
		[at.next, [span('next at, work', 'dim')]],
		...(hasDrift ? [[DRIFT_AT, [span('stage: at most', 'dim')]] as const] : []),
	]);
}

/** How far it can have gone since it was made ready; empty where nothing can be said, or not here. */
function driftCell(session: Session, instrument: Instrument, columns: number): string {
	const drift = columns < WITH_DRIFT_COLUMNS ? null : driftOn(session, instrument);
	return drift === null ? '' : `string ${drift.worst.string}, ${centsWords(drift.worst.cents)}`;
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
	const place = holder ? playerName(show, holder.id) : PLACE_WORDS[one.value];
	const { tuning, capo } = one.context;
	const next = plan.handOvers.find(({ instrument: id }) => id === instrument.id);
	// Work for a later use is not said beside the next one, as if that had to wait for it.
	const work =
		plan.work.find(
			({ instrument: id, wantedMs }) =>
				id === instrument.id && (next === undefined || wantedMs <= next.wantedMs),
		) ?? plan.idle.find(({ instrument: id }) => id === instrument.id);
	const handed = next ? `${playerName(show, next.player)} ${showClock(state, next.wantedMs)}` : '';
	const todo = work
		? `${handed === '' ? '' : ' '}${JOB_WORDS[work.job]} ${durationWords(work.seconds)}`
		: '';
	const spare = instrument.spare ? ', spare' : '';
	const at = columnsAt(columns);
	const capoMark = capo > 0 ? ` c${capo}` : '';
	const room = at.place - at.tuning - capoMark.length - 1;
	const drift = driftCell(session, instrument, columns);
	return placeAt(columns, [
		[2, [span(`${instrument.slot?.toUpperCase() ?? ' '} ${mark} ${instrument.name}`)]],
		[at.state, [span(stateWords(session, instrument.id, nowMs), markStyle(mark))]],
		[at.tuning, [span(`${tuningThatFits(show, tuning, room)}${capoMark}`)]],
		[at.place, [span(`${place}${spare}`, 'dim')]],
		[at.next, [span(`${handed}${todo}`, 'dim')]],
		...(drift === '' ? [] : [[DRIFT_AT, [span(drift)]] as const]),
	]);
}

/** What the marks mean, and what else is said in short, a row each. */
export function legendRows(columns: number): readonly Row[] {
	const marks = Object.entries({ ...MARK_WORDS, [STAGED_MARK]: 'staged' });
	return [
		marks.map(([mark, words]) => `${mark} ${words.split(':')[0]}`).join('  '),
		'PACK: swap it; pack: already on.  +2 more: the log has all',
		...(columns < WITH_EARLIEST_COLUMNS
			? []
			: [
					'start by: the latest start that is in time.  from: the earliest that can be done and stays fresh',
					'TO DO ≈: there may be a better plan',
				]),
	].map((text) => [span(text, 'dim')]);
}
