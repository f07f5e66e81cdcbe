// The first file that Node reads. It checks Node's version before anything is loaded that an old Node
// could not read, so it imports next to nothing up front.

import { loadProgram } from './load-program.ts';
import { nodeVersionComplaint } from './node-version.ts';

/** The scripts' names, which the build puts here. */
declare const SCRIPTS: { readonly whole: string; readonly desk: string };

const complaint = nodeVersionComplaint(process.versions.node);
if (complaint === undefined) {
	const argv = process.argv.slice(2);
	const { url, dirname: folder } = import.meta;
	const entry = { url, folder, load: (specifier: string) => import(specifier) };
	await loadProgram({ entry, scripts: SCRIPTS, argv }).main(argv);
} else {
	process.stderr.write(`${complaint}\n`);
	process.exitCode = 2;
}
