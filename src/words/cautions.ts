// The usual cautions, said where the work that they belong to is named. They are reminders for people
// who know the work; local codes and licensed practice come first.

const MAINS =
	'Mains and tube amps: chassis work is for trained people only, since an amp holds lethal charge even unplugged. A tingle means a lost earth: stop and call an electrician. Never lift the safety earth, never fit a larger fuse. Local codes come first.';
const SOLDER = 'Solder in an aired room with eye protection, never on anything plugged in.';
const STRINGS =
	'Changing strings: slacken before cutting, point the ends away, wear eye protection.';
const HEARING = 'Hearing: wear protection on stage and at line check.';
const LIFTING = 'Lifting: two people for racks, amps and heavy cases.';

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
	const isElectric =
		/\b(amps?|amplifiers?|tubes?|valves?|fuses?|mains|power|hum|earth|ground|shock|tingle|head|outlet|plug)\b/i;
	const isWired = /\b(jack|pickup|pot|wire|wiring|switch|solder|lead|cable|crackle|socket)\b/i;
	return [
		...(isElectric.test(text) ? [MAINS] : []),
		...(isWired.test(text) ? [SOLDER] : []),
		...(work.hasRestring ? [STRINGS] : []),
		...(work.isOnStage ? [HEARING, LIFTING] : []),
	];
}
