// An export never costs the user a file: neither one that is there, nor one that a link leads to.

import {
	linkSync,
	mkdirSync,
	readdirSync,
	readFileSync,
	statSync,
	symlinkSync,
	writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { type Exported, writeExport } from '../../src/disk/export-file.ts';
import { realDisk } from '../../src/disk/real-disk.ts';
import { FaultDisk } from './fault-disk.ts';
import { makePipe, scratchFolder } from './scratch-folder.ts';

function write(
	folder: string,
	options: { isDefaultName?: boolean; isForced?: boolean; text?: string } = {},
): Exported {
	const { isDefaultName = false, isForced = false, text = 'new' } = options;
	return writeExport(realDisk, { folder, name: 'report.md', text, isDefaultName, isForced });
}

const refused = { fault: { code: 'file-exists' } };

describe('onto nothing', () => {
	test('the file is written, for its owner alone', () => {
		const folder = scratchFolder();
		expect(write(folder, { text: 'Ünïcode' })).toEqual({ path: join(folder, 'report.md') });
		expect(readFileSync(join(folder, 'report.md'), 'utf8')).toBe('Ünïcode');
		expect(statSync(join(folder, 'report.md')).mode & 0o777).toBe(0o600);
	});

	test('a folder that is not there is said', () => {
		expect(write(join(scratchFolder(), 'none'))).toMatchObject({
			fault: { code: 'export-failed', trouble: 'ENOENT' },
		});
	});
});

describe.each(['file', 'link', 'dangling link', 'hard link', 'pipe', 'folder'])(
	'onto a %s',
	(what) => {
		function prepared(): { folder: string; victim: string } {
			const folder = scratchFolder();
			const victim = join(folder, 'victim');
			const target = join(folder, 'report.md');
			writeFileSync(victim, 'precious');
			if (what === 'file') writeFileSync(target, 'old');
			else if (what === 'link') symlinkSync(victim, target);
			else if (what === 'dangling link') symlinkSync(join(folder, 'nowhere'), target);
			else if (what === 'hard link') linkSync(victim, target);
			else if (what === 'pipe') makePipe(target);
			else mkdirSync(target);
			return { folder, victim };
		}

		test('a chosen name is refused', () => {
			const { folder, victim } = prepared();
			expect(write(folder)).toMatchObject(refused);
			expect(readFileSync(victim, 'utf8')).toBe('precious');
		});

		test('a name of ours gets a number', () => {
			const { folder, victim } = prepared();
			expect(write(folder, { isDefaultName: true })).toEqual({ path: join(folder, 'report-2.md') });
			expect(write(folder, { isDefaultName: true })).toEqual({ path: join(folder, 'report-3.md') });
			expect(readFileSync(victim, 'utf8')).toBe('precious');
			expect(readdirSync(folder)).not.toContain('nowhere');
		});

		test('with force a plain file is replaced, nothing else', () => {
			const { folder, victim } = prepared();
			const isPlain = what === 'file' || what === 'hard link';
			const done = write(folder, { isForced: true });
			if (isPlain) expect(done).toEqual({ path: join(folder, 'report.md') });
			else expect(done).toMatchObject(refused);
			if (isPlain) expect(readFileSync(join(folder, 'report.md'), 'utf8')).toBe('new');
			expect(readFileSync(victim, 'utf8')).toBe('precious');
			expect(readdirSync(folder).filter((name) => name.endsWith('.new'))).toEqual([]);
		});
	},
);

describe('a disk that fails', () => {
	const file = { folder: '/out', name: 'report.md', text: 'new text', isDefaultName: false };

	test.each([false, true])('leaves old or new, never half (forced: %s)', (isForced) => {
		const calls = 8;
		for (let number = 1; number <= calls; number += 1) {
			for (const effect of [{ fail: 'ENOSPC' }, { kill: 'before' }, { kill: 'after' }] as const) {
				const disk = new FaultDisk();
				disk.plantFolder('/out');
				if (isForced) disk.plant('/out/report.md', Buffer.from('old'));
				disk.effect = (call) => (call.number === number ? effect : null);
				const done = writeExport(disk, { ...file, isForced });
				const rest = disk.afterKill();
				const found = rest.files().includes('/out/report.md')
					? rest.peek('/out/report.md').toString()
					: null;
				if ('path' in done) expect(found).toBe('new text');
				else if (isForced) expect(['old', 'new text']).toContain(found);
				else if ('fail' in effect) expect(found).toBeNull();
			}
		}
	});

	test('is said', () => {
		const disk = new FaultDisk();
		disk.plantFolder('/out');
		disk.roomBytes = 3;
		expect(writeExport(disk, { ...file, isForced: false })).toMatchObject({
			fault: { code: 'export-failed', trouble: 'ENOSPC', path: '/out/report.md' },
		});
		expect(disk.files()).toEqual([]);
	});

	test('gives up when all names are taken', () => {
		const disk = new FaultDisk();
		disk.plantFolder('/out');
		disk.effect = (call) => (call.name === 'openNew' ? { fail: 'EEXIST' } : null);
		const done = writeExport(disk, { ...file, isDefaultName: true, isForced: false });
		expect(done).toMatchObject(refused);
	});
});

test('a name without extension gets its number at the end', () => {
	const disk = new FaultDisk();
	disk.plant('/out/report', Buffer.from('old'));
	const file = { folder: '/out', name: 'report', text: '', isDefaultName: true, isForced: false };
	expect(writeExport(disk, file)).toEqual({ path: '/out/report-2' });
});
