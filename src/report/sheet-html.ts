// The run sheet and the pages beside it to be printed: large type that is read at a metre in dim light, rows parted
// by rules, a box to tick, and no row cut between two pages.

import { playerName } from '../showfile/shown-names.ts';
import { SHEET_CAUTIONS } from '../words/cautions.ts';
import {
	backWords,
	CUE_COLUMNS,
	checkWords,
	cuesHeading,
	endsWords,
	floorHeading,
	gapWords,
	intervalWords,
	RACK,
	RADIO,
	SHEET,
	sayWords,
	workFor,
} from '../words/paper.ts';
import { type Content, element, type Html, htmlPage, named, type Paper } from './html-page.ts';
import { pressedWords, sheetFacts } from './run-sheet.ts';
import {
	chosenOf,
	type Mark,
	type Sheet,
	type SheetChange,
	type SheetChoice,
	type SheetInterval,
	type SheetPoint,
	type SheetSong,
	type SheetWork,
} from './sheet.ts';
import {
	boardPoints,
	floorLines,
	placeWords,
	type SheetPage,
	spareNames,
	whoseWords,
} from './sheet-pages.ts';
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

// 14 points is the least; what is looked for first is larger: a capital of 24 points is 6 mm high, which fills 20
// minutes of arc at a metre.
const STYLES = `
body { font-size: 14pt; }
main > section + section { break-before: page; margin-top: 3rem; }
@media print { main > section + section { margin-top: 0; } }
h1 { font-size: 24pt; margin: 0; line-height: 1.1; }
h2 { font-size: 22pt; margin: .5em 0 .2em; line-height: 1.1; }
section > h2:first-child { margin-top: 0; }
h3 { font-size: 20pt; margin: 0; line-height: 1.1; }
p { margin: .15em 0; }
ul, ol { list-style: none; margin: 0; padding: 0; }
.quiet { font-size: 14pt; margin: .2em 0; }
.since { border: 2px solid var(--line); padding: .2em .5em; margin: .4em 0; }
.since h2 { font-size: 16pt; margin: 0; }
.row, .interval {
	border-top: 2.5px solid var(--line);
	padding: .3em 0 .35em;
	break-inside: avoid;
}
.head { display: grid; grid-template-columns: minmax(0, 1fr) auto; gap: 0 .6em; align-items: baseline; }
.said { display: flex; flex-wrap: wrap; gap: 0 .5em; align-items: baseline; min-width: 0; }
.head .clock { font-size: 22pt; font-weight: bold; }
.facts { display: flex; flex-wrap: wrap; gap: 0 .8em; margin: 0 0 0 .3em; }
.off { font-weight: bold; }
.badge { border: 2px solid var(--mark); color: var(--mark); font-size: 14pt; font-weight: bold; padding: 0 .25em; white-space: nowrap; }
.changes > li { display: grid; grid-template-columns: 1.4em fit-content(9em) minmax(0, 1fr); gap: 0 .4em; align-items: baseline; padding: .08em 0; }
.box { display: inline-block; width: .95em; height: .95em; border: 2px solid var(--ink); align-self: center; vertical-align: -.1em; }
.who { font-weight: bold; font-size: 18pt; min-width: 3.5em; }
.thing { display: flex; flex-wrap: wrap; gap: 0 .45em; align-items: baseline; }
.slot { font-size: 26pt; font-weight: bold; border: 2px solid var(--ink); padding: 0 .2em; line-height: 1; }
.tuning { font-size: 24pt; font-weight: bold; line-height: 1.1; }
.name { font-size: 18pt; }
.act { font-weight: bold; font-size: 18pt; border-bottom: 3px solid var(--ink); }
.under { grid-column: 3; }
.points { display: flex; flex-wrap: wrap; gap: 0 1.4em; border-left: 4px solid var(--line); padding-left: .5em; margin: .2em 0; }
.points li { min-width: 0; }
.at { font-weight: bold; margin-right: .35em; }
.work { margin: .2em 0; }
.work li { padding-left: 1.8em; text-indent: -1.8em; }
.work li.mark { padding-left: 2.2em; }
.work .place { font-weight: bold; }
.mark { font-weight: bold; color: var(--mark); border-left: 6px solid var(--mark); padding-left: .4em; }
.interval h3 { font-size: 24pt; }
.row h3, .interval h3 { break-after: auto; }
.rack .slot { border: 0; padding: 0; }
th { white-space: nowrap; overflow-wrap: normal; }
.rack { table-layout: fixed; line-height: 1.15; }
.rack td { padding: .12em .5em .12em 0; }
.rack col:nth-child(1) { width: 8%; }
.rack col:nth-child(2) { width: 38%; }
.rack col:nth-child(3) { width: 18%; }
.rack col:nth-child(4) { width: 15%; }
.rack col:nth-child(5) { width: 10%; }
.cautions { line-height: 1.15; }
.labels { padding-right: 2px; display: grid; grid-template-columns: repeat(auto-fill, minmax(15rem, 1fr)); gap: 0; }
.labels li { border: 1.5px dashed var(--line); padding: .5em .6em; break-inside: avoid; }
.labels .slot { font-size: 60pt; border: 0; padding: 0; float: right; margin-left: .2em; }
.labels .name, .labels .pitch { font-size: 22pt; font-weight: bold; line-height: 1.1; }
.floor li { border-top: 1.5px solid var(--line); padding: .13em 0; font-size: 20pt; line-height: 1.15; break-inside: avoid; display: flex; flex-wrap: wrap; gap: 0 .6em; align-items: baseline; }
.large li { font-size: 28pt; padding: .2em 0; }
.floor .number { min-width: 1.6em; }
.floor .has { font-weight: bold; margin-left: auto; }
.floor .starts { font-size: 16pt; font-weight: bold; }
.pressing, .boards, .further { table-layout: fixed; }
:is(.pressing, .boards, .further) col:nth-child(1) { width: 18%; }
:is(.pressing, .boards, .further) col:nth-child(2) { width: 36%; }
:is(.pressing, .boards, .further) col:nth-child(4) { width: 20%; }
.boards td:nth-child(-n+2) { font-weight: bold; }
:is(.pressing, .boards, .further) tr:last-child td { border-bottom: 0; }
.further thead { position: absolute; clip-path: inset(50%); width: 1px; height: 1px; overflow: hidden; }
:is(.pressing, .further) td { font-size: 18pt; }
:is(.pressing, .further) td:nth-child(2) { font-weight: bold; font-size: 20pt; }
:is(.pressing, .further) td:nth-child(n+3) { font-size: 14pt; }
@media screen and (max-width: 40rem) {
	table { font-size: 10pt; }
	th { white-space: normal; overflow-wrap: anywhere; }
	:is(.pressing, .further) td:nth-child(n) { font-size: 12pt; }
}
`;

/** The whole file. */
export function sheetHtml(sheet: Sheet, printing: SheetPrinting): string {
	const { title } = sheet.show;
	return htmlPage({
		title: `${title}, ${printing.version}`,
		foot: `${printing.version}, ${title}`,
		styles: STYLES,
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

// The pages beside it.

/** The rack by slot, and what to take care of. */
function backPage(sheet: Sheet): Content {
	return [
		element('h2', {}, RACK.heading),
		table(
			'rack',
			RACK.columns,
			sheet.rack.map((place) => [
				element('span', { class: 'slot' }, place.slot ?? '-'),
				[element('strong', {}, named(place.name)), ', ', place.shortKind],
				named(place.tuning),
				named(whoseWords(place)),
				named(place.case ?? ''),
				named(place.pack ?? ''),
			]),
		),
		element('h2', { class: 'quiet' }, SHEET.cautions),
		// Run on, so that a large rack and they have room on one page.
		element('p', { class: 'cautions' }, SHEET_CAUTIONS.join(' ')),
	];
}

function labelsPage(sheet: Sheet): Content {
	const labels = sheet.rack.map((place) => {
		return element('li', {}, [
			element('span', { class: 'slot' }, place.slot ?? '-'),
			element('p', { class: 'name' }, named(place.name)),
			element('p', { class: 'pitch' }, named(place.tuning)),
			placeWords(place).map((words) => element('p', {}, named(words))),
		]);
	});
	return [element('h2', {}, RACK.labels), element('ul', { class: 'labels' }, labels)];
}

function radioPage({ radio }: Sheet): Content {
	const rows = radio.worn.map(({ who, pack, channel, song, instrument, isFirst }) => [
		element('strong', {}, named(who)),
		element('strong', {}, named(pack)),
		named(channel ?? '-'),
		named(song),
		named(instrument),
		isFirst ? '' : RADIO.tell,
	]);
	return [
		element('h2', {}, RADIO.heading),
		table('radio', RADIO.columns, rows),
		element('p', {}, named(RADIO.spares(spareNames(radio.spare)))),
		element('p', {}, named(RADIO.told(radio.told))),
	];
}

function cuesPage(sheet: Sheet, player: string): Content {
	let isHeaded = false;
	const songs = sheet.rows.map((row) => {
		if (row.kind === 'interval') {
			return element('article', { class: 'row' }, element('h3', {}, intervalWords(row.length)));
		}
		const points = boardPoints(row.points, player);
		const rows = points.map(({ at, presses, whole, say }) => [
			named(at),
			named(presses === '' ? SHEET.stays : presses),
			named(whole),
			say === null ? '' : named(sayWords(say)),
		]);
		// What the columns are is seen once, and heard at every table.
		const name = isHeaded ? 'further' : 'pressing';
		isHeaded ||= rows.length > 0;
		return element('article', { class: 'row' }, [
			element('h3', {}, [`${row.position} `, named(row.title)]),
			rows.length === 0 ? null : table(name, CUE_COLUMNS, rows),
		]);
	});
	return [element('h2', {}, named(cuesHeading(playerName(sheet.show, player)))), songs];
}

/** So many lines of a list have room on a page in type that is read standing. */
const MOST_LARGE = 14;

function floorPage(sheet: Sheet, player: string): Content {
	const lines = floorLines(sheet, player).map(({ position, title, has, isStarter }) =>
		element('li', {}, [
			element('span', { class: 'number' }, String(position ?? '')),
			named(title),
			isStarter ? element('span', { class: 'starts' }, SHEET.youStart) : null,
			has === '' ? null : element('span', { class: 'has' }, named(has)),
		]),
	);
	return [
		element('h2', {}, named(floorHeading(playerName(sheet.show, player)))),
		element(
			'div',
			{ class: lines.length > MOST_LARGE ? null : 'large' },
			element('ul', { class: 'floor' }, lines),
		),
	];
}

function table(
	name: string,
	columns: readonly string[],
	rows: readonly (readonly Content[])[],
): Html {
	const cells = (tag: string, row: readonly Content[], attributes = {}) =>
		row.map((cell) => element(tag, attributes, cell));
	return element('table', { class: name }, [
		element(
			'colgroup',
			{},
			columns.map(() => element('col')),
		),
		element('thead', {}, element('tr', {}, cells('th', columns, { scope: 'col' }))),
		element(
			'tbody',
			{},
			rows.map((row) => element('tr', {}, cells('td', row))),
		),
	]);
}
