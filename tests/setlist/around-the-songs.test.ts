// What stands around the songs of a list: headings above headings, hours, sums, legends, two lists side by side.

import { describe, expect, it, test } from 'vitest';
import { guessedKinds, kindsIn, NO_ANSWERS, readingOf } from '../../src/setlist/answers.ts';
import { EMPTY_RACK } from '../../src/setlist/list-reading.ts';
import { readText } from './read-list.ts';

const table = (text: string) => readText(text, { form: 'table' }).reading;
const lines = (text: string) => readText(text, { form: 'lines' }).reading;
const titles = ({ songs }: ReturnType<typeof table>) => songs.map(({ title }) => title);
const codes = ({ said }: ReturnType<typeof table>) => said.map(({ code }) => code);

describe('a heading merged over several players', () => {
	const { instruments, said, players } = table(
		',,Guitars,,,Bass,\nNo,Song,Ash,Bo,Starts,Cleo,Notes\n1,Lamp,Rook,Wren,Ash,Pike,\n2,Gravel,,,,,\n',
	);

	it('tells the kind of what they play', () => {
		expect(instruments.map(({ name, kind }) => [name, kind])).toEqual([
			['Rook', 'electric-6'],
			['Wren', 'electric-6'],
			['Pike', 'bass-4'],
		]);
		expect(players.map(({ plays }) => plays)).toEqual(['guitar', 'guitar', 'bass']);
	});

	it('and that is said', () => {
		expect(said).toContainEqual({ code: 'group', text: 'Bass', players: ['Cleo'] });
		expect(said).toContainEqual({ code: 'group', text: 'Guitars', players: ['Ash', 'Bo'] });
		expect(said.flatMap((one) => (one.code === 'made' ? [one.by] : []))).toEqual([
			'group',
			'group',
			'group',
		]);
	});

	it('counts less than a heading of their own, a name or a tuning', () => {
		const { instruments: made } = table(
			',Guitars,,\nSong,Ash,Bo bass,Cy\nLamp,Old mandolin,Pike,Gull B std\n',
		);
		expect(made.map(({ kind }) => kind)).toEqual(['mandolin-8', 'bass-4', 'baritone-6']);
	});
});

describe('a column of times', () => {
	it.each([
		'20:30,Lamp\n20:35,Gravel\n20:41,Coal\n20:44,Tin',
		// Over midnight.
		'23:50,Lamp\n23:55,Gravel\n0:01,Coal\n0:06,Tin',
	])('that go up through the hours of an evening holds no lengths: %j', (rows) => {
		const reading = table(`Time,Song\n${rows}\n`);
		expect(reading.songs.map(({ seconds }) => seconds)).toEqual([null, null, null, null]);
		expect(codes(reading)).toContain('clock-column');
	});

	it('beside a column of lengths is no length either', () => {
		const reading = table('Song,Cum.,Length\nLamp,3:00,3:00\nGravel,7:00,4:00\n');
		expect(reading.songs.map(({ seconds }) => seconds)).toEqual([180, 240]);
	});

	it('that are lengths stays so, though they happen to grow', () => {
		const reading = table('Song,Time\nLamp,3:00\nGravel,3:10\nCoal,3:30\nTin,4:05\n');
		expect(reading.songs.map(({ seconds }) => seconds)).toEqual([180, 190, 210, 245]);
	});
});

test('a second column of lengths is kept in the notes', () => {
	const reading = table('Song,Length,Dur\nLamp,3:00,3:20\n');
	expect(reading.songs[0]).toMatchObject({ seconds: 180, notes: 'Dur: 3:20' });
});

describe('two lists side by side', () => {
	it('without headings are told by their numbers', () => {
		const reading = table('1,Lamp,,4,Tin\n2,Gravel,,5,Fern\n3,Coal,,6,Oak\n');
		expect(titles(reading)).toEqual(['Lamp', 'Gravel', 'Coal', 'Tin', 'Fern', 'Oak']);
	});

	it('keep a cell that is asked apart from the one beside it', () => {
		const { asked } = table('Song,Gtr,Song,Gtr\nLamp,X,Tin,Rook\nGravel,Rook,Fern,X\n');
		expect(asked.map(({ row, column }) => [row, column])).toEqual([
			[2, 'Gtr'],
			[3, 'Gtr (2)'],
		]);
	});
});

test('a legend below a list teaches its words for tunings', () => {
	const reading = table('No,Song,Ash\n1,Lamp,Rook LOW\n2,Gravel,Rook\n,,\nLOW = drop C,,\n');
	expect(titles(reading)).toEqual(['Lamp', 'Gravel']);
	expect(reading.songs[0]?.hands.ash).toMatchObject({ kind: 'named', instrument: 'A1' });
	expect(reading.instruments[0]?.tuning).toBe('drop C');
});

describe('a row that stands alone', () => {
	it('beside the titles is asked about, and no song until somebody says so', () => {
		const reading = table('No,Song,Ash\n1,Lamp,Rook\n2,Gravel,Rook\nIF TIME,,\n3,Coal,Rook\n');
		expect(titles(reading)).toEqual(['Lamp', 'Gravel', 'Coal']);
		expect(reading.asked.map(({ row, why }) => [row, why])).toEqual([[4, 'alone']]);
	});

	it('under the titles of numbered songs is asked about, and kept as a song', () => {
		const reading = table('No,Song,Ash\n1,Lamp,Rook\n2,Gravel,\n3,Coal,Rook\n,Guests on,\n');
		expect(titles(reading)).toContain('Guests on');
		expect(reading.asked.map(({ row, why }) => [row, why])).toEqual([[5, 'heading-or-song']]);
	});

	it.each(['Total Eclipse of the Barn', 'Doors of Tin', 'Curfew', 'Support Act Blues'])(
		'with a title that only begins like a mark is a song: %s',
		(title) => {
			expect(titles(lines(`1. Lamp\n2. Gravel\n3. Coal\n4. ${title}\n`))).toContain(title);
			expect(titles(lines(`Lamp\nGravel\nCoal\n${title}\n`))).toContain(title);
		},
	);
});

describe('lines of a message', () => {
	it('with a length in front of each title', () => {
		const { songs } = lines('4:05 Lamp\n3:10 Gravel\n5:00 Coal\n');
		expect(songs.map(({ title, seconds }) => [title, seconds])).toEqual([
			['Lamp', 245],
			['Gravel', 190],
			['Coal', 300],
		]);
	});

	it('below the words that they are a set list', () => {
		expect(titles(lines('Set list\nLamp\nGravel\nCoal\n'))).toEqual(['Lamp', 'Gravel', 'Coal']);
	});

	it('right below a greeting that announces the list', () => {
		expect(titles(lines('Hi all, here is the list\nLamp\nGravel\nCoal\n'))).toEqual([
			'Lamp',
			'Gravel',
			'Coal',
		]);
	});

	it('with a number are songs, though they are called as a part of a list is', () => {
		const { songs, set } = lines('1. Lamp\n2. Part Two\n3. Coal\n');
		expect(songs.map(({ title }) => title)).toEqual(['Lamp', 'Part Two', 'Coal']);
		expect(set).toHaveLength(3);
		expect(titles(lines('Lamp\nCoal\nPart Two\nGravel\n'))).toEqual(['Lamp', 'Coal', 'Gravel']);
		expect(titles(lines('1. Set\n1. Lamp\n2. Coal\n2. Set\n1. Gravel\n'))).toEqual([
			'Lamp',
			'Coal',
			'Gravel',
		]);
	});

	it('that quote a mail', () => {
		expect(titles(lines('> 1. Lamp\n> 2. Gravel\n> 3. Coal\n'))).toEqual([
			'Lamp',
			'Gravel',
			'Coal',
		]);
	});

	it('with a length before a remark in brackets', () => {
		expect(lines('1. Lamp (4:05) (no drums)\n2. Gravel\n').songs[0]).toMatchObject({
			title: 'Lamp (no drums)',
			seconds: 245,
		});
	});

	it('are pasted cells where tabs stand between them', () => {
		const reading = lines('Song\tAsh\nLamp\tRook DD\nGravel\tRook\n');
		expect(titles(reading)).toEqual(['Lamp', 'Gravel']);
		expect(codes(reading)).toContain('as-table');
	});

	it('are lines also in a sheet of one column', () => {
		const { songs, said } = table('1. Lamp (4:05)\n2. Gravel (3:00)\n3. Coal\n');
		expect(songs.map(({ title }) => title)).toEqual(['Lamp', 'Gravel', 'Coal']);
		expect(said.map(({ code }) => code)).toContain('as-lines');
	});
});

describe('what a list says of the day', () => {
	const dayOf = (text: string, form: 'table' | 'lines') => readText(text, { form }).list.day;

	it.each([
		['Pier Hall, 14 November 2026', '2026-11-14'],
		['Pier Hall 14.11.2026', '2026-11-14'],
		['2026-11-14 Pier Hall', '2026-11-14'],
		['Nov 14th, 2026', '2026-11-14'],
		['14/11/2026', '2026-11-14'],
		['Pier Hall 04/11/2026', null],
		['Pier Hall 31 Nov 2026', null],
		['Fri 14 Nov', null],
	])('%s: the date where it can be no other', (text, date) => {
		expect(dayOf(`${text}\n\n1. Lamp\n2. Gravel\n3. Coal\n`, 'lines')?.date).toBe(date);
	});

	it('a start and a curfew below the songs', () => {
		const text =
			'No,Song,Ash\n1,Lamp,Rook\n2,Gravel,Rook\n,"Curfew 23:00, stage 20:45",\nDoors 19:00,,\n';
		expect(dayOf(text, 'table')).toMatchObject({ date: null, start: '20:45', curfew: '23:00' });
	});

	it('an hour that is one of two is none', () => {
		expect(dayOf('Stage 8:45\n\n1. Lamp\n2. Gravel\n3. Coal\n', 'lines')?.start).toBeNull();
		expect(dayOf('Stage 8:45 pm\n\n1. Lamp\n2. Gravel\n3. Coal\n', 'lines')?.start).toBe('20:45');
	});

	it('the hour of the first song', () => {
		expect(dayOf('20:45 Lamp\n20:50 Gravel\n20:54 Coal\n', 'lines')?.start).toBe('20:45');
		expect(dayOf('20:45 Uhr Lamp\n20:50 Uhr Gravel\n20:54 Uhr Coal\n', 'lines')?.start).toBe(
			'20:45',
		);
	});

	it('no start where the hours count from the first song, or could be morning or evening', () => {
		expect(dayOf('0:00 Lamp\n0:05 Gravel\n0:09 Coal\n', 'lines')?.start).toBeNull();
		expect(dayOf('8:45 Lamp\n8:50 Gravel\n8:54 Coal\n', 'lines')?.start).toBeNull();
	});

	it.each(['Off stage 22:30', 'Backstage 18:00', 'End of show 22:45'])('no start of %s', (line) => {
		expect(dayOf(`${line}\n\n1. Lamp\n2. Gravel\n3. Coal\n`, 'lines')?.start).toBeNull();
	});

	it.each(['City Hall', 'Town Hall Festival', 'Day Two'])('no word of it in %s', (title) => {
		expect(readText(`${title}\n\n1. Lamp\n2. Gravel\n`, { form: 'lines' }).list.title).toBe(title);
	});
});

describe('kinds that are a guess', () => {
	const { list } = readText(
		',Guitars,,Bass\nSong,Ash,Bo,Cy\nLamp,Rook DD,Old Finch,Pike\nGravel,Wren,,\n',
		{ form: 'table' },
	);
	const first = readingOf(list, EMPTY_RACK, NO_ANSWERS);

	it('can be put right by name, and are no guess from then on', () => {
		expect(guessedKinds(first).map(({ name }) => name)).toEqual([
			'Rook',
			'Wren',
			'Old Finch',
			'Pike',
		]);
		const kinds = kindsIn('old finch mandolin, Wren 12 string acoustic', first.instruments);
		const reading = readingOf(list, EMPTY_RACK, { ...NO_ANSWERS, kinds: kinds ?? new Map() });
		expect(reading.instruments.map(({ name, kind, tuning }) => [name, kind, tuning])).toEqual([
			['Rook', 'electric-6', 'drop D'],
			['Wren', 'acoustic-12', 'E standard'],
			['Old Finch', 'mandolin-8', 'GDAE'],
			['Pike', 'bass-4', 'E standard'],
		]);
		expect(guessedKinds(reading).map(({ name }) => name)).toEqual(['Rook', 'Pike']);
	});

	it.each(['Finch', 'Wren piano', 'Nobody bass', 'Rook'])('%s says none of them', (line) => {
		expect(kindsIn(line, first.instruments)).toBeNull();
	});
});
