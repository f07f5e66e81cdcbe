// The README's table of keys and the keys themselves never drift apart.

import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { ACTIONS } from '../../src/keys/actions.ts';
import { markdownText } from '../../src/report/markdown-text.ts';

const readme = fileURLToPath(new URL('../../README.md', import.meta.url));
const BEGIN =
	'<!-- keys: made from src/keys/actions.ts; WRITE_KEYS=1 npx vitest run tests/keys/keys-table.test.ts writes it -->';
const END = '<!-- end of keys -->';

function keysTable(): string {
	const rows = ACTIONS.map(({ keys, words }) => {
		const shown = keys.map((key) =>
			key === 'pagedown' ? 'page down' : key === 'pageup' ? 'page up' : key,
		);
		return `| ${shown.map(markdownText).join(', ')} | ${markdownText(words)} |`;
	});
	return ['| key | does |', '|---|---|', ...rows].join('\n');
}

test('the table of keys in the README is that of the action records', () => {
	const text = readFileSync(readme, 'utf8');
	const begin = text.indexOf(BEGIN);
	const end = text.indexOf(END);
	expect(begin).toBeGreaterThan(0);
	expect(end).toBeGreaterThan(begin);
	if (process.env.WRITE_KEYS) {
		writeFileSync(
			readme,
			`${text.slice(0, begin + BEGIN.length)}\n\n${keysTable()}\n\n${text.slice(end)}`,
		);
		return;
	}
	expect(text.slice(begin + BEGIN.length, end).trim()).toBe(keysTable());
});
