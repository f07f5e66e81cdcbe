// Which starts of the one file run the text that has the show commands and the plan alone in it.

import { expect, test } from 'vitest';
import { readsShowOnly } from '../../../src/cli/single/reads-show-only.ts';

test.each([
	['check club.yaml', true],
	['--data folder check club.yaml --json', true],
	['tuning club.yaml A1 --to dropD', true],
	['plan club.yaml', true],
	['plan club.yaml --json --data=folder', true],
	['plan club.yaml --why gravel', true],
	['plan club.yaml --sheet', false],
	['plan club.yaml --out=sheet.html', false],
	['plan --tonight', false],
	['plan --help', false],
	['help plan', false],
	['fault club.yaml bo', false],
	['run club.yaml', false],
	['constructor', false],
	['--version', false],
	['', false],
])('rackside %s: %s', (line, isAlone) => {
	expect(readsShowOnly(line === '' ? [] : line.split(' '))).toBe(isAlone);
});
