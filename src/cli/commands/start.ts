// `rackside` alone: the unfinished night, the last show and the example show, newest first. Without a
// terminal it prints the run sheet of the example, so that a first look never fails.

import { existsSync } from 'node:fs';
import { createInterface } from 'node:readline/promises';
import { cleanText } from '../../base/clean-text.ts';
import { showIdentity } from '../../disk/paths.ts';
import { realDisk } from '../../disk/real-disk.ts';
import { openSettings } from '../../disk/settings.ts';
import { COMMAND_WORDS } from '../../words/commands.ts';
import { EXAMPLE_SHEET, WHICH } from '../../words/program.ts';
import type { CliCommand, Request } from '../command.ts';
import { exampleShowPath } from '../example-show.ts';
import { EXIT } from '../exit-code.ts';
import type { Io } from '../io.ts';
import { runLive } from '../live.ts';
import { searchedNights } from '../night-places.ts';
import { placesOf } from '../places.ts';
import type { Choice } from '../start-choices.ts';
import { startChoices } from '../start-choices.ts';

export const startCommand: CliCommand = {
	usage: '',
	about: [COMMAND_WORDS.start.about],
	example: 'rackside',
	options: {},
	words: { least: 0, most: 0 },
	run: async (request, io) => {
		if (!io.isInputTerminal || !io.isOutputTerminal) return printSheet(request, io);
		const choices = await choicesOf(request, io);
		const [only] = choices;
		// A night left open is never gone on with unasked.
		const chosen = choices.length === 1 && only?.isNew ? only : await ask(choices, io);
		if (!chosen) return EXIT.fine;
		return runLive({ file: chosen.file, request, speed: 1, isRehearsal: false }, io);
	},
};

async function printSheet(request: Request, io: Io): Promise<number> {
	const { SHOW_COMMANDS } = await import('../show-commands.ts');
	const path = exampleShowPath();
	const sheet = { words: [path], options: { ...request.options, sheet: true } } as const;
	const code = await SHOW_COMMANDS.plan.run(sheet, io);
	if (code === EXIT.fine) {
		io.write(`\n${EXAMPLE_SHEET}\n`);
	}
	return code;
}

async function choicesOf(request: Request, io: Io): Promise<readonly Choice[]> {
	const places = placesOf(request, io);
	const { lastShow } = (await openSettings({ disk: realDisk, folder: places.settings })).values;
	return startChoices({
		nights: searchedNights(places, io).nights,
		lastShow: lastShow !== null && existsSync(lastShow) ? lastShow : null,
		example: showIdentity(exampleShowPath()),
	});
}

async function ask(choices: readonly Choice[], io: Io): Promise<Choice | null> {
	for (const [index, { words }] of choices.entries())
		io.write(`  ${index + 1}  ${cleanText(words)}\n`);
	const asking = createInterface({ input: process.stdin, output: process.stdout });
	try {
		for (;;) {
			const answer = (await asking.question(WHICH)).trim();
			if (/^q/i.test(answer)) return null;
			const chosen = choices[answer === '' ? 0 : Number(answer) - 1];
			if (chosen) return chosen;
		}
	} catch {
		// The input ended, or Ctrl-C: nothing was wanted.
		return null;
	} finally {
		asking.close();
	}
}
