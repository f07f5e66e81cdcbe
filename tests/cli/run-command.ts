// A command as a user types it, with no terminal: its exit code, and what it printed where.

import { runCommandLine } from '../../src/cli/run-command-line.ts';

export type CommandPlace = {
	/** The folder that it is typed in. */
	readonly cwd: string;
	/** The data folder. */
	readonly data: string;
	readonly wallMs?: number;
	/** Where programs are looked for; nowhere when left out. */
	readonly path?: string;
};

/** Runs the command line in this process. */
export async function runCommand(
	{ cwd, data, wallMs = 0, path }: CommandPlace,
	...argv: readonly string[]
): Promise<{ readonly code: number; readonly out: string; readonly err: string }> {
	let out = '';
	let err = '';
	const code = await runCommandLine([...argv], {
		write: (text) => {
			out += text;
		},
		complain: (text) => {
			err += text;
		},
		env: { RACKSIDE_DATA: data, PATH: path },
		cwd,
		isInputTerminal: false,
		isOutputTerminal: false,
		wallMs: () => wallMs,
	});
	return { code, out, err };
}
