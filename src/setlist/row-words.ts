// The words by which a row of a set list is no song: an interval, an encore, the heading of a part, a total, an hour
// of the day. Common practice, no source; in the languages in which sheets are lent out.

const INTERVAL =
	/^\W*(?:then\s+)?(?:a\s+)?(?:(?:short|quick|long)\s+)?(?:interval|intermission|half[- ]?time|set break|entracte|intervallo|intervalo|intermedio|descanso)(?!\p{L})(.*)$/iu;
/** A song may have these for a title too. */
const PERHAPS_INTERVAL =
	/^\W*(?:then\s+)?(?:a\s+)?(?:(?:short|quick|long|tuning)\s+)?(?:break|pause|pausa|paus|pauze)(?!\p{L})(.*)$/iu;
const ENCORE_WORDS = 'encores?|enc|zugaben?|rappels?|bis|toegift(?:en)?|extranummer|ekstranummer';
const ENCORE = new RegExp(
	`^\\W*(?:${ENCORE_WORDS})(?!\\p{L})\\W*\\d?\\W*(?:\\([^()]*\\))?\\W*$`,
	'iu',
);
const ENCORE_AND_SONG = new RegExp(`^\\W*(?:${ENCORE_WORDS})\\s*:\\s*(\\S.*)$`, 'iu');
const SUM_WORDS =
	'totals?|sum|running[ ]time|(?:show|set)[ ]length|gesamt|summe|totale|totaal|somme';
/** All of it has to be about a sum: `Total set one 12:43` is one, a song may begin with the word. */
const TOTAL = new RegExp(
	[
		'^\\W*(?:(?:grand|show|set|overall)\\s+)?',
		`(?:${SUM_WORDS})(?!\\p{L})`,
		'(?:[^\\p{L}]|(?<!\\p{L})(?:time|length|duration|running|playing|set|show|songs?|one|two|three|i{1,3}',
		'|h|hrs?|hours?|m|mins?|minutes?|s|secs?|approx|ca)(?!\\p{L}))*$',
	].join(''),
	'iu',
);
const PART = '(?:set|part|half|act|teil|partie|parte|deel)';
const COUNT = '(?:\\d|one|two|three|i{1,3}|[a-d])';
const SET_HEADING = new RegExp(
	`^\\W*(?:${PART}\\s*${COUNT}|(?:\\d|1st|2nd|3rd|first|second|third|[a-d])\\.?\\s*${PART}|${PART.replace('|part', '').replace('|act', '')})\\W*(?:\\([^()]*\\))?\\W*$`,
	'iu',
);

/** An hour of the day as a sheet has it: from 10:00 on, since no song lasts as long. */
const HOUR =
	/(?<!\d)(?:1\d|2[0-4])[:.h][0-5]\d(?!\d)|(?<!\d)\d{1,2}(?:[:.][0-5]\d)?\s*(?:am|pm|uhr|h)(?!\p{L})/iu;
const ANY_HOUR = /(?<!\d)(?:[01]?\d|2[0-4])[:.h][0-5]\d(?!\d)/iu;
const DAY_WORDS =
	/^\W*(?:doors?|curfew|support|stage|on stage|on(?=\s+(?:at\s+)?\d)|show|show ?time|off|off stage|house|dinner|catering|bus|lobby|crew|warm[- ]?up|start|end|finish|get[- ]?in|get[- ]?out)(?!\p{L})/iu;
const SURE_DAY_WORDS =
	/^\W*(?:load[- ]?(?:in|out)|sound ?check|line ?check|change ?over|umbau|changement de plateau|stage ?time|set ?time|hard (?:stop|curfew|out)|end of show)(?!\p{L})/iu;
const PAGE = /^\W*page \d+(?:\s*(?:of|\/)\s*\d+)?\W*$/i;
const LENGTH_LIKE =
	/^\W*(?:(\d+(?:\.\d+)?s|\d{1,4}(?:[:'′]\d\d)?)\s*(?:m|min|mins|minutes?|')?)?\W*$/iu;

/** What a title's words make of a row; null for a song. */
export type RowWord =
	| { readonly is: 'interval'; readonly length: string | null; readonly isSure: boolean }
	| { readonly is: 'encore'; readonly song: string | null }
	/** A part of the list begins; `isBare`: the set itself, with no number. */
	| { readonly is: 'set'; readonly isBare: boolean }
	| { readonly is: 'total' };

export function rowWord(title: string): RowWord | null {
	const song = ENCORE_AND_SONG.exec(title)?.[1];
	if (song !== undefined) return { is: 'encore', song };
	if (ENCORE.test(title)) return { is: 'encore', song: null };
	if (TOTAL.test(title)) return { is: 'total' };
	if (SET_HEADING.test(title)) return { is: 'set', isBare: /^\W*set\W*$/i.test(title) };
	for (const [pattern, isSure] of [
		[INTERVAL, true],
		[PERHAPS_INTERVAL, false],
	] as const) {
		const rest = pattern.exec(title)?.[1];
		const length = rest === undefined ? null : LENGTH_LIKE.exec(rest);
		if (!length) continue;
		const minutes = length[1];
		return {
			is: 'interval',
			length: minutes === undefined ? null : /\D/.test(minutes) ? minutes : `${minutes}m`,
			isSure,
		};
	}
	return null;
}

/** Whether the text speaks of an hour of the day or of a page, and of no song: `Curfew 23:00`, `Line check`. */
export function isOfTheDay(text: string): boolean {
	if (PAGE.test(text) || isEnd(text)) return true;
	if (SURE_DAY_WORDS.test(text)) {
		const rest = text.replace(SURE_DAY_WORDS, '');
		return HOUR.test(rest) || ANY_HOUR.test(rest) || LENGTH_LIKE.test(rest);
	}
	return DAY_WORDS.test(text) && HOUR.test(text);
}

/** `END` below the last song. */
export function isEnd(text: string): boolean {
	return /^\W*END\W*$/.test(text);
}
