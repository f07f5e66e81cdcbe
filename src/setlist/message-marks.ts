// What a mail or a chat writes around the lines of a message, and the hours before them.

import { EVENING_SECONDS, goUpAsHours } from './hours-of-day.ts';

export type MarkedLine = {
	readonly text: string;
	/** A new message of a chat begins. */
	readonly isOpening: boolean;
};

/** `[09/10/2026, 14:03:22] Ivo: `, `9.10.26, 14:03 - Ivo: `. */
const CHAT =
	/^\s*\[?\d{1,4}[./-]\d{1,2}[./-]\d{1,4},?\s+\d{1,2}[:.]\d\d(?:[:.]\d\d)?(?:\s*[ap]\.?m\.?)?\]?\s*(?:[-–]\s*)?[^:\n]{1,40}:\s?/iu;
const MAIL_HEAD =
	/^(?:from|to|cc|bcc|subject|date|sent|reply-to|von|an|betreff|datum|de|à|objet|para|asunto|fecha)\s*:\s*(.*)$/iu;
const SUBJECT = /^(?:subject|betreff|objet|asunto)\s*:\s*(?:(?:re|fwd?|aw|wg)\s*:\s*)*/iu;
const QUOTE = /^(?:>(?!>)\s?)+/;
const HOUR =
	/^(\s*(?:[-–—*•·▪]\s+|\d{1,3}[.)]\s+)?)\(?(\d{1,2})[:.h](\d\d)\)?\s*(?:(?:(am|pm)|uhr)\b)?\s*[-–—:]?\s+(?=[^\s|])/iu;
/** Not in brackets, where lengths stand. */
const HOUR_BEHIND = /^(.*\S)[\s,–—-]+(\d{1,2})[:.h](\d\d)\s*(?:(am|pm)|uhr)?\s*$/iu;
/** Dots that lead to a length. */
const LEADER = /\s*[.…_·]{3,}\s*(?=\d{1,2}[:'’′]\d\d\s*$)/u;

export function withoutMarks(raw: readonly string[]): {
	readonly lines: readonly MarkedLine[];
	readonly firstHour: string | null;
} {
	const said = raw.filter((line) => line.trim() !== '');
	const isQuoted =
		said.length > 0 && said.filter((line) => QUOTE.test(line)).length * 2 > said.length;
	const unquoted = isQuoted ? raw.map((line) => line.replace(QUOTE, '')) : raw;
	const chatted = unquoted.map((line) => ({
		text: line.replace(CHAT, ''),
		isOpening: CHAT.test(line),
	}));
	const mailed = withoutMailHead(chatted).map((line) => ({ ...line, text: plain(line.text) }));
	const before = mailed.map(({ text }) => hourOf(HOUR.exec(text)));
	if (areHours(before, 0)) {
		const first = mailed[before.findIndex((hour) => hour !== null)]?.text ?? '';
		return {
			lines: mailed.map((line) => ({ ...line, text: line.text.replace(HOUR, '$1') })),
			firstHour: hourText(HOUR.exec(first)),
		};
	}
	const behind = mailed.map(({ text }) => hourOf(HOUR_BEHIND.exec(text)));
	if (!areHours(behind, EVENING_SECONDS)) return { lines: mailed, firstHour: null };
	const first = mailed[behind.findIndex((hour) => hour !== null)]?.text ?? '';
	return {
		lines: mailed.map((line) => ({ ...line, text: HOUR_BEHIND.exec(line.text)?.[1] ?? line.text })),
		firstHour: hourText(HOUR_BEHIND.exec(first)),
	};
}

/** The lines below a mail's head; its subject stays, alone on its line. */
function withoutMailHead(lines: readonly MarkedLine[]): readonly MarkedLine[] {
	const first = lines.findIndex(({ text }) => text.trim() !== '');
	const isHead = (index: number) => MAIL_HEAD.test(lines[index]?.text.trim() ?? '');
	if (first === -1 || !isHead(first) || !isHead(first + 1)) return lines;
	let end = first;
	while (isHead(end)) end += 1;
	return lines.map((line, index) => {
		if (index < first || index >= end) return line;
		const text = line.text.trim();
		return { ...line, text: SUBJECT.test(text) ? text.replace(SUBJECT, '') : '' };
	});
}

/** Without the signs that make type bold or a line a heading, with numbers for pictures of them and no dots before a length. */
function plain(text: string): string {
	return text
		.replace(/^\s*(\d)\uFE0F?\u20E3\s*/u, '$1. ')
		.replace(/^\s*🔟\s*/u, '10. ')
		.replace(LEADER, ' ')
		.replace(/^\s*#{1,6}\s+(?=\S)/, '')
		.replace(/(\*\*|__)(?=\S)(.+?)(?<=\S)\1/g, '$2');
}

function hourText(found: RegExpExecArray | null): string | null {
	return found && `${found[2]}:${found[3]}${found[4] ? ` ${found[4]}` : ''}`;
}

function hourOf(found: RegExpExecArray | null): number | null {
	const [, , hours, minutes, half] = found ?? [];
	if (hours === undefined || Number(hours) > 24 || Number(minutes) > 59) return null;
	const isLater = half?.toLowerCase() === 'pm' && Number(hours) < 12;
	return (Number(hours) + (isLater ? 12 : 0)) * 3600 + Number(minutes) * 60;
}

/** Whether enough lines have hours of the day, or of the show. `least`: none is before it. */
function areHours(all: readonly (number | null)[], least: number): boolean {
	const hours = all.filter((hour) => hour !== null);
	return hours.length >= 3 && (hours[0] ?? 0) >= least && goUpAsHours(hours);
}
