// A set list read in memory, as `new` reads it.

import { NO_ANSWERS, readingOf } from '../../src/setlist/answers.ts';
import { decodeText } from '../../src/setlist/decode-text.ts';
import { EMPTY_RACK, type ListReading, type Rack } from '../../src/setlist/list-reading.ts';
import type { SetList } from '../../src/setlist/list-row.ts';
import { readSetList } from '../../src/setlist/make-show.ts';
import type { ShowDraft } from '../../src/setlist/show-draft.ts';

type How = {
	readonly form: 'table' | 'lines';
	readonly columns?: Readonly<Record<string, string>>;
	readonly rack?: Rack;
};

/** The list and its reading; an error where it cannot be used. */
export function readBytes(
	bytes: Uint8Array,
	{ form, columns = {}, rack = EMPTY_RACK }: How,
): { readonly list: SetList; readonly reading: ListReading } {
	const decoded = decodeText(bytes);
	if (!decoded.ok) throw new Error(`no text: ${decoded.is}`);
	const read = readSetList({ text: decoded.text, form, columns, rack });
	if (!read.ok) throw new Error(read.code);
	return { list: read.list, reading: readingOf(read.list, rack, NO_ANSWERS) };
}

/** The same from text. */
export function readText(text: string, how: How) {
	return readBytes(new TextEncoder().encode(text), how);
}

/** The draft of a reading, as `new` makes it. */
export function draftOf(list: SetList, reading: ListReading): ShowDraft {
	const { players, instruments, songs, set } = reading;
	return {
		...{ title: list.title ?? 'List', venue: null, date: '2026-06-12', start: '20:00' },
		...{ curfew: null, remarks: [], players, instruments, songs, set },
	};
}
