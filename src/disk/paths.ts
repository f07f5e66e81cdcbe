// Where the program's own files are.

import { realpathSync } from 'node:fs';
import { basename, dirname, isAbsolute, join, resolve } from 'node:path';

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
	/** Folder of preferences. */
	readonly settings: string;
};

/**
 * The folders to use. `--data` comes first, then `RACKSIDE_DATA`, then the platform's places:
 * `$XDG_DATA_HOME/rackside` and `$XDG_CONFIG_HOME/rackside`, by default under `~/.local/share` and
 * `~/.config` (XDG Base Directory Specification 0.8, which has relative values ignored); on macOS
 * under `~/Library`, on Windows in `%LOCALAPPDATA%` and `%APPDATA%`.
 */
export function findPaths(sources: PathSources): Paths {
	const chosen = sources.dataOption || sources.environment.RACKSIDE_DATA;
	const [forData, forSettings] = platformFolders(sources);
	const data = chosen ? resolve(chosen) : join(forData, 'rackside');
	const settings = chosen ? data : join(forSettings, 'rackside');
	return { data, nights: join(data, 'nights'), settings };
}

function platformFolders({ environment, home, platform }: PathSources): [string, string] {
	const { XDG_DATA_HOME, XDG_CONFIG_HOME } = environment;
	const [data, settings] = usualFolders({ environment, home, platform });
	return [absolute(XDG_DATA_HOME) ?? data, absolute(XDG_CONFIG_HOME) ?? settings];
}

function usualFolders({
	environment,
	home,
	platform,
}: Omit<PathSources, 'dataOption'>): [string, string] {
	if (platform === 'darwin') {
		return [join(home, 'Library', 'Application Support'), join(home, 'Library', 'Preferences')];
	}
	if (platform === 'win32') {
		const { LOCALAPPDATA: local, APPDATA: roaming } = environment;
		return [local || join(home, 'AppData', 'Local'), roaming || join(home, 'AppData', 'Roaming')];
	}
	return [join(home, '.local', 'share'), join(home, '.config')];
}

function absolute(path: string | undefined): string | undefined {
	return path && isAbsolute(path) ? path : undefined;
}

/** Folders that a restart of the machine empties (Filesystem Hierarchy Standard 3.0, from memory). */
const WIPED = ['/tmp', '/run', '/dev/shm', '/var/run', '/private/tmp'];
/** Holds what is to outlive one (the same standard). */
const KEPT = ['/var/tmp', '/private/var/tmp'];

/** Whether a restart of the machine empties this folder; `temporary` is where the system has its temporary files. */
export function isWipedByRestart(folder: string, temporary: string): boolean {
	const path = existing(resolve(folder));
	const isUnder = (above: string) => path === above || path.startsWith(`${above}/`);
	if (KEPT.some(isUnder)) return false;
	return [...WIPED, existing(resolve(temporary))].some(isUnder);
}

/** The path with the links in it followed, as far as it is there. */
function existing(path: string): string {
	try {
		return realpathSync(path);
	} catch {
		const above = dirname(path);
		return above === path ? path : join(existing(above), basename(path));
	}
}

/** The one path by which a show file is known, whatever links lead to it; the path itself when it is not there. */
export function showIdentity(path: string): string {
	try {
		return realpathSync(path);
	} catch {
		return resolve(path);
	}
}
