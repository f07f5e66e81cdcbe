// Where a command line becomes a run of the program.

/** Does what `argv`, without Node and the script's path, asks for. */
export async function main(_argv: string[]): Promise<void> {
	process.stdout.write('rackside\n');
}
