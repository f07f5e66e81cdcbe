// Ids made from what people call things: short, allowed in a show file, each once.

import { cleanText } from '../base/clean-text.ts';
import { isInheritedName } from '../showfile/inherited-name.ts';
import { CUE_KEYS } from '../showfile/shape.ts';

const LONGEST = 40;
const RESERVED: readonly string[] = [...CUE_KEYS, 'none'];

/** Whether a show file can have this id. */
export function isUsableId(id: string): boolean {
	return (
		/^[\p{L}\p{N}][\p{L}\p{M}\p{N}_.-]{0,39}$/u.test(id) &&
		id === id.normalize('NFC') &&
		id === cleanText(id) &&
		!RESERVED.includes(id) &&
		!isInheritedName(id)
	);
}

/** The text in lower case as an id, letters of every script kept; `fallback` where nothing of it can be one. Not one of `taken`. */
export function idFrom(text: string, fallback: string, taken: ReadonlySet<string>): string {
	const plain = text
		.normalize('NFC')
		.toLowerCase()
		.normalize('NFC')
		// A file shows nothing invisible, and has it in no id.
		.replace(/['’\p{Default_Ignorable_Code_Point}\p{Me}]/gu, '')
		.replace(/[^\p{L}\p{M}\p{N}]+/gu, '-')
		.replace(/^[-\p{M}]+|-+$/gu, '');
	const base = [...plain]
		.slice(0, LONGEST - 4)
		.join('')
		.replace(/-+$/, '');
	const stem = base === '' || base.length > LONGEST - 4 ? fallback : base;
	for (let number = 1; ; number += 1) {
		const id = number === 1 ? stem : `${stem}-${number}`;
		if (!taken.has(id) && isUsableId(id)) return id;
	}
}
