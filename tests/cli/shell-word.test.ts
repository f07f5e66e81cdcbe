// A file's name as the shells of each system take it as one word.

import { expect, test } from 'vitest';
import { shellWord } from '../../src/cli/shell/shell-word.ts';

test.each([
	['friday.yaml', 'friday.yaml'],
	['my file.yaml', "'my file.yaml'"],
	["lou's.yaml", "'lou'\\''s.yaml'"],
	['a\\b.yaml', "'a\\b.yaml'"],
])('%s is %s to a shell of POSIX', (file, word) => {
	for (const platform of ['linux', 'darwin']) expect(shellWord(file, platform)).toBe(word);
});

// A name on Windows holds no quotation mark; both of its shells take double ones (common practice).
test.each([
	['friday.yaml', 'friday.yaml'],
	['C:\\shows\\friday.yaml', 'C:\\shows\\friday.yaml'],
	['my shows\\friday.yaml', '"my shows\\friday.yaml"'],
	["lou's.yaml", '"lou\'s.yaml"'],
])('%s is %s on Windows', (file, word) => {
	expect(shellWord(file, 'win32')).toBe(word);
});
