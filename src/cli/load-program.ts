// The program as the build makes it, one script or another by the command, with the code that an earlier
// start compiled of it. Node's cache of compiled code holds what a file needs to be loaded; here is kept
// what a command used besides, and compiling that anew is most of what a short command takes.

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { setFlagsFromString } from 'node:v8';
import { Script } from 'node:vm';
import { commandPlace } from './command-place.ts';
import { DESK_COMMANDS } from './desk-commands.ts';
import { EXIT } from './exit-code.ts';
import { type CodeKept, readCode, writeCode } from './kept-code.ts';

/** What the script gives. */
export type Program = { readonly main: (argv: readonly string[]) => Promise<void> };

/** The module that the scripts lie beside, and as which it imports and requires. */
export type Entry = {
	readonly url: string;
	readonly folder: string;
	readonly load: (specifier: string) => Promise<unknown>;
};

export type ProgramAsked = {
	readonly entry: Entry;
	/** All commands, and those that are waited for alone. */
	readonly scripts: { readonly whole: string; readonly desk: string };
	readonly argv: readonly string[];
};

type ScriptBody = (require: NodeJS.Require, module: { exports: unknown }, entry: Entry) => void;

/** By then the live screen has been drawn; it is left much later, when the code of its start is gone. */
const SETTLED_MS = 3000;

/** The program, ready to run. */
export function loadProgram({ entry, scripts, argv }: ProgramAsked): Program {
	const { execArgv, env, version, platform, arch } = process;
	const word = commandWord(argv);
	const isDesk = DESK_COMMANDS.includes(word);
	if (isDesk) optimizeLater(version);
	const script = isDesk ? scripts.desk : scripts.whole;
	const kept: CodeKept = {
		script,
		build: Object.values(scripts),
		traits: [word, version, platform, arch, ...execArgv, env.NODE_OPTIONS ?? ''],
		installed: `${entry.folder}/code`,
		environment: env,
	};
	const filename = `${entry.folder}/${script}`;
	const cachedData = readCode(kept);
	const compiled = new Script(readFileSync(filename, 'latin1'), {
		filename,
		...(cachedData && { cachedData }),
	});
	if (cachedData === undefined || compiled.cachedDataRejected) keepWhenUsed(compiled, kept);
	const module = { exports: {} as Program };
	(compiled.runInThisContext() as ScriptBody)(createRequire(entry.url), module, entry);
	return module.exports;
}

/**
 * Has V8 wait for 3000 calls of a function, not 400, before it makes fast code of it: in a command of some
 * tenths of a second, making it took a quarter of the processor's time and saved less. What is counted
 * changes with V8, so this is only said to the Node it was measured on.
 */
function optimizeLater(version: string): void {
	if (version.startsWith('v24.')) setFlagsFromString('--invocation-count-for-maglev=3000');
}

function keepWhenUsed(compiled: Script, kept: CodeKept): void {
	let isKept = false;
	const keep = (code: number): void => {
		if (!isKept && code !== EXIT.unusable) writeCode(kept, compiled.createCachedData());
		isKept = true;
	};
	setTimeout(keep, SETTLED_MS, EXIT.fine).unref();
	process.once('exit', keep);
}

function commandWord(argv: readonly string[]): string {
	const place = commandPlace(argv);
	if (place === null) return argv.includes('--help') ? 'help' : 'start';
	return argv[place] ?? '';
}
