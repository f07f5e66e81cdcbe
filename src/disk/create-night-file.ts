// Beginning a night: its first file appears under its name only once it holds the whole header.

import { dirname, join } from 'node:path';
import { recordBeside } from '../journal/new-record.ts';
import { nightHeader } from '../journal/night-header.ts';
import type { HeaderLine } from '../journal/read-line.ts';
import type { NightHeader, NightSubject } from '../journal/record.ts';
import { RecordList } from '../journal/record-list.ts';
import { type Disk, diskErrorCode } from './disk.ts';
import { markEnd } from './end-mark.ts';
import { ensureFolder } from './folders.ts';
import { NightFile } from './night-file.ts';
import type { NightServices } from './night-services.ts';
import { randomHex } from './random-hex.ts';
import type { Segment } from './segment.ts';
import { segmentFileName } from './segment-name.ts';
import { headerBytes, startAt } from './segment-starter.ts';

/** A night that is to begin. */
export type NightBeginning = {
	readonly id: string;
	readonly wallMs: number;
	readonly subject: NightSubject;
};

/** A night that has begun. */
export type BegunNight = { readonly header: NightHeader; readonly journal: NightFile };

/** How long the disk may take to confirm an empty night before the show goes on without. */
const patienceMs = 1000;

/**
 * A new night, always: where no file can be made, it is kept in memory, says so in its status, and
 * goes into a file as soon as one can be made.
 */
export async function createNightFile(
	services: NightServices,
	{ id, wallMs, subject }: NightBeginning,
): Promise<BegunNight> {
	const { disk, writer, upMs, folders, isEndMarked = true } = services;
	const header = nightHeader(id, subject);
	const at = { wallMs, upMs };
	const record = recordBeside({ s: 0, w: writer, e: [header], at });
	const line = { record, header };
	const home = folders[0] ?? '.';
	const made = await makeFirstFile(services, {
		line,
		path: join(home, segmentFileName({ id, number: 1 })),
	});
	// Whoever takes the file away after a stop leaves this, so that the night is missed.
	if ('segment' in made && isEndMarked) markEnd(disk, [home], { id, seq: 0, as: 'begun' });
	const journal = new NightFile(services, {
		id,
		header: line,
		records: new RecordList([]),
		lastSeq: 0,
		checkpoint: null,
		checkpoints: [],
		segment: 'segment' in made ? made.segment : null,
		folderTrouble: 'code' in made ? made.code : null,
		fileTrouble: null,
		away: null,
		nextNumber: 'segment' in made ? 2 : 1,
		firstBytes: null,
	});
	return { header, journal };
}

async function makeFirstFile(
	{ disk, wait }: NightServices,
	{ line, path }: { readonly line: HeaderLine; readonly path: string },
): Promise<{ readonly segment: Segment } | { readonly code: string }> {
	const folder = dirname(path);
	let temporary = `${path}.new`;
	let segment: Segment | null = null;
	const start = () =>
		startAt(disk, { path: temporary, folder, number: 1, headerBytes: headerBytes(line, 1) });
	try {
		ensureFolder(disk, folder);
		let begun = start();
		if ('code' in begun && begun.code === 'EEXIST') {
			// A start that was killed left it: what lies there stays, and this night waits for nobody.
			temporary = `${path}.${randomHex(4)}.new`;
			begun = start();
		}
		if ('code' in begun) return begun;
		segment = begun.segment;
		await Promise.race([segment.syncFile(), wait(patienceMs)]);
		if (disk.stat(path) !== null) throw new Error(`the night ${path} is there already`);
		segment.rename(path);
		return { segment };
	} catch (error) {
		const code = diskErrorCode(error);
		segment?.close();
		removeQuietly(disk, temporary);
		return { code };
	}
}

function removeQuietly(disk: Disk, path: string): void {
	try {
		disk.remove(path);
	} catch (error) {
		// Such a name is passed over when nights are read.
		diskErrorCode(error);
	}
}
