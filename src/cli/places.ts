// Where a request's nights and settings are.

import { createHash } from 'node:crypto';
import { homedir, tmpdir } from 'node:os';
import { join } from 'node:path';
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

/** Where nights may be: their own folder, then where one goes on when the disk of that one fails. */
export function nightFolders({ nights }: Paths): readonly string[] {
	// One for each user and data folder, so that nobody finds another's nights there.
	const mark = createHash('sha256').update(nights).digest('hex').slice(0, 8);
	const owner = process.getuid?.() ?? 'user';
	return [nights, join(tmpdir(), `rackside-${owner}-${mark}`)];
}
