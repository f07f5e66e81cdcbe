// How many terminal cells a text fills, and making it fill exactly so many. Apart from everything
// that draws, so that all columns are counted in one way. Texts here have been cleaned before.

import stringWidth from 'string-width';

const segmenter = new Intl.Segmenter('en', { granularity: 'grapheme' });
const PLAIN = /^[\x20-\x7e]*$/;

/** The cells that the text fills: two for wide characters and emoji, none for combining marks. */
export function displayWidth(text: string): number {
	return PLAIN.test(text) ? text.length : stringWidth(text);
}

/** What a reader sees as single characters, in order: `e` with its accent, a flag, a family. */
export function graphemes(text: string): string[] {
	if (PLAIN.test(text)) return text.split('');
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
