// Hand-overs a line each, for players whose hand-over is not in tall letters and above every list.

import type { Show } from '../showfile/show.ts';
import { shownInstrument } from '../showfile/shown-names.ts';
import { backupFor } from '../words/backup-for.ts';
import { capoWords } from '../words/capo-words.ts';
import { withoutAge } from '../words/instrument-state.ts';
import { capoLabel, checkWords, KEEPS, keepsLabel, NONE } from '../words/stage.ts';
import { shortTuning, tuningThatFits } from '../words/tuning-names.ts';
import { handOverColumns } from './hand-over-columns.ts';
import { playerLabel, slotLabel } from './named-in-show.ts';
import { type Area, cutRow, fillRow, placeAt, type Row, rowWidth, span } from './row.ts';
import type { ScreenState } from './screen-state.ts';
import { type Coming, readinessStyle } from './what-comes.ts';

/** Below this a line for a player has lost its tuning or when it is wanted. */
const LEAST_LINE_COLUMNS = 30;
/** Below this a line with columns has no place for name, tuning and readiness. */
const LEAST_WIDE_COLUMNS = 80;

export type LinesArea = Area & {
	/** What the first hand-over of all is for: only for that a check is worth a place where it is cut. */
	readonly soonest: string;
};

/** The hand-overs in so many rows, in as many columns as that takes. */
export function handOverLines(
	state: ScreenState,
	coming: readonly Coming[],
	{ columns, rows, soonest }: LinesArea,
): Row[] {
	if (rows < 1 || coming.length === 0) return [];
	const across = Math.ceil(coming.length / rows);
	// One player whole says more than all of them cut.
	if (across > 1 && columns / across < LEAST_LINE_COLUMNS) {
		const more = coming.length - rows;
		const rest = [span(` +${more}`, 'dim')];
		return coming
			.slice(0, rows)
			.map((one, index) =>
				index < rows - 1
					? shortLine(state, one, columns)
					: [...shortLine(state, one, columns - rowWidth(rest)), ...rest],
			);
	}
	const width = Math.floor(columns / across);
	const isWide = across === 1 && columns >= LEAST_WIDE_COLUMNS;
	const lines = coming.map((one) =>
		isWide
			? wideLine(state, one, { columns, isSoonest: one.forWhat === soonest })
			: shortLine(state, one, width),
	);
	return Array.from({ length: Math.ceil(lines.length / across) }, (_, row) =>
		lines
			.slice(row * across, row * across + across)
			.flatMap((one) => fillRow(cutRow(one, width - 1), width)),
	).map((row) => cutRow(row, columns));
}

/** What a player keeps, or that they have nothing, with what is to be said of it. */
export function keptWords(show: Show, coming: Coming): Row {
	const { forWhat, instrument, status } = coming;
	const what = instrument === null ? '' : ` ${shownInstrument(show, instrument)}`;
	const said = [...backup(show, coming), ...(status === '' ? [] : [status])].join(', ');
	return [span(`${forWhat}${what}  `, 'dim'), span(said)];
}

/** `backup for 1 Amber`, or nothing. */
function backup(show: Show, { for: named }: Coming): readonly string[] {
	return named === null ? [] : [backupFor(show, named)];
}

function wideLine(
	state: ScreenState,
	coming: Coming,
	{ columns, isSoonest }: { readonly columns: number; readonly isSoonest: boolean },
): Row {
	const { show } = state.session;
	const style = coming.isUrgent ? 'accent' : 'plain';
	const at = handOverColumns(columns, 1);
	const label = span(`${playerLabel(show, coming.player)} `, style);
	if (coming.kind === 'keeps') {
		return placeAt(columns, [
			[at.label, [label]],
			[at.when, keptWords(show, coming)],
		]);
	}
	if (coming.kind === 'missing') {
		return placeAt(columns, [
			[at.label, [label]],
			[at.when, [span(coming.when, style)]],
			[at.slot, [span(`${coming.forWhat}: ${coming.status}, ${coming.why ?? ''}`, style)]],
		]);
	}
	const named = coming.instrument === null ? NONE : shownInstrument(show, coming.instrument);
	if (coming.kind === 'stays') {
		const [, ...more] = coming.status.split(', ');
		const words = [keepsLabel(named), ...more, ...backup(show, coming)].join(', ');
		return placeAt(columns, [
			[at.label, [label]],
			[at.when, [span(coming.when, style)]],
			[at.slot, [span(words, style)]],
		]);
	}
	const { line } = at;
	const tuning =
		coming.tuning === null ? '' : tuningThatFits(show, coming.tuning, line.capo - line.tuning - 1);
	const ready = (...words: readonly string[]) =>
		span([...words, ...backup(show, coming)].join(', '), readinessStyle(coming));
	const check = coming.leave === null ? [] : [span(`  ${checkWords(coming.leave)}`, 'dim')];
	// The work stands in the list below: where not all fits, what to check needs its place more, and more
	// than how long it has been ready.
	const first = firstPart(coming.status);
	const short: Row = [ready(withoutAge(first)), ...check];
	// The last cell stays empty.
	const room = columns - 1 - line.status;
	const status = [[ready(coming.status), ...check], [ready(first), ...check], short].find(
		(one) => rowWidth(one) <= room,
	);
	const bare = coming.for === null ? coming.status : withoutAge(first);
	return placeAt(columns, [
		[at.label, [label]],
		[at.when, [span(coming.when, style)]],
		[at.slot, [span(named)]],
		[line.tuning, [span(tuning)]],
		[line.capo, [span(capoWords(coming.capo), coming.capo > 0 ? 'plain' : 'dim')]],
		[line.status, status ?? (isSoonest ? short : [ready(bare)])],
	]);
}

function firstPart(status: string): string {
	return status.split(', ')[0] ?? status;
}

function shortLine(state: ScreenState, coming: Coming, columns: number): Row {
	const { show } = state.session;
	const style = coming.isUrgent ? 'accent' : 'plain';
	const slot = coming.instrument === null ? NONE : slotLabel(show, coming.instrument);
	const tuning = coming.tuning === null ? '' : shortTuning(show, coming.tuning);
	const capo = coming.capo > 0 ? ` ${capoLabel(coming.capo)}` : '';
	const keeps = coming.kind === 'keeps' ? `${KEEPS} ` : '';
	const soon = coming.when.replace(/ +/g, ' ');
	const row = (status: string, when = soon): Row => [
		span(`${playerLabel(show, coming.player)} `, style),
		...(coming.kind === 'missing' || coming.kind === 'stays'
			? []
			: [
					span(`${keeps}${slot} `, coming.kind === 'keeps' ? 'dim' : style),
					span(coming.kind === 'keeps' ? '' : `${tuning}${capo} `),
				]),
		span(status === '' || when === '' ? status : `${status} `, readinessStyle(coming)),
		span(when, 'dim'),
	];
	const first = firstPart(coming.status);
	const bare = withoutAge(first);
	const whole = [coming.status, ...backup(show, coming)].join(', ');
	// Where not even that fits, ready or not is needed more than when.
	const rows = [row(whole), row(coming.status), row(first), row(bare), row(bare, '')];
	return cutRow(rows.find((one) => rowWidth(one) <= columns) ?? row(coming.status), columns);
}
