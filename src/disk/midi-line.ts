// What bytes for pedals go out on, whatever it is: a device file, a FIFO, a terminal, a port by name.

export type MidiLine = {
	/**
	 * Hands over bytes from `from` on and gives how many were taken: fewer, or 0, where the line takes no more now.
	 * Returns at once; throws an error with a `code` where the line is gone.
	 */
	readonly write: (bytes: Uint8Array, from: number) => number;
	/** Whether what was opened is still there. */
	readonly isThere: () => boolean;
	readonly close: () => void;
};

/** Opens it now, without waiting; throws an error with a `code`, of `MidiFault`, where that cannot be. */
export type OpenMidiLine = () => MidiLine;

/** Programs call it so: a path has a slash, a name has none. */
export function isMidiPath(port: string): boolean {
	return port.includes('/');
}
