// The usual cautions, said where the work that they belong to is named. They are reminders for people
// who know the work; local codes and licensed practice come first.

/** Amps, hum, mains: who may open what comes first. */
const AMP_CAUTIONS = [
	'An amp can hold a lethal charge unplugged. Opening it is for licensed people.',
	'A tingle can mean a lost earth: stop, touch nothing, qualified electrician.',
	'Only the marked fuse type and rating. Never lift the safety earth.',
	'Local codes and licensed people come before anything that is said here.',
] as const;
const SOLDER = 'Solder in an aired room with eye protection, never on anything plugged in.';
export const STRING_CAUTION =
	'Wear eye protection at strings: slacken before cutting, point the ends away.';
const FEEDBACK_CAUTION =
	'Feedback: raise the level slowly, ears protected, and warn the stage first.';
const HEARING = 'Hearing: wear protection on stage and at line check.';
const LIFTING = 'Lifting: two people for racks, amps and heavy cases.';

/** What calls for care with mains. */
const ELECTRIC =
	/\b(amps?|amplifiers?|tubes?|valves?|fuses?|mains|power|hum|earth|ground|shock|tingle|head|outlet|plug)\b/i;
const WIRED =
	/\b(jack|pickup|pot|wire|wiring|switch|solder\w*|lead|cable|crackle|socket|electronics)\b/i;
const RINGING = /\b(feedback|ringing|howl\w*)\b/i;

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
		...(ELECTRIC.test(text) ? AMP_CAUTIONS : []),
		...(WIRED.test(text) ? [SOLDER] : []),
		...(work.hasRestring ? [STRING_CAUTION] : []),
		...(RINGING.test(text) ? [FEEDBACK_CAUTION] : []),
		...(work.isOnStage ? [HEARING, LIFTING] : []),
	];
}

/** What goes on the sheet that is taped to the case, whatever the night brings. */
export const SHEET_CAUTIONS: readonly string[] = [
	...AMP_CAUTIONS,
	STRING_CAUTION,
	SOLDER,
	FEEDBACK_CAUTION,
	HEARING,
	LIFTING,
];

/** The one line for what an incident is called; null where it needs none. */
export function incidentCaution(text: string): string | null {
	if (ELECTRIC.test(text)) return AMP_CAUTIONS[/hum|tingle|earth|shock/i.test(text) ? 1 : 0];
	if (/string/i.test(text)) return STRING_CAUTION;
	if (WIRED.test(text)) return SOLDER;
	return RINGING.test(text) ? FEEDBACK_CAUTION : null;
}
