// The run sheet as plain text of 80 columns: paper that works when the screen does not.

import { cleanText } from '../base/clean-text.ts';
import { displayWidth, fitWidth } from '../base/display-width.ts';
import type { Instrument, Show } from '../showfile/show.ts';
import { SHEET_CAUTIONS } from '../words/cautions.ts';
import {
	atCue,
	backWords,
	checkWords,
	dayText,
	endsWords,
	gapWords,
	intervalWords,
	noteWords,
	SHEET,
	sayWords,
	sheetCurfew,
	sheetReference,
	sheetStart,
	workFor,
} from '../words/paper.ts';
import { PAPER_COLUMNS, wrapped } from './paper.ts';
import type { Sheet, SheetChange, SheetPoint, SheetRow, SheetSong, SheetWork } from './sheet.ts';

const TITLE_WIDTH = 20;
const INDENT = '    ';
/** Under a change, a point, a piece of work that takes several lines. */
const HANG = `${INDENT}      `;
/** What is ticked when it is done. */
const BOX = '[ ]';
const RULE = '-'.repeat(PAPER_COLUMNS);

export type SheetText = {
	/** Which printing this is: a line. */
	readonly version: string;
	/** What is other than in the last one. */
	readonly since: readonly string[];
	/** Each whole board beside what is pressed. */
	readonly hasBoards: boolean;
};

/** The sheet as lines of at most 80 columns, the last one ended too. */
export function runSheet(sheet: Sheet, { version, since, hasBoards }: SheetText): string {
	const { show } = sheet;
	return [
		...title(show),
		...wrapped(version, PAPER_COLUMNS, ''),
		...since.flatMap((line) => hung(line, '* ', '  ')),
		'',
		...players(show, sheet),
		...beforeLines(sheet.before),
		RULE,
		...sheet.rows.flatMap((row) => [...rowLines(row, hasBoards), RULE]),
		...sheet.warnings.flatMap(({ text }) => hung(text, '! ', '  ')),
		...SHEET_CAUTIONS.flatMap((text) => wrapped(text, PAPER_COLUMNS, '')),
	]
		.map((line) => `${line.trimEnd()}\n`)
		.join('');
}

function beforeLines(work: readonly SheetWork[]): readonly string[] {
	return work.length === 0 ? [] : [SHEET.before, ...work.flatMap(workLines)];
}

function rowLines(row: SheetRow, hasBoards: boolean): readonly string[] {
	if (row.kind === 'interval') {
		const head = [intervalWords(row.length), ...(row.clock === null ? [] : [row.clock])];
		return [
			...wrapped(head.join('  '), PAPER_COLUMNS, INDENT),
			...(row.back.length === 0
				? []
				: hung(backWords(row.back.map(({ text }) => text)), `${INDENT}${BOX} `, HANG)),
			...row.work.flatMap(workLines),
		];
	}
	return [
		...(row.isEncoreBegin ? [`${INDENT}${SHEET.encore}`] : []),
		...headLines(row),
		...(row.isDone || row.notes === null ? [] : hung(noteWords(row.notes), INDENT, HANG)),
		...row.marks.flatMap(({ text }) => hung(text, `${INDENT}! `, `${INDENT}  `)),
		...row.changes.flatMap(changeLines),
		...row.points.flatMap((point) => pointLines(point, hasBoards)),
		...row.work.flatMap(workLines),
	];
}

/** Number, title, clock, gap, who starts and how it ends: on one line unless it is too long. */
function headLines(row: SheetSong): readonly string[] {
	const { position, clock, gap, starts, ends, isDone } = row;
	const facts = isDone
		? [SHEET.done]
		: [
				clock,
				gap === null ? null : `${gapWords(gap)}${row.isTight ? ` ${SHEET.tight}` : ''}`,
				starts === '' ? null : starts,
				endsWords(ends),
			];
	const head = `${fitWidth(String(position), 3, { align: 'right' })} ${fitWidth(cleanText(row.title), TITLE_WIDTH)}`;
	const [first = '', ...more] = wrapped(
		cleanText(facts.filter((fact) => fact !== null).join('  ')),
		PAPER_COLUMNS - displayWidth(head) - 2,
		'',
	);
	return [`${head}  ${first}`, ...more.map((line) => ' '.repeat(displayWidth(head) + 2) + line)];
}

function changeLines(change: SheetChange): readonly string[] {
	return [
		...hung(changeText(change), `${INDENT}${BOX} `, HANG),
		...(change.leave === null ? [] : hung(checkWords(change.leave), HANG, HANG)),
	];
}

/** `ASH on 1 Amber E std, off 4 Anchor, CAPO ON 2`. */
export function changeText({ who, at, on, nothing, off, capo, acts, notes }: SheetChange): string {
	const thing = on === null ? [] : [on.slot, on.name, on.tuning].filter((part) => part !== null);
	const verb = on === null ? '' : on.isKept ? SHEET.keeps : SHEET.on;
	return [
		`${at === null ? '' : atCue(at)}${[who, verb, ...thing, nothing ?? ''].filter((part) => part !== '').join(' ')}`,
		...(off === null ? [] : [`${SHEET.off} ${off}`]),
		...(capo === null ? [] : [capo]),
		...acts,
		...notes,
	].join(', ');
}

/** `Ch1: BO +DRIVE “solo is eight bars”`; empty where there is nothing to do or to say. */
export function pointText({ at, say, boards }: SheetPoint, hasBoards: boolean): string {
	const pressed = pressedWords(boards, hasBoards).join(', ');
	const said = say === null ? '' : sayWords(say);
	const words = [pressed, said].filter((part) => part !== '').join('  ');
	return words === '' ? '' : `${atCue(at ?? SHEET.atStart)}${words}`;
}

/** What is pressed on each board, `BO +DRIVE`, on request with the whole of it; nothing for one that stays. */
export function pressedWords(boards: SheetPoint['boards'], hasBoards: boolean): readonly string[] {
	return boards
		.filter(({ presses }) => hasBoards || presses !== '')
		.map(({ who, presses, whole }) =>
			[who, presses || SHEET.stays, ...(hasBoards ? [`(${whole})`] : [])].join(' '),
		);
}

function pointLines(point: SheetPoint, hasBoards: boolean): readonly string[] {
	const text = pointText(point, hasBoards);
	return text === '' ? [] : hung(text, INDENT, HANG);
}

/** `1 Amber TOUCH UP 0:45, start by 20:36, for 3 Gravel`. */
function workText({ slot, name, what, when, song }: SheetWork): string {
	const place = slot === null ? name : `${slot} ${name}`;
	return `${place} ${what} ${when}, ${workFor(song)}`;
}

function workLines(work: SheetWork): readonly string[] {
	return hung(`${SHEET.atRack} ${workText(work)}`, `${INDENT}${BOX} `, HANG);
}

/** Whole words on lines, the first one behind its mark and the others indented. */
function hung(text: string, mark: string, indent: string): string[] {
	const lines = wrapped(cleanText(text), PAPER_COLUMNS - indent.length, '');
	return lines.map((line, at) => (at === 0 ? mark : indent) + line);
}

/** What the night is: venue, date, times. */
export function sheetFacts(show: Show): readonly string[] {
	const { startMinutes, curfewMinutes } = show;
	return [
		show.venue,
		show.date,
		startMinutes === null ? null : sheetStart(dayText(startMinutes)),
		curfewMinutes === null ? null : sheetCurfew(dayText(curfewMinutes)),
		show.referenceHertz === 440 ? null : sheetReference(show.referenceHertz),
	].filter((fact) => fact !== null);
}

function title(show: Show): string[] {
	const notes = show.notes === undefined ? [] : wrapped(cleanText(show.notes), PAPER_COLUMNS, '');
	return [...phrases([show.title, ...sheetFacts(show)]), ...notes];
}

/** Every slot of the rack by whose it is; what nobody owns comes last, since anybody may get it. */
function players(show: Show, sheet: Sheet): string[] {
	const isAnybodys = ({ for: owners }: Instrument): boolean => (owners?.length ?? 0) === 0;
	const given = sheet.rows.flatMap((row) => (row.kind === 'song' ? row.changes : []));
	const own = show.players.flatMap((player) => {
		const has = (one: Instrument): boolean =>
			(one.for?.includes(player.id) ?? false) ||
			(!isAnybodys(one) &&
				given.some(({ player: who, on }) => who === player.id && on?.name === one.name));
		const places = show.instruments.filter(has).map(placeText);
		return legend(player.name.toUpperCase(), places.length > 0 ? places : [SHEET.anyKind]);
	});
	const shared = show.instruments.filter(isAnybodys);
	return [
		...own,
		...legend(SHEET.any, shared.filter((one) => !one.spare).map(placeText)),
		...legend(SHEET.spares, shared.filter((one) => one.spare).map(placeText)),
	];
}

function placeText({ slot, name }: Instrument): string {
	return `${slot?.toUpperCase() ?? '-'} ${name}`;
}

function legend(who: string, places: readonly string[]): string[] {
	const [first, ...more] = places;
	return first === undefined ? [] : phrases([`${who}: ${first}`, ...more]);
}

/** Phrases with commas between, a line broken only between two of them unless one is wider than paper. */
function phrases(texts: readonly string[]): string[] {
	const lines: string[] = [];
	for (const [index, text] of texts.map(cleanText).entries()) {
		const phrase = index < texts.length - 1 ? `${text},` : text;
		const last = lines.at(-1);
		if (last !== undefined && displayWidth(last) + 1 + displayWidth(phrase) <= PAPER_COLUMNS) {
			lines[lines.length - 1] = `${last} ${phrase}`;
		} else lines.push(...wrapped(phrase, PAPER_COLUMNS, lines.length === 0 ? '' : '  '));
	}
	return lines;
}
