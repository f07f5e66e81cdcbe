// The trade's shorthand in a cell of a set list, and rows that are marks. What each means is common practice.

import { describe, expect, it } from 'vitest';
import { NO_ANSWERS, readingOf } from '../../src/setlist/answers.ts';
import { EMPTY_RACK } from '../../src/setlist/list-reading.ts';
import { readText } from './read-list.ts';

/** What a cell says to a player who had Basil in the song before: instrument, tuning and capo, or why it is asked. */
function said(cell: string): string {
	const { reading } = readText(`Title\tAsh\nOne\tBasil E\nTwo\t${cell}\n`, { form: 'table' });
	const [asked] = reading.asked;
	if (asked) return asked.why;
	const hand = reading.songs[1]?.hands.ash;
	if (!hand) return 'keeps';
	if (hand.kind !== 'named') return hand.kind;
	const one = reading.instruments.find(({ id }) => id === hand.instrument);
	return `${one?.slot} ${one?.name}, ${hand.tuning ?? one?.tuning}, ${hand.capo}`;
}

describe('a cell', () => {
	it.each([
		['Amber DD c2', '2 Amber, drop D, 2'],
		['Amber cpo 4', '2 Amber, E standard, 4'],
		['3 drop D capo 2', '3 Guitar 3, drop D, 2'],
		['4 Anchor drop D', '4 Anchor, drop D, 0'],
		['Amber, open G, capo V', '2 Amber, open G, 5'],
		['Amber: D A D G A D', '2 Amber, DADGAD, 0'],
		['Amber D2 A2 D3 G3 A3 D4', '2 Amber, DADGAD, 0'],
		['DADGAD', '1 Basil, DADGAD, 0'],
		['Eb', '1 Basil, half-step down, 0'],
		['E♭', '1 Basil, half-step down, 0'],
		['½↓', '1 Basil, half-step down, 0'],
		['½-step down', '1 Basil, half-step down, 0'],
		['1/2 step down', '1 Basil, half-step down, 0'],
		['D', '1 Basil, whole step down, 0'],
		['OpG', '1 Basil, open G, 0'],
		['OpD', '1 Basil, open D, 0'],
		['OpE', '1 Basil, open E, 0'],
		['OpA', '1 Basil, open A, 0'],
		['A7', '2 A7, E standard, 0'],
		['A1 DD', '2 A1, drop D, 0'],
		['STD c4', '1 Basil, E standard, 4'],
		['c2', '1 Basil, E standard, 2'],
		['-', 'none'],
		['none', 'none'],
		['', 'keeps'],
		['same', 'keeps'],
		['Amber or Basil', 'two-ways'],
		['Amber?', 'two-ways'],
		['Basil > Amber', 'two-ways'],
		['Basil WOB', 'extra-words'],
		['Amber open Q', 'extra-words'],
		['drop D#', 'extra-words'],
		['Amber c14', 'capo-range'],
		['F♯', 'no-standard'],
	])('%j is %s', (cell, expected) => {
		expect(said(cell)).toBe(expected);
	});

	it('is read as what was answered for it', () => {
		const { list } = readText('Title\tLength\tAsh\nOne\t4.05\tBasil E\nTwo\t\tBasil WOB\n', {
			form: 'table',
		});
		const cells = new Map([
			['2 Length', '4:05'],
			['3 Ash', 'Basil open G'],
		]);
		const reading = readingOf(list, EMPTY_RACK, { ...NO_ANSWERS, cells });
		expect(reading.asked).toEqual([]);
		expect(reading.songs[0]?.seconds).toBe(245);
		expect(reading.songs[1]?.hands.ash).toMatchObject({ tuning: 'open G' });
	});

	it.each([
		['4:05', 245],
		['245', 245],
		["4'05", 245],
		['4’05”', 245],
		['4m05', 245],
		['4 min', 240],
		['0:04:05', 245],
		['04:05:00', 245],
		['tbc', null],
		['4', 'bad-length'],
		['4.05', 'bad-length'],
		['3:3O', 'bad-length'],
	])('for a length %j is %s', (cell, expected) => {
		const { reading } = readText(`Title;Length\nOne;${cell}\nTwo;3:00\n`, { form: 'table' });
		expect(reading.asked[0]?.why ?? reading.songs[0]?.seconds).toBe(expected);
	});
});

describe('a row', () => {
	const order = (table: string) => {
		const { reading } = readText(table, { form: 'table' });
		return {
			set: reading.set.map((item) =>
				item.kind === 'interval' ? item.seconds : `${item.song}${item.isEncore ? '*' : ''}`,
			),
			asked: reading.asked.map(({ row, why }) => `${row} ${why}`),
		};
	};

	it('is an interval or the beginning of the encore by its words', () => {
		expect(order('Song,Length\nA,3:00\nINTERVAL,15:00\nB,3:00\nEncore,\nC,3:00\n')).toEqual({
			set: ['a', 900, 'b', 'c*'],
			asked: [],
		});
	});

	it('is asked about where the file can have no interval, or no song follows', () => {
		expect(order('Song\nInterval\nA\nEncore\nB\nBreak\nC\nEncore\n')).toEqual({
			set: ['a', 'b*', 'c*'],
			asked: ['2 interval-place', '6 interval-place', '8 empty-encore'],
		});
	});

	it('that is numbered and called Break may be a song, and is kept as one', () => {
		expect(order('#,Song\n1,A\n2,Break\n3,C\n')).toEqual({
			set: ['a', 'break', 'c'],
			asked: ['3 interval-or-song'],
		});
	});
});

describe('an interval whose word stands where the numbers do', () => {
	it.each([
		['INTERVAL,20,', 1200],
		['Interval,,15:00', 900],
		['break,20 min,', 1200],
	])('is one, and no song: %s', (line, seconds) => {
		const table = `#,Song,Time\n1,Harbour,3:00\n${line}\n2,Lantern,3:30\n`;
		const { reading } = readText(table, { form: 'table' });
		expect(reading.songs.map(({ title }) => title)).toEqual(['Harbour', 'Lantern']);
		expect(reading.set[1]).toEqual({ kind: 'interval', seconds });
		expect(reading.asked).toEqual([]);
	});
});
