// A card beside others: slot and tuning in tall letters with the mark, and under them what goes with it.

import { displayWidth } from '../base/display-width.ts';
import { shownInstrument } from '../showfile/shown-names.ts';
import { hasItThen } from '../words/stage.ts';
import { shortTuning } from '../words/tuning-names.ts';
import { MARK_COLUMNS } from './card-columns.ts';
import { capoSpan, detailsBelow } from './card-details.ts';
import { offRow } from './card-off.ts';
import { tallNames, tallWords } from './card-words.ts';
import type { Card } from './cards.ts';
import { instrumentOf } from './named-in-show.ts';
import { cutRow, fillRows, placeAt, type Row, rowWidth, span } from './row.ts';
import type { ScreenState } from './screen-state.ts';
import { condensedWidth, firstCondensed, tallRows, tallWidth } from './tall-glyphs.ts';
import { readinessStyle, statusTexts } from './what-comes.ts';
import type { CardArea } from './wide-card.ts';

/** From the slot to the tuning: the widest letter and two cells. */
const SLOT_COLUMNS = 7;

/** Two letters of a tuning beside the slot and the mark. */
export const LEAST_CARD_COLUMNS = 26;

/** The least rows of one: a heading, the tall letters, ready or not, what comes off, what to check. */
export function narrowCardRows(scale: 1 | 2): number {
	return 4 + 3 * scale;
}

/** Exactly so many rows. What comes off stands on the rack too, and gives way to what is to be checked. */
export function narrowCard(
	state: ScreenState,
	card: Card,
	{ rows, ...area }: CardArea & { readonly rows: number },
): Row[] {
	const { columns } = area;
	const { heading, isNamed } = headingOf(state, card, columns);
	const { row, hasCapo } = keptOf(state, card) ?? statusOf(card, columns);
	const head = [heading, ...tallPart(state, card, area), row];
	const below = { columns, isNamed, hasCapo };
	const details = detailsBelow(state, card, below);
	const left = rows - head.length - details.length;
	if (card.off === null || left > 0) {
		const off = card.off === null ? [] : [offRow(state, card, columns)];
		return fillRows([...head, ...off, ...details], rows);
	}
	// Its name gives way first, then where it goes, not that it comes off.
	const { label, words, short, least } = card.off;
	const withOff = [words, short, least].map((text) =>
		detailsBelow(state, card, { ...below, off: `${label}${text}` }),
	);
	const most = rows - head.length;
	const fits = withOff.find((one) => one.length <= most) ?? withOff.at(-1) ?? [];
	return fillRows([...head, ...fits], rows);
}

/** The player, what they get, how long until then; the name gives way first. */
function headingOf({ session: { show } }: ScreenState, card: Card, columns: number) {
	const { instrument, kind, forWhat, isUrgent, label, when } = card;
	const name =
		kind === 'break' || instrument === null ? forWhat : shownInstrument(show, instrument);
	const at = columns - when.length;
	const isNamed = displayWidth(label) + 1 + displayWidth(name) < at;
	const words = span(isNamed ? ` ${name}` : '', isUrgent ? 'accent' : 'plain');
	const heading = placeAt(columns, [
		[0, [span(label, isUrgent ? 'accent' : 'bright'), words]],
		[at, [span(when, words.style)]],
	]);
	return { heading, isNamed };
}

function tallPart(state: ScreenState, card: Card, { columns, scale, isAscii }: CardArea): Row[] {
	const style = card.isUrgent ? 'accent' : 'plain';
	const slot = card.instrument === null ? null : instrumentOf(state.session.show, card.instrument);
	const at = 1 + (slot?.slot == null ? 0 : SLOT_COLUMNS * scale);
	const room = (end: number) => Math.floor((end - at) / scale);
	const markAt = columns - MARK_COLUMNS * scale;
	const how = { isCapoFirst: false };
	// The shortest name is worth more than the mark, which is said in words too.
	const beside = tallWords(state, card, { room: room(markAt - 1), ...how });
	const alone = tallWords(state, card, { room: room(columns), ...how });
	const condensed = (end: number) => {
		const fits = beside.name !== '' || alone.name !== '' || isAscii;
		return fits ? null : firstCondensed(tallNames(state, card), room(end));
	};
	const narrow = condensed(markAt - 1) ?? condensed(columns);
	const hasMark =
		card.mark !== null &&
		(narrow === null
			? beside.name !== '' || alone.name === ''
			: condensedWidth(narrow) <= room(markAt - 1));
	const { name, capo, plain } =
		narrow === null ? (hasMark ? beside : alone) : { name: narrow, capo: '', plain: '' };
	const tall = (text: string) =>
		tallRows(text, { style, scale, isAscii, isCondensed: narrow !== null });
	const slotRows = tallRows(slot?.slot ?? '', {
		style: style === 'plain' ? 'bright' : style,
		scale,
		isAscii,
	});
	const words = capo === '' ? name : `${name} ${capo}`;
	const nameRows = words === '' ? [[], [span(plain)], []] : tall(words);
	const markRows =
		hasMark && card.mark !== null
			? tallRows(card.mark, { style: readinessStyle(card), scale, isAscii })
			: null;
	const rightAt = columns - tallWidth(card.mark ?? '') * scale;
	return Array.from({ length: 3 * scale }, (_, line) =>
		placeAt(columns, [
			[1, slotRows[line] ?? []],
			[at, nameRows[line] ?? []],
			...(markRows === null ? [] : [[Math.max(markAt, rightAt), markRows[line] ?? []] as const]),
		]),
	);
}

/** What is kept as it is: that it is kept is in tall letters already, and what it is in nowhere else; null for all else. */
function keptOf({ session: { show } }: ScreenState, { kind, tuning, isCapoToDo, capoWords }: Card) {
	if (kind !== 'stays' || tuning === null || isCapoToDo) return null;
	return { row: [span(`${shortTuning(show, tuning)}  ${capoWords}`)], hasCapo: true };
}

/**
 * Ready or not, with the capo before it where both are whole. Where they are not, a capo to be moved comes before how
 * long it has been ready, and one that is right is said below.
 */
function statusOf(card: Card, columns: number): { readonly row: Row; readonly hasCapo: boolean } {
	const capo = capoSpan(card);
	const ready = statusTexts(card).map((words): Row => [span(words, readinessStyle(card))]);
	// Work that moves the capo says so already.
	const says = (row: Row) => capo.text !== '' && row.some(({ text }) => text.includes(capo.text));
	if (capo.text !== '' && card.kind !== 'stays' && !ready.some(says)) {
		// It is moved once it is there.
		const fetched = card.isCapoToDo ? hasItThen(card.status, capo.text) : null;
		if (fetched !== null && displayWidth(fetched) <= columns) {
			return { row: [span(fetched, readinessStyle(card))], hasCapo: true };
		}
		const both = ready.find((row) => rowWidth(row) + capo.text.length + 2 <= columns);
		if (both) return { row: [capo, span('  '), ...both], hasCapo: true };
	}
	const row = ready.find((one) => rowWidth(one) <= columns) ?? cutRow(ready.at(-1) ?? [], columns);
	return { row, hasCapo: card.kind === 'stays' || says(row) };
}
