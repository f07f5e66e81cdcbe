// The keyboard as a stream of events: raw mode, the decoder, and the timer that tells it when
// waiting is over. The renderer gets no input at all, so nothing of ours is ever lost inside it.

import type { Clock } from './clock.ts';
import { createInputDecoder } from './decode-input.ts';
import type { InputEvent } from './key.ts';
import { takeLateEnter } from './late-enter.ts';

/** What of standard input is used; `setRawMode` is there only on a terminal. */
export type InputStream = {
	readonly setRawMode?: (isRaw: boolean) => unknown;
	readonly resume: () => unknown;
	readonly pause: () => unknown;
	readonly on: (name: 'data', listener: (bytes: Uint8Array | string) => void) => unknown;
	readonly off: (name: 'data', listener: (bytes: Uint8Array | string) => void) => unknown;
};

/** What an input source is made of. */
export type InputSourceParts = {
	readonly stdin: InputStream;
	readonly clock: Clock;
	/** Gets every event in the order of pressing, each as soon as it is certain. */
	readonly onEvent: (event: InputEvent) => void;
	/** Told when a line ends as it does only without raw mode: somebody took that away. */
	readonly onCooked?: () => void;
};

const LINE_FEED = 0x0a;

/** How often the source looks whether it could read; what stood still for longer was blocked. */
const BEAT_MS = 200;

/** Enter as the very first key within this time of taking the keyboard may belong to the key before (common practice). */
const LATE_ENTER_MS = 1500;

/** The keyboard, until it is stopped. */
export type InputSource = {
	/** Takes the keyboard. */
	readonly start: () => void;
	/** Gives the keyboard back as it was; no event comes after. */
	readonly stop: () => void;
	/** Takes raw mode anew, since a shell may have had the terminal meanwhile. */
	readonly retake: () => void;
};

/**
 * Gives back a source that is not started yet. The end, loss or failure of the stream is not its
 * matter: see `endOnSignals`.
 */
export function createInputSource(parts: InputSourceParts): InputSource {
	const { stdin, clock, onEvent, onCooked } = parts;
	const decoder = createInputDecoder();
	let isRunning = false;
	let cancelTimer = (): void => {};
	let cancelBeat = (): void => {};
	/** All that had arrived by then was read. */
	let readUntilMs = 0;
	let enterIsLateUntilMs = Number.NEGATIVE_INFINITY;

	// Stopped, asleep or at work on something long, the program reads nothing and does not beat either.
	function beat(): void {
		cancelBeat = clock.after(BEAT_MS, () =>
			clock.afterReading(() => {
				if (!isRunning) return;
				readUntilMs = clock.nowMs();
				beat();
			}),
		);
	}

	function isLateEnter(event: InputEvent): boolean {
		const isLate =
			event.kind === 'key' && event.key === 'enter' && clock.nowMs() <= enterIsLateUntilMs;
		enterIsLateUntilMs = Number.NEGATIVE_INFINITY;
		return isLate;
	}

	function emit(events: readonly InputEvent[]): void {
		for (const event of events) {
			if (isLateEnter(event)) continue;
			// An event may stop the source: what came with it is then no longer wanted.
			if (isRunning) {
				onEvent(event);
			}
		}
	}

	function arm(): void {
		cancelTimer();
		cancelTimer = () => {};
		const deadlineMs = decoder.deadlineMs();
		if (deadlineMs !== undefined && isRunning) {
			const waitMs = Math.max(0, Math.ceil(deadlineMs - clock.nowMs()));
			cancelTimer = clock.after(waitMs, () => clock.afterReading(flush));
		}
	}

	// After reading, since what arrived while the program was busy may be the rest of a sequence.
	function flush(): void {
		if (isRunning) {
			emit(decoder.flush(clock.nowMs()));
			arm();
		}
	}

	function read(bytes: Uint8Array | string): void {
		const whole = typeof bytes === 'string' ? new TextEncoder().encode(bytes) : bytes;
		if (whole.includes(LINE_FEED)) {
			onCooked?.();
		}
		const nowMs = clock.nowMs();
		const blockedMs = nowMs - readUntilMs;
		readUntilMs = nowMs;
		emit(decoder.push(whole, nowMs, blockedMs));
		arm();
	}

	function start(): void {
		if (!isRunning) {
			isRunning = true;
			readUntilMs = clock.nowMs();
			if (takeLateEnter()) enterIsLateUntilMs = readUntilMs + LATE_ENTER_MS;
			beat();
			stdin.setRawMode?.(true);
			stdin.on('data', read);
			stdin.resume();
		}
	}

	function stop(): void {
		if (isRunning) {
			isRunning = false;
			cancelTimer();
			cancelBeat();
			stdin.off('data', read);
			stdin.pause();
			stdin.setRawMode?.(false);
		}
	}

	function retake(): void {
		if (isRunning) {
			stdin.setRawMode?.(false);
			stdin.setRawMode?.(true);
		}
	}

	return { start, stop, retake };
}
