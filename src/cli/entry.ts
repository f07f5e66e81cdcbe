// The first file that Node reads. It checks Node's version before anything is loaded that an old Node
// could not read, so it imports next to nothing up front.

import { keepCompiledCode } from './keep-compiled-code.ts';
import { nodeVersionComplaint } from './node-version.ts';

// At the first of these Node would open a debugger for everybody on this machine and write over the screen, at
// the second it would end.
for (const signal of ['SIGUSR1', 'SIGUSR2'] as const) process.on(signal, () => {});

const complaint = nodeVersionComplaint(process.versions.node);
if (complaint === undefined) {
	keepCompiledCode(process.env);
	const { main } = await import('./main.ts');
	await main(process.argv.slice(2));
} else {
	process.stderr.write(`${complaint}\n`);
	process.exitCode = 2;
}
