// Hand-overs a line each: those without a card, and above every list.

import { shownInstrument } from '../showfile/shown-names.ts';
import { backupFor } from '../words/backup-for.ts';
import { capoAct } from '../words/capo-words.ts';
import { withoutAge } from '../words/instrument-state.ts';
import {
	capoLabel,
	checkWords,
	HANDS_EMPTY,
	HAS,
	HAS_NOTHING,
	KEEPS,
	keepsLabel,
	NO_CAPO,
	NOTHING_TO_COME,
	wrongLabel,
} from '../words/stage.ts';
import { shortTuning } from '../words/tuning-names.ts';
import { offOf } from './card-off.ts';
import { type Card, type Cards, cardOf } from './cards.ts';
import { playerLabel, slotLabel } from './named-in-show.ts';
import { type Area, cutRow, fillRow, type Row, rowWidth, span } from './row.ts';
import type { ScreenState } from './screen-state.ts';
import { type Coming, readinessStyle } from './what-comes.ts';
import { workNow } from './work-words.ts';

/** Below this a line for a player has lost its tuning or when it is wanted. */
const LEAST_LINE_COLUMNS = 30;
const LABEL_COLUMNS = 10;

type Drawn = { readonly row: (columns: number) => Row };

/** The fewest rows in which so many players have a line each. */
export function leastLines(count: number, columns: number): number {
	return Math.ceil(count / Math.max(1, Math.floor(columns / LEAST_LINE_COLUMNS)));
}

/** What is handed now, and below it who keeps what and until when, in so many rows; in as many columns as that takes. */
export function handOverLines(
	state: ScreenState,
	{ now, rest }: Cards,
	{ columns, rows, hasDetails = false }: Area & { readonly hasDetails?: boolean },
): Row[] {
	const given = now.map((card): Drawn => ({ row: (room) => cardLine(state, card, room) }));
	const kept = rest.map((coming): Drawn => ({ row: (room) => restLine(state, coming, room) }));
	const forKept = leastLines(kept.length, columns);
	if (rows < leastLines(given.length, columns) + forKept) {
		return inLines([...given, ...kept], { columns, rows });
	}
	const forGiven = Math.min(given.length, rows - forKept);
	const forRest = rows - forGiven;
	const work = hasDetails && forRest >= 2 * rest.length ? workNow(state) : null;
	return [
		...inLines(given, { columns, rows: forGiven }),
		...(work === null
			? inLines(kept, { columns, rows: forRest })
			: rest.flatMap((one) => [
					restLine(state, one, columns),
					...detailLine(cardOf(state, one, work), columns),
				])),
	];
}

/** Under the line of somebody who gets something later, where there is room: for which song, and what goes with it. */
function detailLine({ kind, forWhat, off, pack, offsets, leave }: Card, columns: number): Row[] {
	// Of what cannot be had the line above says for which song already.
	if (kind === 'keeps' || kind === 'missing') return [];
	const words = [
		forWhat,
		...(pack === '' ? [] : [pack]),
		...(offsets === '' ? [] : [offsets]),
		...(leave === null ? [] : [checkWords(leave)]),
		...(off === null ? [] : [`${off.label}${off.words}`]),
	].join('; ');
	return [cutRow([span(' '.repeat(LABEL_COLUMNS)), span(words, 'dim')], columns)];
}

/** Only the first of them, with how many more there are. */
export function firstLine(state: ScreenState, { now, rest }: Cards, columns: number): Row[] {
	const [card] = now;
	const [coming] = rest;
	const more = [span(now.length > 1 ? ` +${now.length - 1}` : '', 'dim')];
	if (card) return [[...cardLine(state, card, columns - rowWidth(more)), ...more]];
	return coming ? [restLine(state, coming, columns)] : [];
}

function inLines(drawn: readonly Drawn[], { columns, rows }: Area): Row[] {
	if (rows < 1 || drawn.length === 0) return [];
	const across = Math.ceil(drawn.length / rows);
	// One player whole says more than all of them cut.
	if (across > 1 && columns / across < LEAST_LINE_COLUMNS) {
		const rest = [span(` +${drawn.length - rows}`, 'dim')];
		return drawn
			.slice(0, rows)
			.map(({ row }, index) =>
				index < rows - 1 ? row(columns) : [...row(columns - rowWidth(rest)), ...rest],
			);
	}
	const width = Math.floor(columns / across);
	const lines = drawn.map(({ row }) => row(across === 1 ? columns : width - 1));
	return Array.from({ length: Math.ceil(lines.length / across) }, (_, row) =>
		cutRow(
			lines.slice(row * across, row * across + across).flatMap((one) => fillRow(one, width)),
			columns,
		),
	);
}

/** The first of these that fits, else the last, cut. */
function fitting(rows: readonly Row[], columns: number): Row {
	return rows.find((row) => rowWidth(row) <= columns) ?? cutRow(rows.at(-1) ?? [], columns);
}

/** The player's name in its own cells where there is room for them. */
function labelled(state: ScreenState, { player, isUrgent }: Coming, columns: number) {
	const name = playerLabel(state.session.show, player);
	const isWide = columns >= 2 * LEAST_LINE_COLUMNS && name.length < LABEL_COLUMNS;
	return span(isWide ? name.padEnd(LABEL_COLUMNS) : `${name} `, isUrgent ? 'accent' : 'plain');
}

/** `ASH  in   2:33 4 Dace, drop D, no capo, READY   0:50 ago, check volume 7`, and the same in fewer letters. */
function cardLine(state: ScreenState, coming: Card, columns: number): Row {
	const { kind, leave, when, isUrgent, off } = coming;
	const label = labelled(state, coming, columns);
	const style = isUrgent ? 'accent' : 'plain';
	const words = handed(state, coming, { columns, isAgain: false });
	const long = words.map(
		({ what, status }): Row => [
			label,
			span(`${when} `, style),
			span(what === '' ? '' : `${what}, `, style),
			span(status, readinessStyle(coming)),
		],
	);
	const check = leave === null || kind !== 'hand-over' ? [] : [span(`, ${checkWords(leave)}`)];
	const comesOff = off === null ? [] : [span(`, ${off.label}${off.words}`)];
	// That it comes off is needed more than where it goes, which the rack shows.
	const offSlot = off === null ? [] : [span(`, ${off.label}${off.least}`)];
	return fitting(
		[
			...long.map((row) => [...row, ...comesOff, ...check]),
			...long.map((row) => [...row, ...comesOff]),
			...long.map((row) => [...row, ...offSlot]),
			...long.map((row) => [...row, ...check]),
			...long,
			...short(state, coming),
		],
		columns,
	);
}

/** `BO  keeps 5 Elder, in   6:12 7 Briar, E std, no capo, READY   0:09 ago`. */
function restLine(state: ScreenState, coming: Coming, columns: number): Row {
	const { session } = state;
	const { show } = session;
	const label = labelled(state, coming, columns);
	if (coming.kind === 'keeps') {
		const { instrument, status } = coming;
		// After the last song it only waits to be taken.
		const { value: phase } = session.phase;
		const word = phase === 'over' || phase === 'packed' ? HAS : KEEPS;
		const quiet =
			instrument === null ? NOTHING_TO_COME : `${word} ${shownInstrument(show, instrument)}`;
		const said = [...backup(state, coming), ...(status === '' ? [] : [status])];
		const after = said.length === 0 ? [] : [span(`, ${said.join(', ')}`)];
		const least = instrument === null ? quiet : `${word} ${slotLabel(show, instrument)}`;
		return fitting(
			[
				[{ ...label, style: 'dim' }, span(quiet, 'dim'), ...after],
				[{ ...label, style: 'dim' }, span(least, 'dim'), ...after],
			],
			columns,
		);
	}
	// Who stays on what they have is said to keep it once.
	if (coming.kind === 'stays' || coming.kind === 'wrong') return stayLine(state, coming, columns);
	const held = session.players[coming.player]?.holds ?? null;
	const style = coming.isUrgent ? 'accent' : 'dim';
	// What is to come off already is not kept.
	const isPast = coming.seconds !== null && coming.seconds < 0;
	const now = (name: (id: string) => string) =>
		held === null ? HAS_NOTHING : `${isPast ? HAS : KEEPS} ${name(held)}`;
	// The same instrument again is named once.
	const isAgain = held === coming.instrument;
	const lines = handed(state, coming, { columns, isAgain }).map(
		({ what, status }): Row => [
			{ ...label, style },
			span(`${now((id) => shownInstrument(show, id))}, ${coming.when} `, style),
			span(what === '' ? '' : `${what}, `, style),
			span(status, style === 'dim' && coming.mark !== '+' ? 'unready' : style),
		],
	);
	return fitting([...lines, ...short(state, coming)], columns);
}

/** `ASH  in   0:25 KEEPS 3 Cobble, CAPO ON 2, backup for 1 Amber`; `WRONG 3 Larch, HAND 1 Wren, then x a 1`. */
function stayLine(state: ScreenState, coming: Coming, columns: number): Row {
	const style = coming.isUrgent ? 'accent' : 'plain';
	const label = labelled(state, coming, columns);
	const lines = handed(state, coming, { columns, isAgain: false }).map(
		({ status }): Row => [label, span(`${coming.when} ${status}`, style)],
	);
	const next = offOf(state, coming, []);
	const withNext =
		next === null ? [] : lines.map((row) => [...row, span(`, ${next.label}${next.words}`)]);
	return fitting([...withNext, ...lines, ...short(state, coming)], columns);
}

/** What is handed, kept or lacking, and how it stands, from all of it to the least. */
function handed(
	state: ScreenState,
	coming: Coming,
	{ columns, isAgain }: { readonly columns: number; readonly isAgain: boolean },
) {
	const { show } = state.session;
	const { kind, instrument, tuning, capo, forWhat, status, why } = coming;
	if (kind === 'missing') {
		const words = [...(why === null || why === '' ? [] : [`${status}, ${why}`]), status];
		return words.map((one) => ({ what: forWhat, status: one }));
	}
	const name = instrument === null ? HANDS_EMPTY : shownInstrument(show, instrument);
	if (kind === 'stays') {
		const [, ...acts] = status.split(', ');
		const all = [keepsLabel(name), ...acts, ...backup(state, coming)].join(', ');
		return [
			{ what: '', status: all },
			{ what: '', status },
		];
	}
	if (kind === 'wrong') {
		const held = instrument === null ? HANDS_EMPTY : wrongLabel(name);
		return [
			{ what: '', status: `${held}, ${status}` },
			{ what: '', status },
		];
	}
	if (instrument === null) return [{ what: '', status: HANDS_EMPTY }];
	if (kind === 'break') return [{ what: forWhat, status: `${name}, ${status}` }];
	const sound = [
		...(tuning === null ? [] : [shortTuning(show, tuning)]),
		// Where it is still to be put on, that says it.
		...(status.includes(capoAct(capo)) ? [] : [capo > 0 ? capoLabel(capo) : NO_CAPO]),
	];
	const named = isAgain ? [] : [name];
	const what = [...named, ...sound].join(', ');
	const least = [...named, ...sound.filter((one) => one !== NO_CAPO)].join(', ');
	const all = [status, ...backup(state, coming)].join(', ');
	const bare = withoutAge(leastOf(coming));
	return columns < LEAST_LINE_COLUMNS
		? [{ what: least, status: bare }]
		: [
				{ what, status: all },
				{ what, status: withoutAge(status) },
				{ what, status: bare },
				{ what: least, status: bare },
			];
}

/** `backup for 1 Amber`, or nothing. */
function backup({ session: { show } }: ScreenState, { for: named }: Coming): readonly string[] {
	return named === null ? [] : [backupFor(show, named)];
}

/** The first part of how it stands, and always the capo that is to be moved: nothing else on the line says that. */
function leastOf({ status, capo }: Coming): string {
	const [first = status] = status.split(', ');
	const act = capoAct(capo);
	return status.includes(act) && !first.includes(act) ? `${first}, ${act}` : first;
}

/** Slot, tuning and how it stands: ready or not is needed more than when. */
function short(state: ScreenState, coming: Coming): readonly Row[] {
	const { show } = state.session;
	const style = coming.isUrgent ? 'accent' : 'plain';
	const slot = coming.instrument === null ? '' : `${slotLabel(show, coming.instrument)} `;
	const tuning = coming.tuning === null ? '' : `${shortTuning(show, coming.tuning)} `;
	const capo = coming.capo > 0 ? `${capoLabel(coming.capo)} ` : '';
	const isNamed = coming.kind !== 'missing' && coming.kind !== 'stays';
	const soon = coming.when.replace(/ +/g, ' ');
	const row = (status: string, when = soon): Row => [
		span(`${playerLabel(show, coming.player)} `, style),
		...(isNamed ? [span(slot, style), span(`${tuning}${capo}`)] : []),
		span(status === '' || when === '' ? status : `${status} `, readinessStyle(coming)),
		span(when, 'dim'),
	];
	const first = leastOf(coming);
	const bare = withoutAge(first);
	return [
		row([coming.status, ...backup(state, coming)].join(', ')),
		row(coming.status),
		row(first),
		row(bare),
		row(bare, ''),
		// Of how long the work takes nothing is better than a part.
		row(bare.replace(/ [\d:]+$/, ''), ''),
	];
}
