// The tunings that have a name, for each kind of instrument, and what the trade calls them in
// short. Apart from the reading so that the table reads as a table. Names, notes and shorts are
// common practice, no source.

import type { InstrumentKind, KindFamily } from './kind.ts';

import { KINDS } from './kind.ts';

export type NamedTuning = {
	/** Canonical. */
	readonly name: string;
	/** One note a course, highest-numbered first. */
	readonly courses: string;
	/** Other ways to write the name; the bare letters of its notes need no mention. */
	readonly shorts: readonly string[];
	/** Whose tuning it is, in a few words; where it is left out, the trade's everywhere. */
	readonly from?: string;
};

const GUITAR: readonly NamedTuning[] = [
	{ name: 'E standard', courses: 'E2 A2 D3 G3 B3 E4', shorts: ['e', 'estandard'] },
	{
		name: 'half-step down',
		courses: 'Eb2 Ab2 Db3 Gb3 Bb3 Eb4',
		shorts: ['eb', 'ebstandard', 'd#', 'd#standard'],
	},
	{ name: 'whole step down', courses: 'D2 G2 C3 F3 A3 D4', shorts: ['dstandard'] },
	{ name: 'drop D', courses: 'D2 A2 D3 G3 B3 E4', shorts: ['dd'] },
	{ name: 'double drop D', courses: 'D2 A2 D3 G3 B3 D4', shorts: ['ddd'] },
	{ name: 'drop C#', courses: 'C#2 G#2 C#3 F#3 A#3 D#4', shorts: ['dc#', 'dropdb', 'ddb'] },
	{ name: 'drop C', courses: 'C2 G2 C3 F3 A3 D4', shorts: ['dc'] },
	{ name: 'DADGAD', courses: 'D2 A2 D3 G3 A3 D4', shorts: [] },
	{ name: 'open G', courses: 'D2 G2 D3 G3 B3 D4', shorts: ['opg'] },
	{ name: 'open D', courses: 'D2 A2 D3 F#3 A3 D4', shorts: ['opd'] },
	{ name: 'open E', courses: 'E2 B2 E3 G#3 B3 E4', shorts: ['ope'] },
	{ name: 'open A', courses: 'E2 A2 E3 A3 C#4 E4', shorts: ['opa'] },
	{ name: 'open C', courses: 'C2 G2 C3 G3 C4 E4', shorts: ['opc'] },
	{
		name: 'open G minor',
		courses: 'D2 G2 D3 G3 Bb3 D4',
		shorts: ['opengm', 'opgm'],
		from: 'slide players',
	},
	{
		name: 'open E minor',
		courses: 'E2 B2 E3 G3 B3 E4',
		shorts: ['openem', 'opem'],
		from: 'slide players',
	},
	{ name: 'lute', courses: 'E2 A2 D3 F#3 B3 E4', shorts: [], from: 'lute music on the guitar' },
	{ name: 'all fourths', courses: 'E2 A2 D3 G3 C4 F4', shorts: [], from: 'improvisers' },
];

const BARITONE: readonly NamedTuning[] = [
	{ name: 'B standard', courses: 'B1 E2 A2 D3 F#3 B3', shorts: ['b', 'bstandard'] },
	{
		name: 'half-step down',
		courses: 'Bb1 Eb2 Ab2 Db3 F3 Bb3',
		shorts: ['bb', 'bbstandard', 'a#standard'],
	},
	{ name: 'whole step down', courses: 'A1 D2 G2 C3 E3 A3', shorts: ['astandard'] },
	{ name: 'drop A', courses: 'A1 E2 A2 D3 F#3 B3', shorts: ['da'] },
	{
		name: 'C standard',
		courses: 'C2 F2 Bb2 Eb3 G3 C4',
		shorts: ['c'],
		from: 'baritones kept high',
	},
];

const BASS_4: readonly NamedTuning[] = [
	{ name: 'E standard', courses: 'E1 A1 D2 G2', shorts: ['e', 'estandard'] },
	{
		name: 'half-step down',
		courses: 'Eb1 Ab1 Db2 Gb2',
		shorts: ['eb', 'ebstandard', 'd#', 'd#standard'],
	},
	{ name: 'whole step down', courses: 'D1 G1 C2 F2', shorts: ['dstandard'] },
	{ name: 'drop D', courses: 'D1 A1 D2 G2', shorts: ['dd'] },
	{ name: 'drop C#', courses: 'C#1 G#1 C#2 F#2', shorts: ['dc#', 'dropdb', 'ddb'] },
	{ name: 'drop C', courses: 'C1 G1 C2 F2', shorts: ['dc'] },
	{ name: 'BEAD', courses: 'B0 E1 A1 D2', shorts: [], from: 'a five-string set without its first' },
	{ name: 'solo', courses: 'F#1 B1 E2 A2', shorts: ['solotuning'], from: 'upright soloists' },
];

const BASS_5: readonly NamedTuning[] = [
	{ name: 'B standard', courses: 'B0 E1 A1 D2 G2', shorts: ['b', 'bstandard'] },
	{
		name: 'half-step down',
		courses: 'Bb0 Eb1 Ab1 Db2 Gb2',
		shorts: ['bb', 'bbstandard', 'a#standard'],
	},
	{ name: 'whole step down', courses: 'A0 D1 G1 C2 F2', shorts: ['astandard'] },
	{ name: 'drop A', courses: 'A0 E1 A1 D2 G2', shorts: ['da'] },
];

const BASS_6: readonly NamedTuning[] = [
	{ name: 'B standard', courses: 'B0 E1 A1 D2 G2 C3', shorts: ['b', 'bstandard'] },
	{
		name: 'half-step down',
		courses: 'Bb0 Eb1 Ab1 Db2 Gb2 B2',
		shorts: ['bb', 'bbstandard', 'a#standard'],
	},
	{ name: 'whole step down', courses: 'A0 D1 G1 C2 F2 Bb2', shorts: ['astandard'] },
	{ name: 'drop A', courses: 'A0 E1 A1 D2 G2 C3', shorts: ['da'] },
];

const MANDOLIN: readonly NamedTuning[] = [
	{ name: 'GDAE', courses: 'G3 D4 A4 E5', shorts: [] },
	{ name: 'half-step down', courses: 'Gb3 Db4 Ab4 Eb5', shorts: [] },
	{ name: 'GDGD', courses: 'G3 D4 G4 D5', shorts: [] },
	{ name: 'AEAE', courses: 'A3 E4 A4 E5', shorts: [], from: 'fiddlers' },
	{ name: 'AEAC#', courses: 'A3 E4 A4 C#5', shorts: [], from: 'fiddlers' },
];

const UKULELE: readonly NamedTuning[] = [
	{ name: 'standard', courses: 'G4 C4 E4 A4', shorts: ['c6'] },
	{ name: 'low G', courses: 'G3 C4 E4 A4', shorts: [] },
	{ name: 'D tuning', courses: 'A4 D4 F#4 B4', shorts: ['d6'], from: 'older song books' },
	{ name: 'baritone', courses: 'D3 G3 B3 E4', shorts: ['bari'], from: 'baritone ukuleles' },
];

const BANJO: readonly NamedTuning[] = [
	{ name: 'standard', courses: 'G4 D3 G3 B3 D4', shorts: ['openg', 'opg', 'gstandard'] },
	{ name: 'drop C', courses: 'G4 C3 G3 B3 D4', shorts: ['dc'] },
	{ name: 'double C', courses: 'G4 C3 G3 C4 D4', shorts: [] },
	{ name: 'open C', courses: 'G4 C3 G3 C4 E4', shorts: ['opc'] },
	{ name: 'open D', courses: 'F#4 D3 F#3 A3 D4', shorts: ['opd'] },
	{
		name: 'sawmill',
		courses: 'G4 D3 G3 C4 D4',
		shorts: ['mountainminor'],
		from: 'old-time players',
	},
];

const FAMILIES: Readonly<Record<Exclude<KindFamily, 'bass'>, readonly NamedTuning[]>> = {
	guitar: GUITAR,
	twelve: GUITAR,
	baritone: BARITONE,
	mandolin: MANDOLIN,
	ukulele: UKULELE,
	banjo: BANJO,
	other: [],
};

/**
 * The tunings that this kind has by name, the usual one first; none for `other`.
 *
 * @example
 * namedTuningsOf('baritone-6')[0].courses // => 'B1 E2 A2 D3 F#3 B3'
 */
export function namedTuningsOf(kind: InstrumentKind): readonly NamedTuning[] {
	const { family, courses } = KINDS[kind];
	if (family !== 'bass') return FAMILIES[family];
	return courses === 4 ? BASS_4 : courses === 5 ? BASS_5 : BASS_6;
}

/**
 * Whose tuning it is, by the canonical name that this kind has it under; null for notes without a name.
 *
 * @example
 * originOf('mandolin-8', 'AEAE') // => 'fiddlers'
 * originOf('electric-6', 'drop D') // => 'common practice'
 */
export function originOf(kind: InstrumentKind, name: string): string | null {
	const named = namedTuningsOf(kind).find((one) => one.name === name);
	return named === undefined ? null : (named.from ?? 'common practice');
}
