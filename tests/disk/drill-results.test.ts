// How fast people were, in a file: its owner's alone, whole, and never written over where it is not understood.

import { readdirSync, readFileSync, statSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { diskError } from '../../src/disk/disk.ts';
import {
	changeDrillResults,
	drillResultsPath,
	readDrillResults,
	withAnswer,
} from '../../src/disk/drill-results.ts';
import { realDisk } from '../../src/disk/real-disk.ts';
import { scratchFolder } from './scratch-folder.ts';

const answer = (seconds: number | null, person = 'Robin', kind = 'pack') => ({
	person,
	kind,
	seconds,
});

test('keeps the best, the last and the counts of each person and kind', () => {
	const place = { disk: realDisk, folder: join(scratchFolder(), 'data') };
	expect(readDrillResults(place)).toEqual({ results: { who: null, people: {} }, problem: null });
	for (const one of [answer(9.5), answer(7.2), answer(null), answer(8), answer(3, '__proto__')]) {
		expect(changeDrillResults(place, (all) => withAnswer(all, one))).toBeNull();
	}
	changeDrillResults(place, (all) => ({
		...withAnswer(all, answer(2, 'Kim', 'skip')),
		who: 'Kim',
	}));
	const { results, problem } = readDrillResults(place);
	expect(problem).toBeNull();
	expect(results.who).toBe('Kim');
	expect(Object.keys(results.people).toSorted()).toEqual(['Kim', 'Robin', '__proto__'].toSorted());
	expect(results.people.Robin).toEqual({ pack: { best: 7.2, last: 8, answered: 3, missed: 1 } });
	expect(statSync(drillResultsPath(place.folder)).mode & 0o777).toBe(0o600);
	expect(readdirSync(place.folder)).toEqual(['drills.json']);
});

test.each([
	'',
	'{"people"',
	'[]',
	'null',
	'{"people":[]}',
	'{"people":{"R":{"pack":{"best":"7"}}}}',
])('what makes no sense is said, and left as it is: %s', (text) => {
	const folder = scratchFolder();
	const path = drillResultsPath(folder);
	writeFileSync(path, text, { mode: 0o600 });
	const place = { disk: realDisk, folder };
	const fault = { path, trouble: 'DAMAGED' };
	expect(readDrillResults(place).problem).toEqual({ code: 'file-unreadable', ...fault });
	expect(changeDrillResults(place, (all) => withAnswer(all, answer(1)))).toEqual({
		code: 'export-failed',
		...fault,
	});
	expect(readFileSync(path, 'utf8')).toBe(text);
});

test('a link, and a file that others may write, are not ours', () => {
	const folder = scratchFolder();
	const elsewhere = join(folder, 'elsewhere');
	writeFileSync(elsewhere, '{"who":null,"people":{}}', { mode: 0o600 });
	symlinkSync(elsewhere, drillResultsPath(folder));
	const place = { disk: realDisk, folder };
	expect(readDrillResults(place).problem).toMatchObject({ trouble: 'ELOOP' });
	expect(changeDrillResults(place, (all) => withAnswer(all, answer(1)))).toMatchObject({
		trouble: 'ELOOP',
	});
	expect(readFileSync(elsewhere, 'utf8')).toBe('{"who":null,"people":{}}');
	const open = { ...realDisk, stat: (path: string) => opened(realDisk.stat(path)) };
	const other = { disk: open, folder: scratchFolder() };
	changeDrillResults({ ...other, disk: realDisk }, (all) => withAnswer(all, answer(1)));
	expect(readDrillResults(other).problem).toMatchObject({ trouble: 'OPEN_TO_OTHERS' });
});

function opened<Stat extends { readonly kind: string }>(stat: Stat | null): Stat | null {
	return stat?.kind === 'file' ? { ...stat, mode: 0o666 } : stat;
}

test('what a full disk does not take leaves those before', () => {
	const folder = scratchFolder();
	const place = { disk: realDisk, folder };
	changeDrillResults(place, (all) => withAnswer(all, answer(5)));
	const full = {
		...realDisk,
		write: () => {
			throw diskError('ENOSPC');
		},
	};
	expect(changeDrillResults({ disk: full, folder }, (all) => withAnswer(all, answer(1)))).toEqual({
		code: 'export-failed',
		path: drillResultsPath(folder),
		trouble: 'ENOSPC',
	});
	expect(readDrillResults(place).results.people.Robin?.pack?.best).toBe(5);
	expect(readdirSync(folder)).toEqual(['drills.json']);
});
