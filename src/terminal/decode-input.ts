// Bytes from the keyboard in, presses out, with what is unfinished carried from read to read. Pure
// but for that memory: time comes in with every call, and nothing here reads or waits. Every way
// that an escape sequence can be cut leaves no stray command behind.

import type { DecodedInput } from './burst-filter.ts';
import { createBurstFilter, isBlocked } from './burst-filter.ts';
import type { EscapeSequence } from './escape-sequence.ts';
import { createEscapeSequence, introducedBy, isStringIntroducer } from './escape-sequence.ts';
import type { InputEvent } from './key.ts';
import type { PasteCollector } from './paste-collector.ts';
import { createPasteCollector, PASTE_LIMIT_MS } from './paste-collector.ts';
import { createTypedText } from './typed-text.ts';

/**
 * How long a lone Esc waits, for an arrow may arrive in pieces up to 100 ms apart, and timers are
 * not exact (common practice, no source).
 */
const ESC_HOLD_MS = 110;

/**
 * A character that follows Esc within this time was typed with Alt, and is ignored; later it is Esc
 * and then a key, since hands can be that quick (common practice, no source).
 */
const ALT_MS = 30;

/** Pieces of one press are no further apart, even where the Esc was given up before. */
const SAME_PRESS_MS = 150;
/** A paste given up inside its second mark waits so long for the rest of the mark. */
const MARK_REST_MS = 45;
const RETURN_PAIR_MS = 15;

const CTRL_C = 0x03;
const BACKSPACE = 0x08;
const TAB = 0x09;
const NEWLINE = 0x0a;
const RETURN = 0x0d;
const ESC = 0x1b;
const SPACE = 0x20;
const BACKSLASH = 0x5c;
const DELETE = 0x7f;
/** Control letters that edit a line of text; C0 of ECMA-48 is the letter's place in the alphabet. */
const KEY_OF_CONTROL: Readonly<Record<number, string>> = {
	1: 'ctrl-a',
	5: 'ctrl-e',
	11: 'ctrl-k',
	21: 'ctrl-u',
	23: 'ctrl-w',
};
const LONG_AGO = Number.NEGATIVE_INFINITY;

/** Decodes one terminal's input. */
export type InputDecoder = {
	/**
	 * Takes the bytes of one read, gives back what they certainly were. `blockedMs`: for so long before
	 * it nothing could be read; 0 if left out.
	 */
	readonly push: (bytes: Uint8Array, nowMs: number, blockedMs?: number) => InputEvent[];
	/** Gives back what waiting has made certain; to be called when `deadlineMs` has passed. */
	readonly flush: (nowMs: number) => InputEvent[];
	/** When `flush` is due; nothing while no press is unfinished. */
	readonly deadlineMs: () => number | undefined;
};

/** One or more Esc came, and nothing after; `isEnd`: it may end a text, and is then no key. */
type Escape = {
	readonly kind: 'escape';
	readonly count: number;
	readonly atMs: number;
	readonly isEnd: boolean;
};

type Mode =
	| { readonly kind: 'plain' }
	| Escape
	/** `isMeta`: after Esc Esc, so typed with Alt, and ignored. */
	| { readonly kind: 'sequence'; readonly sequence: EscapeSequence; readonly isMeta: boolean }
	| { readonly kind: 'paste'; readonly paste: PasteCollector };

const PLAIN: Mode = { kind: 'plain' };

/** Gives back a decoder that has seen nothing yet. */
export function createInputDecoder(): InputDecoder {
	const filter = createBurstFilter();
	const typed = createTypedText();
	let mode: Mode = PLAIN;
	let inputs: DecodedInput[] = [];
	let run: number[] = [];
	let altMs = LONG_AGO;
	let escGivenMs = LONG_AGO;
	let returnMs = LONG_AGO;
	let isCatchingUp = false;

	function give(key: string, atMs: number, text?: string): void {
		const pending = text === undefined ? { key, atMs } : { key, atMs, text };
		inputs.push({ kind: 'pending', pending });
	}

	function giveEscs(count: number, atMs: number): void {
		for (let given = 0; given < count; given += 1) {
			give('esc', atMs);
		}
	}

	function giveText(nowMs: number, isWhole: boolean): void {
		const graphemes = typed.push(Uint8Array.from(run), isWhole);
		const isFirstAlt = nowMs - altMs <= SAME_PRESS_MS;
		for (const grapheme of graphemes.slice(isFirstAlt ? 1 : 0)) {
			give(grapheme === ' ' ? 'space' : grapheme, nowMs, grapheme);
		}
		run = [];
		altMs = isWhole || graphemes.length > 0 ? LONG_AGO : altMs;
	}

	function givePaste(paste: PasteCollector): void {
		// xterm and those like it send a line's end inside a paste as the Enter key sends it (seen; from memory).
		const text = paste.text().replace(/\r\n?/g, '\n');
		if (text !== '') {
			inputs.push({ kind: 'paste', text, atMs: paste.beganMs });
		}
	}

	function interrupt(nowMs: number): void {
		inputs.push({ kind: 'interrupt', atMs: nowMs });
	}

	function plainByte(byte: number, nowMs: number): void {
		const isAfterEsc = nowMs - escGivenMs <= SAME_PRESS_MS;
		const introduced = introducedBy(byte);
		escGivenMs = LONG_AGO;
		if (isAfterEsc && introduced !== undefined) {
			// The Esc was held too short for this link; what follows must still be no command.
			const sequence = createEscapeSequence({ kind: introduced, atMs: nowMs });
			mode = { kind: 'sequence', sequence, isMeta: false };
		} else if (byte >= SPACE && byte !== DELETE) {
			run.push(byte);
		} else {
			giveText(nowMs, true);
			controlByte(byte, nowMs);
		}
	}

	function controlByte(byte: number, nowMs: number): void {
		if (byte === ESC) {
			mode = { kind: 'escape', count: 1, atMs: nowMs, isEnd: false };
		} else if (byte === CTRL_C) {
			interrupt(nowMs);
		} else if (byte === RETURN) {
			give('enter', nowMs, '\n');
			returnMs = nowMs;
		} else if (byte === NEWLINE && nowMs - returnMs > RETURN_PAIR_MS) {
			give('enter', nowMs, '\n');
		} else if (byte === TAB) {
			give('tab', nowMs, '\t');
		} else if (byte === BACKSPACE || byte === DELETE) {
			give('backspace', nowMs);
		} else {
			const editing = KEY_OF_CONTROL[byte];
			if (editing !== undefined) give(editing, nowMs);
		}
	}

	function escapeByte(esc: Escape, byte: number, nowMs: number): void {
		const gapMs = nowMs - esc.atMs;
		const introduced = introducedBy(byte);
		const isString = isStringIntroducer(byte) && gapMs <= ESC_HOLD_MS;
		const kind = introduced ?? (isString ? 'string' : undefined);
		mode = PLAIN;
		if (kind !== undefined) {
			const sequence = createEscapeSequence({ kind, atMs: nowMs });
			mode = { kind: 'sequence', sequence, isMeta: esc.count > 1 };
		} else if (byte === ESC) {
			escapeAgain(esc, nowMs);
		} else if (byte === CTRL_C) {
			interrupt(nowMs);
		} else if (!(esc.isEnd && byte === BACKSLASH)) {
			keyAfterEscape(esc, byte, nowMs);
		}
	}

	function escapeAgain(esc: Escape, nowMs: number): void {
		const isAlt = nowMs - esc.atMs <= ALT_MS && !esc.isEnd;
		if (!isAlt && !esc.isEnd) {
			giveEscs(esc.count, esc.atMs);
		}
		mode = { kind: 'escape', count: isAlt ? esc.count + 1 : 1, atMs: nowMs, isEnd: false };
	}

	function keyAfterEscape(esc: Escape, byte: number, nowMs: number): void {
		const escs = esc.isEnd ? 0 : esc.count;
		// Keys that waited come at once, and are typed with Alt far less often than after Esc.
		if (nowMs - esc.atMs > ALT_MS || isCatchingUp) {
			giveEscs(escs, esc.atMs);
			plainByte(byte, nowMs);
			return;
		}
		giveEscs(escs - 1, esc.atMs);
		if (byte >= SPACE && byte !== DELETE) {
			altMs = nowMs;
			run.push(byte);
		}
	}

	function sequenceByte(sequence: EscapeSequence, byte: number, nowMs: number): void {
		const isMeta = mode.kind === 'sequence' && mode.isMeta;
		const step = sequence.push(byte, nowMs);
		if (step === 'goes-on') {
			return;
		}
		mode = PLAIN;
		if (step === 'escape') {
			mode = { kind: 'escape', count: 1, atMs: nowMs, isEnd: sequence.kind === 'string' };
		} else if (step === 'interrupt') {
			interrupt(nowMs);
		} else if (step === 'paste-begins') {
			mode = { kind: 'paste', paste: createPasteCollector(nowMs) };
		} else if (step !== 'nothing' && !isMeta) {
			give(step.key, nowMs);
		}
	}

	function pasteByte(paste: PasteCollector, byte: number, nowMs: number): void {
		const step = paste.push(byte);
		if (step === 'interrupt') {
			interrupt(nowMs);
		} else if (step === 'ended') {
			mode = PLAIN;
			givePaste(paste);
		}
	}

	function takeByte(byte: number, nowMs: number): void {
		if (mode.kind === 'plain') {
			plainByte(byte, nowMs);
		} else if (mode.kind === 'escape') {
			escapeByte(mode, byte, nowMs);
		} else if (mode.kind === 'sequence') {
			sequenceByte(mode.sequence, byte, nowMs);
		} else {
			pasteByte(mode.paste, byte, nowMs);
		}
	}

	function modeDeadlineMs(): number | undefined {
		if (mode.kind === 'escape') {
			return mode.atMs + ESC_HOLD_MS;
		}
		if (mode.kind === 'sequence') {
			return mode.sequence.deadlineMs();
		}
		return mode.kind === 'paste' ? mode.paste.beganMs + PASTE_LIMIT_MS : undefined;
	}

	function expire(nowMs: number): void {
		const deadlineMs = modeDeadlineMs();
		if (deadlineMs === undefined || nowMs < deadlineMs) {
			return;
		}
		const expired = mode;
		mode = PLAIN;
		if (expired.kind === 'paste') {
			givePaste(expired.paste);
			mode = modeInsideMark(expired.paste.markBytes(), nowMs);
		} else if (expired.kind === 'escape' && !expired.isEnd) {
			giveEscs(expired.count, expired.atMs);
			escGivenMs = expired.atMs;
		}
	}

	function takeInputs(): DecodedInput[] {
		const taken = inputs;
		inputs = [];
		return taken;
	}

	function push(bytes: Uint8Array, nowMs: number, blockedMs = 0): InputEvent[] {
		isCatchingUp = isBlocked(blockedMs);
		for (const byte of bytes) {
			takeByte(byte, nowMs);
		}
		if (run.length > 0) {
			giveText(nowMs, false);
		}
		return filter.push(takeInputs(), nowMs, blockedMs);
	}

	function flush(nowMs: number): InputEvent[] {
		expire(nowMs);
		return [...filter.push(takeInputs(), nowMs), ...filter.flush(nowMs)];
	}

	function deadlineMs(): number | undefined {
		const deadlines = [modeDeadlineMs(), filter.deadlineMs()];
		const due = Math.min(...deadlines.map((deadline) => deadline ?? Number.POSITIVE_INFINITY));
		return due === Number.POSITIVE_INFINITY ? undefined : due;
	}

	return { push, flush, deadlineMs };
}

/** A paste given up inside its second mark: the rest of that mark is still no key. */
function modeInsideMark(markBytes: number, nowMs: number): Mode {
	if (markBytes === 0) {
		return PLAIN;
	}
	if (markBytes === 1) {
		return { kind: 'escape', count: 1, atMs: nowMs, isEnd: true };
	}
	const body = '201'.slice(0, markBytes - 2);
	const sequence = createEscapeSequence({ kind: 'csi', atMs: nowMs, body, limitMs: MARK_REST_MS });
	return { kind: 'sequence', sequence, isMeta: false };
}
