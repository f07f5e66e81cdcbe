// A show without the YAML library, which takes longer to start than all else together. Most shows are
// written plainly and have no fault.

import { joinFiles, type LoadFile } from './join-files.ts';
import { readPlainYaml } from './read-plain-yaml.ts';
import type { Show } from './show.ts';
import { showFromFiles } from './show-from-files.ts';
import type { SourceNode } from './source-node.ts';

/** The show in `mainFile`, deep-frozen; null where a fault or unusual YAML asks for the whole reader. */
export function readPlainShow(load: LoadFile, mainFile: string): Show | null {
	const plain = plainReader();
	const { show } = showFromFiles({ load, mainFile, readYaml: plain.readYaml });
	return plain.hasReadAll() ? show : null;
}

/** The files of a show as one tree with their places; null where unusual YAML asks for the whole reader. */
export function readPlainTree(load: LoadFile, mainFile: string): SourceNode | null {
	const plain = plainReader();
	const { root } = joinFiles({ load, mainFile, readYaml: plain.readYaml });
	return plain.hasReadAll() ? root : null;
}

function plainReader() {
	let hasReadAll = true;
	return {
		readYaml: (file: string, text: string) => {
			const root = readPlainYaml(file, text);
			if (!root) hasReadAll = false;
			return { root, problems: [] };
		},
		hasReadAll: () => hasReadAll,
	};
}
