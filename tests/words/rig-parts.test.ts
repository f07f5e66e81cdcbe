// How a part of the rig is called where its name says its kind too.

import { expect, test } from 'vitest';
import type { RigPart } from '../../src/showfile/rig.ts';
import { partInWords } from '../../src/words/rig.ts';

test.each([
	['direct-box', 'box', 'direct box'],
	['direct-box', 'Box', 'direct box'],
	['direct-box', 'Direct box 2', 'direct box 2'],
	['direct-box', 'boxwood', 'direct box boxwood'],
	['amp', 'amp', 'amp'],
	['amp', 'head', 'amp head'],
	['amp', 'Amp 2', 'amp 2'],
	['amp', 'Right amp', 'Right amp'],
	['cab', 'cab1', 'cabinet cab1'],
	['desk', '7', 'line to the desk 7'],
] as const satisfies readonly (readonly [RigPart['kind'], string, string])[])(
	'a %s called %s',
	(kind, name, words) => {
		expect(partInWords({ kind, name })).toBe(words);
	},
);
