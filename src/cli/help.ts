// The help of the program and of each command, made from the records that also run them.

import { wrapWords } from '../base/wrap-words.ts';
import { HELP, PROGRAM } from '../words/commands.ts';
import type { CliCommand, ListedCommand, Option } from './command.ts';
import { COMMON_OPTIONS } from './command.ts';

/** The help of a start without a command: every command with its words. */
export function programHelp(
	commands: Readonly<Record<string, ListedCommand>>,
	start: ListedCommand,
): string {
	const rows = [start, ...Object.values(commands)].map(
		({ usage, words }): Row => [`rackside ${usage}`.trimEnd(), words],
	);
	return lines([
		...wrapWords(PROGRAM, WIDTH),
		'',
		...columns(rows),
		'',
		HELP.all,
		...columns(optionRows(COMMON_OPTIONS)),
		'',
		HELP.begin,
		HELP.one,
		HELP.version,
	]);
}

/** The help of one command: usage, what it does, its options, an example. */
export function commandHelp(command: CliCommand): string {
	const options = optionRows({ ...command.options, ...COMMON_OPTIONS });
	return lines([
		`rackside ${command.usage}`.trimEnd(),
		'',
		...wrapWords(command.about.join(' '), WIDTH),
		'',
		...columns(options),
		'',
		HELP.example(command.example),
	]);
}

/** What the narrowest usual terminal shows without breaking a line. */
const WIDTH = 80;

type Row = readonly [string, string];

function optionRows(options: Readonly<Record<string, Option>>): Row[] {
	return Object.entries(options).map(([name, { value, words }]) => [
		`--${name}${value === undefined ? '' : ` ${value}`}`,
		words,
	]);
}

function columns(rows: readonly Row[]): string[] {
	const width = Math.max(...rows.map(([left]) => left.length));
	return rows.flatMap(([left, right]) =>
		wrapWords(right, WIDTH - width - 4).map(
			(line, index) => `  ${(index === 0 ? left : '').padEnd(width)}  ${line}`,
		),
	);
}

function lines(rows: readonly string[]): string {
	return rows.map((row) => `${row}\n`).join('');
}
