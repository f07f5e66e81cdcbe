// The one way out, whatever the reason: input stopped, journal synced, screen taken down, terminal
// put right, exit. However many reasons come at once, it is walked once, and it is never longer
// than two seconds after a key, nor than one after anything else.

import type { Clock } from './clock.ts';
import type { Ending } from './ending.ts';
import { exitCodeOf } from './ending.ts';

/** How long the journal may take to reach the disk: a busy one that is well needs a second now and then. */
const QUIT_SYNC_LIMIT_MS = 1500;

/** The same where a signal, a fault or a lost terminal ends the program. */
const SYNC_LIMIT_MS = 500;

/** So long after that the program ends even if another step hangs. */
const OTHER_STEPS_LIMIT_MS = 500;

const UNMOUNT_LIMIT_MS = 200;
const RESET_LIMIT_MS = 200;

/** The steps; each may be missing, since the program may end before it has them. */
export type ShutdownParts = {
	readonly stopInput?: () => void;
	/** Rejects, or takes longer than it may, when the night's data could not be kept. */
	readonly syncJournal?: (limitMs: number) => Promise<void>;
	readonly unmount?: () => void | Promise<void>;
	/** Puts the terminal right; `isUnmounted` is false when the screen could not be taken down. */
	readonly reset?: (isUnmounted: boolean) => void | Promise<void>;
	/** Says what is to be said on the plain terminal: the fault, or what was not kept. */
	readonly report?: (outcome: ShutdownOutcome) => void | Promise<void>;
};

/** How the way out went. */
export type ShutdownOutcome = {
	readonly ending: Ending;
	readonly code: number;
	readonly isKept: boolean;
	/** What the steps themselves threw. */
	readonly failures: readonly unknown[];
};

/** The way out. */
export type Shutdown = {
	/** Adds steps, or replaces them, as the program comes to have them. */
	readonly hold: (parts: ShutdownParts) => void;
	/** Walks the way out, and exits; the first reason counts, later ones only make it shorter. */
	readonly begin: (ending: Ending) => void;
	readonly hasBegun: () => boolean;
};

/** Gives back a way out with no steps yet; `exit` is called exactly once. */
export function createShutdown({
	clock,
	exit,
}: {
	readonly clock: Clock;
	readonly exit: (code: number) => void;
}): Shutdown {
	let parts: ShutdownParts = {};
	let first: Ending | null = null;
	let hurry = (): void => {};
	let hasEnded = false;
	const failures: unknown[] = [];

	function end(code: number): void {
		if (!hasEnded) {
			hasEnded = true;
			exit(code);
		}
	}

	/** Gives back whether the step was done in time and without a throw. */
	function walk(limitMs: number, step: () => void | Promise<void>): Promise<boolean> {
		return new Promise((resolve) => {
			const cancel = clock.after(limitMs, () => resolve(false));
			const finish = (isDone: boolean, failure?: unknown): void => {
				if (!isDone) {
					failures.push(failure);
				}
				cancel();
				resolve(isDone);
			};
			try {
				const pending = step();
				if (pending === undefined) {
					finish(true);
				} else {
					pending.then(
						() => finish(true),
						(failure: unknown) => finish(false, failure),
					);
				}
			} catch (failure) {
				finish(false, failure);
			}
		});
	}

	async function walkOut(ending: Ending, limitMs: number): Promise<void> {
		const hurried = new Promise<boolean>((resolve) => {
			hurry = () => resolve(false);
		});
		await walk(0, () => parts.stopInput?.());
		const synced = walk(limitMs, () => parts.syncJournal?.(limitMs));
		const isKept = await Promise.race([synced, hurried]);
		const code = exitCodeOf(ending, isKept);
		const isUnmounted = await walk(UNMOUNT_LIMIT_MS, () => parts.unmount?.());
		await walk(RESET_LIMIT_MS, () => parts.reset?.(isUnmounted));
		await walk(RESET_LIMIT_MS, () => parts.report?.({ ending, code, isKept, failures }));
		end(code);
	}

	function begin(ending: Ending): void {
		const limitMs = ending.kind === 'quit' ? QUIT_SYNC_LIMIT_MS : SYNC_LIMIT_MS;
		const reason = first ?? ending;
		clock.after(limitMs + OTHER_STEPS_LIMIT_MS, () => end(exitCodeOf(reason, false)));
		if (first) clock.after(limitMs, () => hurry());
		else {
			first = ending;
			walkOut(ending, limitMs);
		}
	}

	return {
		hold: (more) => {
			parts = { ...parts, ...more };
		},
		begin,
		hasBegun: () => first !== null,
	};
}
