// What went wrong with a disk, said so that somebody with a guitar in the other hand understands it.

const sentences: { readonly [code: string]: string } = {
	ENOSPC: 'the disk is full: make room on it',
	EDQUOT: 'your share of the disk is full: make room on it',
	EFBIG: 'the file may not grow further',
	EROFS: 'the disk can only be read',
	EACCES: 'writing is not allowed there',
	EPERM: 'writing is not allowed there',
	EIO: 'the disk reports a fault',
	ENODEV: 'the disk is gone',
	ENXIO: 'the disk is gone',
	ESTALE: 'the disk is gone',
	ENOENT: 'the folder is gone',
	ENOTDIR: 'the folder is not a folder',
	EMFILE: 'too many files are open',
	ENFILE: 'too many files are open on this machine',
	ELOOP: 'a link stands where the file should be',
	EFTYPE: 'something else stands where the file should be',
	EEXIST: 'a file of that name is there already',
	ENAMETOOLONG: 'the name is too long for this disk',
	EBUSY: 'something else is writing there',
	ETIMEDOUT: 'the disk does not answer',
};

/** The cause of a disk's error as part of a sentence, the system's own word for it in brackets. */
export function diskTrouble(code: string): string {
	const sentence = sentences[code] ?? 'the system refused it';
	return `${sentence} (${code})`;
}
