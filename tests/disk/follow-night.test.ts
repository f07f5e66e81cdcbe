// A night's files as somebody finds them who only reads: while they grow byte by byte, go on elsewhere, and
// are taken away.

import {
	appendFileSync,
	readdirSync,
	readFileSync,
	renameSync,
	rmSync,
	statSync,
	utimesSync,
	writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { followNight } from '../../src/disk/follow-night.ts';
import { realDisk } from '../../src/disk/real-disk.ts';
import type { FollowedLook } from '../../src/journal/followed-night.ts';
import {
	headerLine,
	nightName,
	recordLine,
	sampleHeader,
	sampleJournal,
	sampleRecord,
} from '../journal/sample-journal.ts';
import { scratchFolder } from './scratch-folder.ts';

function followed(...folders: readonly string[]) {
	const look = followNight({ disk: realDisk, folders }, nightName);
	return { look, count: () => countOf(look()) };
}

/** How many records were read; null where nothing has changed, or nothing can be read. */
function countOf(found: FollowedLook | null): number | null {
	return found?.kind === 'read' ? found.journal.recordsAfter(0).length : null;
}

test('a record counts once its last byte is there, wherever its writing stands', () => {
	const folder = scratchFolder();
	const path = join(folder, `${nightName}.journal`);
	const whole = sampleJournal(4);
	writeFileSync(path, sampleJournal(3));
	const { count } = followed(folder);
	expect(count()).toBe(3);
	expect(count()).toBeNull();
	for (let end = sampleJournal(3).length; end < whole.length; end += 1) {
		appendFileSync(path, whole.subarray(end, end + 1));
		expect(count()).toBe(end + 1 === whole.length ? 4 : 3);
	}
});

test('the end that a killed program left is cut off and written over by the next', () => {
	const folder = scratchFolder();
	const path = join(folder, `${nightName}.journal`);
	writeFileSync(path, sampleJournal(5).subarray(0, sampleJournal(4).length + 40));
	const { count } = followed(folder);
	expect(count()).toBe(4);
	writeFileSync(path, sampleJournal(6));
	expect(count()).toBe(6);
});

test('a night that goes on in another file, and in another folder, is followed there', () => {
	const home = scratchFolder();
	const other = scratchFolder();
	writeFileSync(join(home, `${nightName}.journal`), sampleJournal(3));
	const { look } = followed(home, other);
	expect(look()).toMatchObject({ kind: 'read', elsewhere: null });
	const next = join(home, `${nightName}.2.journal`);
	writeFileSync(next, Buffer.concat([headerLine(), headerLine(), recordLine(sampleRecord(4))]));
	const moved = look();
	expect(moved).toMatchObject({ file: `${nightName}.2.journal`, elsewhere: null });
	expect(countOf(moved)).toBe(4);
	const away = join(other, `${nightName}.3.journal`);
	const header = headerLine(sampleHeader());
	writeFileSync(away, Buffer.concat([header, header, recordLine(sampleRecord(5))]));
	const gone = look();
	expect(gone).toMatchObject({
		file: `${nightName}.3.journal`,
		elsewhere: { folder: other, home },
	});
	expect(countOf(gone)).toBe(5);
});

test('files that are removed or cut short are said to be so, once, and found again', () => {
	const folder = scratchFolder();
	const path = join(folder, `${nightName}.journal`);
	writeFileSync(path, sampleJournal(5));
	const { look, count } = followed(folder);
	expect(count()).toBe(5);
	renameSync(path, `${path}.off`);
	expect(look()).toEqual({ kind: 'gone', folder, trouble: null });
	expect(look()).toBeNull();
	renameSync(`${path}.off`, path);
	expect(count()).toBe(5);
	writeFileSync(path, sampleJournal(2));
	expect(look()).toEqual({ kind: 'gone', folder, trouble: null });
	rmSync(folder, { recursive: true });
	expect(look()).toMatchObject({ kind: 'gone', folder, trouble: 'ENOENT' });
});

test('damage is no file that is gone, and damage before the end is found while it is followed', () => {
	const folder = scratchFolder();
	const path = join(folder, `${nightName}.journal`);
	writeFileSync(path, sampleJournal(5));
	const { look, count } = followed(folder);
	let seconds = 1_000_000;
	// As many bytes as before within one tick of the disk's clock would look unchanged.
	const rewrite = (bytes: Uint8Array) => {
		writeFileSync(path, bytes);
		seconds += 1;
		utimesSync(path, seconds, seconds);
	};
	expect(look()).toMatchObject({ kind: 'read', findings: [] });
	for (const byte of [0x21, 0]) {
		const spoilt = sampleJournal(5);
		spoilt.fill(byte, sampleJournal(3).length);
		rewrite(spoilt);
		expect(look()).toEqual({ kind: 'damaged', folder, trouble: null });
	}
	rewrite(sampleJournal(5));
	expect(count()).toBe(5);
	const middle = sampleJournal(5);
	middle.fill(0x21, sampleJournal(3).length + 20, sampleJournal(3).length + 22);
	rewrite(middle);
	expect(look()).toMatchObject({
		kind: 'read',
		findings: [{ code: 'records-missing', count: 1 }],
	});
});

test('looking leaves the folder and its files as they are', () => {
	const folder = scratchFolder();
	const path = join(folder, `${nightName}.journal`);
	writeFileSync(path, sampleJournal(5).subarray(0, -10));
	const before = { names: readdirSync(folder), bytes: readFileSync(path), stat: statSync(path) };
	const { count } = followed(folder);
	expect(count()).toBe(4);
	expect(readdirSync(folder)).toEqual(before.names);
	expect(readFileSync(path)).toEqual(before.bytes);
	expect(statSync(path).mtimeMs).toBe(before.stat.mtimeMs);
});
