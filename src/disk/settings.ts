// A user's preferences. They may be lost without any harm, and never keep a show from starting:
// whatever is wrong with them, the defaults serve and that is said.

import { dirname, join } from 'node:path';
import type Conf from 'conf';
import { COLOUR_SETS, type ColourSet } from '../base/colours.ts';
import type { DiskFault } from '../base/disk-fault.ts';
import type { Disk } from './disk.ts';
import { diskError } from './disk.ts';
import { ensureFolder } from './folders.ts';
import { whyNotOwn } from './own-file.ts';

/** All preferences there are. */
export type Settings = {
	/** Key that the user has set for an action, by the action's id. */
	readonly keys: { readonly [action: string]: string };
	readonly colours: ColourSet;
	/** The user's own times for pieces of work, as they are kept: whether they can be used is for the reader of shows to say. */
	readonly times: Readonly<Record<string, unknown>>;
	/** What boards are sent over by MIDI where nothing else is asked for: a path or a name; null for nothing. */
	readonly midi: string | null;
	/** Absolute path of the show file that was opened last; null before there was any. */
	readonly lastShow: string | null;
};

/** The preferences while nothing was set. */
export const defaultSettings: Settings = {
	keys: {},
	colours: COLOUR_SETS[0],
	times: {},
	midi: null,
	lastShow: null,
};

/** Preferences as they were read, and the way to change them. */
export type SettingsStore = {
	readonly values: Settings;
	/** The file they are in. */
	readonly path: string;
	/** When they could not be read. */
	readonly problem: DiskFault | null;
	/** Changes some; says when the change will not outlast the program. */
	readonly change: (changes: Partial<Settings>) => DiskFault | null;
	/** Sets everything back; says when that cannot be. */
	readonly reset: () => DiskFault | null;
};

/** Where preferences are kept. */
export type SettingsPlace = { readonly disk: Disk; readonly folder: string };

type Stored = Record<string, unknown>;

const pathIn = (folder: string): string => join(folder, 'settings.json');

/** The preferences as they are now, the usual ones for whatever cannot be read: for a quick start. */
export function settingsNow({ disk, folder }: SettingsPlace): {
	readonly values: Settings;
	/** When they could not be read. */
	readonly problem: DiskFault | null;
} {
	try {
		return { values: valuesIn(disk, pathIn(folder)), problem: null };
	} catch (error) {
		const problem: DiskFault = { code: 'settings-unreadable', trouble: troubleOf(error) };
		return { values: defaultSettings, problem };
	}
}

/** Reads the preferences, to be changed; always gives some. */
export async function openSettings({ disk, folder }: SettingsPlace): Promise<SettingsStore> {
	// Loaded only here: it takes longer than all else that a resumed night needs.
	const { default: Store } = await import('conf');
	const open = (isDamageCleared = false): Conf<Stored> => {
		// Left to itself, it would make the folder for everybody to look into.
		ensureFolder(disk, folder);
		return new Store<Stored>({
			projectName: 'rackside',
			projectSuffix: '',
			cwd: folder,
			configName: 'settings',
			configFileMode: 0o600,
			clearInvalidConfig: isDamageCleared,
		});
	};
	return settingsStore({ disk, path: pathIn(folder), open });
}

type StoreParts = {
	readonly disk: Disk;
	readonly path: string;
	readonly open: (isDamageCleared?: boolean) => Conf<Stored>;
};

function settingsStore({ disk, path, open }: StoreParts): SettingsStore {
	const { values: first, problem } = settingsNow({ disk, folder: dirname(path) });
	let values = first;
	const keep = (next: Settings, isDamageCleared: boolean): DiskFault | null => {
		values = next;
		try {
			// The library would follow a link, wait at a pipe, and take anybody's file for ours.
			const trouble = whyNotOwn(disk, path, 'file');
			if (trouble !== null) return notKept(trouble);
			open(isDamageCleared).store = storedOf(next);
			// A full disk may cut the file without anybody being told.
			return sameJson(valuesIn(disk, path), next) ? null : notKept('ENOSPC');
		} catch (error) {
			return notKept(troubleOf(error));
		}
	};
	return {
		get values() {
			return values;
		},
		path,
		problem,
		change: (changes) => keep({ ...values, ...changes }, false),
		reset: () => keep(defaultSettings, true),
	};
}

function notKept(trouble: string | null): DiskFault {
	return { code: 'settings-not-kept', trouble };
}

/** Without a file there is nothing to read; throws where there is one that cannot be read. */
function valuesIn(disk: Disk, path: string): Settings {
	if (disk.stat(path) === null) return defaultSettings;
	const trouble = whyNotOwn(disk, path, 'file');
	if (trouble !== null) throw diskError(trouble);
	const stored = JSON.parse(Buffer.from(disk.read(path)).toString('utf8')) as Stored | null;
	const { keys, looks: colours, times, midi, lastShow } = stored ?? {};
	const texts = Object.entries(recordOf(keys)).filter(
		(pair): pair is [string, string] => typeof pair[1] === 'string',
	);
	return {
		keys: Object.fromEntries(texts),
		colours: COLOUR_SETS.find((name) => name === colours) ?? defaultSettings.colours,
		times: recordOf(times),
		midi: typeof midi === 'string' && midi !== '' ? midi : null,
		lastShow: typeof lastShow === 'string' ? lastShow : null,
	};
}

/** As they are on the disk, where the colours have been `looks` from the first. */
function storedOf({ keys, colours, times, midi, lastShow }: Settings): Stored {
	return { keys, looks: colours, times, ...(midi === null ? {} : { midi }), lastShow };
}

function recordOf(value: unknown): Readonly<Record<string, unknown>> {
	const isRecord = typeof value === 'object' && value !== null && !Array.isArray(value);
	return isRecord ? (value as Record<string, unknown>) : {};
}

function sameJson(one: unknown, other: unknown): boolean {
	return JSON.stringify(one) === JSON.stringify(other);
}

/** The system's own word for it; null where the file itself is damaged. */
function troubleOf(error: unknown): string | null {
	if (error instanceof SyntaxError) return null;
	return error instanceof Error && 'code' in error ? String(error.code) : 'UNKNOWN';
}
