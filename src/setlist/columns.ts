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
	/** Hours of the day, or what has gone by: no lengths. */
	| 'clock'
	| 'other';

/** What a column of one player holds where several share the player's heading. */
export type PlayerPart = 'whole' | 'tuning' | 'capo';

/** The usual headings, in lower case without dots; of other languages where a borrowed sheet has them. Common practice, no source. */
const HEADINGS: Readonly<Record<Exclude<Use, 'other'>, readonly string[]>> = {
	title: words(
		'title, titles, song, songs, name, song title, song name, tune, tunes, track, tracks, piece, set list, setlist',
		'titel, lied, stück, songtitel, titre, chanson, morceau, título, titulo, canción, cancion, tema',
		'titolo, brano, canzone, låt, laulu, utwór, música, musica',
	),
	length: words(
		'length, time, duration, dur, len, min, mins, minutes, run time, runtime, running time, timing, times, song length',
		'dauer, länge, zeit, spielzeit, durée, duree, temps, duración, duracion, durata, duração, duur, lengte, tid, längd',
	),
	tempo: words('tempo, bpm, speed, click'),
	key: words(
		'key, song key, tonart, tonalité, tonalite, ton, tono, tonalidad, tonalità, tonalita, tom, toonsoort, tonaliteit',
	),
	starts: words(
		'starts, start, who starts, started by, begins, who begins, intro by, who counts, count in, counts in, counted by',
		'beginn, beginnt, anfang, einzähler, début, debut, empieza, inizia, comincia, börjar',
	),
	ends: words('ends, end, ending, how it ends, outro, ende, schluss, fin, final, finale, einde'),
	notes: words(
		'notes, note, comments, comment, remarks, remark, info, bemerkung, bemerkungen, anmerkung, anmerkungen, notiz',
		'notizen, hinweis, hinweise, remarque, remarques, notas, nota, observaciones, osservazioni, opmerking, opmerkingen, anteckningar, kommentar, kommentare',
	),
	gap: words('gap, gap before, wait'),
	section: words('section, part of show'),
	number: words(
		'#, no, nr, num, number, pos, position, order, n°, nº, №, nummer, numéro, numero, número, orden, ordre, rang, volgorde, reihenfolge',
	),
	id: words('id, song id'),
	clock: words(
		'cum, cumulative, cumul, running, running total, elapsed, total, clock, time of day, at, start time, on at, uhrzeit, heure, hora, ora, tijd',
	),
};

function words(...lists: readonly string[]): readonly string[] {
	return lists.flatMap((list) => list.split(', '));
}

/** Headings that are nobody with an instrument, whatever their cells look like. */
const NOBODY =
	/\b(?:lights?|lighting|lx|artist|composer|writer|written by|album|year|lyrics|vocals?|vox|singers?|sound|monitors?|video|fx|effects|patch|style|genre|mood|source|status|chords?|link|page|tags?|version|rating|pyro|wardrobe|costume|click track|keys patch|drums?|bands?|acts?|time sig(?:nature)?|met(?:er|re)|back-?ups?|spares?|reserve)\b/i;

const TUNING_HEADING = /^(?:(.*?)[\s:–-]+)?(?:tuning|tun|tunings)$/i;
const CAPO_HEADING = /^(?:(.*?)[\s:–-]+)?(?:capo|cpo|cp|cap|kapo|cejilla|capodastre|capotasto)$/i;
const INSTRUMENT_HEADING = /^(?:(.*?)[\s:–-]+)?(?:instrument|instr|inst|axe|gtr|guitar|bass)$/i;

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
	const key = heading.trim().replace(/[.:]+$/, '');
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
