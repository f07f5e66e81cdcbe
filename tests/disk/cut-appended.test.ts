// Cutting a file whose handle can only append, as Windows has it; here with a handle that is refused in the same way.

import {
	closeSync,
	constants,
	fstatSync,
	ftruncateSync,
	openSync,
	readFileSync,
	renameSync,
	writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { cutAppended } from '../../src/disk/cut-appended.ts';
import { scratchFolder } from './scratch-folder.ts';

function night(platform: string) {
	const path = join(scratchFolder(), 'night.jsonl');
	writeFileSync(path, 'whole\nhal');
	const appending = openSync(path, constants.O_RDWR | constants.O_APPEND);
	let opened = 0;
	const cutting = cutAppended({
		truncate: (file, size) => {
			if (platform === 'win32' && file === appending)
				throw Object.assign(new Error('EPERM'), { code: 'EPERM' });
			ftruncateSync(file, size);
		},
		openWritable: (name) => {
			opened += 1;
			return openSync(name, 'r+');
		},
		close: closeSync,
		isSameFile: (one, other) => fstatSync(one).ino === fstatSync(other).ino,
		platform,
	});
	const file = cutting.opened(appending, path);
	return { path, cutting, file, openedOnce: () => opened };
}

describe('a torn last line', () => {
	it.each(['win32', 'linux'])('is cut off on %s', (platform) => {
		const { path, cutting, file, openedOnce } = night(platform);
		cutting.truncate(file, 6);
		cutting.closed(file);
		closeSync(file);
		expect(readFileSync(path, 'utf8')).toBe('whole\n');
		expect(openedOnce()).toBe(platform === 'win32' ? 1 : 0);
	});

	it('is cut off no other file that has come under its name', () => {
		const { path, cutting, file } = night('win32');
		renameSync(path, `${path}.old`);
		writeFileSync(path, 'somebody else');
		expect(() => cutting.truncate(file, 6)).toThrow('EPERM');
		closeSync(file);
		expect(readFileSync(path, 'utf8')).toBe('somebody else');
	});
});
