// Causes found on earlier nights, read from the files of the data folder beside whatever else is done.

import { copyFileSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { causesBefore, foundBefore } from '../../src/cli/nights/found-before.ts';
import { scratchFolder } from '../disk/scratch-folder.ts';
import { rigShow } from '../rig/example-rig.ts';

const NIGHT = '2026-12-02-silent';
const KEPT = fileURLToPath(new URL(`../journals/${NIGHT}.journal`, import.meta.url));

function withNights(): string {
	const nights = join(scratchFolder(), 'nights');
	mkdirSync(nights, { mode: 0o700 });
	copyFileSync(KEPT, join(nights, `${NIGHT}.journal`));
	// Torn, of another program, or gone: nobody looks for a fault in vain because of it.
	writeFileSync(join(nights, '2026-12-03-torn.journal'), 'x"fault-found"');
	return nights;
}

test('a night with a cause is read, one that says none is passed over, and so is tonight', async () => {
	const nights = withNights();
	const [night, ...others] = await causesBefore([nights, '/nowhere'], null);
	expect(others).toEqual([]);
	expect(night?.folder).toBe('/home/lou/tour');
	// As the three `fault-found` of the file say, the players by the searches that they belong to.
	expect(night?.causes).toEqual([
		{ player: 'bo', part: 'delay' },
		{ player: 'ash', part: 'radio' },
		{ player: 'bo', part: 'B1' },
	]);
	expect(await causesBefore([nights], NIGHT)).toEqual([]);
	expect(await causesBefore(['/nowhere'], null)).toEqual([]);
});

test('it counts for the same player in a show of the same folder', async () => {
	const nights = await causesBefore([withNights()], null);
	const show = rigShow('instruments: [{id: B1, kind: electric-6, tuning: E standard}]');
	const of = (folder: string, player: string) => foundBefore(nights, { show, folder, player });
	expect(of('/home/lou/tour', 'bo')).toEqual({ delay: 1, B1: 1 });
	expect(of('/home/lou/other', 'bo')).toEqual({});
	// An instrument is the same whoever has it.
	expect(of('/home/lou/tour', 'ash')).toEqual({ radio: 1, B1: 1 });
});
