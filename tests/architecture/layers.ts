// The order of the folders, written here a second time: the lint configuration is checked against it.

import { relative } from 'node:path/posix';

/** Lowest first; a folder may import every folder of an earlier row, and none of its own row. */
const ROWS: readonly (readonly string[])[] = [
	['base'],
	['tuning', 'journal'],
	['showfile'],
	['machines'],
	['session'],
	['plan', 'rig', 'gear', 'history', 'setlist'],
	['words'],
	['bench'],
	['report', 'keys'],
	['screen'],
	['night', 'new-show'],
	['drill'],
	['ui'],
];

/** The rooms of the plan, lowest first: each may import those before it, and what the plan may. */
export const ROOMS: readonly string[] = [
	'demand',
	'schedule',
	'choice',
	'timed-choice',
	'what-if',
	'backups',
	'warnings',
	'advice',
].map((room) => `plan/${room}`);

/** The rooms of the commands: each may import the others, and what all of them stand in. */
const CLI_ROOMS: readonly string[] = [
	'bench',
	'commands',
	'doctor',
	'drill',
	'live',
	'new',
	'nights',
	'rehearsal',
	'sheet',
	'shell',
	'single',
].map((room) => `cli/${room}`);

const PACKAGES: Readonly<Record<string, readonly string[]>> = {
	base: ['string-width', 'fastest-levenshtein'],
	journal: ['node:zlib'],
	showfile: ['yaml', 'zod/mini'],
	machines: ['xstate'],
	setlist: ['yaml', 'csv-parse/sync'],
	report: ['zod/mini'],
	night: ['zod/mini'],
	ui: ['react', 'ink'],
	disk: ['conf', 'node:fs', 'node:fs/promises', 'node:zlib'],
	terminal: ['node:fs', 'node:fs/promises', 'node:zlib'],
	cli: ['node:fs', 'node:fs/promises', 'node:zlib'],
};

/** Every folder with code of the program, lowest first. */
export const FOLDERS: readonly string[] = [
	...ROWS.flat().flatMap((name) => (name === 'plan' ? [...ROOMS, name] : [name])),
	'terminal',
	'disk',
	...CLI_ROOMS,
	'cli',
];

/** Whether what people read may stand in a folder. */
export function hasSentences(folder: string): boolean {
	return folder === 'words';
}

/** Every package that some folder may import, and some that none may. */
export const KNOWN_PACKAGES: readonly string[] = [
	...new Set([...Object.values(PACKAGES).flat(), 'xstate/graph', 'fast-check', 'vitest']),
];

/** The folders that `folder` may import, its own left out. */
export function foldersBelow(folder: string): readonly string[] {
	if (folder === 'terminal') return ['base'];
	if (folder === 'disk') return ['base', 'journal', 'showfile'];
	if (folder.startsWith('cli')) return FOLDERS.filter((name) => name !== folder);
	const room = ROOMS.indexOf(folder);
	if (room >= 0) return [...rowsBelow('plan'), ...ROOMS.slice(0, room)];
	const below = rowsBelow(folder);
	return folder === 'plan' || below.includes('plan') ? [...below, ...ROOMS] : below;
}

function rowsBelow(folder: string): readonly string[] {
	const row = ROWS.findIndex((names) => names.includes(folder));
	return ROWS.slice(0, row).flat();
}

/** The packages of `KNOWN_PACKAGES` that `folder` may import. */
export function packagesFor(folder: string): readonly string[] {
	return PACKAGES[folder.startsWith('cli/') ? 'cli' : folder] ?? [];
}

/** Where a folder's files are, seen from the root. */
export function pathOf(folder: string): string {
	return folder === 'machines' ? 'machines' : `src/${folder}`;
}

/** How a file of `from` writes the import of a file `to` holds. */
export function specifier(from: string, to: string): string {
	const path = relative(pathOf(from), pathOf(to));
	return path.startsWith('.') ? `${path}/other.ts` : `./${path ? `${path}/` : ''}other.ts`;
}
