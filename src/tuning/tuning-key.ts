// What a tuning's name is compared by, so that `Drop-D`, `drop d` and `DROP D` are one name, and so
// are `½↓`, `1/2 step down` and `half-step down`.

/**
 * The name without what a typist varies: case, spaces, dashes, the signs for flat and sharp.
 *
 * @example
 * plainKey('Drop C♯') // => 'dropc#'
 */
export function plainKey(name: string): string {
	return name
		.normalize('NFC')
		.toLowerCase()
		.replaceAll('♭', 'b')
		.replaceAll('♯', '#')
		.replace(/[\s\-‐‑–_.']/g, '');
}

/**
 * The plain key with the trade's ways to say flats, standards and steps down made one.
 *
 * @example
 * tuningKey('½↓') // => tuningKey('half-step down')
 * tuningKey('E STD') // => tuningKey('e standard')
 */
export function tuningKey(name: string): string {
	return plainKey(name)
		.replaceAll('↓', 'down')
		.replace(/½|1\/2/g, 'half')
		.replace(/tuning$/, '')
		.replace(/^dropped/, 'drop')
		.replace(/std$/, 'standard')
		.replace(/^(?:tuned)?(half|whole|full|1)(?:step|tone)?down$/, '$1down')
		.replace(/^(?:tuned)?down(?:a)?(half|whole|full|1)(?:step|tone)?$/, '$1down')
		.replace(/^(?:full|1)down$/, 'wholedown');
}
