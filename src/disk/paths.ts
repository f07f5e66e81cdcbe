// Where the program's own files are.

import { basename, dirname, join, posix, resolve, sep, win32 } from 'node:path';
import { fs } from './node-fs.ts';

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
	const path = pathsOf(sources);
	const data = chosen ? path.resolve(chosen) : path.join(forData, 'rackside');
	const settings = chosen ? data : path.join(forSettings, 'rackside');
	return { data, nights: path.join(data, 'nights'), settings };
}

/** How the platform writes paths. */
const pathsOf = ({ platform }: Pick<PathSources, 'platform'>) =>
	platform === 'win32' ? win32 : posix;

function platformFolders({ environment, home, platform }: PathSources): [string, string] {
	const { XDG_DATA_HOME, XDG_CONFIG_HOME } = environment;
	const [data, settings] = usualFolders({ environment, home, platform });
	const { isAbsolute } = pathsOf({ platform });
	const absolute = (path: string | undefined) => (path && isAbsolute(path) ? path : undefined);
	return [absolute(XDG_DATA_HOME) ?? data, absolute(XDG_CONFIG_HOME) ?? settings];
}

function usualFolders({
	environment,
	home,
	platform,
}: Omit<PathSources, 'dataOption'>): [string, string] {
	const { join: joined } = pathsOf({ platform });
	if (platform === 'darwin') {
		return [joined(home, 'Library', 'Application Support'), joined(home, 'Library', 'Preferences')];
	}
	if (platform === 'win32') {
		const { LOCALAPPDATA: local, APPDATA: roaming } = environment;
		return [
			local || joined(home, 'AppData', 'Local'),
			roaming || joined(home, 'AppData', 'Roaming'),
		];
	}
	return [joined(home, '.local', 'share'), joined(home, '.config')];
}

/** Folders that a restart of the machine empties (Filesystem Hierarchy Standard 3.0, from memory). */
const WIPED = ['/tmp', '/run', '/dev/shm', '/var/run', '/private/tmp'];
/** Holds what is to outlive one (the same standard). */
const KEPT = ['/var/tmp', '/private/var/tmp'];

/** File systems that live in memory: tmpfs and ramfs, by their numbers in statfs(2) of Linux. */
const IN_MEMORY = new Set([0x01_02_19_94, 0x85_84_58_f6]);

/** Whether a restart of the machine empties this folder; `temporary` is where the system has its temporary files. */
export function isWipedByRestart(folder: string, temporary: string): boolean {
	const path = existing(resolve(folder));
	if (isInMemory(path)) return true;
	const isUnder = (above: string) => path === above || path.startsWith(`${above}${sep}`);
	if (KEPT.some(isUnder)) return false;
	return [...WIPED, existing(resolve(temporary))].some(isUnder);
}

/** Whether the file system of the folder, or of the nearest above it that is there, says so itself. */
function isInMemory(path: string): boolean {
	if (process.platform !== 'linux') return false;
	try {
		return IN_MEMORY.has(fs.statfsSync(path).type);
	} catch {
		const above = dirname(path);
		return above !== path && isInMemory(above);
	}
}

/** The path with the links in it followed, as far as it is there. */
function existing(path: string): string {
	try {
		return fs.realpathSync(path);
	} catch {
		const above = dirname(path);
		return above === path ? path : join(existing(above), basename(path));
	}
}

/**
 * The one path by which a show file is known, whatever links lead to it; the path itself when it is not there. Where
 * Tonight.yaml is tonight.yaml (macOS, Windows), the system tells how the name is written.
 */
export function showIdentity(path: string): string {
	for (const followed of [fs.realpathSync.native, fs.realpathSync]) {
		try {
			return followed(path);
		} catch {
			// On Windows the system's own way may not know a folder of another machine.
		}
	}
	return resolve(path);
}
