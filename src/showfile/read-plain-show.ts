// A show without the YAML library, which takes longer to start than all else together. Most shows are
// written plainly and have no fault.

import type { LoadFile } from './join-files.ts';
import { readPlainYaml } from './read-plain-yaml.ts';
import { type FilesReading, showFromFiles } from './show-from-files.ts';

/** The show in `mainFile`, deep-frozen; null where a fault or unusual YAML asks for the whole reader. */
export function readPlainShow(load: LoadFile, mainFile: string): FilesReading | null {
	let hasReadAll = true;
	const reading = showFromFiles({
		load,
		mainFile,
		readYaml: (file, text) => {
			const root = readPlainYaml(file, text);
			if (!root) hasReadAll = false;
			return { root, problems: [] };
		},
	});
	return hasReadAll && reading.show !== null ? reading : null;
}
