// What is said of a text that is no tuning of an instrument: which it has, and what looks like the slip.

import type { UnreadTuning } from '../tuning/tuning.ts';
import { kindWords } from './kinds.ts';

/** `E standard, drop D or 6 notes with their octaves from the highest-numbered string down`. */
export function tuningExpectedWords({ names, ...notes }: UnreadTuning): string {
	return [...names, noteForm(notes)].join(', ').replace(/, ([^,]*)$/, ' or $1');
}

function noteForm({
	courses,
	stringsPerCourse,
}: Pick<UnreadTuning, 'courses' | 'stringsPerCourse'>): string {
	if (courses === null) return 'one note with its octave for each string';
	const each = stringsPerCourse === 2 ? ` (or ${courses * 2}: one a string)` : '';
	return `${courses} notes with their octaves from the highest-numbered string down${each}`;
}

/** What may have been meant, in a whole sentence; null where nothing is near. */
export function tuningHintWords({ slip }: UnreadTuning): string | null {
	switch (slip?.code) {
		case undefined:
			return null;
		case 'short-for':
			return `${slip.short} stands for ${slip.meant} in this show.`;
		case 'note-count':
			return `The ${kindWords(slip.kind)} has ${slip.strings} strings; here are ${slip.notes} notes.`;
		case 'no-octaves':
			return 'Give each note its octave, as in E2.';
		case 'near':
			return `Did you mean ${slip.name}?`;
	}
}
