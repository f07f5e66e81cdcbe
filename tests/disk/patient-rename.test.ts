// A file that is held for a moment gets its new name all the same on Windows; what stays held is told.

import { expect, test } from 'vitest';
import { diskError } from '../../src/disk/disk.ts';
import { patientRename } from '../../src/disk/patient-rename.ts';

/** Renames that fail so many times, with how often it was tried and how long was waited. */
function held(times: number, code: string, platform: string) {
	const seen = { tries: 0, waitedMs: 0 };
	const rename = patientRename({
		platform,
		rename: () => {
			seen.tries += 1;
			if (seen.tries <= times) throw diskError(code);
		},
		wait: (ms) => {
			seen.waitedMs += ms;
		},
	});
	return { seen, rename };
}

test.each(['EPERM', 'EACCES', 'EBUSY'])('%s on Windows is waited out for half a second', (code) => {
	const { seen, rename } = held(3, code, 'win32');
	rename('a', 'b');
	expect(seen.tries).toBe(4);
	const forEver = held(Number.POSITIVE_INFINITY, code, 'win32');
	expect(() => forEver.rename('a', 'b')).toThrow(code);
	expect(forEver.seen.waitedMs).toBe(500);
});

test('a full disk, or any other system, is told at once', () => {
	for (const { seen, rename } of [held(1, 'ENOSPC', 'win32'), held(1, 'EPERM', 'darwin')]) {
		expect(() => rename('a', 'b')).toThrow();
		expect(seen).toEqual({ tries: 1, waitedMs: 0 });
	}
});
