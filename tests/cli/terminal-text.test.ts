// Sentences on a terminal break between words, and elsewhere not at all.

import { expect, test } from 'vitest';
import { terminalText } from '../../src/cli/terminal-text.ts';

const TEXT = 'a.yaml:1:5: Before Tidewrack the gap is short.\n  Make it longer.\n';

test('lines are no wider than the window, and their words and indents stay', () => {
	const shown = terminalText(TEXT, { isOutputTerminal: true }, 20);
	expect(shown).toBe('a.yaml:1:5: Before\nTidewrack the gap is\nshort.\n  Make it longer.\n');
});

test('what a program reads is as it is', () => {
	expect(terminalText(TEXT, { isOutputTerminal: false }, 20)).toBe(TEXT);
});
