// A terminal that stops reading (a frozen link, a held scroll bar) must stop neither the keys nor
// the journal: writes do not block, and what is drawn is held back above the renderer, since a
// frame that is skipped below it would leave the screen wrong.

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

/**
 * Gives back whether anything written is still on its way. Drawing more would only queue, and a
 * slow link would show what was long ago.
 */
export function hasBacklog(stream: Pick<OutputStream, 'writableLength'>): boolean {
	return stream.writableLength > 0;
}

/** What a gate is made of. */
export type PaintGateParts = {
	/** Whether to hold back: `hasBacklog`. */
	readonly hasBacklog: () => boolean;
	/** Draws what is newest. */
	readonly paint: () => void;
	/** Runs once what was written so far has gone out. */
	readonly afterSending: (run: () => void) => unknown;
};

/** Holds drawing back while the terminal does not read. */
export type PaintGate = {
	/** Draws now, or once when everything has gone out. */
	readonly offer: () => void;
	readonly isHolding: () => boolean;
};

/** Gives back a gate that holds nothing. */
export function createPaintGate({
	hasBacklog: mustHold,
	paint,
	afterSending,
}: PaintGateParts): PaintGate {
	let isHolding = false;

	function paintOrWait(): void {
		isHolding = mustHold();
		if (isHolding) {
			afterSending(paintOrWait);
		} else {
			paint();
		}
	}

	function offer(): void {
		if (!isHolding) {
			paintOrWait();
		}
	}

	return { offer, isHolding: () => isHolding };
}

/** Runs once for all the calls of one turn, at its end: a read may bring hundreds of keys, and drawing each is seen by nobody. */
export function oncePerTurn(run: () => void): () => void {
	let isDue = false;
	return () => {
		if (isDue) return;
		isDue = true;
		queueMicrotask(() => {
			isDue = false;
			run();
		});
	};
}
