// What somebody adds to a report before it goes out. Kept beside the night, never in its journal.

import { cleanText } from '../base/clean-text.ts';
import type { RecordId } from './record.ts';

export type Remarks = {
	/** A line on the night; null for none. */
	readonly night: string | null;
	/** By the identity of an incident's record. */
	readonly incidents: Readonly<Record<RecordId, string>>;
	/** Who signs. */
	readonly signed: string | null;
};

export const NO_REMARKS: Remarks = { night: null, incidents: {}, signed: null };

/** A remark as it is shown; null for none, and for one with nothing to be seen in it. */
export function remarkOrNull(text: string | null | undefined): string | null {
	const shown = cleanText(text ?? '').trim();
	return shown === '' ? null : shown;
}
