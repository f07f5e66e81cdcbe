// The rack as it stands beside you: a peg for each instrument by slot from left to right, with what is to be
// done to it; where it is out, a gap that says where it is.

import type { InstrumentState } from '../../machines/instrument.ts';
import { displayWidth, fitWidth } from '../base/display-width.ts';
import { minutesSeconds } from '../base/duration.ts';
import { goesOutFirst } from '../plan/out-first.ts';
import type { IdleWork, Work } from '../plan/plan.ts';
import { holderOf } from '../session/find.ts';
import type { Instrument } from '../showfile/show.ts';
import { instrumentName, playerName } from '../showfile/shown-names.ts';
import { WHERE_WORDS } from '../words/instrument-state.ts';
import { capoMark, capoUnder, PEG } from '../words/stage.ts';
import { tuningThatFits } from '../words/tuning-names.ts';
import { markStyle, STAGED_MARK, type StateMark, stateMark } from './instrument-marks.ts';
import { slotLabel } from './named-in-show.ts';
import { type Area, cutRow, fillRow, type Row, type SpanStyle, span } from './row.ts';
import type { ScreenState } from './screen-state.ts';
import { isToBegin, isWanted, peggedWork, workNow } from './work-words.ts';

/** A slot, its mark and the shortest of most tunings; from 100 columns on with the seconds of the work, too. */
const LEAST_PEG_COLUMNS = 11;
const LEAST_LONG_PEG_COLUMNS = 14;
const WIDE_COLUMNS = 100;
/** Narrower pegs have no room for a tuning: one cut to a letter or two says nothing. */
const LEAST_TUNING_COLUMNS = 9;
const LEAST_SPACED_COLUMNS = 4;
/** The work stands under the tuning, so that the slots are a column of their own. */
const INDENT = '  ';

/** How many tiers the rack has at a width. */
export function tiersFor(count: number, columns: number): number {
	const least = columns < WIDE_COLUMNS ? LEAST_PEG_COLUMNS : LEAST_LONG_PEG_COLUMNS;
	return Math.ceil(count / Math.max(1, Math.floor(columns / least)));
}

/** The whole rack in so many rows: a tier has one, two with the work, three with the names. */
export function rackSection(state: ScreenState, { columns, rows }: Area): Row[] {
	const racked = state.session.show.instruments.filter(({ slot }) => slot !== null);
	if (rows < 1 || racked.length === 0) return [];
	const tiers = Math.min(rows, tiersFor(racked.length, columns));
	const across = Math.ceil(racked.length / tiers);
	const width = Math.max(1, Math.floor(columns / across));
	const high = Math.min(3, Math.floor(rows / tiers));
	const work = workNow(state);
	const pegs = racked.map((one) => pegRows(state, one, { width, high, work }));
	return Array.from({ length: Math.ceil(racked.length / across) }, (_, tier) =>
		Array.from({ length: high }, (__, line) =>
			cutRow(
				pegs
					.slice(tier * across, (tier + 1) * across)
					.flatMap((peg) => fillRow(peg[line] ?? [], width)),
				columns,
			),
		),
	).flat();
}

type PegArea = { readonly width: number; readonly high: number; readonly work: readonly Work[] };

function pegRows(state: ScreenState, { id }: Instrument, { width, high, work }: PegArea): Row[] {
	const { session, nowMs } = state;
	const { show } = session;
	const one = session.instruments[id];
	if (one === undefined) return [];
	const slot = slotLabel(show, id);
	const mark = stateMark(session, id, nowMs);
	const isHere = one.value === 'racked' || one.value === 'staged';
	const isBroken = mark === 'x';
	const style = isHere || isBroken ? markStyle(mark) : 'dim';
	// In a cell that is empty else, so that nothing moves.
	const staged = one.value === 'staged' ? STAGED_MARK : ' ';
	const lead = `${slot}${width < LEAST_SPACED_COLUMNS ? '' : staged}${isHere || isBroken || width < LEAST_TUNING_COLUMNS ? mark : ' '}`;
	if (width < LEAST_TUNING_COLUMNS) return [cutRow([span(lead, style)], width)];
	const room = width - lead.length - 2;
	const second = secondRow(state, id, { one, mark, work, width });
	const { first, below } = isHere
		? tuningAndCapo(state, one, { room, isFreeBelow: high > 1 && second.length === 0 })
		: { first: whereOf(state, id, one), below: '' };
	const rows = [
		[span(`${lead} `, style), ...cutRow([span(first, 'dim')], room)],
		...(high > 2 ? [under(instrumentName(show, id), 'dim', width)] : []),
		below === '' ? second : under(below, 'dim', width),
	];
	return rows.slice(0, high);
}

function under(words: string, style: SpanStyle, width: number): Row {
	return [span(INDENT), ...cutRow([span(words, style)], width - INDENT.length - 1)];
}

/** What it is in and the capo that is on, of which the tuning is cut first. */
export function tuningOf({ session }: ScreenState, one: InstrumentState, room: number): string {
	const { tuning, capo } = one.context;
	const onCapo = capoMark(capo);
	const name = tuningThatFits(session.show, tuning, room - onCapo.length);
	if (onCapo === '' || displayWidth(name) + onCapo.length <= room) return `${name}${onCapo}`;
	// The capo is on this one only: the end of the tuning is cut before it.
	const close = onCapo.trimStart();
	const left = room - close.length;
	return `${displayWidth(name) > left ? fitWidth(name, left) : name}${close}`;
}

/** In one row where that has room for both, else the capo below where nothing else is to stand there. */
function tuningAndCapo(
	state: ScreenState,
	one: InstrumentState,
	{ room, isFreeBelow }: { readonly room: number; readonly isFreeBelow: boolean },
): { readonly first: string; readonly below: string } {
	const both = tuningOf(state, one, room);
	const { tuning, capo } = one.context;
	const alone = tuningThatFits(state.session.show, tuning, room);
	const isCut = capo > 0 && !both.startsWith(alone);
	return isFreeBelow && isCut
		? { first: alone, below: capoUnder(capo) }
		: { first: both, below: '' };
}

function whereOf({ session }: ScreenState, id: string, one: InstrumentState): string {
	const holder = holderOf(session, id);
	return holder === null ? WHERE_WORDS[one.value] : playerName(session.show, holder);
}

type Second = {
	readonly one: InstrumentState;
	readonly mark: StateMark;
	readonly work: readonly Work[];
	readonly width: number;
};

/** The work that is due on it; in hands what it is in there. */
function secondRow(state: ScreenState, id: string, { one, mark, work, width }: Second): Row {
	const { stringsDown, faults } = one.context;
	const room = width - INDENT.length;
	if (one.value === 'inHands') {
		return stringsDown.length > 0
			? under(PEG.broken, 'unready', width)
			: under(tuningOf(state, one, room - 1), 'dim', width);
	}
	const next: Work | IdleWork | undefined =
		work.find(({ instrument }) => instrument === id) ??
		state.plan.idle.find(({ instrument }) => instrument === id);
	// What is ready and only to be touched up later can be passed over.
	const isLater = next?.job === 'touch-up' && mark === '+' && peggedWork(state, next).length === 1;
	// What goes out first and is worked on after that has nothing to be done to it now.
	const isAfter = next !== undefined && isWanted(next) && goesOutFirst(state.plan, next);
	const due = isLater || isAfter ? undefined : next;
	if (due === undefined) {
		if (faults.length > 0) return under(PEG.faulty, 'unready', width);
		return stringsDown.length > 0 ? under(PEG.broken, 'unready', width) : [];
	}
	const isNow = isWanted(due) && isToBegin(state, due);
	const jobs = peggedWork(state, due);
	const seconds = minutesSeconds(due.seconds);
	const timed = width < LEAST_LONG_PEG_COLUMNS ? [] : jobs.map((job) => `${job} ${seconds}`);
	const words = [...timed, ...jobs];
	// The next peg's work begins two cells further on, so the last cell may be filled.
	const fits = words.find((text) => text.length <= room) ?? jobs.at(-1) ?? '';
	return [span(INDENT), ...cutRow([span(fits, isNow ? 'accent' : 'unready')], room)];
}
