// The first code of the program as one file, which Node's single-executable form runs. It is small, since where
// the terminal is to be watched it is loaded twice; the program itself lies beside it, with its compiled code.

import { getRawAsset } from 'node:sea';
import { isatty } from 'node:tty';
import { pathToFileURL } from 'node:url';
import { Script } from 'node:vm';
import { insideProgram } from './carried-file.ts';
import { isWatched, takesTerminal, watchTerminal } from './watch-terminal.ts';

/** The program's text is a function of how it gets Node's modules, where it seems to lie, and who takes it. */
type ProgramText = (
	load: typeof process.getBuiltinModule,
	url: string,
	take: (program: Promise<Program>) => void,
) => void;

type Program = { readonly main: (argv: readonly string[]) => Promise<void> };

/** Input and output of a process (POSIX). */
const INPUT = 0;
const OUTPUT = 1;

// At the first of these Node would open a debugger for everybody on this machine, at the second it would end.
for (const signal of ['SIGUSR1', 'SIGUSR2'] as const) process.on(signal, () => {});

const argv = process.argv.slice(2);
const isOnTerminal = takesTerminal(argv) && isatty(INPUT) && isatty(OUTPUT);
if (isOnTerminal && !isWatched(process.env)) watchTerminal(argv, () => startProgram(argv));
else startProgram(argv);

function startProgram(words: readonly string[]): void {
	const filename = insideProgram('dist/rackside.js');
	const code = Buffer.from(getRawAsset('code'));
	const script = new Script(Buffer.from(getRawAsset('program')).toString('latin1'), {
		filename,
		// Only where the machine that built it is like the one that runs it.
		...(code.length > 0 ? { cachedData: code } : {}),
	});
	const program: ProgramText = script.runInThisContext();
	program(process.getBuiltinModule, pathToFileURL(filename).href, async (loaded) =>
		(await loaded).main(words),
	);
}
