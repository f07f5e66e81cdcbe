// Messages that name several players in a line, as people write them to one another (common practice, no source).

import { expect, it } from 'vitest';
import { EMPTY_RACK, type Rack } from '../../src/setlist/list-reading.ts';
import { readText } from './read-list.ts';

const MESSAGE = [
	'1. Kiln (3:45) - Wren Dunlin 1, Odo Heron, Lark Bass, all std',
	'2. Reed (4:10) - Wren Dunlin 1 cpo 2, Odo Gannet drop D, Lark Bass drop D (by hand)',
	'3. Tin (?? jam) - Wren Teal Eb, Odo Heron, Lark Upright >> straight in',
	'4. Lamp NEW - Odo Gannet open G, Lark Upright (Wren vox only)',
	'5. Ash Wednesday (4:00) - same as 2',
];
const RACK: Rack = {
	...EMPTY_RACK,
	players: ['WREN (SL)', 'ODO (SR)', 'LARK (riser)'].map((name) => ({
		id: name.replace(/\W+/g, '-').toLowerCase().slice(0, -1),
		name,
		plays: 'guitar',
	})),
};

const hand = (name: string, tuning: string | null, capo = 0) => ({ name, tuning, capo });

function read(lines: readonly string[], rack: Rack) {
	const { list, reading } = readText(lines.join('\n'), { form: 'lines', rack });
	const named = new Map(reading.instruments.map(({ id, name }) => [id, name]));
	const hands = reading.songs.map((song) =>
		Object.values(song.hands).map((cell) =>
			cell.kind === 'named'
				? hand(named.get(cell.instrument) ?? '', cell.tuning, cell.capo)
				: cell.kind,
		),
	);
	return { list, reading, hands };
}

it.each([
	['whom a rack has', RACK, MESSAGE, ['wren-sl', 'odo-sr', 'lark-riser']],
	['whom nobody knows', EMPTY_RACK, MESSAGE, ['wren', 'odo', 'lark']],
	[
		'with a colon behind each name',
		EMPTY_RACK,
		MESSAGE.map((line) => line.replace(/(Wren|Odo|Lark) (?!vox)/g, '$1: ')),
		['wren', 'odo', 'lark'],
	],
	[
		'with nothing between them',
		RACK,
		MESSAGE.map((line) => line.replace(/, (?=[A-Z])/g, ' ')),
		['wren-sl', 'odo-sr', 'lark-riser'],
	],
] as const)('a line is taken apart by its players, %s', (_, rack, lines, ids) => {
	const { reading, hands } = read(lines, rack);
	expect(reading.asked).toEqual([]);
	expect(reading.songs.map(({ title, seconds, ends }) => [title, seconds, ends])).toEqual([
		['Kiln', 225, null],
		['Reed', 250, null],
		['Tin (?? jam)', null, 'segue'],
		['Lamp NEW', null, null],
		['Ash Wednesday', 240, null],
	]);
	expect(Object.keys(reading.songs[0]?.hands ?? {})).toEqual(ids);
	expect(hands).toEqual([
		[hand('Dunlin 1', null), hand('Heron', null), hand('Bass', null)],
		[hand('Dunlin 1', null, 2), hand('Gannet', null), hand('Bass', 'drop D')],
		[hand('Teal', null), hand('Heron', null), hand('Upright', null)],
		[hand('Gannet', 'open G'), hand('Upright', null)],
		[hand('Dunlin 1', null, 2), hand('Gannet', null), hand('Bass', 'drop D')],
	]);
	expect(reading.songs.map(({ notes }) => notes)).toEqual([
		'all std',
		'by hand',
		null,
		'Wren vox only',
		null,
	]);
	expect(reading.said.some(({ code }) => code === 'named-in-lines')).toBe(rack === EMPTY_RACK);
});

it('titles with dashes, commas and names of players are titles', () => {
	const lines = ['1. Kiln - Live, Loud', '2. Wren and Odo', '3. Reed, Lark Rising', '4. Tin'];
	const { reading } = read(lines, RACK);
	expect(reading.songs.map(({ title }) => title)).toEqual(lines.map((line) => line.slice(3)));
	expect(reading.asked).toEqual([]);
});

it('instruments of several words are nobody', () => {
	const lines = [
		'1. Kiln - Red Semi DD, Blue Hollow',
		'2. Reed - Red Semi, Blue Hollow c2',
		'3. Tin',
	];
	expect(read(lines, EMPTY_RACK).list.players.map(({ name }) => name)).not.toContain('Red');
});
