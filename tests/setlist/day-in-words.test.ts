// What a message or a sheet says of the day in the words of its writer.

import { describe, expect, it } from 'vitest';
import { dateFrom } from '../../src/setlist/listed-day.ts';
import { readText } from './read-list.ts';

const lines = (text: string) => readText(text, { form: 'lines' });

describe('a message with its hours in one line', () => {
	const text =
		'Hi all, set for the Mill Sat 5 Dec\n\nOn 20:30, curfew 23:00\n\n1. Kiln >> straight in\n2. Reed\n3. Tin\n\nTa, see you at load in x\n';

	it('is called by none of them, and has no song of its greetings', () => {
		const { list, reading } = lines(text);
		expect(list.title).toBeNull();
		expect(list.day).toMatchObject({ start: '20:30', curfew: '23:00' });
		expect(reading.songs.map(({ title, ends }) => [title, ends])).toEqual([
			['Kiln', 'segue'],
			['Reed', null],
			['Tin', null],
		]);
		expect(reading.said).toEqual([
			{ code: 'above', texts: ['Hi all, set for the Mill Sat 5 Dec'] },
			{ code: 'below', texts: ['Ta, see you at load in x'] },
		]);
	});

	// 5 December 2026 is a Saturday, 5 December 2027 a Sunday (Gregorian calendar).
	it.each([
		['Sat 5 Dec', '2026-11-30', '2026-12-05'],
		['Saturday, December 5th', '2026-12-05', '2026-12-05'],
		['Sat 5 Dec', '2026-12-06', null],
		['5 December', '2026-12-06', '2027-12-05'],
		['Sun 5 Dec', '2026-11-30', null],
		['Fri 1 Jan', '2026-11-30', '2027-01-01'],
	])('has the next day of that name: %s from %s', (said, today, date) => {
		expect(dateFrom(lines(text.replace('Sat 5 Dec', said)).list.day, today)).toBe(date);
	});
});

it('what was used is not said to be unused', () => {
	const table = [
		'THE REEDS,,',
		'Doors 19:00,On stage 20:30,Curfew 23:00',
		'#,Song,Length',
		'1,Kiln,3:00',
		'2,Reed,3:10',
		'3,Tin,3:20',
	];
	const { list, reading } = readText(table.join('\n'), { form: 'table' });
	expect(list.day).toMatchObject({ start: '20:30', curfew: '23:00' });
	expect(reading.said).toEqual([{ code: 'above', texts: ['Doors 19:00'] }]);
});
