// Drafts in a file beside the night: there while there are any, their owner's alone, never in the way.

import { existsSync, readdirSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { diskError } from '../../src/disk/disk.ts';
import { draftFile } from '../../src/disk/draft-file.ts';
import { listNights } from '../../src/disk/nights-folder.ts';
import { realDisk } from '../../src/disk/real-disk.ts';
import { scratchFolder } from './scratch-folder.ts';

test('are there for the next start, their owner alone reads them, and none leave no file', () => {
	const folder = scratchFolder();
	const open = () => draftFile(realDisk, { folder, night: 'quay' });
	expect(open().kept()).toEqual({});
	open().keep({ memo: 'strap', 'incident 1': 'b at the' });
	open().keep({ memo: 'strap lock is loose' });
	expect(open().kept()).toEqual({ memo: 'strap lock is loose' });
	expect(statSync(join(folder, 'quay.drafts')).mode & 0o777).toBe(0o600);
	expect(listNights(realDisk, [folder]).nights).toEqual([]);
	open().keep({});
	expect(readdirSync(folder)).toEqual([]);
});

test.each(['', '{"memo', '[]', 'null', '"text"', '{"memo":7}'])('damaged are none: %s', (text) => {
	const folder = scratchFolder();
	writeFileSync(join(folder, 'quay.drafts'), text);
	expect(draftFile(realDisk, { folder, night: 'quay' }).kept()).toEqual({});
});

test('of which a write went wrong are those before', () => {
	const folder = scratchFolder();
	const full = {
		...realDisk,
		write: () => {
			throw diskError('ENOSPC');
		},
	};
	draftFile(realDisk, { folder, night: 'quay' }).keep({ memo: 'strap' });
	draftFile(full, { folder, night: 'quay' }).keep({ memo: 'strap lock' });
	expect(draftFile(realDisk, { folder, night: 'quay' }).kept()).toEqual({ memo: 'strap' });
	draftFile(realDisk, { folder, night: 'quay' }).keep({ memo: 'strap lock is' });
	expect(draftFile(realDisk, { folder, night: 'quay' }).kept()).toEqual({ memo: 'strap lock is' });
	expect(existsSync(join(folder, 'quay.drafts.new'))).toBe(false);
	const nowhere = draftFile(realDisk, { folder: join(folder, 'no', 'such'), night: 'quay' });
	nowhere.keep({ memo: 'strap' });
	expect(nowhere.kept()).toEqual({});
});
