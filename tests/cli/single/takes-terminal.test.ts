// Which starts of the one file are watched: those that may switch the terminal's modes.

import { expect, test } from 'vitest';
import { takesTerminal } from '../../../src/cli/single/takes-terminal.ts';

test.each([
	['', true],
	['run club.yaml', true],
	['--data folder run club.yaml', true],
	['setup club.yaml A1', true],
	['plan club.yaml --sheet', false],
	['report', false],
	['report --edit', true],
	['report -h', false],
	['run --help', false],
])('rackside %s: %s', (line, isWatched) => {
	expect(takesTerminal(line === '' ? [] : line.split(' '))).toBe(isWatched);
});
