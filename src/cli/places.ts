// Where a request's nights and settings are.

import { homedir } from 'node:os';
import type { Paths } from '../disk/paths.ts';
import { findPaths } from '../disk/paths.ts';
import type { Request } from './command.ts';
import { optionText } from './command.ts';
import type { Io } from './io.ts';

/** The folders that this request and its surroundings name. */
export function placesOf(request: Request, io: Io): Paths {
	return findPaths({
		dataOption: optionText(request, 'data') ?? undefined,
		environment: io.env,
		home: homedir(),
		platform: process.platform,
	});
}
