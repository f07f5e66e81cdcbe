// A show by the YAML library, which knows all of the language and the place of every fault.

import type { LoadFile } from './join-files.ts';
import { readYaml } from './read-yaml.ts';
import { type ShowReading, showFromFiles } from './show-from-files.ts';

// Loaded together with what else takes the library.
export { readYaml } from './read-yaml.ts';

/** The show in `mainFile`, deep-frozen, or its problems. */
export function readShow(load: LoadFile, mainFile: string): ShowReading {
	return showFromFiles({ load, mainFile, readYaml });
}
