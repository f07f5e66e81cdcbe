// Taking up a night again: its files are read, what a stop left at their end is put aside, and the
// last of them is opened to go on in.

import type { Finding } from '../journal/findings.ts';
import { tornFinding } from '../journal/findings.ts';
import { decodeCheckpoint } from '../journal/join-segments.ts';
import { recordBeside } from '../journal/new-record.ts';
import { nightHeader } from '../journal/night-header.ts';
import type { JournalRead } from '../journal/read-journal.ts';
import type { HeaderLine } from '../journal/read-line.ts';
import type { Checkpoint, JournalRecord, NightHeader, NightSubject } from '../journal/record.ts';
import { RecordList } from '../journal/record-list.ts';
import { diskErrorCode } from './disk.ts';
import { keepAside } from './keep-aside.ts';
import { NightFile } from './night-file.ts';
import type { NightServices } from './night-services.ts';
import {
	findingsIn,
	lastNumber,
	type NightFiles,
	namesIn,
	readNight,
	type SegmentFile,
} from './read-night.ts';
import { Segment } from './segment.ts';
import { headerBytes } from './segment-starter.ts';

/** A night as it was found. */
export type OpenedNight = {
	readonly id: string;
	/** Null when it cannot be read any more: then the show file has to stand in for its copy. */
	readonly header: NightHeader | null;
	/** When the night was begun; null with the header. */
	readonly startedAtMs: number | null;
	/** To go on with the night; null when it can only be looked at. */
	readonly journal: NightFile | null;
	/** The last state that was kept whole. */
	readonly checkpoint: Checkpoint | null;
	/** The records after the checkpoint, or all without one. */
	readonly recordsSince: readonly JournalRecord[];
	/** All records from the first; decoded when first asked for. */
	readonly records: () => readonly JournalRecord[];
	/** Number of the last record; 0 for none. */
	readonly lastSeq: number;
	readonly findings: readonly Finding[];
};

/** A night to be opened. */
export type NightChoice = {
	readonly id: string;
	/** What the night gets a header from when its own is lost. */
	readonly spareHeader?: NightSubject;
};

/** The night with this id, read only. */
export function lookAtNight(
	place: Pick<NightServices, 'disk' | 'folders'>,
	{ id }: NightChoice,
): OpenedNight {
	const files = filesOf(place, id);
	return describe(id, files, new RecordList(files.night.lines));
}

function filesOf({ disk, folders }: Pick<NightServices, 'disk' | 'folders'>, id: string) {
	return readNight(disk, { id, home: folders[0] ?? '.', ...namesIn(disk, folders) });
}

/**
 * The night with this id, to go on with. Without a `journal` when there is no such night, when a
 * newer version of the program wrote it, or when not all its files can be read; the findings say which.
 */
export function openNightFile(services: NightServices, choice: NightChoice): OpenedNight {
	const { folders } = services;
	const files = filesOf(services, choice.id);
	const { night } = files;
	const records = new RecordList(night.lines);
	const opened = describe(choice.id, files, records);
	const header = night.header ?? spareHeader(choice, services, records);
	const isEmpty = night.header === null && night.lastSeq === 0;
	if (night.isNewer || isEmpty || files.isPart) return opened;
	const last = files.files.at(-1);
	const read = night.reads.at(-1);
	// What an older version wrote is written anew into a file of its own, once.
	const ready = last && read && !read.isOlder ? takeUp(services, last, read) : null;
	const id = night.id ?? choice.id;
	const journal = new NightFile(services, {
		id,
		header,
		records,
		// A number is left out for each record lost at the end, so that the loss stays visible.
		lastSeq: lastNumber(night) + files.lostAtEnd,
		checkpoint: opened.checkpoint,
		checkpoints: night.checkpoints,
		segment: ready && 'segment' in ready ? ready.segment : null,
		folderTrouble: null,
		fileTrouble: ready && 'code' in ready ? ready.code : null,
		away: awayFolder(files, folders[0] ?? ''),
		nextNumber: files.nextNumber,
		firstBytes: firstBytes(read, night.header ? null : header),
	});
	const tail = ready && 'segment' in ready ? ready.tail : null;
	if (tail === null) return { ...opened, journal };
	const others = opened.findings.filter(
		(one) => one.code !== 'tail-cut-off' || (one.keptIn !== null && one.keptIn !== tail.keptIn),
	);
	return { ...opened, journal, findings: [...others, tail] };
}

/** The folder of a file that the night goes on in, or with records that no file in its own folder has; null for none. */
export function awayFolder({ night, files }: NightFiles, home: string): string | null {
	const away = files.findLast(({ folder }) => folder !== home);
	if (!away || away === files.at(-1)) return away?.folder ?? null;
	const isHome = (_: unknown, index: number) => files[index]?.folder === home;
	const readsAtHome = night.reads.filter(isHome);
	const atHome = new Set(readsAtHome.flatMap(({ lines }) => lines.map(({ seq }) => seq)));
	const isWhole = night.lines.every(({ line }) => atHome.has(line.seq));
	return isWhole && readsAtHome.some(({ header }) => header !== null) ? null : away.folder;
}

function describe(id: string, files: NightFiles, records: RecordList): OpenedNight {
	const { night } = files;
	const isSeen = files.files.length + files.unreadable.length > 0;
	const missing: Finding = { code: 'night-missing', isWarning: true, id };
	const checkpoint = night.checkpoint && decodeCheckpoint(night.checkpoint);
	return {
		id: night.id ?? id,
		header: night.header?.header ?? null,
		startedAtMs: night.header?.record.t ?? null,
		journal: null,
		checkpoint,
		recordsSince: records.after(checkpoint?.seq ?? 0),
		records: () => records.all(),
		lastSeq: night.lastSeq,
		findings: isSeen ? findingsIn(files) : [missing],
	};
}

type TakenUp = {
	readonly segment: Segment;
	/** What was cut off its end, as it is to be said; null for nothing. */
	readonly tail: Extract<Finding, { code: 'tail-cut-off' }> | null;
};

/** Opens the file to go on in and rids its end of what a stopped write left there. */
function takeUp(
	{ disk }: NightServices,
	file: SegmentFile,
	{ bytes, torn, quarantined }: JournalRead,
): TakenUp | { readonly code: string } {
	let opened: number | null = null;
	try {
		const { path } = file;
		opened = disk.openExisting(path);
		const segment = new Segment(disk, { ...file, file: opened });
		if (segment.sizeBytes !== bytes.length) {
			// Somebody wrote between our reading and our opening.
			disk.close(opened);
			return { code: 'EBUSY' };
		}
		// The wrong record itself stays where it is; the copy is for whoever wants to read it by eye.
		if (quarantined) keepAside(disk, { path, bytes, range: quarantined, why: 'unreadable' });
		if (!torn) return { segment, tail: null };
		const tail = tornFinding(bytes.subarray(torn.start, torn.end), null);
		const kept = keepAside(disk, { path, bytes, range: torn, why: 'torn' });
		// Zeros are kept to be told of each time; where there is no room for them nothing is lost.
		if ('code' in kept && !tail.isZero) {
			disk.close(opened);
			return kept;
		}
		segment.cut(torn.start);
		return { segment, tail: { ...tail, keptIn: 'path' in kept ? kept.path : null } };
	} catch (error) {
		const code = diskErrorCode(error);
		if (opened !== null) closeQuietly(disk, opened);
		return { code };
	}
}

function closeQuietly(disk: NightServices['disk'], file: number): void {
	try {
		disk.close(file);
	} catch (error) {
		diskErrorCode(error);
	}
}

function firstBytes(read: JournalRead | undefined, header: HeaderLine | null): Uint8Array | null {
	const parts = [
		...(read?.isUnterminated ? [Buffer.from('\n')] : []),
		...(header ? [headerBytes(header, 1)] : []),
	];
	return parts.length === 0 ? null : Buffer.concat(parts);
}

function spareHeader(
	{ id, spareHeader: subject }: NightChoice,
	services: NightServices,
	records: RecordList,
): HeaderLine | null {
	if (!subject) return null;
	const header = nightHeader(id, subject);
	// When the night began is lost with its header; its first record is the nearest to it.
	const [first] = records.all();
	const at = { wallMs: first?.t ?? 0, upMs: first?.m ?? services.upMs };
	const record = recordBeside({ s: 0, w: services.writer, e: [header], at });
	return { record, header };
}
