// A piece of a file name made from a title that anybody may have typed.

const LONGEST = 60;

// Device names that cannot be files on Windows, whatever extension follows ("Naming Files, Paths,
// and Namespaces" in its documentation; from memory).
const DEVICE = /^(?:con|prn|aux|nul|com\d|lpt\d)$/;

/**
 * One to 60 characters of `a-z`, `0-9` and `-`, neither beginning nor ending in `-` and never a
 * device name: `Quay Street, second night` gives `quay-street-second-night`. A text with nothing
 * usable gives `unnamed`, so two texts may give the same.
 */
export function slug(text: string): string {
	const plain = text
		.slice(0, 1000)
		.normalize('NFKD')
		.replace(/\p{M}/gu, '')
		.toLowerCase()
		.replace(/[^a-z0-9]+/g, '-')
		.slice(0, LONGEST + 1)
		.replace(/^-/, '')
		.slice(0, LONGEST)
		.replace(/-$/, '');
	if (plain === '') return 'unnamed';
	return DEVICE.test(plain) ? `${plain}-x` : plain;
}
