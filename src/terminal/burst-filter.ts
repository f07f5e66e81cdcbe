// Tells typing from pasting where the terminal does not mark a paste: nobody types five different
// keys within a fiftieth of a second, so such a flood is no command. A key that comes alone is
// passed on at once; keys that come close together wait until it is clear which they are.

import type { InputEvent, Key } from './key.ts';

/** More typed keys than BURST_MOST_KEYS within this time are a burst (common practice, no source). */
const BURST_WINDOW_MS = 15;

/** So many keys at once are still taken for keys: scripts and slow links send a few together. */
const BURST_MOST_KEYS = 4;

// A long paste comes in as many pieces as the terminal's line holds (4,095 bytes on Linux), with
// pauses between, and its last piece may look like a few keys.
const LONG_BURST_KEYS = 250;
const LONG_BURST_WINDOW_MS = 150;

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
	/** Takes what one read brought, gives back what is certain. */
	readonly push: (inputs: readonly DecodedInput[], nowMs: number) => InputEvent[];
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
		passed = passed.filter((key) => nowMs - key.atMs <= BURST_WINDOW_MS);
		const typed = [...passed, ...waiting].filter((key) => key.text !== undefined);
		if (typed.length > BURST_MOST_KEYS && !isOneKeyHeld(typed)) {
			absorb(nowMs);
			return [];
		}
		const isAlone = typed.length <= 1 || typed.length === passed.length;
		return isAlone ? passAll() : [];
	}

	function flush(nowMs: number): InputEvent[] {
		const isBurstOver = burst !== undefined && nowMs - burst.lastMs >= burst.windowMs;
		return [...(isBurstOver ? endBurst() : []), ...passAged(nowMs)];
	}

	function push(inputs: readonly DecodedInput[], nowMs: number): InputEvent[] {
		const events = flush(nowMs);
		for (const input of inputs) {
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

/** A held key on a slow link arrives as many of the same: repeats, not a paste. */
function isOneKeyHeld(typed: readonly PendingKey[]): boolean {
	return typed.every((key) => key.key === typed[0]?.key);
}

function textOf(keys: readonly PendingKey[]): string {
	return keys.map((key) => key.text ?? '').join('');
}
