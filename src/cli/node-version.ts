// Whether the Node that was started will do. Apart from the rest and importing next to nothing, because it
// must run on versions that could not even read the rest.

import { nodeTooOld } from '../words/node-version.ts';

const OLDEST_MAJOR = 22;

/**
 * One sentence saying what to do about a Node older than 22, or nothing when `version` will do.
 * 22 is the oldest that still gets security fixes (Node.js release schedule, 2026).
 */
export function nodeVersionComplaint(version: string): string | undefined {
	const major = Number.parseInt(version.replace(/^v/, ''), 10);
	if (major >= OLDEST_MAJOR) return undefined;
	return nodeTooOld(OLDEST_MAJOR, version);
}
