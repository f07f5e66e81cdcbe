// What kinds of instrument are called in a sentence.

import { type InstrumentKind, KINDS, type KindFamily } from '../tuning/kind.ts';

const NAMES: Readonly<Record<InstrumentKind, string>> = {
	'electric-6': 'six-string electric guitar',
	'electric-12': 'twelve-string electric guitar',
	'acoustic-6': 'six-string acoustic guitar',
	'acoustic-12': 'twelve-string acoustic guitar',
	'nylon-6': 'nylon-string guitar',
	'baritone-6': 'baritone guitar',
	'bass-4': 'four-string bass',
	'bass-5': 'five-string bass',
	'bass-6': 'six-string bass',
	'upright-4': 'upright bass',
	'mandolin-8': 'mandolin',
	'resonator-6': 'resonator guitar',
	'ukulele-4': 'ukulele',
	'banjo-5': 'five-string banjo',
	other: 'instrument',
};

/** With its article: `a six-string electric guitar`, `an upright bass`. */
export function oneOfKind(kind: InstrumentKind): string {
	return withArticle(kindWords(kind));
}

/** `a banjo`, `an upright bass`, and `a ukulele` as it is spoken. */
export function withArticle(words: string): string {
	return `${/^(?!uku)[aeiou]/i.test(words) ? 'an' : 'a'} ${words}`;
}

/** After an article or a number: `six-string electric guitar`. */
export function kindWords(kind: InstrumentKind): string {
	return NAMES[kind];
}

/** Where it is seen that all are instruments: `six-string electric`. */
export function shortKindWords(kind: InstrumentKind): string {
	return NAMES[kind].replace(/ guitar$/, '');
}

const FAMILIES: Readonly<Record<KindFamily, string>> = {
	guitar: 'guitar',
	twelve: '12-string',
	baritone: 'baritone',
	bass: 'bass',
	mandolin: 'mandolin',
	ukulele: 'ukulele',
	banjo: 'banjo',
	other: 'instrument',
};

/** Its family, as the trade calls it in short: `bass`. */
export function familyWords(kind: InstrumentKind): string {
	return FAMILIES[KINDS[kind].family];
}
