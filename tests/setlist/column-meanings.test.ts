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

describe('a column of tunings', () => {
	const sheet = (...rows: readonly string[]) =>
		read([',,ASH,,', '#,Song,Gtr,Tun,Cpo', '1,Kiln,Amber,STD,2', ...rows]).reading;

	it('leaves what is no tuning open, and makes no instrument of it', () => {
		const { songs, asked, instruments } = sheet('2,Reed,Coal,QQX,-', '3,Tin,Coal,STD,-');
		expect(instruments.map(({ name }) => name)).toEqual(['Amber', 'Coal']);
		expect(songs.map(({ hands }) => 'ash' in hands)).toEqual([true, false, true]);
		expect(asked.map(({ row, why, word }) => [row, why, word?.unknown])).toEqual([
			[4, 'unknown-tuning', 'QQX'],
		]);
	});

	it.each([
		['DrD', 'drop D'],
		['Dr. C', 'drop C'],
		['Dbl DrD', 'double drop D'],
	])('may have drops cut short: %s', (short, tuning) => {
		const { asked, instruments } = sheet(`2,Reed,Coal,${short},-`);
		expect(asked).toEqual([]);
		expect(instruments[1]).toMatchObject({ name: 'Coal', tuning });
	});

	it('has a dash for nothing', () => {
		const { songs, instruments, asked } = sheet('2,Reed,Coal,-,-', '3,Tin,-,-,-');
		expect(asked).toEqual([]);
		expect(instruments.map(({ name }) => name)).toEqual(['Amber', 'Coal']);
		expect(songs[2]?.hands.ash).toEqual({ kind: 'none' });
	});

	it('has a ditto for the tuning above, asked beside another instrument', () => {
		const { songs, asked } = sheet('2,Reed,Coal,Drop D,3', '3,Tin,〃,〃,〃', '4,Lamp,Amber,〃,-');
		expect(asked.map(({ row, why }) => [row, why])).toEqual([[6, 'unknown-tuning']]);
		expect(songs[2]?.hands).toEqual(songs[1]?.hands);
	});
});
