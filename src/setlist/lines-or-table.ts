// Whether a text is lines or a table, whatever it was given as: cells pasted into a message, a message saved as a sheet.

import { columnUse } from './columns.ts';

const BARRED = /^\s*\|.*\|\s*$/;
/** The line below the headings of a table drawn with bars. */
const RULE = /^\s*\|?\s*:?-{2,}:?\s*(?:\|\s*:?-{2,}:?\s*)+\|?\s*$/;

/** The table with tabs that these lines draw, a row a line; null where they are lines. */
export function tableInLines(text: string): string | null {
	const lines = text.split('\n');
	const said = lines.filter((line) => line.trim() !== '');
	const isMost = (test: (line: string) => boolean) => {
		const count = said.filter(test).length;
		return count >= 3 && count * 2 > said.length;
	};
	if (isMost((line) => /\S.*\t.*\S/.test(line))) return text;
	if (!isMost((line) => BARRED.test(line)) && !said.some((line) => RULE.test(line)))
		return divided(lines);
	return lines.map((line) => (RULE.test(line) ? '' : barred(line))).join('\n');
}

const SIGNS = [' / ', ' | ', '; '] as const;
const COUNTED = /^\s*(\d{1,3})[.)]?\s+/;
/** Pieces of a line that is a row, its title among them. */
const LEAST_PIECES = 3;

/** Lines that one sign divides into as many pieces each, a length among them: a table without headings. */
function divided(lines: readonly string[]): string | null {
	const said = lines.filter((line) => line.trim() !== '');
	if (said.some((line) => /[|/;]\s+[^|/;]*:\s/.test(line))) return null;
	for (const sign of SIGNS) {
		const rows = said.map((line) => line.split(sign)).filter((row) => row.length >= LEAST_PIECES);
		const [first] = rows;
		const isEven = rows.every((row) => row.length === first?.length);
		const isTimed = rows.every((row) =>
			row.slice(1).some((one) => /^\d{1,2}[:'’′]\d\d$/.test(one.trim())),
		);
		if (rows.length < 3 || rows.length * 10 < said.length * 7 || !isEven || !isTimed) continue;
		return lines
			.map((line) => {
				const number = COUNTED.exec(line)?.[1] ?? '';
				return [number, ...line.replace(COUNTED, '').split(sign)]
					.map((one) => one.trim())
					.join('\t');
			})
			.join('\n');
	}
	return null;
}

function barred(line: string): string {
	if (!line.includes('|')) return line.trim().replace(/^#{1,6}\s+/, '');
	const inner = line.trim().replace(/^\|/, '').replace(/\|$/, '');
	return inner
		.split('|')
		.map((cell) => cell.trim().replace(/^(\*\*|__|\*|_)(.+)\1$/, '$2'))
		.join('\t');
}

/** Whether no sign divides the text into cells, and no line of it is a heading of a table. */
export function isLines(text: string): boolean {
	const said = text.split('\n').filter((line) => line.trim() !== '');
	return (
		said.length > 2 && said.every((line) => !/[\t;,"]/.test(line) && columnUse(line) === 'other')
	);
}
