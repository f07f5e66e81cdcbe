// What is said of a disk and of a night's files: what happened and what to do, in sentences.

import { expect, test } from 'vitest';
import type { Finding } from '../../src/journal/findings.ts';
import type { SaveProblem, SaveWarning } from '../../src/journal/night-journal.ts';
import { diskFaultWords, saveProblemWords, saveWarningWords } from '../../src/words/disk.ts';
import { nightFindingWords } from '../../src/words/night-file.ts';

test.each<[SaveProblem, string]>([
	[
		{ code: 'unsaved', trouble: 'ENOSPC' },
		'The disk is full: make room on it (ENOSPC). The night goes on in memory and is written as soon as that works.',
	],
	[
		{ code: 'memory-only', trouble: 'EACCES', folder: '/nights' },
		'The night is in memory only: no permission (EACCES) in /nights. Choose another folder with --data DIR.',
	],
	[{ code: 'slow' }, 'The disk is slow: the last steps are written but not yet confirmed.'],
])('%j', (problem, said) => {
	expect(saveProblemWords(problem)).toBe(said);
});

test.each<[SaveWarning, RegExp]>([
	[{ code: 'not-seen', trouble: 'EACCES' }, /could not be looked into, no permission \(EACCES\)/],
	[{ code: 'not-confirmed', trouble: 'EIO' }, /did not confirm .* goes on in a new file/],
	[
		{ code: 'file-changed', path: '/n', change: 'gone' },
		/was moved or removed by somebody else \(\/n\)/,
	],
	[
		{ code: 'file-changed', path: '/n', change: 'cut-short' },
		/was cut short by somebody else \(\/n\)/,
	],
	[{ code: 'written-by-other', writer: null }, /^Something else wrote/],
	[{ code: 'written-by-other', writer: 'w9' }, /^Another copy of the program is .*w9/],
])('%j', (warning, said) => {
	expect(saveWarningWords(warning)).toMatch(said);
});

test.each<[Finding, RegExp]>([
	[{ code: 'record-quarantined', isWarning: true, count: 1 }, /^The last record cannot be read/],
	[{ code: 'record-quarantined', isWarning: true, count: 2 }, /^The last 2 records cannot/],
	[{ code: 'newer-format', isWarning: true }, /newer version/],
	[{ code: 'foreign-records', isWarning: true, count: 3 }, /3 records .* belong to another night/],
	[{ code: 'header-missing', isWarning: true, isEmpty: false }, /beginning/],
	[{ code: 'header-missing', isWarning: true, isEmpty: true }, /file is empty/],
])('%j', (finding, said) => {
	expect(nightFindingWords(finding)).toMatch(said);
});

test('who has the show open, where that can be told', () => {
	expect(diskFaultWords({ code: 'locked', pid: 7 })).toBe(
		'This show is already open in another copy of the program (process 7): end that one, or go on there.',
	);
	expect(diskFaultWords({ code: 'locked', pid: null })).toContain('program: end that one');
});
