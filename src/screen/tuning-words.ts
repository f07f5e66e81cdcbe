// A tuning in as few letters as a place on the screen has: the names that the show and the trade use,
// shortest last.

import type { Show } from '../showfile/show.ts';
import type { Tuning } from '../tuning/tuning.ts';

// The trade's shorts; common practice, no source.
const SHORTER: readonly (readonly [RegExp, string])[] = [
	[/^half-step down$/i, 'Eb std'],
	[/^whole step down$/i, 'D std'],
	[/ standard$/i, ' std'],
	[/^double drop /i, 'dbl drop '],
];
const SHORTEST: readonly (readonly [RegExp, string])[] = [
	[/^half-step down$/i, 'Eb'],
	[/^whole step down$/i, 'D'],
	[/ standard$/i, ''],
	[/^double drop D$/i, 'DD'],
	[/^drop /i, 'd'],
	[/^open /i, 'o'],
];

/** The tuning's names from full to shortest: its own, the trade's short, the file's, its bare notes. */
export function tuningNames(show: Show, tuning: Tuning): readonly string[] {
	const isNotes = tuning.name === tuning.notes.join(' ');
	const own = ownShort(show, tuning);
	return [
		tuning.name,
		...shortened(tuning.name, SHORTER),
		...(own === null ? [] : [own]),
		...shortened(tuning.name, SHORTEST),
		...(isNotes ? [tuning.notes.map((note) => note.replace(/-?\d$/, '')).join('')] : []),
	];
}

/** The name as tall letters need it: flats and sharps as signs, since there are no lower-case letters. */
export function withSigns(name: string): string {
	return name.replace(/\b([A-G])b(?![a-z])/g, '$1♭').replace(/\b([A-G])#/g, '$1♯');
}

/** The short form used in lists: `drop D`, `E std`. */
export function shortTuning(show: Show, tuning: Tuning): string {
	return shortened(tuning.name, SHORTER)[0] ?? ownShort(show, tuning) ?? tuning.name;
}

/** `CAPO 3`, or `no capo`. */
export function capoWords(capo: number): string {
	return capo > 0 ? `CAPO ${capo}` : 'no capo';
}

/** The file's own abbreviation, but only where it is the shorter one. */
function ownShort(show: Show, { name }: Tuning): string | null {
	const found = Object.entries(show.abbreviations).find(
		([short, long]) => long.toLowerCase() === name.toLowerCase() && short.length < name.length,
	);
	return found?.[0] ?? null;
}

function shortened(name: string, by: typeof SHORTER): readonly string[] {
	const found = by.find(([long]) => long.test(name));
	return found ? [name.replace(found[0], found[1])] : [];
}
