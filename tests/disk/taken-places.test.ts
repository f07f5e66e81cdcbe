// Where a small file of the program's own belongs, something else is said to stand, and what is not kept for it.

import { chmodSync, mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { draftFile, draftPath } from '../../src/disk/draft-file.ts';
import { lockPath, takeLock } from '../../src/disk/lock.ts';
import { takenPlaces } from '../../src/disk/own-file.ts';
import { realDisk } from '../../src/disk/real-disk.ts';
import { readTroubles, troubleLog, troublesPath } from '../../src/disk/trouble-log.ts';
import { writerId, writerPath } from '../../src/disk/writer-id.ts';
import { diskFaultWords } from '../../src/words/disk.ts';
import { makePipe, scratchFolder } from './scratch-folder.ts';

function placesIn(folder: string) {
	return [
		{ path: lockPath({ folder, name: 'show-1' }), holds: 'lock' },
		{ path: draftPath({ folder, night: 'quay' }), holds: 'drafts' },
		{ path: troublesPath(folder), holds: 'troubles' },
		{ path: writerPath(folder), holds: 'writer' },
	] as const;
}

const odd: { readonly [kind: string]: (path: string) => void } = {
	'it is a folder (EISDIR)': (path) => mkdirSync(path),
	'it is a pipe, not a file': (path) => makePipe(path),
	'a link stands where the file should be (ELOOP)': (path) => symlinkSync('/nowhere', path),
};

test.each(Object.entries(odd))('%s', (why, make) => {
	const folder = scratchFolder();
	const places = placesIn(folder);
	expect(takenPlaces(realDisk, places)).toEqual([]);
	for (const { path } of places) make(path);
	const [lock, drafts, troubles, writer] = places.map(({ path }) => path);
	expect(takenPlaces(realDisk, places).map(diskFaultWords)).toEqual([
		`${lock} is not used: ${why}. A second copy of the program may be noticed only once it writes.`,
		`${drafts} is not used: ${why}. Texts that are typed and not yet entered may be lost with the program.`,
		`${troubles} is not used: ${why}. Troubles with the disk are not noted.`,
		`${writer} is not used: ${why}. This laptop counts as a new one at every start.`,
	]);
});

test('files of our own are used, as they are made, and none is said', async () => {
	const folder = scratchFolder();
	const lock = await takeLock({ disk: realDisk, folder, name: 'show-1' });
	draftFile(realDisk, { folder, night: 'quay' }).keep({ memo: 'towels' });
	troubleLog({ disk: realDisk, folder, wallMs: () => 0 }).note('slow');
	writerId(realDisk, folder);
	expect(takenPlaces(realDisk, placesIn(folder))).toEqual([]);
	expect(readTroubles(realDisk, folder).troubles).toHaveLength(1);
	if (lock.isHeld) lock.release();
});

test('what others may write into is said of drafts alone, which are not read then', () => {
	const folder = scratchFolder();
	for (const { path } of placesIn(folder)) {
		writeFileSync(path, '{"memo":"towels"}');
		chmodSync(path, 0o666);
	}
	expect(takenPlaces(realDisk, placesIn(folder))).toMatchObject([
		{ holds: 'drafts', trouble: 'OPEN_TO_OTHERS' },
	]);
	expect(draftFile(realDisk, { folder, night: 'quay' }).kept()).toEqual({});
});
