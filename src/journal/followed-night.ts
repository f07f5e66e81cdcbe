// A night that another copy of the program keeps, as somebody finds it who only reads its files. Stands
// apart so that the night itself never knows a disk.

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
	  }
	/** The files are not there, hold less than they did, or cannot be read; `trouble`: the system's own word for why. */
	| { readonly kind: 'gone'; readonly folder: string; readonly trouble: string | null };
