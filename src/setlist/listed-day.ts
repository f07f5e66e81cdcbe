// The day, the start and the curfew of a show, as far as a list says them beside its songs.

import { parseDate, weekdayOf } from '../showfile/calendar-date.ts';
import { readTime } from './read-time.ts';
import { isOfTheDay } from './row-words.ts';

export type ListedDay = {
	readonly date: string | null;
	/** A day without its year, where no date is given whole. */
	readonly yearless?: Yearless;
	readonly start: string | null;
	readonly curfew: string | null;
	readonly venue: string | null;
};

/** `weekday`: 0 for Sunday; null where none is said. */
type Yearless = { readonly month: string; readonly day: string; readonly weekday: number | null };

const HOUR = '(\\d{1,2}[:.h][0-5]\\d(?!\\d)\\s*(?:[ap]m)?|\\d{1,2}\\s*[ap]m)';
/** Not when the stage or the show is left, nor behind it. */
const START = new RegExp(
	`(?<!\\p{L}|off[- ]?|end\\sof\\s)(?:stage|on ?stage|show|set|start|(?<=^\\W*|[,;/|]\\s*)on)(?: ?time)?(?:\\s*(?:is|at|from))?\\W{0,3}${HOUR}`,
	'gimu',
);
const CURFEW = new RegExp(
	`(?:curfew|hard (?:stop|curfew|out))(?:\\s*(?:is|at))?\\W{0,3}${HOUR}`,
	'giu',
);
const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];
const MONTH = `(${MONTHS.join('|')})[a-z]*\\.?`;
const DAY_FIRST = new RegExp(
	`(?<!\\d)(\\d{1,2})(?:st|nd|rd|th|\\.)?\\s+(?:of\\s+)?${MONTH},?\\s+(\\d{4})(?!\\d)`,
	'iu',
);
const MONTH_FIRST = new RegExp(
	`(?<!\\p{L})${MONTH}\\s+(\\d{1,2})(?:st|nd|rd|th)?,?\\s+(\\d{4})(?!\\d)`,
	'iu',
);
const WEEKDAYS = ['sun', 'mon', 'tue', 'wed', 'thu', 'fri', 'sat'];
const WEEKDAY = `(?:(${WEEKDAYS.join('|')})[a-z]*\\.?,?\\s+)?`;
const WHOLE_MONTH =
	'(jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?)(?![\\p{L}])\\.?';
const NO_YEAR_DAY_FIRST = new RegExp(
	`(?<![\\p{L}\\d])${WEEKDAY}(\\d{1,2})(?:st|nd|rd|th|\\.)?\\s+(?:of\\s+)?${WHOLE_MONTH}(?!,?\\s+\\d{4})`,
	'iu',
);
const NO_YEAR_MONTH_FIRST = new RegExp(
	`(?<![\\p{L}\\d])${WEEKDAY}${WHOLE_MONTH}\\s+(\\d{1,2})(?:st|nd|rd|th)?(?![:.\\d])(?!,?\\s+\\d{4})`,
	'iu',
);
const ISO = /(?<!\d)(\d{4})-(\d\d)-(\d\d)(?!\d)/;
/** With dots the day stands first; with strokes only where the other can be no month. */
const DOTTED = /(?<!\d)(\d{1,2})\.\s?(\d{1,2})\.\s?(\d{4})(?!\d)/;
const STROKED = /(?<!\d)(\d{1,2})\/(\d{1,2})\/(\d{4})(?!\d)/;

/** What these lines say of the day; null where they say nothing, or two things. */
export function listedDay(texts: readonly string[]): ListedDay {
	const text = texts.join('\n');
	const dates = new Set(texts.flatMap((one) => dateIn(one) ?? []));
	const days = texts.flatMap((one) => yearlessIn(one) ?? []);
	const [yearless] = days;
	const isOne =
		dates.size === 0 && new Set(days.map((one) => `${one.month}-${one.day}`)).size === 1;
	return {
		date: dates.size === 1 ? ([...dates][0] ?? null) : null,
		...(isOne && yearless ? { yearless } : {}),
		start: hourIn(text, START),
		curfew: hourIn(text, CURFEW),
		venue: /^\W*(?:venue|location|ort|lieu|lugar)\b:?\s+(\S.*)$/im.exec(text)?.[1] ?? null,
	};
}

function yearlessIn(text: string): Yearless | null {
	const first = NO_YEAR_DAY_FIRST.exec(text);
	const [, weekday, day, month] = first ?? [];
	const [, otherWeekday, otherMonth, otherDay] = (!first && NO_YEAR_MONTH_FIRST.exec(text)) || [];
	const named = (weekday ?? otherWeekday)?.toLowerCase();
	const number = day ?? otherDay;
	if (number === undefined) return null;
	return {
		month: monthOf((month ?? otherMonth)?.slice(0, 3)).padStart(2, '0'),
		day: number.padStart(2, '0'),
		weekday: named === undefined ? null : WEEKDAYS.indexOf(named.slice(0, 3)),
	};
}

/** The date that a list says, a day without a year being the next one from today on; null where its weekday is another then, or nothing is said. */
export function dateFrom(day: ListedDay | undefined, today: string): string | null {
	if (!day?.yearless) return day?.date ?? null;
	const { month, day: number, weekday } = day.yearless;
	const year = Number(today.slice(0, 4));
	const next = [year, year + 1]
		.flatMap((one) => dated(String(one), month, number) ?? [])
		.find((date) => date >= today);
	if (next === undefined) return null;
	const isThen = weekday === null || weekdayOf(next) === weekday;
	return isThen ? next : null;
}

/** What is left of these lines without the start and the curfew that were taken from them. */
export function withoutHours(texts: readonly string[], { start, curfew }: ListedDay): string[] {
	return texts.flatMap((text) => {
		const cut = [...(start === null ? [] : [START]), ...(curfew === null ? [] : [CURFEW])];
		const left = cut.reduce((said, pattern) => said.replace(pattern, '\n'), text);
		if (left === text) return [text];
		const pieces = left
			.split('\n')
			.map((piece) => piece.replace(/^[\s,;|/–—-]+|[\s,;|/–—-]+$/g, ''));
		const said = pieces.filter((piece) => /[\p{L}\d]/u.test(piece)).join(', ');
		return said === '' ? [] : [said];
	});
}

/** Whether a line above a list says something of the day, and so is no title. */
export function isOfDay(text: string): boolean {
	const isLabelled = DAY_LABEL.test(text) || LABEL_OR_NAME.test(text);
	return isLabelled || isOfTheDay(text) || (dateIn(text) !== null && text.length <= 16);
}

const DAY_LABEL =
	/^\W*(?:date|datum|fecha|venue|location|ort|lieu|lugar|promoter|tour manager|capacity|get[- ]?(?:in|out)|curfew|set (?:time|length))(?:\s*:|\s+(?=\S))/iu;
/** Names begin with these too: `City Hall`, `Stage Two`. */
const LABEL_OR_NAME =
	/^\W*(?:(?:day|city|town|contact|tm)\s*:|(?:doors?|on ?stage|stage)(?:\s*:|\s+(?:at\s+)?(?=\d)))/iu;

/** The one hour that the pattern finds. */
function hourIn(text: string, pattern: RegExp): string | null {
	const hours = new Set([...text.matchAll(pattern)].map(([, hour = '']) => sureHour(hour.trim())));
	return hours.size === 1 ? ([...hours][0] ?? null) : null;
}

/** The hour of the day; null for one before ten without am or pm, which could be either. */
export function sureHour(hour: string): string | null {
	return /[ap]m$/i.test(hour) || /^(?:1\d|2\d|0\d)/.test(hour) ? readTime(hour) : null;
}

function dateIn(text: string): string | null {
	const iso = ISO.exec(text);
	if (iso) return dated(iso[1], iso[2], iso[3]);
	const named = DAY_FIRST.exec(text);
	if (named) return dated(named[3], monthOf(named[2]), named[1]);
	const american = MONTH_FIRST.exec(text);
	if (american) return dated(american[3], monthOf(american[1]), american[2]);
	const dotted = DOTTED.exec(text);
	if (dotted) return dated(dotted[3], dotted[2], dotted[1]);
	const [, first, second, year] = STROKED.exec(text) ?? [];
	if (Number(first) > 12) return dated(year, second, first);
	return Number(second) > 12 ? dated(year, first, second) : null;
}

function monthOf(name: string | undefined): string {
	return String(MONTHS.indexOf(name?.toLowerCase() ?? '') + 1);
}

/** `2026-06-12`; null for a day that the calendar does not have. */
function dated(
	year: string | undefined,
	month: string | undefined,
	day: string | undefined,
): string | null {
	const date = `${year}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;
	return parseDate(date);
}
