// Compiled code is run without being looked at, so it must never come from a folder that others can
// write. Names and the rule for relative paths: XDG Base Directory Specification 0.8, "Environment
// variables" (from memory).

import { expect, test } from 'vitest';
import { compileCacheFolders } from '../../src/cli/compile-cache-folders.ts';

const inHome = ['/home/lou/.cache', '/home/lou/.cache/rackside', '/home/lou/.cache/rackside/code'];

test.each([
	[{ XDG_CACHE_HOME: '/c', HOME: '/home/lou' }, ['/c/rackside', '/c/rackside/code']],
	[{ HOME: '/home/lou' }, inHome],
	[{ XDG_CACHE_HOME: '', HOME: '/home/lou' }, inHome],
	[{ XDG_CACHE_HOME: 'c', HOME: '/home/lou' }, inHome],
	[{ HOME: '' }, []],
	[{}, []],
])('%j gives %j', (environment, folders) => {
	expect(compileCacheFolders(environment)).toEqual(folders);
});
