// A terminal that stops reading (a frozen link, a held scroll bar) must stop neither the keys nor
// the journal: writes do not block, and what is drawn is held back above the renderer, since a
// frame that is skipped below it would leave the screen wrong.

/** So much unsent output means that the terminal does not read. */
const STALL_BYTES = 65_536;

const LOOK_AGAIN_MS = 25;

/** What of an output stream is looked at. */
export type OutputStream = {
	readonly writableLength: number;
	/** Undocumented in Node, and may be missing. */
	readonly _handle?: { readonly setBlocking?: (isBlocking: boolean) => unknown } | null;
};

/**
 * Lets writes to these streams return at once. Standard error too: both are the same terminal, and
 * one that blocks is enough to hold the program. Gives back whether all of them could be told.
 */
export function unblock(streams: readonly object[]): boolean {
	const told = streams.map((stream) => {
		const { _handle: handle } = stream as Partial<OutputStream>;
		handle?.setBlocking?.(false);
		return handle?.setBlocking !== undefined;
	});
	return told.every(Boolean);
}

/** Gives back whether the terminal has stopped reading. */
export function isStalled(stream: Pick<OutputStream, 'writableLength'>): boolean {
	return stream.writableLength > STALL_BYTES;
}

/** Gives back whether anything drawn is still on its way: drawing more would only queue. */
export function hasBacklog(stream: Pick<OutputStream, 'writableLength'>): boolean {
	return stream.writableLength > 0;
}

/** What a gate is made of. */
export type PaintGateParts<State> = {
	/** Whether to hold back: `isStalled`, or `hasBacklog` to keep a slow link at the newest. */
	readonly isStalled: () => boolean;
	/** Draws; `isFull` when everything must be drawn anew because something was held back. */
	readonly paint: (state: State, isFull: boolean) => void;
	/** Runs once after so many milliseconds. */
	readonly schedule: (milliseconds: number, run: () => void) => unknown;
};

/** Holds states back while the terminal does not read. */
export type PaintGate<State> = {
	/** Draws this state now, or later if it is still the newest then. */
	readonly offer: (state: State) => void;
	/** Whether a state waits. */
	readonly isHolding: () => boolean;
};

/** Gives back a gate that holds nothing. */
export function createPaintGate<State>({
	isStalled: mustHold,
	paint,
	schedule,
}: PaintGateParts<State>): PaintGate<State> {
	let held: { readonly state: State } | undefined;

	function lookAgain(): void {
		if (mustHold()) {
			schedule(LOOK_AGAIN_MS, lookAgain);
		} else if (held !== undefined) {
			const { state } = held;
			held = undefined;
			paint(state, true);
		}
	}

	function offer(state: State): void {
		if (held !== undefined) {
			held = { state };
		} else if (mustHold()) {
			held = { state };
			schedule(LOOK_AGAIN_MS, lookAgain);
		} else {
			paint(state, false);
		}
	}

	return { offer, isHolding: () => held !== undefined };
}
