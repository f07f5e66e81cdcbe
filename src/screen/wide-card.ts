// A card as wide as the screen: slot, tuning, capo and ready or not are read at two metres; what goes with them
// stands beside in words, and below what comes off.

import { displayWidth, graphemes } from '../base/display-width.ts';
import { shownInstrument } from '../showfile/shown-names.ts';
import {
	ALL_TALL_COLUMNS,
	type CardColumns,
	cardColumns,
	TALL_NAME_COLUMNS,
} from './card-columns.ts';
import { detailRows } from './card-details.ts';
import { offRow } from './card-off.ts';
import { TALL_GAP, tallWords } from './card-words.ts';
import type { Card } from './cards.ts';
import { instrumentOf } from './named-in-show.ts';
import { placeAt, type Row, type SpanStyle, span } from './row.ts';
import type { ScreenState } from './screen-state.ts';
import { hasTallLetter, tallRows, tallWidth } from './tall-glyphs.ts';
import { readinessStyle, statusTexts } from './what-comes.ts';

export type CardArea = {
	readonly columns: number;
	readonly scale: 1 | 2;
	readonly isAscii: boolean;
};

/** Further left than this, ready or not needs the place more than the name and the song. */
const LEAST_STATUS_AT = 29;

type Drawn = CardArea & { readonly at: CardColumns; readonly style: SpanStyle };

/** The rows of one: a heading, the tall letters, what comes off. */
export function wideCardRows(scale: 1 | 2): number {
	return 2 + 3 * scale;
}

/** Exactly `wideCardRows` rows. */
export function wideCard(state: ScreenState, card: Card, area: CardArea): Row[] {
	const { columns, scale } = area;
	const at = cardColumns(columns, scale);
	const drawn: Drawn = { ...area, at, style: card.isUrgent ? 'accent' : 'plain' };
	const rows = 3 * scale;
	// A wide screen has room for them from the heading on.
	const isWide = columns >= ALL_TALL_COLUMNS;
	const details = detailRows(state, card, {
		columns: columns - at.details,
		rows: isWide ? rows + 1 : rows,
	});
	const [beside = [], ...below] = isWide ? details : [[], ...details];
	return [
		headingRow(state, card, { ...drawn, beside }),
		...tallPart(state, card, { ...drawn, below }),
		offRow(state, card, columns),
	];
}

function headingRow(
	state: ScreenState,
	card: Card,
	{ at, columns, style, beside }: Drawn & { readonly beside: Row },
): Row {
	const { kind, instrument, forWhat, forTitle = forWhat } = card;
	const name =
		kind === 'break' || instrument === null ? '' : shownInstrument(state.session.show, instrument);
	const statusAt = Math.max(at.status, at.name);
	// The song's number is on its own row, too.
	const [whole = '', short = ''] = [forWhat, forTitle].map((words) =>
		`${name} ${words}`.trimStart(),
	);
	const words = displayWidth(whole) < statusAt - at.name ? whole : short;
	const room = (columns < ALL_TALL_COLUMNS ? columns : at.details - 1) - statusAt;
	const texts = statusTexts(card);
	const status = texts.find((text) => displayWidth(text) <= room) ?? texts.at(-1) ?? '';
	return placeAt(columns, [
		[0, [span(card.label, card.isUrgent ? 'accent' : 'bright')]],
		[at.when, [span(card.when, style)]],
		...(at.status < LEAST_STATUS_AT ? [] : [[at.name, [span(words, style)]] as const]),
		[statusAt, [span(status, readinessStyle(card))]],
		...(columns < ALL_TALL_COLUMNS ? [] : [[at.details, beside] as const]),
	]);
}

function tallPart(
	state: ScreenState,
	card: Card,
	drawn: Drawn & { readonly below: readonly Row[] },
): Row[] {
	const { columns, at, style, scale, isAscii, below } = drawn;
	const tall = (text: string, as: SpanStyle) => tallRows(text, { style: as, scale, isAscii });
	const slot = card.instrument === null ? null : instrumentOf(state.session.show, card.instrument);
	const slotRows = tall(slot?.slot ?? '', style === 'plain' ? 'bright' : style);
	// Where there is no mark, its place is for words.
	const end = card.mark === null ? at.details : at.mark;
	// So is that of the slot where there is none.
	const nameAt = card.instrument === null ? at.tallSlot : at.tallTuning;
	const { name, capo, plain } = tallWords(state, card, {
		room: Math.floor((end - nameAt) / scale) - 1,
		isCapoFirst: columns >= ALL_TALL_COLUMNS,
	});
	const nameRows = name === '' ? [[], [span(plain)], []] : tall(name, style);
	const capoAt = nameAt + (tallWidth(name) + TALL_GAP) * scale;
	const capoRows = capo === '' ? null : tall(capo, style);
	const player = playerRows(card, drawn);
	const hasMark = card.mark !== null && at.mark > capoAt - TALL_GAP * scale;
	const markRows = hasMark ? tall(card.mark, readinessStyle(card)) : null;
	return Array.from({ length: 3 * scale }, (_, line) =>
		placeAt(columns, [
			...(at.tallPlayer === null ? [] : [[at.tallPlayer, player[line] ?? []] as const]),
			[at.tallSlot, slotRows[line] ?? []],
			[nameAt, nameRows[line] ?? []],
			...(capoRows === null ? [] : [[capoAt, capoRows[line] ?? []] as const]),
			...(markRows === null ? [] : [[at.mark, markRows[line] ?? []] as const]),
			[at.details, below[line] ?? []],
		]),
	);
}

/** As much of the name as there is room for; nothing of one in letters that the face lacks. */
function playerRows({ label }: Card, { style, isAscii }: Drawn): readonly Row[] {
	const letters = graphemes(label);
	const length = letters.findLastIndex(
		(_, index) => tallWidth(letters.slice(0, index + 1).join('')) <= TALL_NAME_COLUMNS,
	);
	const name = letters.slice(0, length + 1);
	if (!name.every(hasTallLetter)) return [];
	return tallRows(name.join(''), {
		style: style === 'plain' ? 'bright' : style,
		scale: 1,
		isAscii,
	});
}
