// The folders below `words` speak in codes: what a person reads of them is made in `words` alone. Held here by
// looking for two words in a row in whatever stands in quotes; names that are data are given by file.

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';

const ROOT = join(import.meta.dirname, '../..');
const FOLDERS = ['base', 'tuning', 'journal', 'showfile', 'session', 'plan', 'disk'];

/** Files whose quoted words are names of things, not sentences; what a show calls its things among them. */
const NAMES = new Set([
	'src/tuning/named-tunings.ts',
	'src/tuning/capo-words.ts',
	'src/tuning/string-material.ts',
	'src/showfile/shown-names.ts',
	'src/showfile/json-schema.ts',
]);

/** Comments, then what is thrown, which is a bug of ours and never told, then what stands in quotes. */
const PIECES =
	/\/\/[^\n]*|\/\*[\s\S]*?\*\/|Error\(\s*(?:'(?:\\.|[^'\\\n])*'|`(?:\\.|[^`\\])*`)|'(?:\\.|[^'\\\n])*'|"(?:\\.|[^"\\\n])*"|`(?:\\.|[^`\\])*`/g;
const TWO_WORDS = /[a-z]{2,}[,;:]? [a-z]{2,}/;

/** What in a file's code reads like a sentence. */
function sentencesIn(code: string): readonly string[] {
	return (code.match(PIECES) ?? [])
		.filter((piece) => /^['"`]/.test(piece))
		.map((piece) => piece.replaceAll(/\$\{[^}]*\}/g, '…'))
		.filter((piece) => TWO_WORDS.test(piece));
}

function filesIn(folder: string): readonly string[] {
	return readdirSync(join(ROOT, 'src', folder), { recursive: true, encoding: 'utf8' })
		.filter((name) => /\.tsx?$/.test(name))
		.map((name) => `src/${folder}/${name.replaceAll('\\', '/')}`);
}

test.each(FOLDERS)('%s holds no sentence', (folder) => {
	const found = filesIn(folder)
		.filter((file) => !NAMES.has(file))
		.flatMap((file) =>
			sentencesIn(readFileSync(join(ROOT, file), 'utf8')).map((words) => `${file}: ${words}`),
		);
	expect(found).toEqual([]);
});

test('one that is planted is found, what is thrown and what is a comment is not', () => {
	const planted = [
		"// 'not this one'",
		"throw new Error('nor this one');",
		"const code = 'not-ready';",
		"return no('No hand-over is open.');",
		`return \`\${name} is out tonight\`;`,
	].join('\n');
	expect(sentencesIn(planted)).toEqual(["'No hand-over is open.'", '`… is out tonight`']);
});
