// One hand-over in tall letters: slot, tuning, capo and ready or not are read at two metres; what goes
// with them stands beside in words.

import { graphemes } from '../base/display-width.ts';
import { shownInstrument } from '../showfile/shown-names.ts';
import { capoAct } from '../words/capo-words.ts';
import { TALL, tallCapo, tallCapoMove } from '../words/stage.ts';
import { tuningNames, withSigns } from '../words/tuning-names.ts';
import {
	ALL_TALL_COLUMNS,
	type HandOverColumns,
	handOverColumns,
	TALL_NAME_COLUMNS,
} from './hand-over-columns.ts';
import { detailRows } from './hand-over-details.ts';
import { keptWords } from './hand-over-lines.ts';
import { instrumentOf, playerLabel } from './named-in-show.ts';
import { placeAt, type Row, type SpanStyle, span } from './row.ts';
import type { ScreenState } from './screen-state.ts';
import { firstThatFits, hasTallLetter, tallRows, tallWidth } from './tall-glyphs.ts';
import { type Coming, readinessStyle } from './what-comes.ts';

export type BlockArea = {
	readonly columns: number;
	readonly scale: 1 | 2;
	readonly isAscii: boolean;
	/** It comes after another one: in its place, but less bright. */
	readonly isLater: boolean;
};

/** Further left than this, ready or not needs the place more than the name and the song. */
const LEAST_STATUS_AT = 29;

type Drawn = BlockArea & { readonly at: HandOverColumns; readonly style: SpanStyle };

/** The rows of one block: a heading and the tall letters. */
export function blockRows(scale: 1 | 2): number {
	return 1 + 3 * scale;
}

/** Exactly `blockRows` rows; for who keeps what they have all but the heading stay dark. */
export function handOverBlock(state: ScreenState, coming: Coming, area: BlockArea): Row[] {
	const at = handOverColumns(area.columns, area.scale);
	const style = coming.isUrgent ? 'accent' : area.isLater ? 'dim' : 'plain';
	const drawn: Drawn = { ...area, at, style };
	const rows = blockRows(area.scale) - 1;
	if (coming.kind === 'keeps') {
		return [keepsRow(state, coming, drawn), ...Array.from({ length: rows }, (): Row => [])];
	}
	const isWide = area.columns >= ALL_TALL_COLUMNS;
	const details = detailRows(state, coming, {
		columns: area.columns - at.details,
		rows: isWide ? rows + 1 : rows,
		isNamed: at.status >= LEAST_STATUS_AT && coming.kind !== 'break',
		style: area.isLater ? 'dim' : 'plain',
	});
	const [beside = [], ...below] = isWide ? details : [[], ...details];
	return [
		headingRow(state, coming, { ...drawn, beside }),
		...tallPart(state, coming, { ...drawn, below }),
	];
}

function label({ session: { show } }: ScreenState, { player, isUrgent }: Coming, isLater: boolean) {
	return span(playerLabel(show, player), isUrgent ? 'accent' : isLater ? 'plain' : 'bright');
}

function keepsRow(state: ScreenState, coming: Coming, { at, columns }: Drawn): Row {
	return placeAt(columns, [
		[at.label, [label(state, coming, true)]],
		[at.when, keptWords(state.session.show, coming)],
	]);
}

function headingRow(
	state: ScreenState,
	coming: Coming,
	drawn: Drawn & { readonly beside: Row },
): Row {
	const { at, columns, isLater, beside } = drawn;
	const { show } = state.session;
	const style = coming.isUrgent ? 'accent' : 'plain';
	const { kind, instrument, forWhat } = coming;
	const name = kind === 'break' || instrument === null ? '' : shownInstrument(show, instrument);
	const words = name === '' ? forWhat : `${name} ${forWhat}`;
	return placeAt(columns, [
		[at.label, [label(state, coming, isLater)]],
		[at.when, [span(coming.when, style)]],
		...(at.status < LEAST_STATUS_AT ? [] : [[at.slot, [span(words, style)]] as const]),
		[Math.max(at.status, at.slot), [span(coming.status, readinessStyle(coming))]],
		...(columns < ALL_TALL_COLUMNS ? [] : [[at.details, beside] as const]),
	]);
}

function tallPart(
	state: ScreenState,
	coming: Coming,
	drawn: Drawn & { readonly below: readonly Row[] },
): Row[] {
	const { columns, at, style, scale, isAscii, isLater, below } = drawn;
	const tall = (text: string, as: SpanStyle) => tallRows(text, { style: as, scale, isAscii });
	const slot =
		coming.instrument === null ? null : instrumentOf(state.session.show, coming.instrument);
	const slotRows = tall(slot?.slot ?? '', style === 'plain' ? 'bright' : style);
	const { name, capo, plain } = tallWords(state, coming, drawn);
	const nameRows = name === '' ? [[], [span(plain)], []] : tall(name, style);
	const capoAt = at.tallTuning + (tallWidth(name) + 3) * scale;
	const capoRows = capo === '' ? null : tall(capo, style);
	const player = playerRows(state, coming, drawn);
	const hasMark = coming.mark !== null && at.mark > capoAt - 3 * scale;
	const markRows = hasMark ? tall(coming.mark, isLater ? style : readinessStyle(coming)) : null;
	return Array.from({ length: 3 * scale }, (_, line) =>
		placeAt(columns, [
			...(at.tallPlayer === null ? [] : [[at.tallPlayer, player[line] ?? []] as const]),
			[at.tallSlot, slotRows[line] ?? []],
			[at.tallTuning, nameRows[line] ?? []],
			...(capoRows === null ? [] : [[capoAt, capoRows[line] ?? []] as const]),
			...(markRows === null ? [] : [[at.mark, markRows[line] ?? []] as const]),
			[at.details, below[line] ?? []],
		]),
	);
}

/** As much of the name as there is room for; nothing of one in letters that the face lacks. */
function playerRows(
	{ session: { show } }: ScreenState,
	{ player }: Coming,
	{ style, isAscii }: Drawn,
): readonly Row[] {
	const letters = graphemes(playerLabel(show, player));
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

type TallWords = {
	/** Empty where no name fits: then `plain` is said in small letters. */
	readonly name: string;
	readonly capo: string;
	readonly plain: string;
};

/** The longest names that leave room for the capo; in a narrow window the capo gives way to the tuning. */
function tallWords(state: ScreenState, coming: Coming, { at, columns, scale }: Drawn): TallWords {
	const act = tallActs(state, coming);
	const plain = act === null ? (coming.tuning?.name ?? '') : '';
	// Where there is no mark, its place is for words.
	const end = coming.mark === null ? at.details : at.mark;
	const room = Math.floor((end - at.tallTuning) / scale) - 1;
	const names =
		act?.names ??
		(coming.tuning === null
			? [TALL.nothing]
			: tuningNames(state.session.show, coming.tuning).map(withSigns));
	const alone = firstThatFits(names, room) ?? '';
	const capos = act?.capos ?? (coming.capo === 0 ? [] : [tallCapo(coming.capo)]);
	const [capo] = capos;
	if (capo === undefined) return { name: alone, capo: '', plain };
	const beside = firstThatFits(names, room - tallWidth(capo) - 3);
	if (beside !== null) return { name: beside, capo, plain };
	// Of two acts it is the capo that has to be done.
	if (act !== null) return { name: firstThatFits(capos, room) ?? alone, capo: '', plain };
	return columns >= ALL_TALL_COLUMNS ? { name: '', capo, plain } : { name: alone, capo: '', plain };
}

type TallActs = {
	readonly names: readonly string[];
	/** What is to be done with the capo, longest first. */
	readonly capos: readonly string[];
};

/** What is said in place of a tuning where nothing is handed over; null where something is. */
function tallActs({ session }: ScreenState, coming: Coming): TallActs | null {
	const { kind, instrument, capo } = coming;
	if (kind === 'missing') return { names: TALL.noBackup, capos: [] };
	if (kind === 'break' && instrument === null) return { names: [TALL.playOn], capos: [] };
	if (kind !== 'stays' || instrument === null) return null;
	const isMoved = session.instruments[instrument]?.context.capo !== capo;
	if (!isMoved) return { names: [TALL.keeps], capos: capo > 0 ? [tallCapo(capo)] : [] };
	return { names: [TALL.keeps], capos: [capoAct(capo), tallCapoMove(capo)] };
}
