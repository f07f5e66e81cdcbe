// What every page of ours keeps: nothing from a file can end an element, an attribute or the styles, and nothing
// but the page's own styles may be used by a browser that follows its policy.

import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { element, htmlPage, named, type PAPERS } from '../../src/report/html-page.ts';

const pageOf = (text: string, paper: keyof typeof PAPERS | null = null) =>
	htmlPage({
		title: text,
		foot: text,
		styles: '',
		paper,
		body: element('p', { title: text }, text),
	});

test('whatever a name holds, the page has the same elements', () => {
	const elementsOf = (markup: string) => markup.match(/<[a-z!/][^\s>]*/gi);
	const usual = elementsOf(pageOf('Harbour'));
	const hostile = fc.oneof(
		fc.string({ unit: 'binary' }),
		fc.constantFrom(
			'</style><script>',
			'"><img src=x onerror=x>',
			"' onclick='",
			']]>',
			'<!--',
			'&lt;',
		),
	);
	fc.assert(
		fc.property(hostile, (text) => {
			expect(elementsOf(pageOf(text))).toEqual(usual);
		}),
	);
});

test('the policy names the one sheet of styles by its hash, and nothing else', () => {
	const page = pageOf('Harbour');
	const styles = page.match(/<style>(.*)<\/style>/s)?.[1] ?? '';
	// Content Security Policy Level 3, 2.3.1: the base64 of the hash of the element's text.
	const hash = createHash('sha256').update(styles).digest('base64');
	expect(page).toContain(`style-src &#39;sha256-${hash}&#39;`);
	expect(page).toContain('default-src &#39;none&#39;');
});

test('a page is for the paper that is named, else for what the printer has', () => {
	expect(pageOf('Harbour', 'a4')).toContain('size: A4;');
	expect(pageOf('Harbour', 'letter')).toContain('size: letter;');
	expect(pageOf('Harbour')).not.toContain('size:');
});

test('a name keeps its own direction of writing', () => {
	expect(named('אבג').markup).toBe('<bdi>אבג</bdi>');
});
