// Lines of a message whose cells stand as a person types them.

import { describe, expect, it, test } from 'vitest';
import { EMPTY_RACK, type Rack } from '../../src/setlist/list-reading.ts';
import { readText } from './read-list.ts';

const RACK: Rack = {
	...EMPTY_RACK,
	players: [
		{ id: 'wren', name: 'Wren (LG)', plays: 'guitar' },
		{ id: 'odo-rg', name: 'Odo-Finn {x} / $', plays: 'guitar' },
	],
	instruments: [
		{
			...{ id: 'W1', name: 'Dunlin', slot: '1' },
			kind: 'electric-6',
			for: ['wren'],
			tuning: 'E standard',
		},
		{
			...{ id: 'O1', name: 'Heron', slot: '2' },
			kind: 'electric-6',
			for: ['odo-rg'],
			tuning: 'E standard',
		},
	],
};

const read = (text: string, rack: Rack = EMPTY_RACK) =>
	readText(text, { form: 'lines', rack }).reading;

describe('cells behind a title', () => {
	it.each([
		'1. Half a Candle - Wren: Dunlin c4, Odo-Finn: Heron DD',
		'1. Half a Candle (Wren: Dunlin c4 / odo-finn: Heron DD)',
		'1. Half a Candle | wren: Dunlin c4 | odo-rg: Heron DD',
	])('of players who are known are theirs: %s', (line) => {
		const { songs, asked } = read(`${line}\n2. Gravel\n`, RACK);
		expect(asked).toEqual([]);
		expect(songs[0]).toMatchObject({
			title: 'Half a Candle',
			hands: {
				wren: { kind: 'named', instrument: 'W1', tuning: null, capo: 4 },
				'odo-rg': { kind: 'named', instrument: 'O1', tuning: 'drop D', capo: 0 },
			},
		});
	});

	test('that nobody has stay in the title, and it is said', () => {
		const { songs, asked } = read(
			'1. Weathercock DD\n2. Lamp Oil Dunlin c2\n3. Ninepin - drop D all\n',
			RACK,
		);
		expect(songs.map(({ title }) => title)).toEqual([
			'Weathercock DD',
			'Lamp Oil Dunlin c2',
			'Ninepin - drop D all',
		]);
		expect(asked.map(({ row, why }) => [row, why])).toEqual([
			[1, 'shorthand-in-title'],
			[2, 'shorthand-in-title'],
			[3, 'shorthand-in-title'],
		]);
	});

	test('are not seen in titles of mere words', () => {
		const { asked } = read(
			'1. Half a Candle\n2. Letter to E\n3. Normal Service\n4. Wren: a Life\n5. USA\n',
		);
		expect(asked).toEqual([]);
	});
});

test('a dash, a comma or a colon before a length, a speed or a bracket is not part of the title', () => {
	const lines = [
		'Kiln - 3:10',
		'Reed, 3:10',
		'Ash: (3:10)',
		'Tin - [drop D] – 3:10',
		'Lead -- 120 bpm',
	];
	const { songs, asked } = read(`${lines.join('\n')}\n7-11 3:00\n`);
	expect(songs.map(({ title }) => title)).toEqual(['Kiln', 'Reed', 'Ash', 'Tin', 'Lead', '7-11']);
	expect(asked).toEqual([]);
});

describe('a number without its sign', () => {
	const titles = (text: string) => read(text).songs.map(({ title }) => title);

	it('between two that have theirs is a number', () => {
		expect(titles('4) Lamp Oil\n5 Barrow Lane 5:20\n6. Ash\n')).toEqual([
			'Lamp Oil',
			'Barrow Lane',
			'Ash',
		]);
	});

	it('that the next one has too is part of the title', () => {
		expect(titles('6. Ash\n7 Sisters\n7. Reed\n')).toEqual(['Ash', '7 Sisters', 'Reed']);
		expect(titles('1. Ash\n7 Sisters\n')).toEqual(['Ash', '7 Sisters']);
	});
});

describe('what people write above a list and below it', () => {
	const whole = (text: string) => {
		const { list, reading } = readText(text, { form: 'lines' });
		const told = reading.said.flatMap((one) =>
			one.code === 'above' || one.code === 'below' ? one.texts : [],
		);
		return { title: list.title, songs: reading.songs.map(({ title }) => title), told };
	};

	it.each([
		["Hi all, here is tonight's list:\n\n1. Kiln\n2. Reed\n", ["Hi all, here is tonight's list:"]],
		[
			"Hi all,\nhere's the list for Friday:\n1. Kiln\n2. Reed",
			['Hi all,', "here's the list for Friday:"],
		],
		['Morning Lou!\n\nKiln\nReed\n', ['Morning Lou!']],
		["Hi all,\nhere's the set:\nKiln\nReed\n", ['Hi all,', "here's the set:"]],
		['1. Kiln\n2. Reed\n\nCheers,\nLou\n', ['Cheers,', 'Lou']],
		['Kiln\nReed\n\nThanks, see you at six!\n', ['Thanks, see you at six!']],
	])('is neither title nor song, and told: %j', (text, told) => {
		expect(whole(text)).toEqual({ title: null, songs: ['Kiln', 'Reed'], told });
	});

	it('leaves the title below it', () => {
		const text = 'Hello everyone!\nFriday at the Mill:\n\n1. Kiln\n2. Reed\n';
		expect(whole(text)).toMatchObject({ title: 'Friday at the Mill', told: ['Hello everyone!'] });
		const bare = 'Hi all,\nFriday at the Mill\n\nKiln\nReed\n';
		expect(whole(bare)).toMatchObject({ title: 'Friday at the Mill', songs: ['Kiln', 'Reed'] });
	});

	it.each(['Evening show, Friday', 'Hello Harbour Tour', 'Best of the Mill', 'Dear Green Place'])(
		'is no greeting where it reads as a title: %s',
		(title) => {
			expect(whole(`${title}\n\n1. Kiln\n2. Reed\n`)).toMatchObject({ title, told: [] });
		},
	);

	it('is a song where it stands among the songs', () => {
		expect(whole('Hello Harbour\nKiln\nCheers, Mate\n').songs).toEqual([
			'Hello Harbour',
			'Kiln',
			'Cheers, Mate',
		]);
		expect(whole('1. Hey, Harbour\n2. Kiln\n3. Thanks, Lou\n').songs).toHaveLength(3);
	});
});
