// Where a command line becomes a run of the program.

import { outputLost } from '../words/program.ts';
import { EXIT } from './exit-code.ts';
import { ensureHome } from './home.ts';
import { type ProcessIo, processIo } from './io.ts';
import { runCommandLine } from './run-command-line.ts';
import { takesTerminal } from './single/takes-terminal.ts';

/** What a shell reports of a program whose reader went away (128 and SIGPIPE's 13). */
const NOBODY_READS = 141;

/** Does what `argv`, without Node and the script's path, asks for, and ends what only prints. */
export async function main(argv: readonly string[]): Promise<void> {
	const io = await answer(argv);
	// By itself Node ends when it has compiled better, and cleaned up behind, what is never run again: after `plan`
	// that takes half as long as a bare start.
	if (!takesTerminal(argv) && io.isAllSent()) process.exit();
}

/** Does what `argv` asks for, and sets the exit code. */
export async function answer(argv: readonly string[]): Promise<ProcessIo> {
	const io = processIo((code) => {
		// `rackside plan show.yaml | head` is no fault of anybody's.
		if (code === 'EPIPE') process.exit(NOBODY_READS);
		io.complain(`${outputLost(code)}\n`);
		process.exit(EXIT.unusable);
	});
	ensureHome();
	process.exitCode = await runCommandLine(argv, io);
	return io;
}
