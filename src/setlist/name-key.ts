// What names and titles are compared by.

/** Of an instrument's or a player's name. */
export function nameKey(text: string): string {
	return text
		.normalize('NFC')
		.toLowerCase()
		.replace(/[\s_.'’-]+/g, ' ')
		.trim();
}

/** Of a song's title. */
export function titleKey(title: string): string {
	return title.normalize('NFC').toLowerCase().replace(/\s+/g, ' ').trim();
}
