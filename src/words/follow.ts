// What a window says that only follows a night which another copy of the program keeps.

import type { FollowedLook } from '../journal/followed-night.ts';
import { diskTrouble } from './disk.ts';

export const ONLY_FOLLOWS = 'This window only follows.';
export const LEAVES = 'leave';
export const FAR = 'far';
export const HIDES = 'hide it';

export const SHOW_IS_CLOSED = 'The show is closed: nothing more comes.';

type Gone = Exclude<FollowedLook, { kind: 'read' }>;

/** The night's files were there, and are not, or less of them can be read than before; `at`: the hour of the last step that was read. */
export function goneWords({ kind, folder, trouble }: Gone, at: string): string {
	const what = kind === 'damaged' ? 'damaged' : 'moved, removed or cut short';
	const why = trouble === null ? what : diskTrouble(trouble);
	return `The night's files in ${folder} cannot be followed (${why}): this is how it stood at ${at}.`;
}

/** The same for one row. */
export const goneInShort = ({ kind }: Gone, at: string): string =>
	`Files ${kind}; this is how it stood at ${at}.`;

/** The night goes on in another file than before. */
export const movedWords = (file: string): string => `The night goes on in another file: ${file}`;

// On the plain terminal.

export const NO_UNFINISHED_NIGHT = 'no night is under way';
export const unfollowable = (why: string): string => `this night cannot be read: ${why}`;
export const NOT_IN_FULL = 'moved, removed or damaged';
export const FOLLOW_BY_NAME =
	'rackside run SHOW begins one; to look at a finished one, name it: rackside nights lists them.';
export const NO_SHOW_TO_FOLLOW =
	"this night's copy of the show cannot be read, so it cannot be followed";
export const FOLLOWED_NO_MORE = 'No longer followed; nothing was changed in the night.';
