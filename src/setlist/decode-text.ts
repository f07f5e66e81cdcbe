// The bytes of a set list as text, in whichever of the usual ways it was saved.

export type Decoded =
	| { readonly ok: true; readonly text: string }
	/** What it is instead; `null` for bytes that are no text. */
	| { readonly ok: false; readonly is: 'xlsx' | 'ods' | 'xls' | 'numbers' | 'zip' | 'pdf' | null };

/** How files that are no text begin (from memory of the formats' documents). */
const ZIP = [0x50, 0x4b];
const OLD_OFFICE = [0xd0, 0xcf, 0x11, 0xe0];
const PDF = [0x25, 0x50, 0x44, 0x46];

/** How far into a file its nature is looked for. */
const LOOKED_AT = 4000;

/** Text that is UTF-8, UTF-16 in either order, with or without a mark, or Windows-1252; without the mark, each line ending in `\n`. */
export function decodeText(bytes: Uint8Array): Decoded {
	if (begins(bytes, ZIP)) return { ok: false, is: zipped(bytes) };
	if (begins(bytes, OLD_OFFICE)) return { ok: false, is: 'xls' };
	if (begins(bytes, PDF)) return { ok: false, is: 'pdf' };
	const text = decoded(bytes).replace(/^\ufeff/, '');
	if (text.includes('\0')) return { ok: false, is: null };
	return { ok: true, text: text.replace(/\r\n?|[\u0085\u2028\u2029]/g, '\n') };
}

function begins(bytes: Uint8Array, first: readonly number[]): boolean {
	return first.every((byte, index) => bytes[index] === byte);
}

function zipped(bytes: Uint8Array): 'xlsx' | 'ods' | 'numbers' | 'zip' {
	const start = new TextDecoder('latin1').decode(bytes.subarray(0, LOOKED_AT));
	const end = new TextDecoder('latin1').decode(bytes.subarray(-LOOKED_AT));
	const names = start + end;
	if (names.includes('opendocument.spreadsheet')) return 'ods';
	if (names.includes('xl/') || names.includes('[Content_Types]')) return 'xlsx';
	return names.includes('.iwa') ? 'numbers' : 'zip';
}

function decoded(bytes: Uint8Array): string {
	if (begins(bytes, [0xff, 0xfe])) return new TextDecoder('utf-16le').decode(bytes);
	if (begins(bytes, [0xfe, 0xff])) return new TextDecoder('utf-16be').decode(bytes);
	const unmarked = unmarkedWide(bytes);
	if (unmarked !== null) return new TextDecoder(unmarked).decode(bytes);
	try {
		return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
	} catch {
		return new TextDecoder('windows-1252').decode(bytes);
	}
}

/** Every second byte of plain letters in UTF-16 is zero. */
function unmarkedWide(bytes: Uint8Array): 'utf-16le' | 'utf-16be' | null {
	const start = bytes.subarray(0, LOOKED_AT);
	let even = 0;
	let odd = 0;
	for (const [index, byte] of start.entries()) {
		if (byte !== 0) continue;
		if (index % 2 === 0) even += 1;
		else odd += 1;
	}
	if (odd > start.length / 4 && even === 0) return 'utf-16le';
	return even > start.length / 4 && odd === 0 ? 'utf-16be' : null;
}
