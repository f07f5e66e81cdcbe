// What a command is: its words, its options, and what it does. One record serves running it, its
// help and the check of what was typed.

import { COMMON_WORDS } from '../words/commands.ts';
import type { Io } from './io.ts';

export type Option = {
	/** What stands for the value in the help; none for one that is simply given or not. */
	readonly value?: string;
	/** All values that there are, where they are few. */
	readonly oneOf?: readonly string[];
	readonly words: string;
	/** May be given several times: the values stand one a line. */
	readonly isRepeated?: true;
};

export type CliCommand = {
	/** As it is typed after the program's name, such as `plan SHOW`; empty for a start without a command. */
	readonly usage: string;
	/** Sentences under the usage. */
	readonly about: readonly string[];
	/** A whole line that can be typed. */
	readonly example: string;
	readonly options: Readonly<Record<string, Option>>;
	/** How many words go with it. */
	readonly words: { readonly least: number; readonly most: number };
	/** Gives back the exit code. */
	readonly run: (request: Request, io: Io) => Promise<number> | number;
};

/** A command by what is known of it before it is loaded. */
export type ListedCommand = {
	readonly usage: string;
	readonly words: string;
	readonly load: () => Promise<CliCommand>;
};

/** Every command by name, and what a start without one does. */
export type CommandList = {
	readonly commands: Readonly<Record<string, ListedCommand>>;
	readonly start: ListedCommand;
};

/** What was typed after a command's name. */
export type Request = {
	readonly words: readonly string[];
	/** Value of each option given; true for one without a value. */
	readonly options: Readonly<Record<string, string | true>>;
};

/** Options that every command takes. */
export const COMMON_OPTIONS: Readonly<Record<string, Option>> = {
	data: { value: 'DIR', words: COMMON_WORDS.data },
	'no-color': { words: COMMON_WORDS.noColor },
	help: { words: COMMON_WORDS.help },
};

/** For those that report. */
export const JSON_OPTION: Readonly<Record<string, Option>> = {
	json: { words: COMMON_WORDS.json },
};

/** The value of an option, or null when it was not given. */
export function optionText(request: Request, name: string): string | null {
	const value = request.options[name];
	return typeof value === 'string' ? value : null;
}
