// What somebody typed stays text in a page and in a table.

import { expect, test } from 'vitest';
import { markdownText } from '../../src/report/markdown-text.ts';
import { csvText } from '../../src/report/report-csv.ts';

/** RFC 4180, section 2, read as a spreadsheet reads it: quotes off, doubled ones single. */
function readCsv(text: string): string[][] {
	return text
		.split('\r\n')
		.slice(0, -1)
		.map((line) =>
			[...line.matchAll(/"((?:[^"]|"")*)"/g)].map(([, cell = '']) => cell.replaceAll('""', '"')),
		);
}

// Openings of a formula named by OWASP, "CSV Injection", and their full-width forms.
test.each([
	'=1+1',
	'+1',
	'-1',
	'@SUM(A1)',
	'\t=1',
	' =1',
	'"=1',
	'＝1',
	'＋1',
	'－1',
	'＠x',
	"'quoted",
])('%j cannot begin a formula, and can be had back', (text) => {
	const [[cell = ''] = []] = readCsv(csvText([[text]]));
	expect(cell).toBe(`'${text}`);
	expect(cell.replace(/^'/, '')).toBe(text);
});

test('every cell is quoted, and separators inside stay inside', () => {
	expect(csvText([['a,b', 'say "x"', null, 3]])).toBe('"a,b","say ""x""","","3"\r\n');
	expect(readCsv(csvText([['a","=1', 'b']]))).toEqual([['a","=1', 'b']]);
});

test.each([
	['<script>alert(1)</script>', '&lt;script&gt;alert(1)&lt;/script&gt;'],
	['[x](javascript:y)', '\\[x\\](javascript:y)'],
	['![x](y)', '\\!\\[x\\](y)'],
	['a | b', 'a \\| b'],
	['`code` *b* _i_', '\\`code\\` \\*b\\* \\_i\\_'],
	['# no heading', '\\# no heading'],
	['- no list', '\\- no list'],
	['12. no list', '12\\. no list'],
	['https://example.org', 'https\\://example.org'],
	['www.example.org', 'www\\.example.org'],
	['_www.example.org', '\\_www\\.example.org'],
	['ash@example.org', 'ash\\@example.org'],
	['&amp; \\', '&amp;amp; \\\\'],
	['E standard, capo 3', 'E standard, capo 3'],
])('%s', (text, escaped) => {
	expect(markdownText(text)).toBe(escaped);
});

test('a line end or an escape in a text does not leave its line', () => {
	const escaped = markdownText('a\n# b\u001b[31m');
	for (const mark of ['\n', '\u001b']) expect(escaped).not.toContain(mark);
});
