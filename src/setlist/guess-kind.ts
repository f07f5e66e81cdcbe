// What kind of instrument a name or a heading speaks of.

import type { InstrumentKind } from '../tuning/kind.ts';

/** The first that fits; common practice, no source. */
const WORDS: readonly (readonly [RegExp, InstrumentKind])[] = [
	[/\b(?:upright|double bass|contrabass)\b/i, 'upright-4'],
	[/\b(?:5|five)[- ]?(?:string )?bass\b|\bbass (?:5|five)\b/i, 'bass-5'],
	[/\b(?:6|six)[- ](?:string )?bass\b/i, 'bass-6'],
	[/\b(?:bass|bss)\b/i, 'bass-4'],
	[/\b(?:mando|mandolin)\b/i, 'mandolin-8'],
	[/\b(?:uke|ukulele)\b/i, 'ukulele-4'],
	[/\bbanjo\b/i, 'banjo-5'],
	[/\b(?:reso|resonator)\b/i, 'resonator-6'],
	[/\bbari(?:tone)?\b/i, 'baritone-6'],
	[/\b(?:nylon|classical)\b/i, 'nylon-6'],
	[/\b(?:acoustic|ac)\b.*\b(?:12|twelve)\b|\b(?:12|twelve)\b.*\b(?:acoustic|ac)\b/i, 'acoustic-12'],
	[/\b(?:12|twelve|12-string|dozen)\b/i, 'electric-12'],
	[/\b(?:acoustic|ac|acou)\b/i, 'acoustic-6'],
	[/\b(?:electric|gtr|guitar|git)\b/i, 'electric-6'],
];

/** Null where the words do not say. */
export function kindIn(text: string): InstrumentKind | null {
	return WORDS.find(([words]) => words.test(text))?.[1] ?? null;
}
