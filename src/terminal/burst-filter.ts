// Tells typing from pasting where the terminal does not mark a paste: nobody types five different
// keys within a fiftieth of a second, so such a flood is no command. A key that comes alone is
// passed on at once; keys that come close together wait until it is clear which they are.

import type { InputEvent, Key } from './key.ts';

/** More typed keys than BURST_MOST_KEYS within this time are a burst (common practice, no source). */
const BURST_WINDOW_MS = 15;

/** So many keys at once are still taken for keys: scripts and slow links send a few together. */
const BURST_MOST_KEYS = 4;

// A long paste comes in as many pieces as the terminal's line holds (4,095 bytes on Linux), with
// pauses between, and its last piece may look like a few keys. So many of one key are no key held either:
// each would be answered by itself, for minutes.
const LONG_BURST_KEYS = 250;
const LONG_BURST_WINDOW_MS = 150;

/** Reading that stood still no longer than this was not blocked: timers and reads come as late as that. */
const BLOCKED_MS = 400;

/** Hands type no faster, so no more keys than this can wait for each second that reading was blocked (common practice). */
const HAND_KEYS_PER_SECOND = 12;

/**
 * More of them at once are a paste, however long reading was blocked: nobody types blindly for more than
 * two seconds (common practice, no source).
 */
const HAND_MOST_KEYS = 24;

/** So many of one key are single presses still; more are one that was held, its repeats this far apart. */
const PRESSES_OF_ONE_KEY = 6;
const REPEAT_STEP_MS = 33;

const BURST_REPORT_MS = 500;
const BURST_TEXT_LENGTH = 65_536;

/** One press before it is known whether it is part of a burst; `text` only if it types something. */
export type PendingKey = { readonly key: Key; readonly text?: string; readonly atMs: number };

/** What the escape decoder hands on, in the order of arrival. */
export type DecodedInput =
	| { readonly kind: 'pending'; readonly pending: PendingKey }
	| Extract<InputEvent, { kind: 'paste' | 'interrupt' }>;

/** Sorts presses into keys and bursts. */
export type BurstFilter = {
	/**
	 * Takes what one read brought, gives back what is certain. `blockedMs`: for so long before it nothing
	 * could be read, so that keys of many moments come at once.
	 */
	readonly push: (
		inputs: readonly DecodedInput[],
		nowMs: number,
		blockedMs?: number,
	) => InputEvent[];
	/** Gives back what has become certain by waiting. */
	readonly flush: (nowMs: number) => InputEvent[];
	/** When `flush` has something to say, if ever. */
	readonly deadlineMs: () => number | undefined;
};

type Burst = { count: number; text: string; beganMs: number; lastMs: number; windowMs: number };

/** Gives back a filter that has seen nothing yet. */
export function createBurstFilter(): BurstFilter {
	let waiting: PendingKey[] = [];
	let passed: PendingKey[] = [];
	let burst: Burst | undefined;

	function pass(keys: readonly PendingKey[]): InputEvent[] {
		passed.push(...keys.filter((key) => key.text !== undefined));
		return keys.map(({ key, atMs }) => ({ kind: 'key', key, atMs }));
	}

	function passAll(): InputEvent[] {
		const keys = waiting;
		waiting = [];
		return pass(keys);
	}

	function passAged(nowMs: number): InputEvent[] {
		const firstYoung = waiting.findIndex((key) => nowMs - key.atMs < BURST_WINDOW_MS);
		const aged = firstYoung === -1 ? waiting : waiting.slice(0, firstYoung);
		waiting = firstYoung === -1 ? [] : waiting.slice(firstYoung);
		return pass(aged);
	}

	function reportBurst(): InputEvent[] {
		if (burst === undefined || burst.count === 0) {
			return [];
		}
		const { count, text, beganMs: atMs } = burst;
		burst = { ...burst, count: 0, text: '', beganMs: burst.lastMs };
		return [{ kind: 'burst', count, text, atMs }];
	}

	function endBurst(): InputEvent[] {
		const events = reportBurst();
		burst = undefined;
		return events;
	}

	function absorb(nowMs: number): void {
		burst ??= { count: 0, text: '', beganMs: nowMs, lastMs: nowMs, windowMs: BURST_WINDOW_MS };
		burst.count += waiting.length;
		const room = BURST_TEXT_LENGTH - burst.text.length;
		burst.text += textOf(waiting).slice(0, room);
		burst.lastMs = nowMs;
		burst.windowMs = burst.count >= LONG_BURST_KEYS ? LONG_BURST_WINDOW_MS : burst.windowMs;
		waiting = [];
	}

	function settle(nowMs: number): InputEvent[] {
		if (waiting.length === 0) {
			return [];
		}
		if (burst !== undefined) {
			absorb(nowMs);
			return burst.lastMs - burst.beganMs >= BURST_REPORT_MS ? reportBurst() : [];
		}
		// Before any of them is let through for its age: Esc waits longer than that until it is certain, and
		// thousands of it come out of that wait at once.
		if (waiting.length >= LONG_BURST_KEYS) {
			absorb(nowMs);
			return [];
		}
		const aged = passAged(nowMs);
		passed = passed.filter((key) => nowMs - key.atMs <= BURST_WINDOW_MS);
		const typed = [...passed, ...waiting].filter((key) => key.text !== undefined);
		const isFlood = typed.length >= LONG_BURST_KEYS;
		if (isFlood || (typed.length > BURST_MOST_KEYS && !isOneKeyHeld(typed))) {
			absorb(nowMs);
			return aged;
		}
		const isAlone = typed.length <= 1 || typed.length === passed.length;
		return isAlone ? [...aged, ...passAll()] : aged;
	}

	function flush(nowMs: number): InputEvent[] {
		const isBurstOver = burst !== undefined && nowMs - burst.lastMs >= burst.windowMs;
		return [...(isBurstOver ? endBurst() : []), ...passAged(nowMs)];
	}

	function push(inputs: readonly DecodedInput[], nowMs: number, blockedMs = 0): InputEvent[] {
		const events = flush(nowMs);
		for (const input of isBlocked(blockedMs) ? spread(inputs, nowMs, blockedMs) : inputs) {
			if (input.kind === 'pending') {
				waiting.push(input.pending);
			} else {
				events.push(...settle(nowMs), ...endBurst(), ...passAll(), input);
			}
		}
		events.push(...settle(nowMs));
		return events;
	}

	function deadlineMs(): number | undefined {
		if (burst !== undefined) {
			return burst.lastMs + burst.windowMs;
		}
		return waiting[0] === undefined ? undefined : waiting[0].atMs + BURST_WINDOW_MS;
	}

	return { push, flush, deadlineMs };
}

/** Whether reading stood still so long that what is read came at many moments. */
export function isBlocked(blockedMs: number): boolean {
	return blockedMs > BLOCKED_MS;
}

/**
 * The presses of one read at the moments at which they may have come while nothing was read: evenly, the
 * last of them now, and closer where one key was held. A paste stays at its one moment.
 */
function spread(
	inputs: readonly DecodedInput[],
	nowMs: number,
	blockedMs: number,
): readonly DecodedInput[] {
	const keys = inputs.flatMap((input) =>
		input.kind === 'pending' && input.pending.atMs === nowMs ? [input.pending] : [],
	);
	const typed = keys.filter(({ text }) => text !== undefined);
	const stepMs = blockedMs / keys.length;
	const mostKeys = (blockedMs / 1000) * HAND_KEYS_PER_SECOND;
	const isByHand = typed.length <= HAND_MOST_KEYS && keys.length <= mostKeys;
	const isHeld = keys.length < LONG_BURST_KEYS && isOneKeyHeld(typed);
	if (!isByHand && !isHeld) return inputs;
	const moments = momentsOf(keys, { nowMs, stepMs });
	return inputs.map((input) => {
		const atMs = input.kind === 'pending' ? moments.get(input.pending) : undefined;
		return input.kind === 'pending' && atMs !== undefined
			? { ...input, pending: { ...input.pending, atMs } }
			: input;
	});
}

function momentsOf(
	keys: readonly PendingKey[],
	{ nowMs, stepMs }: { readonly nowMs: number; readonly stepMs: number },
): ReadonlyMap<PendingKey, number> {
	const moments = new Map<PendingKey, number>();
	let atMs = nowMs;
	for (let end = keys.length; end > 0; ) {
		let start = end - 1;
		while (start > 0 && keys[start - 1]?.key === keys[start]?.key) start -= 1;
		const run = keys.slice(start, end).reverse();
		const runStepMs = run.length > PRESSES_OF_ONE_KEY ? Math.min(stepMs, REPEAT_STEP_MS) : stepMs;
		for (const [index, one] of run.entries()) {
			moments.set(one, atMs);
			atMs -= index === run.length - 1 ? stepMs : runStepMs;
		}
		end = start;
	}
	return moments;
}

/** A held key on a slow link arrives as many of the same: repeats, not a paste. */
function isOneKeyHeld(typed: readonly PendingKey[]): boolean {
	return typed.every((key) => key.key === typed[0]?.key);
}

function textOf(keys: readonly PendingKey[]): string {
	return keys.map((key) => key.text ?? '').join('');
}
