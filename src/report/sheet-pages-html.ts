// The pages beside the run sheet to be printed: the rack, its labels, the radio packs, a board's cues, a player's floor.

import { playerName } from '../showfile/shown-names.ts';
import { SHEET_CAUTIONS } from '../words/cautions.ts';
import {
	CUE_COLUMNS,
	cuesHeading,
	floorHeading,
	intervalWords,
	RACK,
	RADIO,
	SHEET,
	sayWords,
} from '../words/paper.ts';
import { type Content, element, type Html, named } from './html-page.ts';
import type { Sheet } from './sheet.ts';
import { boardPoints, floorLines, placeWords, spareNames, whoseWords } from './sheet-pages.ts';

/** The rack by slot, and what to take care of. */
export function backPage(sheet: Sheet): Content {
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

/** The rack's labels, to be cut out. */
export function labelsPage(sheet: Sheet): Content {
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

/** Who wears which pack, and who must be told. */
export function radioPage({ radio }: Sheet): Content {
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

/** What is pressed on one player's board, song by song. */
export function cuesPage(sheet: Sheet, player: string): Content {
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

/** The list at a player's feet. */
export function floorPage(sheet: Sheet, player: string): Content {
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

/** A table with its columns' heads. */
export function table(
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
