// Where the program's own files are.

import { realpathSync } from 'node:fs';
import { isAbsolute, join, resolve } from 'node:path';

/** What decides where files are. */
export type PathSources = {
	/** Value of `--data`. */
	readonly dataOption: string | undefined;
	readonly environment: { readonly [name: string]: string | undefined };
	readonly home: string;
	readonly platform: string;
};

/** Where the program keeps what. */
export type Paths = {
	/** Folder of nights, and all else that is kept. */
	readonly data: string;
	readonly nights: string;
	/** Folder of preferences; null for the platform's own place. */
	readonly settings: string | null;
};

/**
 * The folders to use. `--data` comes first, then `RACKSIDE_DATA`, then the platform's place:
 * `$XDG_DATA_HOME/rackside`, by default under `~/.local/share` (XDG Base Directory Specification
 * 0.8, which has relative values ignored), on macOS under `~/Library/Application Support`, on
 * Windows under `%LOCALAPPDATA%`.
 */
export function findPaths(sources: PathSources): Paths {
	const chosen = sources.dataOption || sources.environment.RACKSIDE_DATA;
	const data = chosen ? resolve(chosen) : join(platformFolder(sources), 'rackside');
	return { data, nights: join(data, 'nights'), settings: chosen ? data : null };
}

function platformFolder({ environment, home, platform }: PathSources): string {
	const xdg = environment.XDG_DATA_HOME;
	if (xdg && isAbsolute(xdg)) return xdg;
	if (platform === 'darwin') return join(home, 'Library', 'Application Support');
	if (platform === 'win32') return environment.LOCALAPPDATA || join(home, 'AppData', 'Local');
	return join(home, '.local', 'share');
}

/** The one path by which a show file is known, whatever links lead to it; the path itself when it is not there. */
export function showIdentity(path: string): string {
	try {
		return realpathSync(path);
	} catch {
		return resolve(path);
	}
}
