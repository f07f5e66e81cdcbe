// The usual cautions, said where the work that they belong to is named. They are reminders for people
// who know the work; local codes and licensed practice come first.

/** Amps, hum, mains: who may open what comes first. */
const AMP_CAUTIONS = [
	'An amp can hold a lethal charge unplugged. Opening it is for licensed people.',
	'A tingle can mean a lost earth: stop, touch nothing, qualified electrician.',
	'Only the marked fuse type and rating. Never lift the safety earth.',
	'Local codes and licensed people come before anything that is said here.',
] as const;
const SMOKE = 'Smoke, a burning smell, sparks: power off at the wall, stand clear.';
export const HUM_CAUTION = 'Hum: never lift the safety earth.';
const TUBES = 'Tube amps: hot tubes, never without a speaker load, mute before unplugging.';
/** Beside every word of a tube amp without its cabinet. */
export const TUBE_LOAD = 'A tube amp never plays without its speaker load.';
const WET = 'Wet or outdoor stage: touch no mains; its power is for licensed people.';
export const SOLDER = 'Solder in an aired room with eye protection, never on anything plugged in.';
const IRON = 'Iron in its stand, wash hands after soldering.';
export const STRING_CAUTION =
	'Wear eye protection at strings: slacken before cutting, point the ends away.';
const STRING_ENDS = 'Cut string ends go into a bin.';
const STRAPS = 'Straps: check the locks at both ends.';
const BATTERIES = 'Packs: a damaged or swollen battery is not used, charged or opened.';
const FEEDBACK_CAUTION =
	'Feedback: raise the level slowly, ears protected, and warn the stage first.';
const HEARING = 'Hearing: wear protection on stage, at line check and at soundcheck.';
const LIFTING = 'Lifting: two people for racks, amps and heavy cases.';

const BURNING = /\b(smok\w*|burn\w*|spark\w*|breaker)\b/i;
const SHOCKING = /\b(hum\w*|earth|ground|shock\w*|zap\w*|tingl\w*)\b/i;
const AMP = /\b(amps?|amplifiers?|tubes?|valves?|head)\b/i;
/** What else calls for care with mains. */
const MAINS = /\b(fuses?|mains|power|outlet|plug)\b/i;
const WETNESS = /\b(wet|rain\w*|damp|puddles?|outdoors?|out of doors|open air)\b/i;
const WIRED =
	/\b(jack|pickup|pot|wire|wiring|switch|solder\w*|lead|cable|crackle|socket|electronics)\b/i;
const RINGING = /\b(feedback|ringing|howl\w*)\b/i;
const STRAP = /\b(straps?|dropped)\b/i;
const BATTERY = /\b(battery|batteries|packs?)\b/i;

/** What of a night's or a show's work calls for a caution. */
export type CautionedWork = {
	/** Faults, incidents and memos, in whatever words they were written. */
	readonly texts: readonly string[];
	readonly hasRestring: boolean;
	/** Somebody will stand on a stage or carry cases. */
	readonly isOnStage: boolean;
};

/** The cautions for this work, a sentence or two each, the gravest first. Common practice, no source. */
export function cautionsFor(work: CautionedWork): readonly string[] {
	const text = work.texts.join('\n');
	return [
		...(BURNING.test(text) ? [SMOKE] : []),
		...(isElectric(text) ? AMP_CAUTIONS : []),
		...(AMP.test(text) ? [TUBES] : []),
		...(WETNESS.test(text) ? [WET] : []),
		...(WIRED.test(text) ? [SOLDER, IRON] : []),
		...(work.hasRestring ? [STRING_CAUTION, STRING_ENDS] : []),
		...(STRAP.test(text) ? [STRAPS] : []),
		...(BATTERY.test(text) ? [BATTERIES] : []),
		...(RINGING.test(text) ? [FEEDBACK_CAUTION] : []),
		...(work.isOnStage ? [HEARING, LIFTING] : []),
	];
}

function isElectric(text: string): boolean {
	return [BURNING, SHOCKING, AMP, MAINS].some((words) => words.test(text));
}

/** What goes on the sheet that is taped to the case, whatever the night brings. */
export const SHEET_CAUTIONS: readonly string[] = [
	...AMP_CAUTIONS,
	SMOKE,
	TUBES,
	WET,
	STRING_CAUTION,
	STRING_ENDS,
	STRAPS,
	BATTERIES,
	SOLDER,
	IRON,
	FEEDBACK_CAUTION,
	HEARING,
	LIFTING,
];

/** The line or two for what an incident is called; none where it needs none. */
export function incidentCautions(text: string): readonly string[] {
	if (BURNING.test(text)) return [SMOKE, AMP_CAUTIONS[0]];
	if (SHOCKING.test(text)) return [AMP_CAUTIONS[1], HUM_CAUTION];
	if (AMP.test(text)) return [AMP_CAUTIONS[0], TUBES];
	if (MAINS.test(text)) return [AMP_CAUTIONS[2], AMP_CAUTIONS[3]];
	if (WETNESS.test(text)) return [WET];
	if (/string/i.test(text)) return [STRING_CAUTION, STRING_ENDS];
	if (WIRED.test(text)) return [SOLDER, IRON];
	if (STRAP.test(text)) return [STRAPS];
	if (BATTERY.test(text)) return [BATTERIES];
	return RINGING.test(text) ? [FEEDBACK_CAUTION] : [];
}
