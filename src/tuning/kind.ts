// The kinds of instrument on a rack and what follows from a kind alone: how it is strung, what it
// is usually tuned to, whether a capo goes on it and how long a touch-up takes. One table.

export type InstrumentKind =
	| 'electric-6'
	| 'electric-12'
	| 'acoustic-6'
	| 'acoustic-12'
	| 'nylon-6'
	| 'baritone-6'
	| 'bass-4'
	| 'bass-5'
	| 'bass-6'
	| 'upright-4'
	| 'mandolin-8'
	| 'resonator-6'
	| 'ukulele-4'
	| 'banjo-5'
	| 'other';

export type KindFamily =
	| 'guitar'
	| 'twelve'
	| 'baritone'
	| 'bass'
	| 'mandolin'
	| 'ukulele'
	| 'banjo'
	| 'other';

export type Kind = {
	/** Kinds of one family share their tunings, but for basses, where the strings decide. */
	readonly family: KindFamily;
	/** How many courses; null where the kind does not say. */
	readonly courses: number | null;
	readonly stringsPerCourse: 1 | 2;
	/** Courses, counted from the highest, whose second string is an octave up; others are unison. */
	readonly octaveCourses: readonly number[];
	/** Canonical name of what `standard` means here; null where nothing is usual. */
	readonly usual: string | null;
	readonly canTakeCapo: boolean;
	/** The plan puts one on by itself; on a bass only where somebody names it. */
	readonly isCapoPlanned: boolean;
	/** From nearly in tune to in tune and checked: common practice, no source. */
	readonly touchUpSeconds: number;
};

const GUITAR = {
	family: 'guitar',
	courses: 6,
	stringsPerCourse: 1,
	octaveCourses: [],
	usual: 'E standard',
	canTakeCapo: true,
	isCapoPlanned: true,
	touchUpSeconds: 45,
} as const;

// Octaves on the four lower courses, unisons on the two upper: common practice, no source.
const TWELVE = {
	...GUITAR,
	family: 'twelve',
	stringsPerCourse: 2,
	octaveCourses: [3, 4, 5, 6],
	touchUpSeconds: 180,
} as const;

const BASS = {
	...GUITAR,
	family: 'bass',
	courses: 4,
	isCapoPlanned: false,
	touchUpSeconds: 40,
} as const;

/** Every kind with what follows from it. */
export const KINDS: Readonly<Record<InstrumentKind, Kind>> = {
	'electric-6': GUITAR,
	'electric-12': TWELVE,
	'acoustic-6': GUITAR,
	'acoustic-12': TWELVE,
	'nylon-6': GUITAR,
	'baritone-6': { ...GUITAR, family: 'baritone', usual: 'B standard' },
	'bass-4': BASS,
	'bass-5': { ...BASS, courses: 5, usual: 'B standard' },
	'bass-6': { ...BASS, courses: 6, usual: 'B standard' },
	'upright-4': { ...BASS, canTakeCapo: false },
	'mandolin-8': {
		family: 'mandolin',
		courses: 4,
		stringsPerCourse: 2,
		octaveCourses: [],
		usual: 'GDAE',
		canTakeCapo: true,
		isCapoPlanned: true,
		touchUpSeconds: 60,
	},
	'resonator-6': GUITAR,
	'ukulele-4': { ...GUITAR, family: 'ukulele', courses: 4, usual: 'standard' },
	'banjo-5': {
		...GUITAR,
		family: 'banjo',
		courses: 5,
		usual: 'standard',
	},
	other: { ...GUITAR, family: 'other', courses: null, usual: null },
};

/** Every kind's name, in the table's order. */
export const INSTRUMENT_KINDS = Object.keys(KINDS) as readonly InstrumentKind[];

/**
 * Strings on an instrument of this kind; null where the kind does not say.
 *
 * @example
 * stringCount('acoustic-12') // => 12
 * stringCount('other') // => null
 */
export function stringCount(kind: InstrumentKind): number | null {
	const { courses, stringsPerCourse } = KINDS[kind];
	return courses === null ? null : courses * stringsPerCourse;
}
