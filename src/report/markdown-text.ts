// Somebody's words inside a Markdown page, where they must stay words.

import { cleanText } from '../base/clean-text.ts';

/** Most cells of a night: nothing to escape, seen at one look. */
const PLAIN = /^[A-Za-z0-9 ,;:'"%?]*$/;
/** A sharp stays plain behind its note: it begins no heading there. */
const MARKUP = /[\\`*_{}[\]<>&|~$!@]|(?<![A-Za-z])#/g;
const LINK_START = /(:)(?=\/\/)|(\.)(?<=www\.)/gi;
const LIST_START = /^\s*(?:[-+=]|\d+(?=[.)]))/;

/**
 * The text on one line with everything escaped that could be markup, HTML, a link or a cell's end
 * (CommonMark, "Backslash escapes"; GitHub's tables, bare links and addresses too).
 */
export function markdownText(text: string): string {
	return markdownCell(text).replace(LIST_START, escapeStart);
}

/** The same inside the cell of a table, which begins no list. */
export function markdownCell(text: string): string {
	if (PLAIN.test(text)) return text;
	return cleanText(text).replace(MARKUP, escapeMark).replace(LINK_START, '\\$&');
}

function escapeMark(mark: string): string {
	if (mark === '<') return '&lt;';
	if (mark === '>') return '&gt;';
	return mark === '&' ? '&amp;' : `\\${mark}`;
}

function escapeStart(start: string): string {
	return /\d$/.test(start) ? `${start}\\` : start.replace(/.$/, '\\$&');
}
