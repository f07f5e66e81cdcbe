// Compiled code in files, one for each command, since each uses another part of the program. Code is run
// without being looked at, so damage has to be noticed here: a file holds everything twice, which is
// compared in less time than any checksum takes.

import { readdirSync, readFileSync, renameSync, unlinkSync, writeFileSync } from 'node:fs';
import { compileCacheFolders } from './compile-cache-folders.ts';
import { compiledCodeFolder } from './keep-compiled-code.ts';

export type CodeKept = {
	/** The script that the code is of, named anew whenever it changes. */
	readonly script: string;
	/** All scripts of the same build. */
	readonly build: readonly string[];
	/** What else it depends on, and which part of the script it is. */
	readonly traits: readonly string[];
	/** Where the build left some. */
	readonly installed: string;
	readonly environment: Readonly<Record<string, string | undefined>>;
};

/** What the user's own starts kept, else what the build did; undefined where that is none or damaged. */
export function readCode(kept: CodeKept): Buffer | undefined {
	const own = compileCacheFolders(kept.environment).at(-1);
	return (
		(own && readTwice(`${own}/${nameOf(kept)}`)) || readTwice(`${kept.installed}/${nameOf(kept)}`)
	);
}

/** Keeps code in the user's folder, and takes out what is there of other builds of the program. */
export function writeCode(kept: CodeKept, code: Buffer): void {
	const folder = compiledCodeFolder(kept.environment);
	if (folder === null) return;
	try {
		const path = `${folder}/${nameOf(kept)}`;
		// Named into place when it is whole: another start may be reading.
		const part = `${path}.${process.pid}`;
		writeFileSync(part, Buffer.concat([code, code]), { flag: 'wx', mode: 0o600 });
		renameSync(part, path);
		const isOther = (name: string) =>
			name.endsWith(ENDING) && !kept.build.some((script) => name.startsWith(script));
		for (const name of readdirSync(folder).filter(isOther)) unlinkSync(`${folder}/${name}`);
	} catch {
		// A full disk, or a folder that takes no files: the next start compiles again.
	}
}

const ENDING = '.code';

function nameOf({ script, traits }: CodeKept): string {
	const words = [script, ...traits].map((trait) => trait.replaceAll(/[^\w.]+/g, '-'));
	return words.join('-').slice(0, 120) + ENDING;
}

function readTwice(path: string): Buffer | undefined {
	try {
		const twice = readFileSync(path);
		const code = twice.subarray(0, twice.length / 2);
		return code.equals(twice.subarray(code.length)) ? code : undefined;
	} catch {
		return undefined;
	}
}
