// Said by any Node, however old, so this file imports nothing.

/** What to do about a Node that is too old. */
export const nodeTooOld = (oldest: string, version: string): string =>
	`rackside needs Node ${oldest} or newer, and was started with Node ${version}. Install a newer Node and start it again.`;
