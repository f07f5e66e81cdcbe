// Somebody's words inside a Markdown page, where they must stay words.

import { cleanText } from '../base/clean-text.ts';

const MARKUP = /[\\`*_{}[\]<>&|~#$!@]/g;
const LINK_START = /(:)(?=\/\/)|(\.)(?<=www\.)/gi;
const LIST_START = /^\s*(?:[-+=]|\d+(?=[.)]))/;

/**
 * The text on one line with everything escaped that could be markup, HTML, a link or a cell's end
 * (CommonMark, "Backslash escapes"; GitHub's tables, bare links and addresses too).
 */
export function markdownText(text: string): string {
	return cleanText(text)
		.replace(MARKUP, escapeMark)
		.replace(LINK_START, '\\$&')
		.replace(LIST_START, escapeStart);
}

function escapeMark(mark: string): string {
	if (mark === '<') return '&lt;';
	if (mark === '>') return '&gt;';
	return mark === '&' ? '&amp;' : `\\${mark}`;
}

function escapeStart(start: string): string {
	return /\d$/.test(start) ? `${start}\\` : start.replace(/.$/, '\\$&');
}
