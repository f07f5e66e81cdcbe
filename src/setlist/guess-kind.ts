// What kind of instrument a name or a heading speaks of.

import type { InstrumentKind } from '../tuning/kind.ts';

// Words as sheets have them, of other languages too; common practice, no source.
const BASS = 'bass|basses|bss|bs|basse|bajo|basso|baixo|bas|e-bass|bassgitarre|basgitaar';
const UPRIGHT = 'upright|double[ ]bass|contrabass|kontrabass|contrebasse|contrabajo|contrabbasso';
const ACOUSTIC =
	'acoustic|acoustics|ac|acou|aco|akustik|akustisch|acoustique|acústica|acustica|akoestisch|western';
const GUITAR =
	'electric|electrics|elec|gtr|gtrs|guitar|guitars|git|guit|gitarre|gitarren|e-gitarre|guitare|guitares|guitarra|guitarras|chitarra|chitarre|gitaar|gitaren|gitarr|gitarrer|kitara|gitara';
const TWELVE = '12|twelve|12[- ]?str(?:ings?)?|dozen';
const whole = (words: string) => `(?<![\\p{L}\\d])(?:${words})(?![\\p{L}\\d])`;
const word = (...words: readonly string[]) => new RegExp(words.map(whole).join('.*'), 'iu');

/** The first that fits. */
const WORDS: readonly (readonly [RegExp, InstrumentKind])[] = [
	[word(UPRIGHT), 'upright-4'],
	[/\b(?:5|five)[- ]?(?:string )?bass\b|\bbass (?:5|five)\b/i, 'bass-5'],
	[/\b(?:6|six)[- ](?:string )?bass\b/i, 'bass-6'],
	[word(BASS), 'bass-4'],
	[word('mando|mandos|mandolin|mandolins|mandoline|mandolina|mandolino'), 'mandolin-8'],
	[word('uke|ukes|ukulele|ukuleles'), 'ukulele-4'],
	[word('banjo|banjos'), 'banjo-5'],
	[word('reso|resos|resonator|resonators'), 'resonator-6'],
	[word('bari|baris|baritone|baritones|bariton|baryton|barítono'), 'baritone-6'],
	[word('nylon|nylons|classical|konzertgitarre|classique|clásica|classica'), 'nylon-6'],
	[word(ACOUSTIC, TWELVE), 'acoustic-12'],
	[word(TWELVE, ACOUSTIC), 'acoustic-12'],
	[word(TWELVE), 'electric-12'],
	[word(ACOUSTIC), 'acoustic-6'],
	[word(GUITAR), 'electric-6'],
];

/** Null where the words do not say. */
export function kindIn(text: string): InstrumentKind | null {
	return WORDS.find(([words]) => words.test(text))?.[1] ?? null;
}
