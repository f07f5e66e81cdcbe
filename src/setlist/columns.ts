// What the columns of a set list hold, by their headings; where a heading says nothing, by their cells.

export type Use =
	| 'title'
	| 'length'
	| 'tempo'
	| 'key'
	| 'starts'
	| 'ends'
	| 'notes'
	| 'gap'
	| 'section'
	| 'number'
	| 'id'
	| 'other';

/** What a column of one player holds where several share the player's heading. */
export type PlayerPart = 'whole' | 'tuning' | 'capo';

/** The usual headings, in lower case without dots; German and French ones where a borrowed sheet has them. Common practice, no source. */
const HEADINGS: Readonly<Record<Exclude<Use, 'other'>, readonly string[]>> = {
	title: [
		...['title', 'song', 'songs', 'name', 'song title', 'song name', 'tune', 'tunes', 'track'],
		...['piece', 'set list', 'setlist', 'titel', 'titre', 'lied', 'tracks', 'titles'],
	],
	length: [
		...[
			'length',
			'time',
			'duration',
			'dur',
			'len',
			'min',
			'mins',
			'minutes',
			'run time',
			'runtime',
		],
		...['running time', 'timing', 'times', 'dauer', 'durée', 'länge', 'song length'],
	],
	tempo: ['tempo', 'bpm', 'speed', 'click'],
	key: ['key', 'song key', 'tonart'],
	starts: ['starts', 'start', 'who starts', 'started by', 'begins', 'who begins', 'intro by'],
	ends: ['ends', 'end', 'ending', 'how it ends', 'outro'],
	notes: ['notes', 'note', 'comments', 'comment', 'remarks', 'remark', 'info', 'bemerkung'],
	gap: ['gap', 'gap before', 'wait'],
	section: ['section', 'part of show'],
	number: ['#', 'no', 'nr', 'num', 'number', 'pos', 'position', 'order', 'n°', 'nº', '№'],
	id: ['id', 'song id'],
};

/** Headings that are nobody with an instrument, whatever their cells look like. */
const NOBODY =
	/\b(?:lights?|lighting|lx|artist|composer|writer|written by|album|year|lyrics|vocals?|vox|singers?|sound|monitors?|video|fx|effects|patch|style|genre|mood|source|status|chords?|link|page|tags?|version|rating|pyro|wardrobe|costume|click track|keys patch|drums?)\b/i;

const TUNING_HEADING = /^(?:(.*?)[\s:–-]+)?(?:tuning|tun|tunings)$/i;
const CAPO_HEADING = /^(?:(.*?)[\s:–-]+)?capo$/i;
const INSTRUMENT_HEADING = /^(?:(.*?)[\s:–-]+)?(?:instrument|axe|gtr|guitar|bass)$/i;

/** The heading without what a typist varies. */
export function headingKey(text: string): string {
	return text
		.normalize('NFC')
		.toLowerCase()
		.replace(/\s+/g, ' ')
		.replace(/[.:]+(?=\s|$)/g, '')
		.replace(/\s*\((?:m:ss|mm:ss|min|sec|s|bpm|mins?)\)$/, '')
		.trim();
}

export function columnUse(heading: string): Use {
	const key = headingKey(heading);
	const found = Object.entries(HEADINGS).find(([, words]) => words.includes(key));
	return (found?.[0] as Use | undefined) ?? 'other';
}

export function isNobody(heading: string): boolean {
	return NOBODY.test(heading);
}

/** A heading of one of several columns of a player: which, and the player's own words in it. */
export function playerPartOf(
	heading: string,
): { readonly part: PlayerPart; readonly player: string } | null {
	const key = heading.trim();
	for (const [pattern, part] of [
		[TUNING_HEADING, 'tuning'],
		[CAPO_HEADING, 'capo'],
		[INSTRUMENT_HEADING, 'whole'],
	] as const) {
		const found = pattern.exec(key);
		if (found) return { part, player: (found[1] ?? '').trim() };
	}
	return null;
}
