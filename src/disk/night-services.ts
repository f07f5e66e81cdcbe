// What a night's file is given: the world it lives in, and what is there of the night already.

import type { SaveStatus } from '../journal/night-journal.ts';
import type { HeaderLine } from '../journal/read-line.ts';
import type { Checkpoint } from '../journal/record.ts';
import type { RecordList, StoredLine } from '../journal/record-list.ts';
import type { Disk } from './disk.ts';
import type { Segment } from './segment.ts';

/** What a caller passes in so that a night can be kept. */
export type NightServices = {
	readonly disk: Disk;
	/** Where the night lives, then where it may go on when that place fails. */
	readonly folders: readonly string[];
	/** Whether a restart of the machine empties this folder; false for all when left out. */
	readonly isWiped?: (folder: string) => boolean;
	/** Whether leaving marks how far it came; true when left out. */
	readonly isEndMarked?: boolean;
	/** Resolves after so many milliseconds. */
	readonly wait: (milliseconds: number) => Promise<void>;
	/** Unique to this opening of the night: letters, digits, hyphens and dots; see `writerId`. */
	readonly writer: string;
	/** The machine's uptime now, in milliseconds. */
	readonly upMs: number;
	/** Told of every change of the status. */
	readonly onStatus?: (status: SaveStatus) => void;
	/** Called when the night is closed. */
	readonly release?: () => void;
};

/** What is there of a night when its file is opened or made. */
export type NightStart = {
	readonly id: string;
	readonly header: HeaderLine | null;
	readonly records: RecordList;
	/** Number of the last record, those that cannot be read included. */
	readonly lastSeq: number;
	readonly checkpoint: Checkpoint | null;
	/** All checkpoints, lowest number first. */
	readonly checkpoints: readonly StoredLine[];
	readonly segment: Segment | null;
	/** Folder other than the night's own with records that this one lacks; null for none. */
	readonly away: string | null;
	/** Why the night's own folder took no file, as the disk's error code; null when it did, or was not asked. */
	readonly folderTrouble: string | null;
	/** Likewise why its last file is not gone on with. */
	readonly fileTrouble: string | null;
	/** Number of the file that comes after those that are there. */
	readonly nextNumber: number;
	/** Bytes to be written before anything else. */
	readonly firstBytes: Uint8Array | null;
};
