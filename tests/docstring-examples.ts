// The examples in the docstrings of a folder and its rooms: every line `call // => value` under an `@example`, with
// what the folder exports to run them by. A test of each folder runs them.

import { readdirSync, readFileSync } from 'node:fs';

export type Example = { readonly file: string; readonly call: string; readonly value: string };

export type FolderExamples = {
	readonly examples: readonly Example[];
	/** Exported functions that have no example. */
	readonly functionsWithout: readonly string[];
	/** What an expression of an example comes to. */
	readonly evaluate: (expression: string) => unknown;
};

/** The examples of all files of a folder; `given` are further names that they may use. */
export async function docstringExamples(
	folder: URL,
	given: Readonly<Record<string, unknown>> = {},
): Promise<FolderExamples> {
	const files = readdirSync(folder, { recursive: true, encoding: 'utf8' })
		.filter((file) => file.endsWith('.ts'))
		.toSorted();
	const modules = await Promise.all(files.map((file) => import(new URL(file, folder).href)));
	const exported: Readonly<Record<string, unknown>> = Object.assign({}, ...modules);
	const scope = { ...exported, ...given };
	const examples = files.flatMap((file) => examplesIn(folder, file));
	const shown = examples.map(({ call }) => call.split('(')[0]?.replace(/^new /, ''));
	return {
		examples,
		functionsWithout: Object.keys(exported)
			.filter((name) => typeof exported[name] === 'function')
			.filter((name) => !shown.includes(name)),
		evaluate: (expression) =>
			new Function(...Object.keys(scope), `return (${expression});`)(...Object.values(scope)),
	};
}

function examplesIn(folder: URL, file: string): readonly Example[] {
	const comments = readFileSync(new URL(file, folder), 'utf8').match(/\/\*\*.*?\*\//gs) ?? [];
	return comments.flatMap((comment) =>
		(comment.split('@example')[1] ?? '').split('\n').flatMap((line) => {
			const [, call, value] = /^\s*\*\s+(\S.*?)\s+\/\/ => (.+)$/.exec(line) ?? [];
			return call === undefined || value === undefined ? [] : [{ file, call, value }];
		}),
	);
}
