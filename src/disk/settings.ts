// A user's preferences. They may be lost without any harm, and never keep a show from starting:
// whatever is wrong with them, the defaults serve and one sentence says so.

import { dirname } from 'node:path';
import type Conf from 'conf';
import type { Disk } from './disk.ts';
import { diskTrouble } from './disk-trouble.ts';
import { ensureFolder } from './folders.ts';

/** All preferences there are. */
export type Settings = {
	/** Key that the user has set for an action, by the action's id. */
	readonly keys: { readonly [action: string]: string };
	readonly looks: 'normal' | 'dark';
	/** Absolute path of the show file that was opened last; null before there was any. */
	readonly lastShow: string | null;
};

/** The preferences while nothing was set. */
export const defaultSettings: Settings = { keys: {}, looks: 'normal', lastShow: null };

/** Preferences as they were read, and the way to change them. */
export type SettingsStore = {
	readonly values: Settings;
	/** The file they are in; empty when even that is not known. */
	readonly path: string;
	/** One sentence when they could not be read. */
	readonly problem: string | null;
	/** Changes some; gives a sentence when the change will not outlast the program. */
	readonly change: (changes: Partial<Settings>) => string | null;
	/** Sets everything back; gives a sentence when that cannot be. */
	readonly reset: () => string | null;
};

/** Where preferences are kept: a folder of the user's choice, or null for the platform's own place. */
export type SettingsPlace = { readonly disk: Disk; readonly folder: string | null };

type Stored = Record<string, unknown>;

/** Reads the preferences; always gives some. */
export async function openSettings({ disk, folder }: SettingsPlace): Promise<SettingsStore> {
	// Loaded only here: it takes longer than all else that a resumed night needs.
	const { default: Store } = await import('conf');
	const place = folder === null ? {} : { cwd: folder };
	const open = (isDamageCleared: boolean) =>
		new Store<Stored>({
			projectName: 'rackside',
			projectSuffix: '',
			configName: 'settings',
			configFileMode: 0o600,
			clearInvalidConfig: isDamageCleared,
			...place,
		});
	try {
		return openStore(open(false), disk);
	} catch (error) {
		return brokenStore(causeOf(error), () => openStore(open(true), disk).reset());
	}
}

function brokenStore(cause: string, reset: () => string | null): SettingsStore {
	return {
		values: defaultSettings,
		path: '',
		problem: `The preferences cannot be read, ${cause}; the usual ones are used.`,
		change: () => 'The preferences cannot be kept until they are reset with "rackside settings".',
		reset: () => {
			try {
				return reset();
			} catch (error) {
				return notKeptText(causeOf(error));
			}
		},
	};
}

function openStore(store: Conf<Stored>, disk: Disk): SettingsStore {
	let values = readSettings(store.store);
	const keep = (next: Settings): string | null => {
		values = next;
		try {
			ensureFolder(disk, dirname(store.path));
			store.store = { ...next };
			// A full disk may cut the file without anybody being told.
			const kept = Buffer.from(disk.read(store.path)).toString('utf8');
			if (sameJson(readSettings(JSON.parse(kept)), next)) return null;
			return notKeptText('the disk is full');
		} catch (error) {
			return notKeptText(causeOf(error));
		}
	};
	return {
		get values() {
			return values;
		},
		path: store.path,
		problem: null,
		change: (changes) => keep({ ...values, ...changes }),
		reset: () => keep(defaultSettings),
	};
}

function notKeptText(cause: string): string {
	return `The preferences hold for now but could not be kept: ${cause}.`;
}

function readSettings(stored: Stored): Settings {
	const { keys, looks, lastShow } = stored;
	const isRecord = keys !== null && typeof keys === 'object' && !Array.isArray(keys);
	const texts = Object.entries(isRecord ? keys : {}).filter(
		(pair): pair is [string, string] => typeof pair[1] === 'string',
	);
	return {
		keys: Object.fromEntries(texts),
		looks: looks === 'dark' ? 'dark' : 'normal',
		lastShow: typeof lastShow === 'string' ? lastShow : null,
	};
}

function sameJson(one: unknown, other: unknown): boolean {
	return JSON.stringify(one) === JSON.stringify(other);
}

function causeOf(error: unknown): string {
	if (error instanceof SyntaxError) return 'their file is damaged';
	const code = error instanceof Error && 'code' in error ? String(error.code) : 'unknown cause';
	return diskTrouble(code);
}
