// Keys pressed on the plain terminal because the program asked for them: when each came, and as what. Raw mode is
// taken while it is asked and given back with the answer, however that ends.

import type { Clock } from './clock.ts';
import { createInputSource, type InputStream } from './input-source.ts';
import type { InputEvent } from './key.ts';

export type PressedKey = {
	/** Null for bytes that are no key of ours. */
	readonly key: string | null;
	readonly atMs: number;
};

/** What came of asking: `left` by esc or because the input ended, `interrupted` by Ctrl-C, `none` by the key for that. */
export type KeyAnswer =
	| { readonly kind: 'left' | 'interrupted' | 'none' }
	/** None where none came in time. */
	| { readonly kind: 'pressed'; readonly presses: readonly PressedKey[] };

export type KeyTrial = {
	readonly stdin: InputStream & {
		readonly on: (name: 'end', listener: () => void) => unknown;
		readonly off: (name: 'end', listener: () => void) => unknown;
	};
	readonly clock: Clock;
	/** Milliseconds that the first press is waited for. */
	readonly waitMs: number;
	/** Milliseconds of presses that are taken: from the first one, or from the last so far. */
	readonly takeMs: number;
	readonly from: 'first' | 'last';
	/** A key that means there is nothing to press; only as the first. */
	readonly none?: string;
};

/** So long after bytes that gave no press it is certain that they are none: a lone esc waits less. */
const UNREAD_MS = 250;
/** A key that is still held is let go when nothing came for so long. */
const QUIET_MS = 400;
const LONGEST_QUIET_MS = 10_000;

/** Takes keys until it is clear what was pressed. */
export function askKeys(trial: KeyTrial): Promise<KeyAnswer> {
	const { stdin, clock, waitMs, takeMs } = trial;
	return new Promise((resolve) => {
		const presses: PressedKey[] = [];
		let cancelEnd = (): void => {};
		let cancelUnread = (): void => {};
		let isTaken = false;
		let takenAtMs = 0;

		const source = createInputSource({
			stdin,
			clock,
			onEvent: (event) => onEvent(event),
			onCooked: () => source.retake(),
		});

		function finish(answer: KeyAnswer): void {
			cancelEnd();
			cancelUnread();
			stdin.off('data', onBytes);
			stdin.off('end', onInputEnd);
			source.stop();
			resolve(answer);
		}

		function endAfter(milliseconds: number, run: () => void): void {
			cancelEnd();
			cancelEnd = clock.after(milliseconds, run);
		}

		function pressed(key: string | null): void {
			const atMs = clock.nowMs();
			if (isTaken) {
				// What is held down would otherwise answer the next question.
				if (atMs - takenAtMs < LONGEST_QUIET_MS) endAfter(QUIET_MS, done);
				return;
			}
			presses.push({ key, atMs });
			if (trial.from === 'last') endAfter(takeMs, done);
			else if (presses.length === 1) {
				endAfter(takeMs, () => {
					isTaken = true;
					takenAtMs = clock.nowMs();
					endAfter(QUIET_MS, done);
				});
			}
		}

		function done(): void {
			finish({ kind: 'pressed', presses });
		}

		function onEvent(event: InputEvent): void {
			cancelUnread();
			if (event.kind === 'interrupt') finish({ kind: 'interrupted' });
			else if (event.kind !== 'key') pressed(null);
			else if (event.key === 'esc') finish({ kind: 'left' });
			else if (event.key === trial.none && presses.length === 0) finish({ kind: 'none' });
			else pressed(event.key);
		}

		function onBytes(): void {
			cancelUnread();
			cancelUnread = clock.after(UNREAD_MS, () => pressed(null));
		}

		function onInputEnd(): void {
			finish({ kind: 'left' });
		}

		// Before the source, whose events say that the bytes were read.
		stdin.on('data', onBytes);
		stdin.on('end', onInputEnd);
		endAfter(waitMs, done);
		source.start();
	});
}
