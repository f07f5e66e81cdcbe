// Bytes that are text, read after read, into the graphemes that were typed. Broken UTF-8 gives
// nothing; a character split between two reads is put together.

/** Turns text bytes into graphemes. */
export type TypedText = {
	/** `isWhole` when what follows is no text, so that a character still open is broken. */
	readonly push: (bytes: Uint8Array, isWhole: boolean) => readonly string[];
};

/** Gives back a reader of typed text that has seen nothing yet. */
export function createTypedText(): TypedText {
	const decoder = new TextDecoder('utf-8', { ignoreBOM: true });
	return {
		push: (bytes, isWhole) => graphemes(readable(decoder.decode(bytes, { stream: !isWhole }))),
	};
}

/** Gives back the text of bytes that stand alone, without what is broken in them. */
export function decodeText(bytes: Uint8Array): string {
	return new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes).replaceAll('\uFFFD', '');
}

/** Drops what stands for broken bytes, and the second set of control characters. */
function readable(text: string): string {
	return text.replaceAll(/[\uFFFD\u0080-\u009F]/g, '');
}

let segmenter: Intl.Segmenter | undefined;

function graphemes(text: string): readonly string[] {
	if (/^[\u0020-\u007E]*$/.test(text)) {
		return Array.from(text);
	}
	// Made only for those who type beyond ASCII: it costs a few milliseconds at the start.
	segmenter ??= new Intl.Segmenter('en', { granularity: 'grapheme' });
	return Array.from(segmenter.segment(text), (part) => part.segment);
}
