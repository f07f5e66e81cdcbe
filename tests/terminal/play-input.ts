// Reads at given moments, played to a decoder on a clock turned by hand: `flush` is called at every
// deadline, as the input source does it.

import { createInputDecoder } from '../../src/terminal/decode-input.ts';
import type { InputEvent } from '../../src/terminal/key.ts';

/** What one read brought: text as UTF-8, or bytes. */
export type Read = {
	readonly atMs: number;
	readonly bytes: string | Uint8Array;
	/** For so long before it nothing could be read. */
	readonly blockedMs?: number;
};

const LONG_MS = 5000;

/** Gives back all events of these reads, and of the silence after them. */
export function playInput(reads: readonly Read[]): InputEvent[] {
	const decoder = createInputDecoder();
	const events: InputEvent[] = [];
	function waitUntil(atMs: number): void {
		for (;;) {
			const deadlineMs = decoder.deadlineMs();
			if (deadlineMs === undefined || deadlineMs > atMs) {
				return;
			}
			events.push(...decoder.flush(deadlineMs));
			if ((decoder.deadlineMs() ?? Number.POSITIVE_INFINITY) <= deadlineMs) {
				throw new Error(`the decoder asks to be woken at ${deadlineMs} ms again and again`);
			}
		}
	}
	for (const { atMs, bytes, blockedMs } of reads) {
		waitUntil(atMs);
		events.push(...decoder.push(bytesOf(bytes), atMs, blockedMs));
	}
	const lastMs = reads.at(-1)?.atMs ?? 0;
	waitUntil(lastMs + LONG_MS);
	if (decoder.deadlineMs() !== undefined) {
		throw new Error('the decoder still waits after a long silence');
	}
	return events;
}

/** Gives back the events in short: a key as its name, the others as `paste:…`, `burst:n`. */
export function shortEvents(events: readonly InputEvent[]): string[] {
	return events.map(shortEvent);
}

function shortEvent(event: InputEvent): string {
	switch (event.kind) {
		case 'key':
			return event.key;
		case 'paste':
			return `paste:${event.text}`;
		case 'burst':
			return `burst:${event.count}`;
		case 'interrupt':
			return 'interrupt';
	}
}

/** Gives back the events, in short, of bytes that came in one read. */
export function readAtOnce(bytes: string | Uint8Array): string[] {
	return shortEvents(playInput([{ atMs: 0, bytes }]));
}

/** Gives back the bytes of a text, or bytes as they are. */
export function bytesOf(bytes: string | Uint8Array): Uint8Array {
	return typeof bytes === 'string' ? new TextEncoder().encode(bytes) : bytes;
}
