// A phrase that stands in lists, where it has to stand alone.

/** With a capital and a full stop: `The set ends 7:00 after the curfew.` */
export function asSentence(phrase: string): string {
	return `${capital(phrase)}.`;
}

/** Its first letter as at the start of a sentence. */
export function capital(phrase: string): string {
	return `${phrase.charAt(0).toUpperCase()}${phrase.slice(1)}`;
}
