// Columns whose headings are an act's own shorthand: their cells say what they are.

import { describe, expect, it } from 'vitest';
import { readText } from './read-list.ts';

const read = (rows: readonly string[]) => readText(rows.join('\n'), { form: 'table' });

describe('a column of lengths', () => {
	it.each(['LGTH', 'Lgt', 'Wie lang'])('is that, whatever its heading: %s', (heading) => {
		const rows = [
			`#,Song,${heading},Ash`,
			'1,Kiln,3:45,Amber',
			'2,Reed,4:10,Amber c2',
			'3,Tin,,Coal',
		];
		const { list, reading } = read([...rows, ',,TOTAL approx 1h10,']);
		expect(list.players.map(({ name }) => name)).toEqual(['Ash']);
		expect(reading.songs.map(({ seconds }) => seconds)).toEqual([225, 250, null]);
		expect(reading.instruments.map(({ name }) => name)).toEqual(['Amber', 'Coal']);
		expect(reading.said).toContainEqual({ code: 'length-column', column: heading, number: 3 });
	});

	it('is kept in the notes beside one that says so', () => {
		const { list, reading } = read([
			'Song,Length,Trk',
			'Kiln,3:45,3:40',
			'Reed,4:10,4:00',
			'Tin,3:00,2:58',
		]);
		expect(list.players).toEqual([]);
		expect(reading.songs.map(({ seconds, notes }) => [seconds, notes])).toEqual([
			[225, 'Trk: 3:40'],
			[250, 'Trk: 4:00'],
			[180, 'Trk: 2:58'],
		]);
	});
});

describe("a player's columns under a merged heading", () => {
	const sheet = (instrument: string, capo: string) => [
		',,ASH,,,BO,,',
		`#,Song,${instrument},Tun,${capo},${instrument},Tun,${capo}`,
		'1,Kiln,Amber,STD,2,Coal,Drop D,-',
		'2,Reed,Amber,STD,-,Coal,Drop D,3',
		'3,Tin,Amber,STD,-,Coal,Drop D,3',
	];

	it.each([
		['Gtr', 'Capo'],
		['Gtr', 'Cpo'],
		['Inst', 'Cap.'],
		['Instr.', 'Kapo'],
		['Gtr', 'Fr'],
	])('are instrument, tuning and capo: %s, %s', (instrument, capo) => {
		const { list, reading } = read(sheet(instrument, capo));
		expect(list.players.map(({ name }) => name)).toEqual(['ASH', 'BO']);
		expect(reading.asked).toEqual([]);
		expect(reading.instruments.map(({ name, tuning }) => [name, tuning])).toEqual([
			['Amber', 'E standard'],
			['Coal', 'drop D'],
		]);
		expect(
			reading.songs.map(({ hands }) =>
				Object.values(hands).map((cell) => (cell.kind === 'named' ? cell.capo : null)),
			),
		).toEqual([
			[2, 0],
			[0, 3],
			[0, 3],
		]);
	});
});
