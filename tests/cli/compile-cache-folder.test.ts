// Compiled code is run without being looked at, so it must never come from a folder that others can
// write. Names and the rule for relative paths: XDG Base Directory Specification 0.8, "Environment
// variables" (from memory).

import { expect, test } from 'vitest';
import { compileCacheFolder } from '../../src/cli/compile-cache-folder.ts';

test.each([
	[{ XDG_CACHE_HOME: '/c', HOME: '/home/lou' }, '/c/rackside/code'],
	[{ HOME: '/home/lou' }, '/home/lou/.cache/rackside/code'],
	[{ XDG_CACHE_HOME: '', HOME: '/home/lou' }, '/home/lou/.cache/rackside/code'],
	[{ XDG_CACHE_HOME: 'c', HOME: '/home/lou' }, '/home/lou/.cache/rackside/code'],
	[{ HOME: '' }, undefined],
	[{}, undefined],
])('%j gives %j', (environment, folder) => {
	expect(compileCacheFolder(environment)).toBe(folder);
});
