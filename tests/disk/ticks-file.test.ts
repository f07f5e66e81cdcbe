// Ticks kept beside a night: whole, ours alone, and never written over what makes no sense.

import { chmodSync, readFileSync, statSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { realDisk } from '../../src/disk/real-disk.ts';
import { keepTick, readTicks, type TicksPlace, ticksPath } from '../../src/disk/ticks-file.ts';
import { scratchFolder } from './scratch-folder.ts';

function place(): TicksPlace {
	const folder = join(scratchFolder(), 'nights');
	return { disk: realDisk, folder, night: '2026-06-12-small' };
}

test('ticks are kept, taken away, and for their owner alone', () => {
	const here = place();
	expect(readTicks(here)).toEqual({ ticked: new Set(), problem: null });
	expect(keepTick(here, 'one', true)).toBeNull();
	expect(keepTick(here, 'two', true)).toBeNull();
	expect(keepTick(here, 'one', false)).toBeNull();
	expect(readTicks(here).ticked).toEqual(new Set(['two']));
	expect(statSync(ticksPath(here)).mode & 0o777).toBe(0o600);
	expect(statSync(here.folder).mode & 0o777).toBe(0o700);
});

test.each([
	['{"format":"rackside-ticks/1","ticked":["a', 'DAMAGED'],
	['{"format":"rackside-ticks/1","ticked":[1]}', 'DAMAGED'],
	['{"format":"another","ticked":[]}', 'DAMAGED'],
	['null', 'DAMAGED'],
])('%s is not read and not written over', (text, trouble) => {
	const here = place();
	keepTick(here, 'one', true);
	writeFileSync(ticksPath(here), text);
	expect(readTicks(here)).toMatchObject({ ticked: new Set(), problem: { trouble } });
	expect(keepTick(here, 'two', true)).toMatchObject({ trouble });
	expect(readFileSync(ticksPath(here), 'utf8')).toBe(text);
});

test('a link, and a file that others may write into, are not believed', () => {
	const here = place();
	keepTick(here, 'one', true);
	chmodSync(ticksPath(here), 0o666);
	expect(readTicks(here).problem).toMatchObject({ trouble: 'OPEN_TO_OTHERS' });
	const other = { ...here, night: 'another' };
	symlinkSync(ticksPath(here), ticksPath(other));
	expect(readTicks(other).problem).toMatchObject({ trouble: 'ELOOP' });
	expect(keepTick(other, 'two', true)).toMatchObject({ trouble: 'ELOOP' });
});

test('what a stop left half written is passed over', () => {
	const here = place();
	keepTick(here, 'one', true);
	writeFileSync(`${ticksPath(here)}.new`, '{"format":"ra');
	expect(readTicks(here).ticked).toEqual(new Set(['one']));
	expect(keepTick(here, 'two', true)).toBeNull();
	expect(readTicks(here).ticked).toEqual(new Set(['one', 'two']));
});
