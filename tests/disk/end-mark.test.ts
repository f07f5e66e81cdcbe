// Steps that were lost as a night was left, or cut off its file afterwards, are told at every start until a
// whole state stands after them; where nothing tells of them, nothing is said.

import { expect, test } from 'vitest';
import { findingsOf, listNights } from '../../src/disk/nights-folder.ts';
import type { OpenedNight } from '../../src/disk/open-night-file.ts';
import { nightFindingWords } from '../../src/words/night-file.ts';
import { FaultDisk, settle } from './fault-disk.ts';
import { expectKept, KeptNight, nightPath, nightsFolder, spareFolder } from './kept-night.ts';

async function nightOf(steps: number, folders?: readonly string[]) {
	const disk = new FaultDisk();
	const night = new KeptNight(disk, folders);
	await night.create();
	for (let step = 0; step < steps; step += 1) night.append();
	await settle();
	return { disk, night };
}

const said = ({ findings }: OpenedNight) => findings.map(nightFindingWords);

const threeLost =
	'The last 3 steps of this night were not kept: the disk did not take them before it was left, or its file was cut short since. Check what is on the rack and in hands.';

/** A night of two steps that were saved and three that a full disk did not take, left so. */
async function leftUnsaved() {
	const { disk, night } = await nightOf(2);
	disk.roomBytes = disk.usedBytes();
	for (let step = 0; step < 3; step += 1) night.append();
	expect(night.status).toMatchObject({ state: 'unsaved', savedSeq: 2, lastSeq: 5 });
	await night.journal?.close();
	disk.roomBytes = Number.POSITIVE_INFINITY;
	return disk.afterKill();
}

test('steps that a full disk did not take are missed at the next start, by number', async () => {
	const disk = await leftUnsaved();
	const opened = new KeptNight(disk.afterKill()).open();
	expectKept(opened, { saved: 2, typed: 2 });
	expect(said(opened)).toEqual([threeLost]);
});

test('the list of nights says so, and a mark alone is a night that is gone', async () => {
	const disk = await leftUnsaved();
	const [seen] = listNights(disk, [nightsFolder]).nights;
	expect(seen && findingsOf(disk, nightsFolder, seen).map(nightFindingWords)).toEqual([threeLost]);
	disk.remove(nightPath);
	expect(listNights(disk, [nightsFolder]).nights).toMatchObject([
		{ header: null, problem: { code: 'night-gone', path: nightPath } },
	]);
});

test('a night that was stopped in the middle is missed where its file is taken away', async () => {
	const { disk } = await nightOf(2);
	const stopped = disk.afterKill();
	expect(said(new KeptNight(stopped.afterKill()).open())).toEqual([]);
	stopped.remove(nightPath);
	expect(listNights(stopped, [nightsFolder]).nights).toMatchObject([
		{ header: null, problem: { code: 'night-gone', path: nightPath } },
	]);
});

test('of a night that was over a mark alone is none, and its steps are missed like those of any other', async () => {
	const { disk, night } = await nightOf(5);
	await night.journal?.close(undefined, 'over');
	const lines = disk.peek(nightPath).toString().split('\n');
	disk.meddle(nightPath, () => Buffer.from(`${lines.slice(0, -4).join('\n')}\n`));
	expect(said(new KeptNight(disk.afterKill()).open())).toEqual([threeLost]);
	disk.remove(nightPath);
	expect(listNights(disk, [nightsFolder]).nights).toEqual([]);
	disk.plant(`${nightPath}.torn-812`, Buffer.from('12345678 {'));
	expect(listNights(disk, [nightsFolder]).nights).toEqual([]);
	// What had to be kept elsewhere is missed all the same.
	disk.plant(nightPath.replace('.journal', '.elsewhere'), Buffer.from(''));
	expect(listNights(disk, [nightsFolder]).nights).toMatchObject([
		{ problem: { code: 'copy-gone' } },
	]);
});

test('one that goes on after its end is left open again', async () => {
	const { disk, night } = await nightOf(2);
	await night.journal?.close(undefined, 'over');
	const again = new KeptNight(disk.afterKill());
	again.resume('writer-2');
	again.append();
	await again.journal?.close();
	const marks = again.disk.files().filter((path) => /\.(left|over|begun)/.test(path));
	expect(marks).toEqual([nightPath.replace('.journal', '.left-3')]);
});

test('it is told again until the night goes on, and their numbers stay free after it', async () => {
	const disk = await leftUnsaved();
	for (const writer of ['writer-2', 'writer-3']) {
		const night = new KeptNight(disk);
		expect(said(night.resume(writer))).toEqual([threeLost]);
		await night.journal?.close();
	}
	const night = new KeptNight(disk);
	night.resume('writer-4');
	expect(night.append().s).toBe(6);
	await settle();
	await night.journal?.close();
	expect(said(new KeptNight(disk.afterKill()).open())).toEqual([
		'3 records of this night cannot be read: check what is on the rack and in hands.',
	]);
});

test('a file cut exactly at a line is missed once the night was left', async () => {
	const { disk, night } = await nightOf(5);
	await night.journal?.close();
	expect(said(new KeptNight(disk.afterKill()).open())).toEqual([]);
	const lines = disk.peek(nightPath).toString().split('\n');
	disk.meddle(nightPath, () => Buffer.from(`${lines.slice(0, -4).join('\n')}\n`));
	expect(said(new KeptNight(disk.afterKill()).open())).toEqual([threeLost]);
});

test('a file cut within a line, or whose last record is damaged, is counted once', async () => {
	const { disk, night } = await nightOf(5);
	await night.journal?.close();
	const torn = disk.afterKill();
	torn.meddle(nightPath, (bytes) => bytes.subarray(0, -20));
	expect(new KeptNight(torn).open().findings).toMatchObject([
		{ code: 'steps-not-kept', count: 1 },
		{ code: 'tail-cut-off' },
	]);
	const flipped = disk.afterKill();
	flipped.meddle(nightPath, (bytes) =>
		Buffer.concat([bytes.subarray(0, -20), Buffer.from('!'), bytes.subarray(-19)]),
	);
	expect(new KeptNight(flipped).open().findings).toMatchObject([
		{ code: 'record-quarantined', count: 1 },
	]);
});

test('it is told where the other folder cannot be looked into, not while a file cannot be read', async () => {
	const disk = await leftUnsaved();
	disk.effect = ({ name, path }) =>
		name === 'list' && path === spareFolder ? { fail: 'EACCES' } : null;
	const unseen = new KeptNight(disk, [nightsFolder, spareFolder]).open();
	expect(said(unseen)).toContain(threeLost);
	disk.effect = ({ name, path }) =>
		name === 'read' && path === nightPath ? { fail: 'EACCES' } : null;
	const unread = new KeptNight(disk).open();
	expect(unread.findings).toMatchObject([{ code: 'file-unreadable' }, { code: 'header-missing' }]);
});

test('where its own folder takes no name, the other one has the mark', async () => {
	const { disk, night } = await nightOf(2, [nightsFolder, spareFolder]);
	disk.makeFolder('/other');
	disk.makeFolder(spareFolder);
	disk.effect = ({ name, path }) =>
		(name === 'write' && { fail: 'ENOSPC' }) ||
		(name === 'openNew' && path.startsWith(nightsFolder) && { fail: 'ENOSPC' }) ||
		null;
	for (let step = 0; step < 3; step += 1) night.append();
	await night.journal?.close();
	disk.effect = () => null;
	const again = new KeptNight(disk.afterKill(), [nightsFolder, spareFolder]);
	expect(said(again.open())).toEqual([threeLost]);
});

test('of a night that was killed nobody knows more than its file', async () => {
	const { disk } = await nightOf(5);
	const lines = disk.peek(nightPath).toString().split('\n');
	disk.meddle(nightPath, () => Buffer.from(`${lines.slice(0, -4).join('\n')}\n`));
	const opened = new KeptNight(disk.afterKill()).open();
	expectKept(opened, { saved: 2, typed: 2 });
	expect(said(opened)).toEqual([]);
});
