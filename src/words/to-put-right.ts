// What stands in the place of work where none is planned and yet something is wrong.

import type { Warning } from '../plan/plan.ts';

/** Warnings that only tell how the night will go, with nothing to be done about them at the rack. */
const TOLD_ONLY: ReadonlySet<Warning['code']> = new Set([
	'kept-unsaid',
	'no-stand-in',
	'short-curfew',
	'substituted',
	'tight-gap',
]);

/** Null where nothing is wrong. */
export function toPutRight(warnings: readonly Warning[]): string | null {
	return warnings.some(({ code }) => !TOLD_ONLY.has(code)) ? 'put right what WATCH says' : null;
}
