// A night that another copy of the program keeps, as somebody finds it who only reads its files. Stands
// apart so that the night itself never knows a disk.

import type { Finding } from './findings.ts';
import type { ReadableJournal, SavePlace } from './night-journal.ts';

/** Looks again at the night's files; null while nothing in them has changed since the last look. */
export type FollowedNight = () => FollowedLook | null;

export type FollowedLook =
	| {
			readonly kind: 'read';
			readonly journal: ReadableJournal;
			/** The name of the file that takes its new lines. */
			readonly file: string;
			/** Where it is kept that its own folder does not take. */
			readonly elsewhere: SavePlace | null;
			/** Its own folder, where a restart of the machine empties that; else null. */
			readonly wipedHome: string | null;
			/** What its files say of themselves, but for an end that is yet being written. */
			readonly findings: readonly Finding[];
	  }
	/**
	 * Less of it can be read than before. `damaged`: though its files have no fewer bytes; else they are not there,
	 * are shorter, or cannot be read, and `trouble` is the system's own word for why.
	 */
	| {
			readonly kind: 'gone' | 'damaged';
			readonly folder: string;
			readonly trouble: string | null;
	  };
