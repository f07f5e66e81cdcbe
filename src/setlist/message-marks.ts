// What a mail or a chat writes around the lines of a message, and the hours before them.

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
const HOUR = /^\s*\(?(\d{1,2})[:.h](\d\d)\)?\s*(?:(am|pm|uhr)\b)?\s*[-–—:]?\s+(?=\S)/iu;
const DAY_SECONDS = 86_400;

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
	const hours = mailed.map(({ text }) => hourOf(text));
	const isHourly = areHours(hours.filter((hour) => hour !== null));
	if (!isHourly) return { lines: mailed, firstHour: null };
	return {
		lines: mailed.map((line, i) =>
			hours[i] === null ? line : { ...line, text: line.text.replace(HOUR, '') },
		),
		firstHour:
			HOUR.exec(mailed[hours.findIndex((hour) => hour !== null)]?.text ?? '')?.[0].trim() ?? null,
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

/** Without the signs that make type bold or a line a heading, and with numbers for pictures of them. */
function plain(text: string): string {
	return text
		.replace(/^\s*(\d)\uFE0F?\u20E3\s*/u, '$1. ')
		.replace(/^\s*🔟\s*/u, '10. ')
		.replace(/^\s*#{1,6}\s+(?=\S)/, '')
		.replace(/(\*\*|__)(?=\S)(.+?)(?<=\S)\1/g, '$2');
}

function hourOf(text: string): number | null {
	const [, hours, minutes, half] = HOUR.exec(text) ?? [];
	if (hours === undefined || Number(hours) > 24 || Number(minutes) > 59) return null;
	const isLater = half?.toLowerCase() === 'pm' && Number(hours) < 12;
	return (Number(hours) + (isLater ? 12 : 0)) * 3600 + Number(minutes) * 60;
}

/** Hours of the day, or of the show, go up from line to line; lengths do not. Over midnight they begin anew, once. */
function areHours(hours: readonly number[]): boolean {
	const steps = hours.slice(1).map((hour, i) => hour - (hours[i] ?? 0));
	const falls = steps.filter((step) => step < 0);
	return hours.length >= 3 && falls.every((step) => step < -DAY_SECONDS / 2) && falls.length <= 1;
}
