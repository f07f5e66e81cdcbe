// What stands under a name that others could guess is used only where it is ours.

import { chmodSync, chownSync, lchownSync, mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { Disk, FileStat } from '../../src/disk/disk.ts';
import { ownFolder, whyNotOwn } from '../../src/disk/own-file.ts';
import { realDisk } from '../../src/disk/real-disk.ts';
import { makePipe, scratchFolder } from './scratch-folder.ts';

const NOBODY = 65_534;
const isRoot = process.getuid?.() === 0;

test('a plain file and folder of ours, and what is not there, are used', () => {
	const folder = scratchFolder();
	const file = join(folder, 'one');
	writeFileSync(file, '', { mode: 0o600 });
	expect(whyNotOwn(realDisk, file, 'file')).toBeNull();
	expect(whyNotOwn(realDisk, folder, 'folder')).toBeNull();
	expect(whyNotOwn(realDisk, join(folder, 'none'), 'file')).toBeNull();
});

test('a link, a pipe, a folder for a file, and what others may write into are not', () => {
	const folder = scratchFolder();
	const at = (name: string) => join(folder, name);
	writeFileSync(at('file'), '', { mode: 0o600 });
	symlinkSync(at('file'), at('link'));
	symlinkSync(folder, at('folder-link'));
	makePipe(at('pipe'));
	writeFileSync(at('open'), '');
	chmodSync(at('open'), 0o622);
	mkdirSync(at('all'));
	chmodSync(at('all'), 0o777);
	expect(whyNotOwn(realDisk, at('link'), 'file')).toBe('ELOOP');
	expect(whyNotOwn(realDisk, at('folder-link'), 'folder')).toBe('ELOOP');
	expect(whyNotOwn(realDisk, at('pipe'), 'file')).toBe('PIPE');
	expect(whyNotOwn(realDisk, folder, 'file')).toBe('EISDIR');
	expect(whyNotOwn(realDisk, at('file'), 'folder')).toBe('ENOTDIR');
	expect(whyNotOwn(realDisk, at('open'), 'file')).toBe('OPEN_TO_OTHERS');
	expect(whyNotOwn(realDisk, at('all'), 'folder')).toBe('OPEN_TO_OTHERS');
});

test('nor is what belongs to somebody else', () => {
	const mine = process.getuid?.() ?? 0;
	const stat: FileStat = {
		kind: 'file',
		identity: '1:1',
		sizeBytes: 0,
		links: 1,
		modifiedMs: 0,
		owner: mine + 1,
		mode: 0o600,
	};
	const disk: Disk = { ...realDisk, stat: () => stat };
	expect(whyNotOwn(disk, '/any', 'file')).toBe('NOT_OURS');
	expect(whyNotOwn({ ...disk, stat: () => ({ ...stat, owner: mine }) }, '/any', 'file')).toBeNull();
});

test.runIf(isRoot)(
	'a folder that another user made is passed over for the next name, which is said',
	() => {
		const folder = scratchFolder();
		const path = join(folder, 'nights');
		mkdirSync(path, { mode: 0o700 });
		chownSync(path, NOBODY, NOBODY);
		symlinkSync(folder, `${path}-2`);
		lchownSync(`${path}-2`, NOBODY, NOBODY);
		expect(ownFolder(realDisk, path)).toEqual({
			path: `${path}-3`,
			passedOver: [
				{ path, trouble: 'NOT_OURS' },
				{ path: `${path}-2`, trouble: 'ELOOP' },
			],
		});
	},
);

test('where every name is taken there is none', () => {
	const folder = scratchFolder();
	const path = join(folder, 'nights');
	const names = [path, ...Array.from({ length: 8 }, (_, place) => `${path}-${place + 2}`)];
	for (const name of names) writeFileSync(name, '');
	expect(ownFolder(realDisk, path).path).toBeNull();
});
