// A show by the YAML library, which knows all of the language and the place of every fault.

import type { LoadFile } from './join-files.ts';
import { readYaml } from './read-yaml.ts';
import { type FilesReading, showFromFiles } from './show-from-files.ts';

/** The show in `mainFile`, deep-frozen, or its problems. */
export function readShow(load: LoadFile, mainFile: string): FilesReading {
	return showFromFiles({ load, mainFile, readYaml });
}
