// Node's file system, for all that a command needs before it has something to say. An import of it has Node load
// streams and promises for names that nobody asked for, an eighth of a bare start; a require does not.

import type * as nodeFs from 'node:fs';
import { createRequire } from 'node:module';

/** What `import * as fs from 'node:fs'` gives. */
export const fs = createRequire(import.meta.url)('node:fs') as typeof nodeFs;
