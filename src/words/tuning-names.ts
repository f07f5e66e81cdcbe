// A tuning in as few letters as a place on the screen has: the names that the show and the trade use,
// shortest last.

import { displayWidth } from '../base/display-width.ts';
import type { Show } from '../showfile/show.ts';
import type { Tuning } from '../tuning/tuning.ts';

type Shorts = readonly (readonly [RegExp, string])[];

// The trade's shorts; common practice, no source. `$N` stands for the lowest string's note. The shortest
// ones are still told apart in capitals: DD is drop D, DDD double drop D.
const SHORTER: Shorts = [
	[/^(half-|whole )step down$/i, '$N std'],
	[/ standard$/i, ' std'],
	[/^double drop /i, 'dbl drop '],
];
const SHORTEST: Shorts = [
	[/^(half-|whole )step down$/i, '$N'],
	[/ standard$/i, ''],
	[/^double drop D$/i, 'DDD'],
	[/^drop /i, 'D'],
	[/^open /i, 'Op'],
];

/** The tuning's names for tall letters, longest first: the trade's short or its own, the file's, the shortest, its bare notes. */
export function tuningNames(show: Show, tuning: Tuning): readonly string[] {
	const isNotes = tuning.name === tuning.notes.join(' ');
	const own = ownShort(show, tuning);
	return [
		shortened(tuning, SHORTER)[0] ?? tuning.name,
		...(own === null ? [] : [own]),
		...shortened(tuning, SHORTEST),
		...(isNotes ? [bareNotes(tuning)] : []),
	];
}

/** The notes without their octaves, one for each pair of strings that sound the same note. */
function bareNotes({ notes }: Tuning): string {
	const bare = notes.map((note) => note.replace(/-?\d$/, ''));
	const isPaired = bare.length % 2 === 0 && bare.every((note, at) => note === bare[at - (at % 2)]);
	return (isPaired ? bare.filter((_, at) => at % 2 === 0) : bare).join('');
}

/** The name as tall letters need it: flats and sharps as signs, since there are no lower-case letters. */
export function withSigns(name: string): string {
	return name.replace(/\b([A-G])b(?![a-z])/g, '$1♭').replace(/\b([A-G])#/g, '$1♯');
}

/** The short form used in lists: `drop D`, `E std`. */
export function shortTuning(show: Show, tuning: Tuning): string {
	return shortened(tuning, SHORTER)[0] ?? ownShort(show, tuning) ?? tuning.name;
}

/** The longest of the tuning's names that fits: one cut short could be another's. */
export function tuningThatFits(show: Show, tuning: Tuning, columns: number): string {
	const usual = shortTuning(show, tuning);
	const fits = (name: string) => displayWidth(name) <= columns;
	return fits(usual) ? usual : (tuningNames(show, tuning).find(fits) ?? usual);
}

/** The file's own abbreviation, but only where it is the shorter one. */
function ownShort(show: Show, { name }: Tuning): string | null {
	const wanted = name.toLowerCase();
	const found = Object.entries(show.abbreviations).find(
		([short, long]) => short.length < name.length && long.toLowerCase() === wanted,
	);
	return found?.[0] ?? null;
}

function shortened({ name, notes }: Tuning, by: Shorts): readonly string[] {
	const [long, short] = by.find(([one]) => one.test(name)) ?? [];
	if (long === undefined || short === undefined) return [];
	const lowest = notes[0]?.replace(/-?\d$/, '') ?? '';
	return [name.replace(long, () => short.replace('$N', lowest))];
}
