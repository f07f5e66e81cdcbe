// What a disk would not do, as data: the disk says it, and who knows no disk puts it into words.

/** `trouble`: the system's own word for it, as `ENOSPC`. */
export type DiskFault =
	/** `kind`: what stands there; null when it cannot be told. */
	| { readonly code: 'file-exists'; readonly path: string; readonly kind: string | null }
	| {
			/** `folder-doubtful`: used, though it is a link, or others made it or may write into it. */
			readonly code: 'folder-unusable' | 'folder-doubtful' | 'file-unreadable';
			readonly path: string;
			readonly trouble: string;
	  }
	/** Something stands where a small file of the program's own belongs; `holds`: what is not kept for it. */
	| {
			readonly code: 'place-taken';
			readonly path: string;
			readonly trouble: string;
			readonly holds: 'lock' | 'drafts' | 'troubles' | 'writer';
	  }
	| { readonly code: 'export-failed'; readonly path: string; readonly trouble: string }
	/** A night that was kept elsewhere, and nothing of it is there. */
	| { readonly code: 'copy-gone'; readonly path: string }
	/** A night whose file is not there any more; `left`: what is, though it tells nothing of the night. */
	| { readonly code: 'night-gone'; readonly path: string; readonly left: string }
	/** A night's file of whose bytes none make sense. */
	| { readonly code: 'night-empty'; readonly path: string; readonly bytes: number }
	/** A night's file that can be read, but for its beginning. */
	| { readonly code: 'beginning-unreadable'; readonly path: string }
	/** `trouble`: null where what is in them is damaged. */
	| {
			readonly code: 'settings-unreadable' | 'settings-not-kept';
			readonly trouble: string | null;
	  }
	/** They wait for a disk that does not answer at once. */
	| { readonly code: 'settings-late' }
	/** The show is open in another copy of the program; `pid`: null when it cannot be told. */
	| { readonly code: 'locked'; readonly pid: number | null };
