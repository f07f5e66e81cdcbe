// The coming hand-overs: the first ones in tall letters, the others a line each.

import { fitWidth } from '../base/display-width.ts';
import { slotAndName } from '../showfile/shown-names.ts';
import type { Coming } from './coming.ts';
import { instrumentOf, playerLabel, slotLabel } from './named-in-show.ts';
import { type Area, cutRow, fillRow, placeAt, type Row, rowWidth, span, wrapWords } from './row.ts';
import type { ScreenState } from './screen-state.ts';
import { firstThatFits, tallRows, tallWidth } from './tall-glyphs.ts';
import { capoWords, shortTuning, tuningNames, withSigns } from './tuning-words.ts';

export type HandOverArea = Area & {
	/** How many of the first ones are in tall letters, four rows each. */
	readonly tallBlocks: number;
	readonly isAscii: boolean;
};

const DETAIL_COLUMNS = 28;
const NARROW_DETAIL_COLUMNS = 18;
/** Below this a line for a player has lost its tuning or when it is wanted. */
const LEAST_LINE_COLUMNS = 30;
const TALL_LEFT = 1;
const TALL_TUNING = 8;

/** Exactly `rows` rows or fewer; never a player left out while there is a row for lines. */
export function handOverSection(
	state: ScreenState,
	coming: readonly Coming[],
	area: HandOverArea,
): Row[] {
	const tall = coming.slice(0, area.tallBlocks);
	const blocks = tall.flatMap((one) => tallBlock(state, one, area));
	const lines = area.rows - blocks.length;
	return [
		...blocks,
		...handOverLines(state, coming.slice(area.tallBlocks), { ...area, rows: lines }),
	];
}

function tallBlock(state: ScreenState, coming: Coming, area: HandOverArea): Row[] {
	const heading = headingRow(state, coming, area.columns);
	// Nothing to carry: the place stays, and stays dark.
	if (coming.kind === 'keeps') return [heading, [], [], []];
	return [heading, ...tallPart(state, coming, area)];
}

function headingRow(state: ScreenState, coming: Coming, columns: number): Row {
	const { show } = state.session;
	const calm = coming.isUrgent ? 'accent' : 'plain';
	const what =
		coming.kind === 'missing'
			? ''
			: coming.instrument === null
				? 'nothing in hands'
				: slotAndName(show, coming.instrument);
	const back =
		coming.givesBack === null || coming.kind === 'break'
			? []
			: [span(`  ${slotLabel(show, coming.givesBack)} back`, 'dim')];
	const status = statusRow(coming);
	const half = Math.max(Math.floor(columns * 0.5), 20);
	return placeAt(columns, [
		[
			0,
			[
				span(`${playerLabel(show, coming.player)}  `, coming.isUrgent ? 'accent' : 'bright'),
				span(
					coming.when === '' ? '' : `${fitWidth(coming.when, coming.kind === 'break' ? 13 : 9)} `,
					calm,
				),
				span(coming.forWhat, coming.kind === 'break' ? 'accent' : 'plain'),
			],
		],
		[half, columns >= 100 ? [span(what), ...back] : status],
		...(columns >= 100 ? [[Math.floor(columns * 0.7), status] as const] : []),
	]);
}

function statusRow(coming: Coming): Row {
	return [span(coming.status, coming.isUrgent ? 'accent' : 'plain')];
}

function tallPart(state: ScreenState, coming: Coming, { columns, isAscii }: HandOverArea): Row[] {
	const { show } = state.session;
	const style = coming.isUrgent ? 'accent' : 'plain';
	const slot = coming.instrument === null ? '-' : slotLetters(state, coming.instrument);
	const detailColumns = columns < 60 ? NARROW_DETAIL_COLUMNS : DETAIL_COLUMNS;
	const room = columns - TALL_TUNING - detailColumns - 2;
	const capo = coming.capo > 0 && columns >= 100 ? `capo ${coming.capo}` : '';
	const capoRoom = capo === '' ? 0 : tallWidth(capo) + 3;
	const names =
		coming.kind === 'missing'
			? ['nothing']
			: coming.tuning === null
				? ['empty']
				: tuningNames(show, coming.tuning).map(withSigns);
	const withCapo = firstThatFits(names, room - capoRoom);
	const name = withCapo ?? firstThatFits(names, room);
	const slotRows = tallRows(slot, coming.isUrgent ? 'accent' : 'bright', isAscii);
	const nameRows =
		name === null ? [[], [span(names[0] ?? '')], []] : tallRows(name, style, isAscii);
	const capoAt = TALL_TUNING + (name === null ? 0 : tallWidth(name)) + 3;
	const capoRows = capo !== '' && withCapo !== null ? tallRows(capo, style, isAscii) : [];
	const details = detailRows(state, coming, detailColumns);
	return [0, 1, 2].map((line) =>
		placeAt(columns, [
			[TALL_LEFT, slotRows[line] ?? []],
			[TALL_TUNING, nameRows[line] ?? []],
			...(capoRows.length > 0 ? [[capoAt, capoRows[line] ?? []] as const] : []),
			[columns - detailColumns, details[line] ?? []],
		]),
	);
}

/** The slot, or two letters of a name that has none: more would push the tuning out. */
function slotLetters(state: ScreenState, id: string): string {
	const instrument = instrumentOf(state.session.show, id);
	return instrument?.slot ?? '-';
}

function detailRows(state: ScreenState, coming: Coming, columns: number): Row[] {
	const { show } = state.session;
	const worn = state.session.players[coming.player]?.pack ?? null;
	const pack =
		coming.pack === null
			? ''
			: coming.pack === worn
				? `pack ${coming.pack}`
				: `PACK ${coming.pack}`;
	const capo = span(capoWords(coming.capo), coming.capo > 0 ? 'bright' : 'plain');
	const take = coming.kind === 'break' ? 'take ' : '';
	const name = coming.instrument === null ? '' : `${take}${slotAndName(show, coming.instrument)}`;
	const leave =
		coming.leave === null ? [] : wrapWords(`check ${coming.leave}`, { columns, rows: 1 });
	return [
		[span(name)],
		[capo, span(pack === '' ? '' : `  ${pack}`)],
		...leave.map((line) => [span(line)]),
	];
}

/** The hand-overs in so many rows, in as many columns as that takes. */
export function handOverLines(
	state: ScreenState,
	coming: readonly Coming[],
	{ columns, rows }: Area,
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
	const lines = coming.map((one) =>
		(across === 1 && columns >= 60 ? wideLine : shortLine)(state, one, width),
	);
	return Array.from({ length: Math.ceil(lines.length / across) }, (_, row) =>
		lines
			.slice(row * across, row * across + across)
			.flatMap((one) => fillRow(cutRow(one, width - 1), width)),
	).map((row) => cutRow(row, columns));
}

function wideLine(state: ScreenState, coming: Coming, columns: number): Row {
	const { show } = state.session;
	const style = coming.isUrgent ? 'accent' : 'plain';
	const label = span(`${playerLabel(show, coming.player)} `, style);
	if (coming.kind === 'keeps') {
		const keeps = coming.instrument === null ? '' : slotAndName(show, coming.instrument);
		return placeAt(columns, [
			[0, [label]],
			[10, [span(`${coming.forWhat} ${keeps}  `, 'dim'), span(coming.status)]],
		]);
	}
	if (coming.kind === 'missing') {
		return placeAt(columns, [
			[0, [label]],
			[10, [span(coming.when, style)]],
			[20, [span(`${coming.forWhat}: ${coming.status}`, style)]],
		]);
	}
	const slot =
		coming.instrument === null ? 'nothing' : `slot ${slotLabel(show, coming.instrument)}`;
	const tuning = coming.tuning === null ? '' : shortTuning(show, coming.tuning);
	const check = coming.leave === null ? [] : [span(`   check ${coming.leave}`, 'dim')];
	return placeAt(columns, [
		[0, [label]],
		[10, [span(coming.when, style)]],
		[20, [span(slot)]],
		[28, [span(tuning)]],
		[38, [span(capoWords(coming.capo), coming.capo > 0 ? 'plain' : 'dim')]],
		[
			47,
			[
				span(
					columns < 100 && coming.leave !== null ? firstPart(coming.status) : coming.status,
					style,
				),
				...check,
				span(columns < 100 ? '' : `   ${coming.forWhat}`, 'dim'),
			],
		],
	]);
}

/** Ready or not without the work, which stands in the list below: the check needs its place more. */
function firstPart(status: string): string {
	return status.split(', ')[0] ?? status;
}

function shortLine(state: ScreenState, coming: Coming, columns: number): Row {
	const { show } = state.session;
	const style = coming.isUrgent ? 'accent' : 'plain';
	const slot = coming.instrument === null ? 'none' : slotLabel(show, coming.instrument);
	const tuning = coming.tuning === null ? '' : shortTuning(show, coming.tuning);
	const capo = coming.capo > 0 ? ` CAPO ${coming.capo}` : '';
	const keeps = coming.kind === 'keeps' ? 'keeps ' : '';
	const row = (status: string, when = coming.when): Row => [
		span(`${playerLabel(show, coming.player)} `, style),
		...(coming.kind === 'missing'
			? []
			: [
					span(`${keeps}${slot} `, coming.kind === 'keeps' ? 'dim' : style),
					span(coming.kind === 'keeps' ? '' : `${tuning}${capo} `),
				]),
		span(status === '' || when === '' ? status : `${status} `, style),
		span(when, 'dim'),
	];
	const first = firstPart(coming.status);
	const bare = first.replace(/ \d.*$/, '');
	// Where not even that fits, ready or not is needed more than when.
	const rows = [row(coming.status), row(first), row(bare), row(bare, '')];
	return cutRow(rows.find((one) => rowWidth(one) <= columns) ?? row(coming.status), columns);
}
