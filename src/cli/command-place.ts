// Where a command line names its command. Apart from what is done with it, since which script to load is
// decided by it before anything else is there.

/** Where the command's name stands: the first word that is neither an option nor the folder of `--data`. */
export function commandPlace(argv: readonly string[]): number | null {
	for (let index = 0; index < argv.length; index += 1) {
		const word = argv[index] ?? '';
		if (word === '--') return null;
		if (word === '--data') index += 1;
		else if (!word.startsWith('-')) return index;
	}
	return null;
}
