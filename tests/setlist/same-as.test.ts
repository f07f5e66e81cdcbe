// Songs of a message that are played as another one of it, as acts write their lists (common practice, no source).

import { describe, expect, it, test } from 'vitest';
import { readText } from './read-list.ts';

const LIST = (tails: readonly string[]) =>
	[
		'1. Kiln (3:10) | Wren: Dunlin c2 | Odo: Heron drop D',
		'2. Reed (4:00) | Wren: Teal | Odo: Gannet',
		...tails.map((tail, index) => `${index + 3}. Tin ${tail}`),
	].join('\n');
const read = (...tails: readonly string[]) => readText(LIST(tails), { form: 'lines' }).reading;

describe('a song played as another', () => {
	it.each([
		'(4:10) - same as 1',
		'- same as 1 (4:10)',
		'(4:10) - as 1',
		'(same as #1) 4:10',
		'4:10, ditto as song 1',
		'(4:10) – same as Kiln',
	])('has its hands, and it is said: %s', (tail) => {
		const { songs, asked, said } = read(tail);
		expect(asked).toEqual([]);
		expect(songs[2]).toMatchObject({ title: 'Tin', seconds: 250, hands: songs[0]?.hands });
		expect(Object.keys(songs[2]?.hands ?? {})).toEqual(['wren', 'odo']);
		expect(said).toContainEqual({ code: 'same-as', row: 3, title: 'Tin', as: 'Kiln' });
	});

	it.each(['- same as 9', '- same as 1 but Odo on Gannet'])(
		'is asked where none is it: %s',
		(tail) => {
			const { songs, asked } = read(tail);
			expect(songs[2]).toMatchObject({ title: 'Tin', hands: {} });
			expect(asked.map(({ row, why }) => [row, why])).toEqual([[3, 'no-such-song']]);
		},
	);

	it('has what they kept there, and not what they have now', () => {
		const text = `${LIST(['| Wren: Dunlin', '| Odo: Heron', '- same as 3'])}\n`;
		const { songs } = readText(text, { form: 'lines' }).reading;
		expect(songs[4]?.hands).toMatchObject({
			wren: songs[2]?.hands.wren,
			odo: songs[1]?.hands.odo,
		});
	});

	it('is open where the other is', () => {
		const text = '1. Kiln | Wren: Dunlin or Teal\n2. Reed | Wren: Teal\n3. Tin - same as 1\n';
		const { songs, asked } = readText(text, { form: 'lines' }).reading;
		expect(songs[2]?.hands).toEqual({});
		expect(asked.map(({ row }) => row)).toEqual([1, 3]);
	});
});

test('titles with such words are titles', () => {
	const lines = ['1. Same as Ever', '2. Strong as 3', '3. Kiln, Same as the Rain', '4. Reed'];
	const { songs, asked } = readText(lines.join('\n'), { form: 'lines' }).reading;
	expect(songs.map(({ title }) => title)).toEqual(lines.map((line) => line.slice(3)));
	expect(asked).toEqual([]);
});

test("a player's cell may name another song", () => {
	const table =
		'#,Song,Wren,Odo\n1,Kiln,Dunlin c2,Heron\n2,Reed,Teal,Gannet\n3,Tin,as 1,same as 2\n';
	const { songs, asked } = readText(table, { form: 'table' }).reading;
	expect(asked).toEqual([]);
	expect(songs[2]?.hands).toEqual({ wren: songs[0]?.hands.wren, odo: songs[1]?.hands.odo });
});
