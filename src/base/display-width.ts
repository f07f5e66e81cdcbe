// How many terminal cells a text fills, and making it fill exactly so many. Apart from everything
// that draws, so that all columns are counted in one way. Texts here have been cleaned before.

import stringWidth from 'string-width';

/** Characters that fill one cell each and join with no other; most texts hold nothing else. */
const PLAIN =
	/^[\x20-\x7e\xa1-\xac\xae-\u02ff\u2010-\u2027\u2190-\u2193\u2212\u2500-\u259f\u266d-\u266f]*$/;

// Made late: the first one in a process takes as long as reading a whole show.
let segmenter: Intl.Segmenter | undefined;

/** The cells that the text fills: two for wide characters and emoji, none for combining marks. */
export function displayWidth(text: string): number {
	return PLAIN.test(text) ? text.length : stringWidth(text);
}

/** What a reader sees as single characters, in order: `e` with its accent, a flag, a family. */
export function graphemes(text: string): string[] {
	if (PLAIN.test(text)) return text.split('');
	segmenter ??= new Intl.Segmenter('en', { granularity: 'grapheme' });
	return Array.from(segmenter.segment(text), (part) => part.segment);
}

/**
 * The text padded or cut to exactly `width` cells (none for a width below one). What is too long is
 * cut between graphemes and ends in `…`, or in `~` where `ascii` is set; `align` says on which side
 * a short text stands.
 */
export function fitWidth(
	text: string,
	width: number,
	options: { readonly align?: 'left' | 'right'; readonly ascii?: boolean } = {},
): string {
	const cells = Math.max(0, Math.floor(width));
	const short = displayWidth(text) <= cells ? text : cut(text, cells, options.ascii ? '~' : '…');
	const padding = ' '.repeat(cells - displayWidth(short));
	return options.align === 'right' ? padding + short : short + padding;
}

function cut(text: string, cells: number, ellipsis: string): string {
	if (cells < 1) return '';
	let kept = '';
	let used = 0;
	for (const grapheme of graphemes(text)) {
		used += displayWidth(grapheme);
		if (used > cells - 1) break;
		kept += grapheme;
	}
	return kept + ellipsis;
}
