// The small files that the program keeps for its user, each attacked in the same ways: what is not ours or makes no
// sense is said and stays as it is, and no fault, kill or power cut at any call costs what was kept before.

import { spawn } from 'node:child_process';
import {
	chmodSync,
	chownSync,
	linkSync,
	lstatSync,
	mkdirSync,
	readdirSync,
	readFileSync,
	symlinkSync,
	truncateSync,
	writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import type { DiskFault } from '../../src/base/disk-fault.ts';
import type { Disk } from '../../src/disk/disk.ts';
import {
	changeDrillResults,
	drillResultsPath,
	readDrillResults,
} from '../../src/disk/drill-results.ts';
import { keepPrinted, lastPrinted, printedSheetsPath } from '../../src/disk/printed-sheets.ts';
import { realDisk } from '../../src/disk/real-disk.ts';
import { keepRemarks, readRemarks, remarksPath } from '../../src/disk/remarks-file.ts';
import { keepTick, readTicks, ticksPath } from '../../src/disk/ticks-file.ts';
import { diskFaultWords } from '../../src/words/disk.ts';
import { FaultDisk } from './fault-disk.ts';
import { makePipe, scratchFolder } from './scratch-folder.ts';

type SmallFile = {
	readonly path: string;
	readonly keep: (text: string) => DiskFault | null;
	/** What was kept last; null where nothing is, or where it cannot be read. */
	readonly kept: () => string | null;
	readonly problem: () => DiskFault | null;
};

const night = '2026-06-12-small';
const show = '/shows/quay.yaml';

const SMALL_FILES: { readonly [name: string]: (disk: Disk, folder: string) => SmallFile } = {
	ticks: (disk, folder) => {
		const place = { disk, folder, night };
		return {
			path: ticksPath(place),
			keep: (text) => keepTick(place, text, true),
			kept: () => [...readTicks(place).ticked].at(-1) ?? null,
			problem: () => readTicks(place).problem,
		};
	},
	remarks: (disk, folder) => {
		const place = { disk, folder, night };
		return {
			path: remarksPath(place),
			keep: (text) => keepRemarks(place, { night: text, incidents: { 'a:1': text }, signed: null }),
			kept: () => readRemarks(place).remarks.night,
			problem: () => readRemarks(place).problem,
		};
	},
	'printed sheets': (disk, folder) => {
		const place = { disk, folder };
		const songs = [{ key: 'a', name: 'A', clock: '20:00', said: ['4 Anchor'] }];
		return {
			path: printedSheetsPath(folder),
			keep: (hash) => keepPrinted(place, { show, version: 1, hash, printedAtMs: 1, songs }),
			kept: () => lastPrinted(place, show).sheet?.hash ?? null,
			problem: () => lastPrinted(place, show).fault,
		};
	},
	'drill results': (disk, folder) => {
		const place = { disk, folder };
		return {
			path: drillResultsPath(folder),
			keep: (who) => changeDrillResults(place, (all) => ({ ...all, who })),
			kept: () => readDrillResults(place).results.who,
			problem: () => readDrillResults(place).problem,
		};
	},
};

/** Each puts something else in the file's place, and gives what is to be said of it. */
const SPOILT: { [what: string]: (path: string) => string } = {
	'a link to a file of ours': (path) => {
		writeFileSync(`${path}-elsewhere`, readFileSync(path), { mode: 0o600 });
		replace(path, () => symlinkSync(`${path}-elsewhere`, path));
		return 'a link stands where the file should be (ELOOP)';
	},
	'a link to nothing': (path) => {
		replace(path, () => symlinkSync(`${path}-nowhere`, path));
		return 'a link stands where the file should be (ELOOP)';
	},
	'a folder': (path) => {
		replace(path, () => mkdirSync(path));
		return 'it is a folder (EISDIR)';
	},
	'a pipe': (path) => {
		replace(path, () => makePipe(path));
		return 'it is a pipe, not a file';
	},
	'a file that others may write into': (path) => {
		chmodSync(path, 0o622);
		return 'other users may write into it';
	},
	zeros: (path) => {
		writeFileSync(path, Buffer.alloc(500));
		return 'what is in it makes no sense; move it away';
	},
	'nothing in it': (path) => {
		writeFileSync(path, '');
		return 'what is in it makes no sense; move it away';
	},
	'half of it': (path) => {
		truncateSync(path, readFileSync(path).length >> 1);
		return 'what is in it makes no sense; move it away';
	},
	'another JSON': (path) => {
		writeFileSync(path, '[1, "a", {"b": null}]');
		return 'what is in it makes no sense; move it away';
	},
	'nesting without end': (path) => {
		writeFileSync(path, '['.repeat(400_000));
		return 'what is in it makes no sense; move it away';
	},
	'bytes that are no text': (path) => {
		writeFileSync(path, Buffer.from([0xff, 0xfe, 0x80, 0x22]));
		return 'what is in it makes no sense; move it away';
	},
	'100 MB': (path) => {
		truncateSync(path, 100_000_000);
		return 'what is in it makes no sense; move it away';
	},
};

// Only root can give a file to somebody else.
if (process.getuid?.() === 0) {
	SPOILT["another user's file"] = (path) => {
		chownSync(path, 65_534, 65_534);
		return 'it belongs to another user';
	};
}

function replace(path: string, make: () => void): void {
	linkSync(path, `${path}-kept`);
	realDisk.remove(path);
	make();
}

/** Everything in the folder: kind, mode, owner and bytes of each. */
function everything(folder: string) {
	return readdirSync(folder).map((name) => {
		const found = lstatSync(join(folder, name));
		const bytes = found.isFile()
			? readFileSync(join(folder, name)).toString('latin1', 0, 1000)
			: '';
		return [name, found.mode, found.uid, found.size, bytes];
	});
}

describe.each(Object.entries(SMALL_FILES))('%s', (_, fileIn) => {
	test.each(Object.entries(SPOILT))(
		'%s in its place is said, and stays as it is',
		(_what, spoil) => {
			const folder = scratchFolder();
			const file = fileIn(realDisk, folder);
			expect(file.keep('first')).toBeNull();
			const why = spoil(file.path);
			const before = everything(folder);
			const problem = file.problem();
			expect(problem && diskFaultWords(problem)).toContain(`${file.path} cannot be read: ${why}`);
			const fault = file.keep('second');
			expect(fault && diskFaultWords(fault)).toContain(`${file.path} could not be written: ${why}`);
			expect(everything(folder)).toEqual(before);
		},
	);

	test('what stands beside it under any such name is left alone, and is in nobody’s way', () => {
		const folder = scratchFolder();
		const file = fileIn(realDisk, folder);
		writeFileSync(`${file.path}.new`, 'a song list of mine');
		expect(file.keep('first')).toBeNull();
		expect(file.kept()).toBe('first');
		expect(readFileSync(`${file.path}.new`, 'utf8')).toBe('a song list of mine');
		const other = fileIn(realDisk, scratchFolder());
		mkdirSync(`${other.path}.new`);
		expect(other.keep('first')).toBeNull();
		expect(other.kept()).toBe('first');
	});

	test('a fault, a kill or a power cut at any call costs nothing that was kept before', () => {
		const whole = diskWithFirst();
		const calls = whole.calls;
		fileIn(whole, '/data').keep('second');
		const count = whole.calls - calls;
		expect(count).toBeGreaterThan(4);
		for (let number = calls + 1; number <= calls + count; number += 1) {
			for (const effect of [
				{ fail: 'EIO' },
				{ fail: 'ENOSPC' },
				{ short: 3 },
				{ kill: 'before' },
				{ kill: 'after' },
			] as const) {
				const disk = diskWithFirst();
				disk.effect = (call) => (call.number === number ? effect : null);
				const fault = fileIn(disk, '/data').keep('second');
				const after = [
					disk.afterKill(),
					disk.afterPowerCut(() => 0),
					disk.afterPowerCut((most) => most),
					disk.afterPowerCut((most) => most >> 1),
				].map((one) => fileIn(one, '/data').kept());
				for (const kept of after) expect(['first', 'second'], `call ${number}`).toContain(kept);
				if (fault === null) expect(after[0]).toBe('second');
				// Of one that failed nothing is left lying about.
				if (!disk.isKilled && fault !== null) expect(disk.files()).toHaveLength(1);
			}
		}

		/** A disk that has confirmed what was kept first. */
		function diskWithFirst(): FaultDisk {
			const disk = new FaultDisk();
			fileIn(disk, '/data').keep('first');
			const [path = ''] = disk.files();
			const settled = new FaultDisk();
			settled.plant(path, disk.peek(path));
			return settled;
		}
	});
});

test('what another program keeps between a look and a change is not lost', () => {
	const folder = scratchFolder();
	const place = { disk: realDisk, folder, night };
	keepTick(place, 'mine', true);
	let hasInterfered = false;
	const slow: Disk = {
		...realDisk,
		syncNow: (file) => {
			realDisk.syncNow(file);
			if (!hasInterfered) keepTick(place, 'theirs', true);
			hasInterfered = true;
		},
	};
	expect(keepTick({ ...place, disk: slow }, 'mine too', true)).toBeNull();
	expect(readTicks(place).ticked).toEqual(new Set(['mine', 'theirs', 'mine too']));
	expect(readdirSync(folder)).toEqual([`${night}.ticks`]);
	const hasty: Disk = {
		...realDisk,
		syncNow: () => {
			keepTick(place, String(Math.random()), true);
		},
	};
	expect(keepTick({ ...place, disk: hasty }, 'never', true)).toMatchObject({ trouble: 'EBUSY' });
});

test('two programs that tick at once leave the file whole, and neither is refused', async () => {
	const folder = scratchFolder();
	const program = fileURLToPath(new URL('tick-writer.ts', import.meta.url));
	const ended = ['a', 'b'].map((name) => {
		const child = spawn(process.execPath, [program, folder, night, name, '200'], {
			stdio: ['ignore', 'inherit', 'inherit'],
		});
		return new Promise((done) => child.once('close', done));
	});
	expect(await Promise.all(ended)).toEqual([0, 0]);
	const { ticked, problem } = readTicks({ disk: realDisk, folder, night });
	expect(problem).toBeNull();
	expect(ticked.size).toBeGreaterThan(200);
	expect(readdirSync(folder)).toEqual([`${night}.ticks`]);
}, 60_000);
