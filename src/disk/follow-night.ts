// The files of a night that another copy of the program keeps, looked at again and again: read only, and
// read anew whenever one of them is not as it was. What a write has not finished yet is waited for.

import { basename } from 'node:path';
import type { FollowedLook, FollowedNight } from '../journal/followed-night.ts';
import { decodeCheckpoint } from '../journal/join-segments.ts';
import type { ReadableJournal } from '../journal/night-journal.ts';
import { RecordList } from '../journal/record-list.ts';
import { diskErrorCode } from './disk.ts';
import type { NightServices } from './night-services.ts';
import { awayFolder } from './open-night-file.ts';
import {
	type FolderNames,
	findingsIn,
	type NightFiles,
	namesIn,
	readNight,
	segmentFiles,
} from './read-night.ts';

export type FollowPlace = Pick<NightServices, 'disk' | 'folders' | 'isWiped'>;

/** The night with this id in these folders, to be followed. */
export function followNight(place: FollowPlace, id: string): FollowedNight {
	const { disk, folders } = place;
	const home = folders[0] ?? '.';
	const wipedHome = place.isWiped?.(home) ? home : null;
	let seen: string | null = null;
	let lastSeq = 0;
	let lastBytes = 0;

	const gone = (files: NightFiles): FollowedLook => {
		const [unreadable] = files.unreadable;
		const isDamaged = files.files.length > 0 && !unreadable && bytesOf(files) >= lastBytes;
		return {
			kind: isDamaged ? 'damaged' : 'gone',
			folder: files.files.at(-1)?.folder ?? home,
			trouble: unreadable?.trouble ?? listingTrouble(disk, home),
		};
	};

	return () => {
		// Before they are read: what is written meanwhile is then found at the next look.
		const found = namesIn(disk, folders);
		const now = stamp(disk, found, id);
		if (now === seen) return null;
		seen = now;
		const files = readNight(disk, { ...found, id, home });
		const { night } = files;
		const last = files.files.at(-1);
		if (last === undefined || night.lastSeq < lastSeq) return gone(files);
		lastSeq = night.lastSeq;
		lastBytes = bytesOf(files);
		const away = awayFolder(files, home);
		const isWiped = away !== null && (place.isWiped?.(away) ?? false);
		return {
			kind: 'read',
			journal: readableJournal(files),
			file: basename(last.path),
			wipedHome,
			elsewhere: away === null ? null : { folder: away, home, trouble: null, isWiped },
			findings: findingsIn(files).filter(({ code }) => code !== 'tail-cut-off'),
		};
	};
}

function bytesOf({ night }: NightFiles): number {
	return night.reads.reduce((sum, { bytes }) => sum + bytes.length, 0);
}

/** Why a folder cannot be looked into, also where there is none; null where it can. */
function listingTrouble(disk: FollowPlace['disk'], folder: string): string | null {
	try {
		disk.list(folder);
		return null;
	} catch (error) {
		return diskErrorCode(error);
	}
}

/** Tells whether anything in these files may have changed. */
function stamp(disk: FollowPlace['disk'], found: FolderNames, id: string): string {
	const unlisted = found.unlisted.map(({ path, trouble }) => `${path} ${trouble}`);
	const files = segmentFiles(found.names, id).map(({ path }) => {
		try {
			const stat = disk.stat(path);
			return [path, stat?.identity, stat?.sizeBytes, stat?.modifiedMs, stat?.mode].join(' ');
		} catch (error) {
			return `${path} ${diskErrorCode(error)}`;
		}
	});
	return [...unlisted, ...files].join('\n');
}

function readableJournal({ night }: NightFiles): ReadableJournal {
	const records = new RecordList(night.lines);
	return {
		checkpoint: night.checkpoint && decodeCheckpoint(night.checkpoint),
		checkpointBefore: (seq) => {
			const found = night.checkpoints.findLast(({ line }) => line.seq < seq);
			return found ? decodeCheckpoint(found) : null;
		},
		isWhole: (range) => records.isWhole(range),
		records: () => records.all(),
		recordsAfter: (seq) => records.after(seq),
		// Nothing is kept by whoever only reads.
		keepStates: () => {},
	};
}
