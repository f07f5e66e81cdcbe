// A command line from its first word to an exit code: finds the command, reads its options, runs it,
// and turns problems into sentences.

import { cleanText } from '../base/clean-text.ts';
import type { Problem } from '../base/problem.ts';
import { faultWords, LEFT_UNCHANGED } from '../words/program.ts';
import { HELP_LISTS_COMMANDS, NO_COMMAND, toOpenShow } from '../words/requests.ts';
import type { CliCommand, ListedCommand } from './command.ts';
import { COMMANDS, START } from './command-list.ts';
import { commandPlace } from './command-place.ts';
import { EXIT } from './exit-code.ts';
import { commandHelp, programHelp } from './help.ts';
import type { Io } from './io.ts';
import { LeftQuestion } from './left-question.ts';
import { notAmong } from './not-among.ts';
import { readRequest } from './read-request.ts';
import { tellProblems } from './tell-problems.ts';
import { undecodedNames } from './undecoded-names.ts';
import { writeTrace } from './write-trace.ts';

/** Does what `argv`, without Node and the script's path, asks for; gives back the exit code. */
export async function runCommandLine(argv: readonly string[], io: Io): Promise<number> {
	try {
		return await runFound(argv, io);
	} catch (error) {
		if (error instanceof LeftQuestion) {
			io.complain(`${LEFT_UNCHANGED}\n`);
			return EXIT.interrupted;
		}
		// What a user can cause comes back as problems; whatever is thrown this far is a bug.
		const trace = writeTrace(error, io);
		io.complain(`${faultWords(trace, false)}\n`);
		return EXIT.bug;
	}
}

async function runFound(argv: readonly string[], io: Io): Promise<number> {
	const place = commandPlace(argv);
	const word = place === null ? null : (argv[place] ?? '');
	const asksHelp = argv.some((one) => one === '--help' || one === '-h');
	if (place !== null && word === 'help') return help(argv.slice(place + 1), io);
	if (place === null && asksHelp) return help([], io);
	if (word === null && argv.includes('--version')) {
		const { programVersion } = await import('./machine.ts');
		io.write(`rackside ${programVersion() ?? ''}\n`);
		return EXIT.fine;
	}
	const listed = word === null ? START : commandCalled(word);
	if (!listed) return tellProblems([unknownCommand(word ?? '')], io);
	const rest = argv.filter((_, index) => index !== place);
	return runOne(await listed.load(), rest, io);
}

/** Of the command that is named first, else of the program. */
async function help(words: readonly string[], io: Io): Promise<number> {
	const name = words.find((one) => !one.startsWith('-'));
	const listed = name === undefined ? START : commandCalled(name);
	if (!listed) return tellProblems([unknownCommand(name ?? '')], io);
	io.write(listed === START ? programHelp(COMMANDS, START) : commandHelp(await listed.load()));
	return EXIT.fine;
}

function commandCalled(name: string): ListedCommand | undefined {
	return Object.hasOwn(COMMANDS, name) ? COMMANDS[name] : undefined;
}

async function runOne(command: CliCommand, args: readonly string[], io: Io): Promise<number> {
	const { request, problems } = readRequest(command, args);
	if (problems.length > 0) return tellProblems(problems, io);
	if (request.options.help !== undefined) {
		io.write(commandHelp(command));
		return EXIT.fine;
	}
	const undecoded = undecodedNames(request, io);
	if (undecoded.length > 0) return tellProblems(undecoded, io);
	return command.run(request, io);
}

function unknownCommand(word: string): Problem {
	const unknown = { code: 'unknown-command', what: NO_COMMAND, found: word };
	if (/\.ya?ml$/i.test(word)) {
		return { ...unknown, found: cleanText(word), hint: toOpenShow(cleanText(word)) };
	}
	return notAmong({ ...unknown, listedBy: HELP_LISTS_COMMANDS }, Object.keys(COMMANDS));
}
