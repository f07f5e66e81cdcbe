// From what was typed after a command to a request, or to what was wrong with it.

import { createRequire } from 'node:module';
import type * as util from 'node:util';
import { cleanText } from '../base/clean-text.ts';
import { nearestName } from '../base/nearest-name.ts';
import type { Problem } from '../base/problem.ts';
import {
	didYouMean,
	EXTRA_WORD,
	forExample,
	HELP_LISTS_OPTIONS,
	MISSING_WORD,
	needsValue,
	takesNoValue,
	UNKNOWN_OPTION,
	writtenTogether,
} from '../words/requests.ts';
import type { CliCommand, Request } from './command.ts';
import { COMMON_OPTIONS } from './command.ts';

// An import would have Node load threads, sockets and more for the other names of this module; a require does not.
const { parseArgs } = createRequire(import.meta.url)('node:util') as typeof util;

export type RequestReading = { readonly request: Request; readonly problems: readonly Problem[] };

/** The request, with the problems of it: unknown options, missing or needless values, words too many or too few. */
export function readRequest(command: CliCommand, args: readonly string[]): RequestReading {
	const known = { ...COMMON_OPTIONS, ...command.options };
	const { tokens } = parseArgs({
		args: [...args],
		strict: false,
		allowPositionals: true,
		tokens: true,
		options: Object.fromEntries(
			Object.entries(known).map(([name, option]) => [
				name,
				{
					type: option.value === undefined ? ('boolean' as const) : ('string' as const),
					...(name === 'help' && { short: 'h' }),
				},
			]),
		),
	});
	const problems: Problem[] = [];
	const options: Record<string, string | true> = {};
	const words: string[] = [];
	for (const token of tokens) {
		if (token.kind === 'positional') words.push(token.value);
		if (token.kind !== 'option') continue;
		const option = Object.hasOwn(known, token.name) ? known[token.name] : undefined;
		const problem = option
			? valueProblem(token, option.value)
			: unknownOption(token.rawName, Object.keys(known));
		if (problem) problems.push(problem);
		else {
			const before = option?.isRepeated ? options[token.name] : undefined;
			const value = token.value ?? true;
			options[token.name] = typeof before === 'string' ? `${before}\n${value}` : value;
		}
	}
	if (options.help === undefined) problems.push(...wordProblems(command, words));
	return { request: { words, options }, problems };
}

type OptionToken = {
	readonly rawName: string;
	readonly value: string | undefined;
	/** Written as `--out=FILE`. */
	readonly inlineValue: boolean | undefined;
};

function valueProblem(
	{ rawName: name, value: given, inlineValue: isInline }: OptionToken,
	wanted: string | undefined,
): Problem | null {
	if (wanted === undefined && given !== undefined) {
		return { code: 'needless-value', what: takesNoValue(name), found: cleanText(given) };
	}
	if (wanted !== undefined && (given === undefined || given === '')) {
		return { code: 'missing-value', what: needsValue(name), expected: `${name} ${wanted}` };
	}
	// `--out --force` has lost its value; a file of that name has to be meant.
	if (wanted !== undefined && !isInline && given?.startsWith('--')) {
		const expected = `${name} ${wanted}`;
		const hint = writtenTogether(`${name}=${cleanText(given)}`);
		return {
			code: 'missing-value',
			what: needsValue(name),
			found: cleanText(given),
			expected,
			hint,
		};
	}
	return null;
}

function unknownOption(name: string, known: readonly string[]): Problem {
	const near = nearestName(name.replace(/^-+/, ''), known);
	return {
		code: 'unknown-option',
		what: UNKNOWN_OPTION,
		found: cleanText(name),
		hint: near === null ? HELP_LISTS_OPTIONS : didYouMean(`--${near}`),
	};
}

function wordProblems(command: CliCommand, words: readonly string[]): Problem[] {
	const { least, most } = command.words;
	const expected = `rackside ${command.usage}`;
	if (words.length < least) {
		return [
			{
				code: 'missing-word',
				what: MISSING_WORD,
				expected,
				hint: forExample(command.example),
			},
		];
	}
	const extra = words[most];
	if (extra === undefined) return [];
	const found = cleanText(extra);
	return [{ code: 'needless-word', what: EXTRA_WORD, found, expected }];
}
