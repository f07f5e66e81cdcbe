// The first code of the program as one file, which Node's single-executable form runs. It is small, since where
// the terminal is to be watched it is loaded twice; the program itself lies beside it, with its compiled code.

import { getRawAsset } from 'node:sea';
import { pathToFileURL } from 'node:url';
import { Script } from 'node:vm';
import { insideProgram } from './carried-file.ts';
import { readsShowOnly } from './reads-show-only.ts';
import { isWatched, takesTerminal } from './takes-terminal.ts';

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
if (takesTerminal(argv) && !isWatched(process.env)) watchIfOnTerminal();
else startProgram(argv);

/** What is needed to watch takes long to load, and a start that only prints needs none of it. */
async function watchIfOnTerminal(): Promise<void> {
	const { isatty } = await import('node:tty');
	if (!isatty(INPUT) || !isatty(OUTPUT)) return startProgram(argv);
	const { watchTerminal } = await import('./watch-terminal.ts');
	watchTerminal(argv, () => startProgram(argv));
}

function startProgram(words: readonly string[]): void {
	const filename = insideProgram('dist/rackside.js');
	// A text is read to its end at each start, whatever of it is run.
	const name = readsShowOnly(words) ? 'shows' : 'program';
	const code = Buffer.from(getRawAsset(`${name}-code`));
	const script = new Script(Buffer.from(getRawAsset(name)).toString('latin1'), {
		filename,
		// Only where the machine that built it is like the one that runs it.
		...(code.length > 0 ? { cachedData: code } : {}),
	});
	const program: ProgramText = script.runInThisContext();
	program(process.getBuiltinModule, pathToFileURL(filename).href, async (loaded) =>
		(await loaded).main(words),
	);
}
