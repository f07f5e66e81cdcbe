// The real file system behaves as the one in memory that the other tests use, and nights come out
// of it the same.

import { spawn } from 'node:child_process';
import {
	chmodSync,
	linkSync,
	mkdirSync,
	readdirSync,
	readFileSync,
	rmSync,
	statSync,
	symlinkSync,
	truncateSync,
	writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { createNightFile } from '../../src/disk/create-night-file.ts';
import { diskErrorCode } from '../../src/disk/disk.ts';
import { ensureFolder, makeFolders } from '../../src/disk/folders.ts';
import type { NightServices } from '../../src/disk/night-services.ts';
import { lookAtNight, openNightFile } from '../../src/disk/open-night-file.ts';
import { realDisk } from '../../src/disk/real-disk.ts';
import { encodeLine, seedOf } from '../../src/journal/line.ts';
import { recordBeside } from '../../src/journal/new-record.ts';
import { nightName, stepEntry, subject } from './night-steps.ts';
import { makePipe, scratchFolder } from './scratch-folder.ts';

const isRoot = process.getuid?.() === 0;

function codeOf(run: () => unknown): string | null {
	try {
		run();
		return null;
	} catch (error) {
		return diskErrorCode(error);
	}
}

function services(folder: string): NightServices {
	return { disk: realDisk, folders: [folder], writer: 'writer-1', upMs: 0, wait: setTimeout };
}

describe('files', () => {
	test('are made new or not at all, for their owner alone, and grow at the end', () => {
		const folder = scratchFolder();
		const path = join(folder, 'file');
		const umask = process.umask(0);
		const file = realDisk.openNew(path);
		process.umask(umask);
		expect(codeOf(() => realDisk.openNew(path))).toBe('EEXIST');
		expect(statSync(path).mode & 0o777).toBe(0o600);
		const bytes = Buffer.from('abcdef');
		expect(realDisk.write(file, bytes, 2)).toBe(4);
		const other = realDisk.openExisting(path);
		realDisk.write(other, bytes, 4);
		realDisk.write(file, bytes, 5);
		expect(readFileSync(path, 'latin1')).toBe('cdefeff');
		realDisk.truncate(file, 3);
		expect(Buffer.from(realDisk.read(path)).toString()).toBe('cde');
		expect(Buffer.from(realDisk.read(path, { start: 1, length: 9 })).toString()).toBe('de');
		realDisk.close(file);
		realDisk.close(other);
	});

	test('are confirmed, and so are the names in their folder', async () => {
		const folder = scratchFolder();
		const file = realDisk.openNew(join(folder, 'file'));
		await expect(realDisk.sync(file)).resolves.toBeUndefined();
		realDisk.close(file);
		await expect(realDisk.sync(file)).rejects.toThrow();
		await expect(realDisk.syncFolder(folder)).resolves.toBeUndefined();
		await expect(realDisk.syncFolder(join(folder, 'none'))).rejects.toThrow();
	});

	test('are known apart, whatever their names', () => {
		const folder = scratchFolder();
		const path = join(folder, 'file');
		const file = realDisk.openNew(path);
		linkSync(path, join(folder, 'twin'));
		const twin = realDisk.stat(join(folder, 'twin'));
		expect(twin).toMatchObject({ kind: 'file', links: 2, identity: realDisk.stat(path)?.identity });
		realDisk.remove(path);
		expect(realDisk.stat(path)).toBeNull();
		// A file where a folder on the way was: as gone as if the folder were.
		expect(realDisk.stat(join(folder, 'twin', 'below'))).toBeNull();
		realDisk.close(realDisk.openNew(path));
		expect(realDisk.stat(path)?.identity).not.toBe(realDisk.statOpen(file).identity);
		realDisk.close(file);
	});

	test('a link, a pipe, a folder or a device is neither followed nor waited for', () => {
		const folder = scratchFolder();
		const victim = join(folder, 'victim');
		writeFileSync(victim, 'precious');
		symlinkSync(victim, join(folder, 'link'));
		symlinkSync(join(folder, 'nowhere'), join(folder, 'dangling'));
		makePipe(join(folder, 'pipe'));
		mkdirSync(join(folder, 'folder'));
		for (const name of ['link', 'dangling', 'pipe', 'folder']) {
			expect(codeOf(() => realDisk.openNew(join(folder, name)))).toBe('EEXIST');
			expect(codeOf(() => realDisk.openExisting(join(folder, name)))).not.toBeNull();
		}
		for (const path of [join(folder, 'pipe'), join(folder, 'folder'), '/dev/zero']) {
			expect(codeOf(() => realDisk.read(path))).not.toBeNull();
		}
		expect(readFileSync(victim, 'utf8')).toBe('precious');
		const kinds = ['link', 'pipe', 'folder', 'victim'].map(
			(name) => realDisk.stat(join(folder, name))?.kind,
		);
		expect(kinds).toEqual(['link', 'pipe', 'folder', 'file']);
	});
});

describe('folders', () => {
	test('are made level by level for their owner alone; what is there is left as it is', () => {
		const folder = scratchFolder();
		chmodSync(folder, 0o755);
		const umask = process.umask(0);
		expect(makeFolders(realDisk, join(folder, 'a', 'b', 'c'))).toBeNull();
		process.umask(umask);
		expect(statSync(folder).mode & 0o777).toBe(0o755);
		expect(statSync(join(folder, 'a', 'b', 'c')).mode & 0o777).toBe(0o700);
		expect(statSync(join(folder, 'a')).mode & 0o777).toBe(0o700);
		expect(makeFolders(realDisk, join(folder, 'a', 'b'))).toBeNull();
	});

	test('that cannot be made are a problem, at once even where making never ends', () => {
		const folder = scratchFolder();
		writeFileSync(join(folder, 'file'), '');
		const places = [join(folder, 'file'), join(folder, 'file', 'below'), '/proc/rackside/nights'];
		for (const place of places) {
			expect(makeFolders(realDisk, place)).toMatchObject({ code: 'folder-unusable' });
		}
	});

	test('made by somebody else at the same moment are as good', () => {
		const folder = scratchFolder();
		const racing = {
			...realDisk,
			makeFolder: (path: string) => {
				mkdirSync(path);
				realDisk.makeFolder(path);
			},
		};
		expect(codeOf(() => ensureFolder(racing, join(folder, 'a', 'b')))).toBeNull();
	});

	test.skipIf(isRoot)('that may not be written to are a problem', () => {
		const folder = scratchFolder();
		chmodSync(folder, 0o500);
		expect(makeFolders(realDisk, join(folder, 'a'))).toMatchObject({ trouble: 'EACCES' });
	});
});

describe('a night', () => {
	test('is kept, closed and taken up again', async () => {
		const folder = join(scratchFolder(), 'rackside', 'nights');
		const beginning = { id: nightName, wallMs: 1, subject };
		const { journal } = await createNightFile(services(folder), beginning);
		for (let step = 1; step <= 250; step += 1) {
			journal.append([stepEntry(step)], { wallMs: step, upMs: step });
		}
		expect(await journal.close()).toMatchObject({ state: 'saved', savedSeq: 250 });
		expect(readdirSync(folder)).toEqual([`${nightName}.journal`, `${nightName}.left-250`]);
		expect(statSync(join(folder, `${nightName}.journal`)).mode & 0o777).toBe(0o600);
		expect(statSync(folder).mode & 0o777).toBe(0o700);
		const opened = openNightFile(services(folder), { id: nightName });
		expect(opened.records()).toEqual(journal.records());
		expect(opened.findings).toEqual([]);
		await opened.journal?.close();
	});

	test('goes on when its whole folder is taken away', async () => {
		const folder = join(scratchFolder(), 'rackside', 'nights');
		const { journal } = await createNightFile(services(folder), {
			id: nightName,
			wallMs: 1,
			subject,
		});
		for (let step = 1; step <= 5; step += 1) {
			journal.append([stepEntry(step)], { wallMs: step, upMs: step });
		}
		rmSync(folder, { recursive: true });
		for (let second = 1; second <= 5; second += 1) journal.tick(second * 1000);
		expect(await journal.close()).toMatchObject({ isSaved: true, savedSeq: 5 });
		const opened = openNightFile(services(folder), { id: nightName });
		expect(opened.records()).toEqual(journal.records());
		await opened.journal?.close();
	});

	test.runIf(process.platform === 'linux')('outgrows the size that files may have', async () => {
		const folder = scratchFolder();
		const program = fileURLToPath(new URL('../campaigns/kill-writer.ts', import.meta.url));
		// In the units of the shell: 512 or 1024 bytes each.
		const child = spawn('sh', [
			'-c',
			`ulimit -f 16; exec "$0" "$@"`,
			process.execPath,
			program,
			folder,
		]);
		let said = '';
		child.stdout.on('data', (data) => {
			said += data;
		});
		const ended = new Promise((done) => child.once('close', done));
		while (!said.includes('typed 300\n') && child.exitCode === null) await setTimeout(20);
		child.kill('SIGKILL');
		await ended;
		const typed = [...said.matchAll(/typed (\d+)\n/g)].length;
		expect(typed).toBeGreaterThanOrEqual(300);
		expect(readdirSync(folder).length).toBeGreaterThan(2);
		const { records } = lookAtNight({ disk: realDisk, folders: [folder] }, { id: nightName });
		expect(records().length).toBeGreaterThanOrEqual(typed);
	});

	test('torn and unreadable bytes are kept beside it', async () => {
		const folder = scratchFolder();
		const path = join(folder, `${nightName}.journal`);
		const { journal } = await createNightFile(services(folder), {
			id: nightName,
			wallMs: 1,
			subject,
		});
		for (let step = 1; step <= 3; step += 1) {
			journal.append([stepEntry(step)], { wallMs: step, upMs: step });
		}
		await journal.close();
		const bytes = readFileSync(path);
		truncateSync(path, bytes.length - 11);
		const opened = openNightFile(services(folder), { id: nightName });
		expect(opened.lastSeq).toBe(2);
		await opened.journal?.close();
		const [aside = ''] = readdirSync(folder).filter((name) => name.includes('.torn-'));
		const size = statSync(path).size;
		expect(aside).toBe(`${nightName}.journal.torn-${size}`);
		expect(readFileSync(join(folder, aside))).toEqual(bytes.subarray(size, -11));
	});

	test('with 100,000 records opens within two seconds', async () => {
		const folder = scratchFolder();
		writeFileSync(join(folder, `${nightName}.journal`), longJournal(100_000));
		// Time that this program worked, since others may keep the machine busy.
		const start = process.cpuUsage();
		const opened = openNightFile(services(folder), { id: nightName });
		const { user, system } = process.cpuUsage(start);
		expect(opened.checkpoint?.seq).toBe(99_900);
		expect(opened.recordsSince).toHaveLength(100);
		expect((user + system) / 1_000_000).toBeLessThan(2);
		expect(opened.records()).toHaveLength(100_000);
		await opened.journal?.close();
	}, 60_000);
});

/** A night of so many records with a checkpoint of 8 KB after each hundred. */
function longJournal(count: number): Buffer {
	const seed = seedOf(nightName);
	const state = 'x'.repeat(8000);
	const record = (s: number, entry: { readonly k: string }) =>
		recordBeside({ s, w: 'writer-1', e: [entry], at: { wallMs: s, upMs: s } });
	const header = { k: 'header', format: 'rackside-night/2', journal: nightName, ...subject };
	const lines = [encodeLine(record(0, header), 0)];
	for (let step = 1; step <= count; step += 1) {
		lines.push(encodeLine(record(step, stepEntry(step)), seed));
		const isDue = step % 100 === 0 && step < count;
		const checkpoint = { k: 'checkpoint', state };
		if (isDue) lines.push(encodeLine(record(step, checkpoint), seed));
	}
	return Buffer.concat(lines);
}
