// What goes with a card's tall letters, in words: the capo, the pack, and what to check before it leaves the rack.

import { displayWidth } from '../base/display-width.ts';
import { holderOf } from '../session/find.ts';
import { playerName, shownInstrument } from '../showfile/shown-names.ts';
import { backupFor } from '../words/backup-for.ts';
import { checkWords, takeWords } from '../words/stage.ts';
import { shortTuning } from '../words/tuning-names.ts';
import type { Card } from './cards.ts';
import { type Area, type Row, rowWidth, type Span, span, wrapWords } from './row.ts';
import type { ScreenState } from './screen-state.ts';

/**
 * Beside the tall letters, at most so many rows. What has to be done comes before the reason, which is cut
 * first: a backup's stands in the list of backups too.
 */
export function detailRows(state: ScreenState, card: Card, { columns, rows }: Area): Row[] {
	const { show } = state.session;
	const { instrument, kind, tuning, isCapoToDo } = card;
	const isStay = kind === 'stays';
	// What is said of a pack is wrapped before it is cut.
	const isLong = displayWidth(card.pack) > columns;
	const head = [
		...(instrument !== null && kind === 'break'
			? [span(takeWords(shownInstrument(show, instrument)))]
			: []),
		...(isStay && tuning !== null ? [span(shortTuning(show, tuning))] : []),
		// What is kept has its capo said as what is to be done with it.
		...(isStay && isCapoToDo ? [] : [capoSpan(card)]),
		...(card.pack === '' || isLong ? [] : [span(card.pack)]),
	];
	const first = flowed(head, columns).slice(0, rows);
	const words = [...(isLong ? [card.pack] : []), ...notes(state, card)].join('; ');
	return [...first, ...wrapParts(state, words, { columns, rows: rows - first.length })];
}

/** Under a card beside others, in as many rows as that takes: what has no place above. */
export function detailsBelow(
	state: ScreenState,
	card: Card,
	{
		columns,
		isNamed,
		hasCapo,
		off,
	}: {
		readonly columns: number;
		readonly isNamed: boolean;
		readonly hasCapo: boolean;
		/** That something comes off, where that has no row of its own. */
		readonly off?: string;
	},
): Row[] {
	const { instrument, capoWords, pack, kind } = card;
	const name = instrument === null ? '' : shownInstrument(state.session.show, instrument);
	// The heading of a break names what is broken.
	const isBreak = kind === 'break';
	const words = [
		...(name === '' || (isNamed && !isBreak) ? [] : [isBreak ? takeWords(name) : name]),
		...(hasCapo || capoWords === '' ? [] : [capoWords]),
		...(off === undefined ? [] : [off]),
		...(pack === '' ? [] : [pack]),
		...notes(state, card),
	].join('; ');
	const { length } = wrapWords(words, { columns, rows: MOST_ROWS });
	// The end of a row parts them as well: a semicolon there looks as if something were cut.
	return wrapParts(state, words, { columns, rows: length }).map((row) =>
		row.map((one) => ({ ...one, text: one.text.replace(/;$/, '') })),
	);
}

/** A space at which no line ends. */
const TOGETHER = '\u00A0';

/** More is never shown. */
const MOST_ROWS = 9;

function notes({ session }: ScreenState, card: Card): readonly string[] {
	const { show } = session;
	const holder = card.for === null ? null : holderOf(session, card.for);
	const elsewhere = holder === null || holder === card.player ? null : playerName(show, holder);
	return [
		...(card.for === null ? [] : [backupFor(show, card.for, elsewhere)]),
		...(card.offsets === '' ? [] : [card.offsets]),
		...(card.leave === null ? [] : [checkWords(card.leave)]),
		...(card.why === null || card.why === '' ? [] : [card.why]),
	];
}

/** Each part between semicolons, each instrument's slot and name and each capo, whole on a line where that takes no more of them than are allowed. */
function wrapParts(
	{ session: { show } }: ScreenState,
	words: string,
	{ columns, rows }: Area,
): Row[] {
	const names = show.instruments.map(({ id }) => shownInstrument(show, id));
	const text = names
		.reduce((all, name) => all.replaceAll(name, name.replaceAll(' ', TOGETHER)), words)
		.replaceAll(/CAPO (?=\d)/g, `CAPO${TOGETHER}`);
	const lines: string[] = [];
	for (const part of text.split(/(?<=;) /)) {
		const longer = `${lines.at(-1)} ${part}`;
		if (lines.length > 0 && displayWidth(longer) <= columns) lines[lines.length - 1] = longer;
		else lines.push(...wrapWords(part, { columns, rows: MOST_ROWS }));
	}
	const fits = lines.length <= rows ? lines : wrapWords(words, { columns, rows });
	return fits.map((line): Row => [span(line.replaceAll(TOGETHER, ' '))]);
}

/** A capo to be put on, moved or taken off is said louder than one that is right. */
export function capoSpan({ capoWords, isCapoToDo }: Card): Span {
	return span(capoWords, isCapoToDo ? 'bright' : 'plain');
}

/** The pieces one after the other, each whole, in rows of so many cells. */
function flowed(pieces: readonly Span[], columns: number): Row[] {
	const rows: Row[] = [];
	for (const piece of pieces.filter(({ text }) => text !== '')) {
		const last = rows.at(-1);
		const longer = last && [...last, span('  '), piece];
		if (longer && rowWidth(longer) <= columns) rows[rows.length - 1] = longer;
		else rows.push([piece]);
	}
	return rows;
}
