// Where a command line becomes a run of the program.

import { outputLost } from '../words/program.ts';
import { EXIT } from './exit-code.ts';
import { ensureHome } from './home.ts';
import { processIo } from './io.ts';
import { runCommandLine } from './run-command-line.ts';

/** What a shell reports of a program whose reader went away (128 and SIGPIPE's 13). */
const NOBODY_READS = 141;

/** Does what `argv`, without Node and the script's path, asks for. */
export async function main(argv: readonly string[]): Promise<void> {
	const io = processIo((code) => {
		// `rackside plan show.yaml | head` is no fault of anybody's.
		if (code === 'EPIPE') process.exit(NOBODY_READS);
		io.complain(`${outputLost(code)}\n`);
		process.exit(EXIT.unusable);
	});
	ensureHome();
	process.exitCode = await runCommandLine(argv, io);
}
