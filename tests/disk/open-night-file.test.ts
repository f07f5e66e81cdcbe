// A night taken up from files that are damaged, old, new or in pieces: what is said, what is kept,
// and that it goes on.

import { describe, expect, test } from 'vitest';
import { findingsOf, listNights } from '../../src/disk/nights-folder.ts';
import { lookAtNight, openNightFile } from '../../src/disk/open-night-file.ts';
import type { Finding } from '../../src/journal/findings.ts';
import { encodeLine, seedOf } from '../../src/journal/line.ts';
import { readJournal } from '../../src/journal/read-journal.ts';
import { nightFindingWords } from '../../src/words/night-file.ts';
import { FaultDisk, settle } from './fault-disk.ts';
import { expectKept, KeptNight, nightPath, nightsFolder } from './kept-night.ts';
import { nightName, stepEntry, stepsOf, subject } from './night-steps.ts';

const place = { folders: [nightsFolder] };

/** The disk of a night with so many steps whose program was killed. */
async function leftDisk(steps: number): Promise<FaultDisk> {
	const disk = new FaultDisk();
	const night = new KeptNight(disk);
	await night.create();
	for (let step = 0; step < steps; step += 1) night.append();
	await settle();
	return disk.afterKill();
}

function codesOf(disk: FaultDisk): string[] {
	return lookAtNight({ ...place, disk }, { id: nightName }).findings.map(({ code }) => code);
}

describe('a last record that is wrong', () => {
	test('is warned of, copied aside, left in place, and its number is not used again', async () => {
		const disk = await leftDisk(3);
		const whole = disk.peek(nightPath);
		disk.meddle(nightPath, (bytes) => {
			bytes[bytes.length - 10] = 0x21;
			return bytes;
		});
		const night = new KeptNight(disk);
		const opened = night.resume('writer-2');
		expect(opened.lastSeq).toBe(2);
		expect(opened.findings).toMatchObject([{ code: 'record-quarantined', isWarning: true }]);
		const aside = disk.files().filter((path) => path.includes('.unreadable-'));
		expect(aside).toHaveLength(1);
		expect(disk.peek(nightPath).length).toBe(whole.length);
		expect(night.append().s).toBe(4);
		await settle();
		expect(night.journal?.status().isSaved).toBe(true);
		const again = new KeptNight(disk.afterKill()).resume('writer-3');
		expect(again.records().map((record) => record.s)).toEqual([1, 2, 4]);
		expect(again.findings).toMatchObject([{ code: 'records-missing', count: 1 }]);
	});

	test('is copied once, however often the night is taken up', async () => {
		const disk = await leftDisk(3);
		disk.meddle(nightPath, (bytes) => {
			bytes[bytes.length - 10] = 0x21;
			return bytes;
		});
		for (let start = 0; start < 3; start += 1) new KeptNight(disk).open();
		expect(disk.filesButMark()).toHaveLength(2);
	});
});

describe('an end that is not as it should be', () => {
	test('zeros are cut off, and kept aside to be told of again', async () => {
		const disk = await leftDisk(3);
		const whole = disk.peek(nightPath);
		disk.meddle(nightPath, (bytes) => Buffer.concat([bytes, Buffer.alloc(4096)]));
		const opened = new KeptNight(disk).resume('writer-2');
		expectKept(opened, { saved: 3, typed: 3 });
		const aside = `${nightPath}.torn-${whole.length}`;
		expect(opened.findings).toMatchObject([
			{ code: 'tail-cut-off', isWarning: false, bytes: 4096, isZero: true, keptIn: aside },
		]);
		expect(disk.filesButMark()).toEqual([nightPath, aside]);
		expect(disk.peek(nightPath)).toEqual(whole);
	});

	test('a stopped write is cut off, and the night goes on in the same file', async () => {
		const disk = await leftDisk(3);
		disk.meddle(nightPath, (bytes) => Buffer.concat([bytes, Buffer.from('12345678 {"v"')]));
		const night = new KeptNight(disk);
		night.resume('writer-2');
		night.append();
		await settle();
		expect(night.journal?.status()).toMatchObject({ isSaved: true, savedSeq: 4, warnings: [] });
		expect(disk.files().filter((path) => path.endsWith('.journal'))).toEqual([nightPath]);
		expect(readJournal(disk.peek(nightPath))).toMatchObject({ damaged: [], torn: null });
	});

	test('a stopped write is told each time, with how many bytes and where they are', async () => {
		const disk = await leftDisk(3);
		const torn = '12345678 {"v"';
		disk.meddle(nightPath, (bytes) => Buffer.concat([bytes, Buffer.from(torn)]));
		const said = ({ findings }: { readonly findings: readonly Finding[] }) =>
			findings.map(nightFindingWords);
		expect(said(lookAtNight({ ...place, disk }, { id: nightName }))).toEqual([
			'Incomplete: the night was cut off in the middle of a write (13 bytes, left out). The last keys may be missing.',
		]);
		const first = new KeptNight(disk);
		const told = said(first.resume('writer-2'));
		const aside = disk.files().find((path) => path.includes('.torn-')) ?? '';
		expect(disk.peek(aside).toString()).toBe(torn);
		expect(told).toEqual([
			`Incomplete: the night was cut off in the middle of a write (13 bytes, now in ${aside}). The last keys may be missing.`,
		]);
		first.append();
		await settle();
		// Who died before anybody read it is told the next time, and so is who asks for the report.
		expect(said(new KeptNight(disk.afterKill()).resume('writer-3'))).toEqual(told);
		expect(said(lookAtNight({ ...place, disk }, { id: nightName }))).toEqual(told);
		const [listed] = listNights(disk, [nightsFolder]).nights;
		expect(findingsOf(disk, nightsFolder, listed!).map(nightFindingWords)).toEqual(told);
	});

	test('and so are zeros at the end, by their number', async () => {
		const disk = await leftDisk(3);
		disk.meddle(nightPath, (bytes) => Buffer.concat([bytes, Buffer.alloc(512)]));
		const first = new KeptNight(disk);
		const told = first.resume('writer-2').findings.map(nightFindingWords);
		const aside = disk.files().find((path) => path.includes('.torn-')) ?? '';
		expect(told).toEqual([
			`Incomplete: the night was cut off in the middle of a write (512 zero bytes, now in ${aside}). The last keys may be missing.`,
		]);
		first.append();
		await settle();
		const again = new KeptNight(disk.afterKill()).resume('writer-3');
		expect(again.findings.map(nightFindingWords)).toEqual(told);
		const [listed] = listNights(disk, [nightsFolder]).nights;
		expect(findingsOf(disk, nightsFolder, listed!).map(nightFindingWords)).toEqual(told);
	});

	test('zeros that a full disk has no room to put aside are no reason to leave the file', async () => {
		const disk = await leftDisk(3);
		disk.meddle(nightPath, (bytes) => Buffer.concat([bytes, Buffer.alloc(512)]));
		disk.roomBytes = disk.usedBytes();
		const night = new KeptNight(disk);
		expect(night.resume('writer-2').findings).toMatchObject([{ isZero: true, keptIn: null }]);
		night.append();
		await settle();
		expect(night.status).toMatchObject({ state: 'saved', problem: null });
		expect(disk.filesButMark()).toEqual([nightPath]);
	});

	test('where one of its files cannot be read no number is used twice: nothing is gone on with', async () => {
		const disk = new FaultDisk();
		const first = new KeptNight(disk);
		await first.create();
		first.append();
		await settle();
		// A confirmation that fails: the night goes on in a second file.
		let isFirst = true;
		disk.effect = ({ name }) => {
			if (name !== 'sync' || !isFirst) return null;
			isFirst = false;
			return { fail: 'EIO' };
		};
		for (let step = 0; step < 3; step += 1) first.append();
		await settle();
		const second = `${nightsFolder}/${nightName}.2.journal`;
		const left = disk.afterKill();
		left.effect = ({ name, path }) => (name === 'read' && path === second ? { fail: 'EIO' } : null);
		const opened = new KeptNight(left).open();
		expect(opened.journal).toBeNull();
		expect(opened.findings.map(nightFindingWords)).toContain(
			`${second} cannot be read: the disk reports a fault (EIO).`,
		);
		left.effect = () => null;
		expectKept(new KeptNight(left).resume('writer-2'), { saved: 4, typed: 4 });
	});

	test('a folder that cannot be listed is no empty one: nothing is gone on with', async () => {
		const disk = await leftDisk(3);
		disk.effect = ({ name, path }) =>
			name === 'list' && path === nightsFolder ? { fail: 'EIO' } : null;
		const opened = new KeptNight(disk).open();
		expect(opened.journal).toBeNull();
		expect(opened.findings.map(nightFindingWords)).toContain(
			`${nightsFolder} cannot be read: the disk reports a fault (EIO).`,
		);
	});

	test('what a full quota keeps from being put aside is called by its name', async () => {
		const disk = await leftDisk(3);
		disk.meddle(nightPath, (bytes) => Buffer.concat([bytes, Buffer.from('12345678 {"v"')]));
		disk.effect = ({ name, path }) =>
			name === 'openNew' && path.startsWith(nightsFolder) ? { fail: 'EDQUOT' } : null;
		const night = new KeptNight(disk);
		night.resume('writer-2');
		expect(night.journal?.status().problem).toMatchObject({ trouble: 'EDQUOT' });
	});

	test('a last newline that is wrong costs nothing, now or later', async () => {
		const disk = await leftDisk(3);
		disk.meddle(nightPath, (bytes) => {
			bytes[bytes.length - 1] = 0x0b;
			return bytes;
		});
		const night = new KeptNight(disk);
		expectKept(night.resume('writer-2'), { saved: 3, typed: 3 });
		night.append();
		night.append();
		await settle();
		const again = new KeptNight(disk.afterPowerCut(() => 0)).resume('writer-3');
		expectKept(again, { saved: 5, typed: 5 });
		expect(again.findings.map(({ code }) => code)).toEqual(['bytes-damaged']);
	});

	test('torn bytes that cannot be kept aside are not cut off: the night goes on elsewhere', async () => {
		const disk = await leftDisk(3);
		disk.meddle(nightPath, (bytes) => Buffer.concat([bytes, Buffer.from('12345678 {"v"')]));
		const whole = disk.peek(nightPath);
		disk.effect = (call) =>
			call.name === 'openNew' && call.path.includes('.torn-') ? { fail: 'ENOSPC' } : null;
		const night = new KeptNight(disk);
		expectKept(night.resume('writer-2'), { saved: 3, typed: 3 });
		night.append();
		night.tick(1000);
		await settle();
		expect(disk.peek(nightPath)).toEqual(whole);
		expect(night.status).toMatchObject({ isSaved: true, savedSeq: 4 });
		expectKept(new KeptNight(disk.afterPowerCut(() => 0)).resume('writer-3'), {
			saved: 4,
			typed: 4,
		});
		expect(disk.openFiles.size).toBe(1);
	});

	test('bytes that somebody adds while the night is being taken up are not written over', async () => {
		const disk = await leftDisk(3);
		const foreign = Buffer.from('somebody else’s bytes\n');
		disk.effect = (call) => {
			if (call.name === 'openExisting') {
				disk.meddle(nightPath, (bytes) => Buffer.concat([bytes, foreign]));
			}
			return null;
		};
		const night = new KeptNight(disk);
		night.resume('writer-2');
		night.append();
		night.tick(1000);
		await settle();
		expect(disk.peek(nightPath).subarray(-foreign.length)).toEqual(foreign);
		expect(night.status).toMatchObject({ isSaved: true, savedSeq: 4 });
		expect(disk.openFiles.size).toBe(1);
	});
});

describe('a header that is lost', () => {
	const headless = (bytes: Buffer) => {
		const second = bytes.indexOf('\n') + 1;
		bytes[20] = 0x21;
		bytes[second + 20] = 0x21;
		return bytes;
	};
	const spareHeader = {
		...subject,
		k: 'header',
		format: 'rackside-night/2',
		journal: 'anything',
		title: 'From the show file',
		from: 1,
	} as const;

	test('is said; the records are there by the name of the file', async () => {
		const disk = await leftDisk(3);
		disk.meddle(nightPath, headless);
		const opened = new KeptNight(disk).resume('writer-2');
		expect(opened).toMatchObject({ header: null, startedAtMs: null });
		expect(opened.findings[0]).toMatchObject({ code: 'header-missing', isWarning: true });
		expectKept(opened, { saved: 3, typed: 3 });
		expect(opened.journal).not.toBeNull();
	});

	test('is made good by one from the show file, for this night and no other', async () => {
		const disk = await leftDisk(3);
		disk.meddle(nightPath, headless);
		const night = new KeptNight(disk);
		const opened = openNightFile(night.services('writer-2'), { id: nightName, spareHeader });
		expect(opened.header).toBeNull();
		await settle();
		const again = new KeptNight(disk.afterKill()).resume('writer-3');
		expect(again.header).toMatchObject({ title: 'From the show file', journal: nightName });
		expectKept(again, { saved: 3, typed: 3 });
	});
});

describe('versions', () => {
	const withRecord = (version: number) => (bytes: Buffer) => {
		const record = { v: version, s: 4, w: 'writer-1', t: 1, m: 1, e: [stepEntry(4)] } as never;
		return Buffer.concat([bytes, encodeLine(record, seedOf(nightName))]);
	};

	test('an older one is written anew beside itself and stays as it is', async () => {
		const disk = await leftDisk(3);
		disk.meddle(nightPath, withRecord(0));
		const before = disk.peek(nightPath);
		const night = new KeptNight(disk);
		expectKept(night.resume('writer-2'), { saved: 4, typed: 4 });
		night.append();
		await settle();
		expect(disk.peek(nightPath)).toEqual(before);
		const second = readJournal(disk.peek(`${nightsFolder}/${nightName}.2.journal`));
		const records = second.lines.filter((line) => line.kind === 'record');
		expect(records.map((line) => line.version)).toEqual([2, 2, 2, 2, 2]);
		expect(night.journal?.status()).toMatchObject({ isSaved: true, savedSeq: 5 });
		const again = new KeptNight(disk.afterKill());
		const opened = again.resume('writer-3');
		expectKept(opened, { saved: 5, typed: 5 });
		expect(opened.findings).toEqual([]);
		expect(again.disk.filesButMark()).toHaveLength(2);
	});

	test('a newer one can be looked at but not gone on with', async () => {
		const disk = await leftDisk(3);
		disk.meddle(nightPath, withRecord(3));
		const before = disk.peek(nightPath);
		const opened = new KeptNight(disk).resume('writer-2');
		expect(opened.journal).toBeNull();
		expect(stepsOf(opened.records())).toEqual([1, 2, 3, 4]);
		expect(opened.findings).toMatchObject([{ code: 'newer-format', isWarning: true }]);
		expect(disk.peek(nightPath)).toEqual(before);
	});
});

describe('looking', () => {
	test('changes nothing, whatever is wrong', async () => {
		const disk = await leftDisk(3);
		disk.meddle(nightPath, (bytes) => Buffer.concat([bytes, Buffer.from('1234')]));
		const before = disk.peek(nightPath);
		expect(codesOf(disk)).toEqual(['tail-cut-off']);
		expect(disk.peek(nightPath)).toEqual(before);
		expect(disk.filesButMark()).toEqual([nightPath]);
		expect(disk.openFiles.size).toBe(0);
	});

	test('a file that cannot be read is said, and the others are read', async () => {
		const disk = await leftDisk(3);
		disk.plant(`${nightsFolder}/${nightName}.2.journal`, disk.peek(nightPath));
		disk.effect = (call) =>
			call.name === 'read' && call.path === nightPath ? { fail: 'EIO' } : null;
		const { findings, lastSeq } = lookAtNight({ ...place, disk }, { id: nightName });
		expect(lastSeq).toBe(3);
		expect(findings.map(nightFindingWords)).toEqual([
			`${nightPath} cannot be read: the disk reports a fault (EIO).`,
		]);
	});
});

test('a night in several files goes on in the last, and the next has a new number', async () => {
	const disk = await leftDisk(3);
	disk.plant(`${nightsFolder}/${nightName}.7.journal`, disk.peek(nightPath));
	const night = new KeptNight(disk);
	night.resume('writer-2');
	night.append();
	await settle();
	expect(readJournal(disk.peek(nightPath)).lines).toHaveLength(3);
	let isFirst = true;
	disk.effect = (call) => {
		if (call.name !== 'sync' || !isFirst) return null;
		isFirst = false;
		return { fail: 'EIO' };
	};
	night.append();
	await settle();
	expect(disk.files()).toContain(`${nightsFolder}/${nightName}.8.journal`);
	expectKept(new KeptNight(disk.afterPowerCut(() => 0)).resume('writer-3'), { saved: 5, typed: 5 });
});
