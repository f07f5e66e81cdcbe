// What is said after the live screen was left.

import { expect, test } from 'vitest';
import { farewell } from '../../src/cli/farewell.ts';

test('says where the night stands and what to type', () => {
	const left = { file: 'my show.yaml', isRehearsal: false, isOver: false };
	expect(farewell(left)).toContain("stays open. rackside or rackside run 'my show.yaml'");
	expect(farewell({ ...left, file: 'a.yaml', isRehearsal: true })).toContain('rehearse a.yaml');
	expect(farewell({ ...left, isOver: true })).toContain('rackside report');
});
