// `rackside new`: a show file by questions, from a set list, or from an earlier night.

import { resolve } from 'node:path';
import { cleanText } from '../../base/clean-text.ts';
import { realDisk } from '../../disk/real-disk.ts';
import { COMMAND_WORDS } from '../../words/commands.ts';
import { ANOTHER_NAME, fileIsThere, LIST_AND_NIGHT, LIST_OR_NIGHT } from '../../words/set-list.ts';
import { type CliCommand, optionText } from '../command.ts';
import type { Io } from '../io.ts';
import { NO_LIST } from '../new/list-source.ts';
import { addByQuestions, newByQuestions } from '../new/new-by-questions.ts';
import { bringsList, newFromList } from '../new/new-from-list.ts';
import { newFromNight } from '../new/new-from-night.ts';
import { tellProblems } from '../tell-problems.ts';

const { about, options } = COMMAND_WORDS.new;

export const newCommand: CliCommand = {
	usage: 'new [FILE]',
	about: [about],
	example: 'rackside new friday.yaml --songs list.csv',
	options: {
		songs: { value: 'FILE', words: options.songs },
		list: { value: 'FILE', words: options.list },
		column: { value: 'HEADING=PLAYER', words: options.column, isRepeated: true },
		rack: { value: 'FILE', words: options.rack },
		add: { words: options.add },
		from: { value: 'NIGHT', words: options.from },
		json: { words: options.json },
	},
	words: { least: 0, most: 1 },
	run: (request, io) => {
		const file = request.words[0] ?? null;
		const from = optionText(request, 'from');
		if (bringsList(request)) {
			if (from === null) return newFromList(request, io);
			return tellProblems(
				[{ code: 'list-and-night', what: LIST_AND_NIGHT, hint: LIST_OR_NIGHT }],
				io,
			);
		}
		const canAsk = io.isInputTerminal && io.isOutputTerminal && request.options.json !== true;
		if (from === null && !canAsk) return tellProblems([NO_LIST], io);
		const isThere = file !== null && realDisk.stat(resolve(io.cwd, file)) !== null;
		if (isThere) return from === null ? addByQuestions(file, request, io) : tellThere(file, io);
		return from === null
			? newByQuestions({ file }, request, io)
			: newFromNight({ file, from }, request, io);
	},
};

function tellThere(file: string, io: Io): number {
	const where = { file: cleanText(file) };
	return tellProblems(
		[{ code: 'file-exists', what: fileIsThere(true), where, hint: ANOTHER_NAME }],
		io,
	);
}
