// What somebody adds to a report before it goes out. Kept beside the night, never in its journal.

export type Remarks = {
	/** A line on the night; null for none. */
	readonly night: string | null;
	/** By the identity of an incident's record. */
	readonly incidents: Readonly<Record<string, string>>;
	/** Who signs. */
	readonly signed: string | null;
};

export const NO_REMARKS: Remarks = { night: null, incidents: {}, signed: null };
