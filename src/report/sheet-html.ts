// The run sheet and the pages beside it to be printed: large type that is read at a metre in dim light, rows parted
// by rules, a box to tick, and no row cut between two pages.

import {
	backWords,
	CUE_COLUMNS,
	checkWords,
	endsWords,
	gapWords,
	intervalWords,
	noteWords,
	SHEET,
	sayWords,
	workFor,
} from '../words/paper.ts';
import { type Content, element, type Html, htmlPage, named, type Paper } from './html-page.ts';
import { pressedWords, sheetFacts } from './run-sheet.ts';
import type {
	Mark,
	Sheet,
	SheetChange,
	SheetInterval,
	SheetPoint,
	SheetSong,
	SheetWork,
} from './sheet.ts';
import { chosenOf, type SheetChoice } from './sheet-choice.ts';
import type { SheetPage } from './sheet-pages.ts';
import { backPage, cuesPage, floorPage, labelsPage, radioPage, table } from './sheet-pages-html.ts';
import { SHEET_STYLES } from './sheet-styles.ts';
import type { SheetDifference } from './sheet-version.ts';

export type SheetPrinting = {
	readonly pages: readonly SheetPage[];
	/** `version 3, 7F3A9C, printed 2026-06-12 19:40`. */
	readonly version: string;
	/** What is other than in the last printing; null where there was none. */
	readonly since: { readonly heading: string; readonly changes: readonly SheetDifference[] } | null;
	/** What the run sheet is cut down to. */
	readonly choice: SheetChoice;
	/** A column of the whole boards, beside what is pressed. */
	readonly hasBoards: boolean;
	readonly paper: Paper | null;
};

/** The whole file. */
export function sheetHtml(sheet: Sheet, printing: SheetPrinting): string {
	const { title } = sheet.show;
	return htmlPage({
		title: `${title}, ${printing.version}`,
		foot: `${printing.version}, ${title}`,
		styles: SHEET_STYLES,
		paper: printing.paper,
		body: element(
			'main',
			{},
			printing.pages.map((page, at) => pageOf(sheet, printing, { page, isFirst: at === 0 })),
		),
	});
}

type Place = { readonly page: SheetPage; readonly isFirst: boolean };

function pageOf(sheet: Sheet, printing: SheetPrinting, { page, isFirst }: Place): Html {
	const head = isFirst ? heading(sheet, printing.version) : null;
	return element('section', {}, [head, contentOf(sheet, printing, page)]);
}

function contentOf(sheet: Sheet, printing: SheetPrinting, page: SheetPage): Content {
	switch (page.kind) {
		case 'run':
			return runPage(chosenOf(sheet, printing.choice), printing);
		case 'rack':
			return printing.pages.length === 1 ? labelsPage(sheet) : backPage(sheet);
		case 'radio':
			return radioPage(sheet);
		case 'cues':
			return cuesPage(sheet, page.player);
		case 'floor':
			return floorPage(sheet, page.player);
	}
}

function heading({ show }: Sheet, version: string): Content {
	return element('header', {}, [
		element('h1', {}, named(show.title)),
		element('p', {}, sheetFacts(show).join(', ')),
		show.notes === undefined ? null : element('p', {}, named(show.notes)),
		element('p', {}, version),
	]);
}

// The run sheet.

function runPage(sheet: Sheet, printing: SheetPrinting): Content {
	const changed = new Map(
		printing.since?.changes.map(({ key, isNew }) => [key, isNew ? SHEET.new : SHEET.changed]),
	);
	return [
		sinceBlock(printing.since),
		sheet.before.length === 0
			? null
			: element('div', { class: 'row' }, [element('h2', {}, SHEET.before), workList(sheet.before)]),
		element('h2', { class: 'quiet' }, SHEET.heading),
		sheet.rows.map((row) =>
			row.kind === 'interval'
				? intervalRow(row)
				: songRow(row, { badge: changed.get(row.key) ?? null, hasBoards: printing.hasBoards }),
		),
		element('div', { class: 'row' }, null),
		sheet.warnings.length === 0
			? null
			: [element('h2', {}, SHEET.warnings), marksOf(sheet.warnings)],
	];
}

function sinceBlock(since: SheetPrinting['since']): Content {
	if (since === null) return null;
	return element('div', { class: 'since' }, [
		element('h2', {}, since.heading),
		element(
			'ul',
			{},
			since.changes.map(({ text }) => element('li', {}, text)),
		),
	]);
}

function intervalRow({ length, clock, back, work }: SheetInterval): Html {
	return element('article', { class: 'interval' }, [
		element('div', { class: 'head' }, [
			element('h3', {}, intervalWords(length)),
			clock === null ? null : element('span', { class: 'clock' }, clock),
		]),
		back.length === 0
			? null
			: element('p', {}, [box(), ' ', named(backWords(back.map(({ text }) => text)))]),
		workList(work),
	]);
}

type SongLook = { readonly badge: string | null; readonly hasBoards: boolean };

function songRow(row: SheetSong, { badge, hasBoards }: SongLook): Html {
	const facts = row.isDone
		? []
		: [
				row.gap === null ? null : gapWords(row.gap),
				row.starts === '' ? null : row.starts,
				endsWords(row.ends),
			].filter((fact) => fact !== null);
	const badges = [
		...(row.isEncoreBegin ? [SHEET.encore] : []),
		...(row.isTight ? [SHEET.tight] : []),
		...(badge === null ? [] : [badge]),
	];
	return element('article', { class: 'row' }, [
		element('div', { class: 'head' }, [
			element('div', { class: 'said' }, [
				element('h3', {}, [`${row.position} `, named(row.title)]),
				badges.map((words) => element('span', { class: 'badge' }, words)),
				element(
					'p',
					{ class: 'facts' },
					facts.map((fact) => element('span', {}, named(fact))),
				),
			]),
			element('span', { class: 'clock' }, row.clock ?? (row.isDone ? SHEET.done : '')),
		]),
		row.isDone || row.notes === null ? null : element('p', {}, named(noteWords(row.notes))),
		marksOf(row.marks),
		row.changes.length === 0
			? null
			: element('ul', { class: 'changes' }, row.changes.map(changeItem)),
		pointsOf(row.points, hasBoards),
		workList(row.work),
	]);
}

function box(): Html {
	return element('span', { class: 'box' });
}

function changeItem(change: SheetChange): Html {
	const { who, at, on, nothing, off, capo, acts, notes, leave } = change;
	const under = [
		...(off === null ? [] : [named(`${SHEET.off} ${off}`, { class: 'off' })]),
		...[...notes, ...(leave === null ? [] : [checkWords(leave)])].map((words) => named(words)),
	];
	return element('li', {}, [
		box(),
		element('span', { class: 'who' }, named(who)),
		element('span', { class: 'thing' }, [
			at === null ? null : element('span', { class: 'at' }, named(at)),
			on === null
				? element('span', { class: 'tuning' }, nothing ?? '')
				: [
						on.isKept ? element('span', {}, SHEET.keeps) : null,
						on.slot === null ? null : element('span', { class: 'slot' }, on.slot),
						element('span', { class: 'name' }, named(on.name)),
						element('span', { class: 'tuning' }, named(on.tuning)),
					],
			[...(capo === null ? [] : [capo]), ...acts].map((act) =>
				element('span', { class: 'act' }, named(act)),
			),
		]),
		under.length === 0
			? null
			: element(
					'span',
					{ class: 'under' },
					under.flatMap((words, index) => [index === 0 ? null : ', ', words]),
				),
	]);
}

function pointsOf(points: readonly SheetPoint[], hasBoards: boolean): Content {
	if (hasBoards) return boardsTable(points);
	const items = points.flatMap(({ at, say, boards }) => {
		const texts = [...pressedWords(boards, false), ...(say === null ? [] : [sayWords(say)])];
		if (texts.length === 0) return [];
		return [
			element('li', {}, [
				element('span', { class: 'at' }, named(at ?? SHEET.atStart)),
				texts.flatMap((text, index) => [index === 0 ? null : ' ', named(text)]),
			]),
		];
	});
	return items.length === 0 ? null : element('ul', { class: 'points' }, items);
}

/** What is pressed, with the whole board in a column of its own: a line for each board at each point. */
function boardsTable(points: readonly SheetPoint[]): Content {
	const rows = points.flatMap(({ at, say, boards }) => {
		const where = named(at ?? SHEET.atStart);
		const said = say === null ? '' : named(sayWords(say));
		const lines = boards.map(({ who, presses, whole }, index) => [
			index === 0 ? where : '',
			[named(who), ' ', named(presses === '' ? SHEET.stays : presses)],
			named(whole),
			index === 0 ? said : '',
		]);
		return lines.length > 0 || say === null ? lines : [[where, '', '', said]];
	});
	return rows.length === 0 ? null : table('boards', CUE_COLUMNS, rows);
}

function workList(work: readonly SheetWork[]): Content {
	if (work.length === 0) return null;
	const items = work.map(({ slot, name, what, when, song, isShort }) =>
		element('li', { class: isShort ? 'mark' : null }, [
			box(),
			` ${SHEET.atRack} `,
			element('span', { class: 'place' }, [slot === null ? null : `${slot} `, named(name)]),
			` ${what} `,
			`${when}, `,
			named(workFor(song)),
		]),
	);
	return element('ul', { class: 'work' }, items);
}

function marksOf(marks: readonly Mark[]): Content {
	return marks.map(({ text }) => element('p', { class: 'mark' }, ['! ', named(text)]));
}
