// The manual page, in the roff macros that every `man` knows (man(7)), from the records that also run the commands.

import { wrapWords } from '../../base/wrap-words.ts';
import { COMMAND_WORDS, HELP, PROGRAM } from '../../words/commands.ts';
import { MANUAL } from '../../words/manual.ts';
import type { CliCommand, CommandList, Option } from '../command.ts';
import { COMMON_OPTIONS } from '../command.ts';

/** With what is escaped, lines stay within the 80 bytes that roff's own style asks for. */
const SOURCE_WIDTH = 64;

/** The page of the program with all its commands. */
export async function manualPage({ commands }: CommandList): Promise<string> {
	const loaded = await Promise.all(Object.values(commands).map(({ load }) => load()));
	return [
		`.TH RACKSIDE 1 "" rackside "${roff(MANUAL.volume)}"`,
		'.SH NAME',
		`rackside \\- ${roff(MANUAL.name)}`,
		'.SH SYNOPSIS',
		'.B rackside',
		`.RI [ ${roff(MANUAL.command)} ]`,
		'.RI [ options ]',
		'.SH DESCRIPTION',
		roff(PROGRAM),
		'.PP',
		roff(COMMAND_WORDS.start.about),
		'.SH COMMANDS',
		...loaded.flatMap(commandLines),
		'.SH OPTIONS',
		roff(HELP.all),
		...optionLines(COMMON_OPTIONS),
		...MANUAL.sections.flatMap(({ title, rows }) => [
			`.SH ${roff(title)}`,
			...rows.flatMap(([term, told]) => [`.TP`, `.B ${roff(term)}`, roff(told)]),
		]),
		'',
	].join('\n');
}

function commandLines({ usage, about, options, example }: CliCommand): string[] {
	return [
		`.SS rackside ${roff(usage)}`,
		roff(about.join(' ')),
		...optionLines(options),
		'.PP',
		roff(HELP.example(example)),
	];
}

function optionLines(options: Readonly<Record<string, Option>>): string[] {
	return Object.entries(options).flatMap(([name, { value, words }]) => [
		'.TP',
		value === undefined
			? `.B ${roff(`--${name}`)}`
			: `.BI "${roff(`--${name}`)} " "${roff(value)}"`,
		roff(words),
	]);
}

/** Text as roff prints it as it stands, in lines that it fills anew; none of them begins with a request. */
function roff(text: string): string {
	return wrapWords(text, SOURCE_WIDTH)
		.map((line) => escaped(line).replace(/^\./, '\\&.'))
		.join('\n');
}

function escaped(text: string): string {
	return text
		.replaceAll('\\', '\\e')
		.replaceAll('-', '\\-')
		.replaceAll('"', '\\(dq')
		.replaceAll("'", '\\(aq')
		.replaceAll(/[^ -~]/gu, (sign) => `\\[u${hex(sign)}]`);
}

function hex(sign: string): string {
	return (sign.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0');
}
