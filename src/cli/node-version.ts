// Whether the Node that was started will do. Apart from the rest and importing next to nothing, because it
// must run on versions that could not even read the rest.

import { nodeTooOld } from '../words/node-version.ts';

/** The first with `zlib.crc32` (Node.js documentation of zlib, "Added in v22.2.0"); `engines` says the same. */
const OLDEST = { major: 22, minor: 2 } as const;

/** One sentence saying what to do about a Node that is too old, or nothing when `version` will do. */
export function nodeVersionComplaint(version: string): string | undefined {
	const [major = Number.NaN, minor = Number.NaN] = version.replace(/^v/, '').split('.').map(Number);
	if (major > OLDEST.major || (major === OLDEST.major && minor >= OLDEST.minor)) return undefined;
	return nodeTooOld(`${OLDEST.major}.${OLDEST.minor}`, version);
}
