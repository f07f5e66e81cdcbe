// How soon a night that is kept elsewhere tries its own folder again: in a second at first, later and later where
// that folder takes the night and then does not keep it, since every such attempt leaves a file behind.

const shortestPauseMs = 1000;
const longestPauseMs = 300_000;
/** A folder that has had the night for so long is tried again as if it had never failed. */
const steadyMs = 60_000;

/** A pause of a second, twice as long with each fault, but never longer than this. */
export function growingPause(faults: number, longestMs: number): number {
	return Math.min(shortestPauseMs * 2 ** faults, longestMs);
}

/** The pace of those attempts; all times are uptimes in milliseconds. */
export class HomePace {
	#dueAtMs = 0;
	#cameAtMs = Number.NEGATIVE_INFINITY;
	#faults = 0;

	isDue(upMs: number): boolean {
		return upMs >= this.#dueAtMs;
	}

	/** One attempt is made now; the next is a pause away. */
	attempt(upMs: number): void {
		this.#dueAtMs = upMs + growingPause(this.#faults, longestPauseMs);
	}

	/** The night is in its own folder again. */
	came(upMs: number): void {
		this.#cameAtMs = upMs;
	}

	/** The night leaves that folder. `isFull`: for want of room alone, which a folder may have now and then. */
	left(upMs: number, isFull: boolean): void {
		const isSoon = upMs - this.#cameAtMs <= steadyMs;
		if (!isSoon) this.#faults = 0;
		else if (isFull) this.#faults += 1;
		this.attempt(upMs);
	}

	/** What was written there was not confirmed. */
	fault(): void {
		this.#faults += 1;
	}
}
