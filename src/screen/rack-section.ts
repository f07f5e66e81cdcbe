// Who holds what, and the rack by slot with a mark for each state.

import { playerName } from '../showfile/shown-names.ts';
import { stateWords } from '../words/instrument-state.ts';
import { capoMark, inHandsCapo, nothingInHands, PLACES } from '../words/stage.ts';
import { tuningThatFits } from '../words/tuning-names.ts';
import { markStyle, STAGED_MARK, stateMark } from './instrument-marks.ts';
import { slotLabel } from './named-in-show.ts';
import { type Area, cutRow, fillRow, placeAt, type Row, span } from './row.ts';
import type { ScreenState } from './screen-state.ts';

const LABEL_COLUMNS = 10;
const WIDEST_CELL = 22;
const LEAST_TUNING_CELL = 9;
const LEAST_SPACED_CELL = 4;

/** Each player and what is in their hands as it is believed to be, in so many rows. */
export function handsSection(state: ScreenState, { columns, rows }: Area): Row[] {
	const { session, nowMs } = state;
	const { show, players } = session;
	const across = Math.max(1, Math.ceil(show.players.length / Math.max(1, rows)));
	const width = Math.floor((columns - LABEL_COLUMNS) / across);
	const cells = show.players.map(({ id }): Row => {
		const holds = players[id]?.holds ?? null;
		const held = holds === null ? undefined : session.instruments[holds];
		const name = playerName(show, id);
		if (holds === null || held === undefined) return [span(nothingInHands(name), 'dim')];
		const { tuning, capo } = held.context;
		const capoWords = inHandsCapo(capo);
		const named = `${name} ${slotLabel(show, holds)} `;
		const isBroken = stateMark(session, holds, nowMs) === 'x';
		const what = isBroken
			? stateWords(session, holds, nowMs)
			: `${tuningThatFits(show, tuning, width - named.length - capoWords.length - 1)}${capoWords}`;
		return [span(named), span(what, isBroken ? 'accent' : 'plain')];
	});
	return inRows(PLACES.inHands, cells, { across, width, columns });
}

type Cells = { readonly across: number; readonly width: number; readonly columns: number };

function inRows(label: string, cells: readonly Row[], { across, width, columns }: Cells): Row[] {
	return Array.from({ length: Math.ceil(cells.length / across) }, (_, row) =>
		placeAt(columns, [
			[0, [span(row === 0 ? label : '', 'title')]],
			[
				LABEL_COLUMNS,
				cells
					.slice(row * across, row * across + across)
					.flatMap((one) => fillRow(cutRow(one, width - 1), width)),
			],
		]),
	);
}

/** The whole rack in so many rows, in cells as wide as that allows. */
export function rackSection(state: ScreenState, { columns, rows }: Area): Row[] {
	const { session, nowMs } = state;
	const { show } = session;
	const racked = show.instruments.filter(({ slot }) => slot !== null);
	if (rows < 1) return [];
	const across = Math.max(
		1,
		Math.ceil(racked.length / rows),
		Math.floor((columns - LABEL_COLUMNS) / WIDEST_CELL),
	);
	const width = Math.max(1, Math.floor((columns - LABEL_COLUMNS) / across));
	const cells = racked.map(({ id }): Row => {
		const one = session.instruments[id];
		if (one === undefined) return [];
		const { tuning, capo } = one.context;
		const mark = stateMark(session, id, nowMs);
		// In a cell that is empty else, so that nothing moves.
		const staged = one.value === 'staged' ? STAGED_MARK : ' ';
		const slotAndMark = span(
			`${slotLabel(show, id)}${width < LEAST_SPACED_CELL ? '' : staged}${mark}`,
			markStyle(mark),
		);
		const onCapo = capoMark(capo);
		// A tuning cut to a letter or two says nothing; the mark does.
		if (width < LEAST_TUNING_CELL) return [slotAndMark];
		return [
			slotAndMark,
			span(` ${tuningThatFits(show, tuning, width - 5 - onCapo.length)}${onCapo}`, 'dim'),
		];
	});
	return inRows(PLACES.rack, cells, { across, width, columns }).slice(0, rows);
}
