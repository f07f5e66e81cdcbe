// The text between a paste's two marks. Apart from the key decoder because the terminal may never
// send the second mark, and the keys must come back all the same.

import { decodeText } from './typed-text.ts';

/** A paste keeps the keyboard no longer; half a second less what a late timer may add. */
export const PASTE_LIMIT_MS = 450;

/** Bytes kept of one paste; what follows, up to the second mark, is dropped. */
const PASTE_LIMIT_BYTES = 65_536;

/** `ESC [ 201 ~` (xterm control sequences, "Bracketed Paste Mode"). */
const END = [0x1b, 0x5b, 0x32, 0x30, 0x31, 0x7e];
const CTRL_C = 0x03;

/** What a byte did to the paste. */
export type PasteStep = 'goes-on' | 'interrupt' | 'ended';

/** One paste being received. */
export type PasteCollector = {
	readonly beganMs: number;
	readonly push: (byte: number) => PasteStep;
	/** The text so far. */
	readonly text: () => string;
	/** How many bytes of the second mark have come, 0 to 5. */
	readonly markBytes: () => number;
};

/** Gives back a paste that began at `beganMs` and has no text yet. */
export function createPasteCollector(beganMs: number): PasteCollector {
	const bytes: number[] = [];
	let matched = 0;

	function keep(kept: readonly number[]): void {
		const room = PASTE_LIMIT_BYTES - bytes.length;
		if (room > 0) {
			bytes.push(...kept.slice(0, room));
		}
	}

	function push(byte: number): PasteStep {
		if (byte === END[matched]) {
			matched += 1;
			return matched === END.length ? 'ended' : 'goes-on';
		}
		keep(END.slice(0, matched));
		matched = byte === END[0] ? 1 : 0;
		if (matched === 1) {
			return 'goes-on';
		}
		if (byte === CTRL_C) {
			return 'interrupt';
		}
		keep([byte]);
		return 'goes-on';
	}

	return {
		beganMs,
		push,
		text: () => decodeText(Uint8Array.from(bytes)),
		markBytes: () => matched,
	};
}
