// The library that makes a program believe in another clock, where the machine has it.

import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';

/** The path of libfaketime, to be loaded before a program, on Debian and its like; null where it is not. */
export function fakeClock(): string | null {
	const libraries = '/usr/lib';
	const folders = existsSync(libraries) ? readdirSync(libraries) : [];
	const paths = folders.map((name) => join(libraries, name, 'faketime', 'libfaketimeMT.so.1'));
	return paths.find((path) => existsSync(path)) ?? null;
}
