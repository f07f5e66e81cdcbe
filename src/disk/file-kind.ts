// What stands under a name, and the code by which all but a plain file is refused where one is wanted.

import type { StatsBase } from 'node:fs';

export type FileKind = 'file' | 'folder' | 'link' | 'pipe' | 'socket' | 'device';

/** The system's codes where it has any, else our own: see `diskTrouble`. */
export type NotAFile = 'EISDIR' | 'ELOOP' | 'PIPE' | 'SOCKET' | 'DEVICE';

const REFUSED: { readonly [kind in Exclude<FileKind, 'file'>]: NotAFile } = {
	folder: 'EISDIR',
	link: 'ELOOP',
	pipe: 'PIPE',
	socket: 'SOCKET',
	device: 'DEVICE',
};

export function fileKind(found: StatsBase<number> | StatsBase<bigint>): FileKind {
	if (found.isFile()) return 'file';
	if (found.isDirectory()) return 'folder';
	if (found.isSymbolicLink()) return 'link';
	if (found.isFIFO()) return 'pipe';
	return found.isSocket() ? 'socket' : 'device';
}

/** Null for a plain file. */
export function whyNoFile(kind: FileKind): NotAFile | null {
	return kind === 'file' ? null : REFUSED[kind];
}
