// A show without the YAML library, which takes longer to start than all else together. Most shows are
// written plainly and have no fault.

import type { LoadFile } from './join-files.ts';
import { readPlainYaml } from './read-plain-yaml.ts';
import type { Show } from './show.ts';
import { showFromFiles } from './show-from-files.ts';

/** The show in `mainFile`, deep-frozen; null where a fault or unusual YAML asks for the whole reader. */
export function readPlainShow(load: LoadFile, mainFile: string): Show | null {
	let isPlain = true;
	const readYaml = (file: string, text: string) => {
		const root = readPlainYaml(file, text);
		if (!root) isPlain = false;
		return { root, problems: [] };
	};
	const { show } = showFromFiles({ load, mainFile, readYaml });
	return isPlain ? show : null;
}
