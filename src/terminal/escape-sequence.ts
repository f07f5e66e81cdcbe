// One escape sequence being received, byte by byte, from its introducer to its end: the grammar
// alone, whatever it means. Grammar as in ECMA-48 (clauses 5.4, 5.6), with the mouse's three bytes
// and the Linux console's `ESC [ [` beside it.

import type { SequenceMeaning } from './escape-keys.ts';
import { csiMeaning, ss3Meaning } from './escape-keys.ts';

const SEQUENCE_GAP_MS = 150;
const SEQUENCE_LIMIT_MS = 500;
const SEQUENCE_LIMIT_LENGTH = 256;
const MOUSE_BYTES = 3;

const CTRL_C = 0x03;
const BELL = 0x07;
const CANCEL = 0x18;
const SUBSTITUTE = 0x1a;
const ESC = 0x1b;
const SPACE = 0x20;
const DELETE = 0x7f;

/** The three forms: `ESC [`, `ESC O`, and a text that runs to its terminator. */
export type SequenceKind = 'csi' | 'ss3' | 'string';

/** What a byte did: the sequence goes on, another Esc cut it, or it ended with this meaning. */
export type SequenceStep = 'goes-on' | 'escape' | SequenceMeaning;

/** A sequence being received. */
export type EscapeSequence = {
	readonly kind: SequenceKind;
	readonly push: (byte: number, nowMs: number) => SequenceStep;
	/** When it is given up: some time after its last byte, and never late after its first. */
	readonly deadlineMs: () => number;
};

/** Where a sequence begins; `body` is what came of it already. */
export type SequenceStart = {
	readonly kind: SequenceKind;
	readonly atMs: number;
	readonly body?: string;
	/** How long it may take in all. */
	readonly limitMs?: number;
};

/** Gives back the sequence that an introducer began. */
export function createEscapeSequence(start: SequenceStart): EscapeSequence {
	const { kind, atMs, body = '', limitMs = SEQUENCE_LIMIT_MS } = start;
	let parameters = body;
	let mouseBytes = 0;
	let lastMs = atMs;

	function keyByte(byte: number): SequenceStep {
		const character = String.fromCharCode(byte);
		const isFirst = parameters === '';
		const isFinal = byte >= 0x40 || (kind === 'ss3' && byte === SPACE && isFirst);
		const isConsoleKey = kind === 'csi' && isFirst && character === '[';
		if (!isFinal || isConsoleKey) {
			parameters += parameters.length < SEQUENCE_LIMIT_LENGTH ? character : '';
			return 'goes-on';
		}
		if (kind === 'csi' && isFirst && character === 'M') {
			mouseBytes = MOUSE_BYTES;
			return 'goes-on';
		}
		return kind === 'csi' ? csiMeaning(parameters, character) : ss3Meaning(parameters, character);
	}

	function push(byte: number, nowMs: number): SequenceStep {
		lastMs = nowMs;
		if (byte === CTRL_C) {
			return 'interrupt';
		}
		if (byte === ESC) {
			return 'escape';
		}
		if (byte === CANCEL || byte === SUBSTITUTE) {
			return 'nothing';
		}
		if (kind === 'string') {
			return byte === BELL ? 'nothing' : 'goes-on';
		}
		if (mouseBytes > 0) {
			mouseBytes -= 1;
			return mouseBytes === 0 ? 'nothing' : 'goes-on';
		}
		return byte < SPACE || byte >= DELETE ? 'nothing' : keyByte(byte);
	}

	return {
		kind,
		push,
		deadlineMs: () => Math.min(lastMs + SEQUENCE_GAP_MS, atMs + limitMs),
	};
}

/** Gives back which sequence this byte begins after Esc, if it begins one that carries a key. */
export function introducedBy(byte: number): 'csi' | 'ss3' | undefined {
	if (byte === 0x5b) {
		return 'csi';
	}
	return byte === 0x4f ? 'ss3' : undefined;
}

/** `ESC ]`, `P`, `X`, `^`, `_`: replies that run to a terminator (ECMA-48, clause 5.6). */
export function isStringIntroducer(byte: number): boolean {
	return byte === 0x5d || byte === 0x50 || byte === 0x58 || byte === 0x5e || byte === 0x5f;
}
