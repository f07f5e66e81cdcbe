// Pages that one opens in a browser or prints: one file each, without script, network or handler. Elements are
// built as data, so that a text from a file is escaped because there is no other way in.

import { cleanText } from '../base/clean-text.ts';
import { fitWidth } from '../base/display-width.ts';
import { sha256 } from './sha256.ts';

/** A piece of a page that is markup already. */
export type Html = { readonly markup: string };

/** What stands in an element: text is cleaned and escaped, null is nothing. */
export type Content = Html | string | null | readonly Content[];

export type Attributes = Readonly<Record<string, string | number | true | null>>;

/** Elements that have no content and no end. */
const VOID = new Set(['br', 'col', 'hr', 'input', 'meta']);

/**
 * An element. An attribute that is null is left out, true stands without a value.
 *
 * @example
 * element('p', { class: 'mark' }, ['a < b', null]).markup // => '<p class="mark">a &lt; b</p>'
 */
export function element(name: string, attributes: Attributes = {}, content: Content = null): Html {
	const written = Object.entries(attributes)
		.filter(([, value]) => value !== null)
		.map(([key, value]) => (value === true ? ` ${key}` : ` ${key}="${escaped(String(value))}"`))
		.join('');
	const end = VOID.has(name) ? '' : `${markupOf(content)}</${name}>`;
	return { markup: `<${name}${written}>${end}` };
}

/** A name from a file, whose direction of writing moves nothing beside it. */
export function named(text: string, attributes: Attributes = {}): Html {
	return element('bdi', attributes, text);
}

function markupOf(content: Content): string {
	if (content === null) return '';
	if (typeof content === 'string') return escaped(content);
	return 'markup' in content ? content.markup : content.map(markupOf).join('');
}

const SIGNS: Readonly<Record<string, string>> = {
	'&': '&amp;',
	'<': '&lt;',
	'>': '&gt;',
	'"': '&quot;',
	"'": '&#39;',
};

function escaped(text: string): string {
	return cleanText(text).replace(/[&<>"']/g, (sign) => SIGNS[sign] ?? sign);
}

/** More of a text does not fit into the margin of a page. */
const MARGIN_CELLS = 76;

/** A text from anywhere as a string of CSS: every sign that could end it is written by its number. */
function cssString(text: string): string {
	const safe = fitWidth(cleanText(text), MARGIN_CELLS)
		.trimEnd()
		.replace(/[^A-Za-z0-9 ,.:-]/gu, (sign) => `\\${sign.codePointAt(0)?.toString(16) ?? ''} `);
	return `"${safe}"`;
}

export type Page = {
	readonly title: string;
	/** What stands at the foot of every printed page, left of its number. */
	readonly foot: string;
	/** Beside those that all pages share. */
	readonly styles: string;
	/** Null: the paper that the reader's own printer has. */
	readonly paper: Paper | null;
	readonly body: Content;
};

export const PAPERS = { a4: 'A4', letter: 'letter' } as const;
export type Paper = keyof typeof PAPERS;

/** Colours by what they say; each pair reads at 4.5 : 1 or better (WCAG 2.2, 1.4.3), and paper is always light. */
const SHARED_STYLES = `
:root { color-scheme: light dark; --ink: #111; --paper: #fff; --quiet: #4a4a4a; --line: #555; --mark: #8a2b00; }
@media (prefers-color-scheme: dark) {
	:root { --ink: #e6e2da; --paper: #14130f; --quiet: #b3ada1; --line: #8a8478; --mark: #ffb066; }
}
@media print {
	:root { color-scheme: light; --ink: #000; --paper: #fff; --quiet: #333; --line: #000; --mark: #000; }
}
* { box-sizing: border-box; }
html { background: var(--paper); color: var(--ink); }
body { margin: 0 auto; padding: 1rem; max-width: 62rem; line-height: 1.3; overflow-wrap: anywhere;
	font-family: system-ui, "Helvetica Neue", Arial, "DejaVu Sans", sans-serif; font-variant-numeric: tabular-nums; }
table { border-collapse: collapse; width: 100%; }
th, td { text-align: left; vertical-align: top; padding: .2em .6em .2em 0; border-bottom: 1px solid var(--line); }
@media print {
	body { max-width: none; padding: 0; }
	thead { display: table-header-group; }
	tr, li, figure { break-inside: avoid; }
	h1, h2, h3 { break-after: avoid; }
}
`;

/** Room of the margins, and the number of every page at its foot. */
function pageRule({ foot, paper }: Page): string {
	const size = paper === null ? '' : `size: ${PAPERS[paper]};`;
	const type = 'font: 10pt system-ui, "DejaVu Sans", sans-serif;';
	const number = 'counter(page) " / " counter(pages)';
	return `
@page { ${size} margin: 12mm 12mm 16mm;
	@bottom-left { ${type} content: ${cssString(foot)}; }
	@bottom-right { ${type} content: ${number}; }
}
`;
}

/**
 * The whole file. Its policy lets nothing be loaded and nothing run; the one sheet of styles is named by its
 * hash (Content Security Policy Level 3).
 */
export function htmlPage(page: Page): string {
	const styles = `${SHARED_STYLES}${pageRule(page)}${page.styles}`;
	const hash = sha256(styles, 'base64');
	const policy = [
		"default-src 'none'",
		`style-src 'sha256-${hash}'`,
		"base-uri 'none'",
		"form-action 'none'",
	].join('; ');
	const head = element('head', {}, [
		element('meta', { charset: 'utf-8' }),
		element('meta', { 'http-equiv': 'Content-Security-Policy', content: policy }),
		element('meta', { name: 'viewport', content: 'width=device-width' }),
		element('title', {}, page.title),
		element('style', {}, { markup: styles }),
	]);
	const whole = element('html', { lang: 'en' }, [head, element('body', {}, page.body)]);
	return `<!DOCTYPE html>\n${whole.markup}\n`;
}
