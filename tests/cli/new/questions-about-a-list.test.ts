// The questions about a set list, answered line by line as on a terminal.

import { expect, it } from 'vitest';
import { askAboutList } from '../../../src/cli/new/ask-about-list.ts';
import { EMPTY_RACK } from '../../../src/setlist/list-reading.ts';
import { readText } from '../../setlist/read-list.ts';

async function asked(table: string, ...lines: readonly string[]) {
	const { list } = readText(table, { form: 'table' });
	const questions: string[] = [];
	const { reading } = await askAboutList(list, EMPTY_RACK, async (question) => {
		questions.push(question);
		return lines[questions.length - 1] ?? null;
	});
	return {
		questions,
		reading,
		hands: reading.songs.map(({ hands }) => hands.ash?.kind ?? 'keeps'),
	};
}

const MARKS = 'Song,Ash\nKiln,Amber DD\nReed,x\nTin,X\nLamp,?\n';

it('one question is for all cells with the same mark', async () => {
	const { questions, hands } = await asked(MARKS, '1', '', '');
	expect(hands).toEqual(['named', 'none', 'none', 'keeps']);
	expect(questions.filter((one) => /"x"/i.test(one))).toHaveLength(1);
	expect(questions[0]).toContain('wherever it stands');
});

it('u takes the last answer back, one after another', async () => {
	const { questions, reading, hands } = await asked(MARKS, '1', 'u', '2', 'Coal', 'u', 'Amber', '');
	expect(questions.map((one) => /"(.*?)"/.exec(one)?.[1])).toEqual([
		'x',
		'?',
		'x',
		'?',
		undefined,
		'?',
		undefined,
	]);
	expect(hands).toEqual(['named', 'keeps', 'keeps', 'named']);
	expect(reading.instruments.map(({ name }) => name)).toEqual(['Amber']);
});

it('kinds are asked once', async () => {
	const { questions, reading } = await asked(
		'Song,Ash\nKiln,Amber DD\nReed,Coal DD\n',
		'Amber bass',
		'',
	);
	expect(questions).toHaveLength(1);
	expect(reading.instruments.map(({ kind }) => kind)).toEqual(['bass-4', 'electric-6']);
});
