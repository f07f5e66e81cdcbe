// One hand-over in tall letters: slot, tuning, capo and ready or not are read at two metres; what goes
// with them stands beside in words.

import { instrumentName } from '../showfile/shown-names.ts';
import type { Coming } from './coming.ts';
import { ALL_TALL_COLUMNS, type HandOverColumns, handOverColumns } from './hand-over-columns.ts';
import { keptWords } from './hand-over-lines.ts';
import { instrumentOf, playerLabel, slotLabel } from './named-in-show.ts';
import { cutRow, placeAt, type Row, rowWidth, type SpanStyle, span, wrapWords } from './row.ts';
import type { ScreenState } from './screen-state.ts';
import { firstThatFits, tallRows, tallWidth } from './tall-glyphs.ts';
import { capoWords, tuningNames, withSigns } from './tuning-words.ts';

export type BlockArea = {
	readonly columns: number;
	readonly scale: 1 | 2;
	readonly isAscii: boolean;
	/** It comes after another one: in its place, but less bright. */
	readonly isLater: boolean;
};

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
	return [headingRow(state, coming, drawn), ...tallPart(state, coming, drawn)];
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

function headingRow(state: ScreenState, coming: Coming, { at, columns, isLater }: Drawn): Row {
	const { show } = state.session;
	const style = coming.isUrgent ? 'accent' : 'plain';
	const isBreak = coming.kind === 'break';
	const slot =
		isBreak || coming.instrument === null ? '' : `slot ${slotLabel(show, coming.instrument)}`;
	const forWhat = [span(coming.forWhat, style)];
	const names = [
		takeWords(state, coming),
		coming.givesBack === null || isBreak ? '' : `${slotLabel(show, coming.givesBack)} back`,
	].filter((one) => one !== '');
	return placeAt(columns, [
		[at.label, [label(state, coming, isLater)]],
		[at.when, [span(coming.when, style)]],
		// In a narrow window ready or not needs the place more than the song.
		...(at.status <= at.what
			? []
			: isBreak
				? [[at.slot + 4, forWhat] as const]
				: ([
						[at.slot, [span(slot, style)]],
						[at.what, forWhat],
					] as const)),
		[Math.max(at.status, at.slot), [span(coming.status, style)]],
		...(columns < ALL_TALL_COLUMNS ? [] : [[at.details, [span(names.join(', '))]] as const]),
	]);
}

/** The name of what is to be taken from the rack. */
function takeWords({ session: { show } }: ScreenState, { kind, instrument }: Coming): string {
	if (instrument === null) return '';
	const name = instrumentName(show, instrument);
	return kind === 'break' ? `TAKE ${slotLabel(show, instrument)} ${name}` : name;
}

function tallPart(state: ScreenState, coming: Coming, drawn: Drawn): Row[] {
	const { columns, at, style, scale, isAscii, isLater } = drawn;
	const tall = (text: string, as: SpanStyle) => tallRows(text, { style: as, scale, isAscii });
	const slot =
		coming.instrument === null ? null : instrumentOf(state.session.show, coming.instrument);
	const slotRows = tall(slot?.slot ?? '', style === 'plain' ? 'bright' : style);
	const { name, capo, plain } = tallWords(state, coming, drawn);
	const nameRows = name === '' ? [[], [span(plain)], []] : tall(name, style);
	const capoAt = at.tuning + (tallWidth(name) + 3) * scale;
	const details = detailRows(state, coming, drawn);
	const hasMark = coming.mark !== null && at.mark > capoAt - 3 * scale;
	return Array.from({ length: 3 * scale }, (_, line) =>
		placeAt(columns, [
			[1, slotRows[line] ?? []],
			[at.tuning, nameRows[line] ?? []],
			...(capo === '' ? [] : [[capoAt, tall(capo, style)[line] ?? []] as const]),
			...(hasMark
				? [[at.mark, tall(coming.mark ?? '', isLater ? style : 'plain')[line] ?? []] as const]
				: []),
			[at.details, details[line] ?? []],
		]),
	);
}

type TallWords = {
	/** Empty where no name fits: then `plain` is said in small letters. */
	readonly name: string;
	readonly capo: string;
	readonly plain: string;
};

/** The longest names that leave room for the capo; in a narrow window the capo gives way to the tuning. */
function tallWords(state: ScreenState, coming: Coming, { at, columns, scale }: Drawn): TallWords {
	const names =
		coming.kind === 'missing'
			? ['nothing']
			: coming.tuning === null
				? ['empty']
				: tuningNames(state.session.show, coming.tuning).map(withSigns);
	const plain = coming.tuning?.name ?? '';
	const room = Math.floor((at.mark - at.tuning) / scale) - 1;
	const alone = firstThatFits(names, room) ?? '';
	if (coming.capo === 0 || coming.kind === 'missing') return { name: alone, capo: '', plain };
	const capo = `capo ${coming.capo}`;
	const beside = firstThatFits(names, room - tallWidth(capo) - 3);
	if (beside !== null) return { name: beside, capo, plain };
	return columns >= ALL_TALL_COLUMNS ? { name: '', capo, plain } : { name: alone, capo: '', plain };
}

function detailRows(state: ScreenState, coming: Coming, drawn: Drawn): Row[] {
	const { at, columns, scale, isLater } = drawn;
	const width = columns - at.details;
	const calm = isLater ? 'dim' : 'plain';
	const worn = state.session.players[coming.player]?.pack ?? null;
	const pack =
		coming.pack === null
			? ''
			: coming.pack === worn
				? `pack ${coming.pack}`
				: `PACK ${coming.pack}`;
	const capo = coming.instrument === null ? [] : [capoSpan(state, coming)];
	// Where the heading has no room for the name it stands here.
	const name = columns < ALL_TALL_COLUMNS ? [span(`${takeWords(state, coming)}  `, calm)] : [];
	const named = [...cutRow(name, Math.max(0, width - rowWidth(capo) - 1)), ...capo];
	const hasPack = rowWidth(named) + pack.length + 2 <= width;
	const first: Row = hasPack ? [...named, span(`  ${pack}`, calm)] : named;
	const more = [
		...(coming.why === null ? [] : [coming.why]),
		...(hasPack || pack === '' ? [] : [pack]),
		...(coming.leave === null ? [] : [`check ${coming.leave}`]),
	];
	const lines = wrapWords(more.join('; '), { columns: width, rows: 3 * scale - 1 });
	const rows = lines.map((line): Row => [span(line, calm)]);
	return coming.instrument === null ? rows : [first, ...rows];
}

/** A capo to put on, or one that sits there and is not wanted, is said louder than none. */
function capoSpan({ session }: ScreenState, { instrument, capo }: Coming) {
	const on = instrument === null ? 0 : (session.instruments[instrument]?.context.capo ?? 0);
	if (capo === 0 && on > 0) return span('CAPO OFF', 'bright');
	return span(capoWords(capo), capo > 0 ? 'bright' : 'plain');
}
