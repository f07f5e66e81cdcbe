// The editable parts of a report as a plain text: a heading in square brackets for each, what is written under it, and
// lines with # that only tell what it is about.

import { cleanText } from '../base/clean-text.ts';
import { type Remarks, remarkOrNull } from '../journal/remarks.ts';
import { REMARKS } from '../words/report-remarks.ts';
import type { NightReport } from './night-report.ts';

/** A part that can be edited. */
export type RemarkField = {
	/** `night`, `signed`, or `incident 1`. */
	readonly heading: string;
	/** What it is about. */
	readonly about: string;
	readonly text: string;
};

/** More is not a remark. */
const LONGEST = 2000;
const HEADING = /^\[([^\]]*)\]\s*$/;

/** The fields in their order, with what stands in them now. */
export function remarkFields(
	report: NightReport,
	{ night, incidents, signed }: Remarks,
): readonly RemarkField[] {
	return [
		{ heading: 'night', about: REMARKS.night, text: night ?? '' },
		...report.incidents.map((one) => ({
			heading: `incident ${one.id}`,
			about: REMARKS.incident(one),
			text: incidents[one.record] ?? '',
		})),
		{ heading: 'signed', about: REMARKS.signed, text: signed ?? '' },
	];
}

/** The text to be edited. */
export function remarksText(fields: readonly RemarkField[]): string {
	const head = REMARKS.head.map((line) => `# ${line}`);
	const parts = fields.flatMap(({ heading, about, text }) => [
		'',
		`[${heading}]`,
		`# ${cleanText(about)}`,
		...(text === '' ? [] : [text]),
	]);
	return `${[...head, ...parts].join('\n')}\n`;
}

/** What is wrong with an edited text, with its line, from 1. */
export type RemarksFault = {
	readonly line: number;
	readonly what: 'heading' | 'outside' | 'twice' | 'long';
	readonly found: string;
};

/** The fields' texts by heading, or the first thing that is wrong. Several lines under a heading become one. */
export function readRemarksText(
	text: string,
	headings: readonly string[],
): { readonly texts: ReadonlyMap<string, string> } | { readonly fault: RemarksFault } {
	const lines = new Map<string, string[]>();
	let under: string[] | null = null;
	for (const [at, written] of text.split(/\r\n|[\r\n]/).entries()) {
		const line = written.trim();
		const fault = (what: RemarksFault['what'], found: string) => ({
			fault: { line: at + 1, what, found: cleanText(found) },
		});
		if (line === '' || line.startsWith('#')) continue;
		const heading = HEADING.exec(line)?.[1]?.trim().toLowerCase();
		if (heading === undefined) {
			if (under === null) return fault('outside', line);
			under.push(line);
			if (under.join(' ').length > LONGEST) return fault('long', String(LONGEST));
			continue;
		}
		if (!headings.includes(heading)) return fault('heading', heading);
		if (lines.has(heading)) return fault('twice', heading);
		under = [];
		lines.set(heading, under);
	}
	return { texts: new Map([...lines].map(([heading, all]) => [heading, all.join(' ')])) };
}

/** The remarks with these texts; a field that has none, or is not there any more, is empty. Remarks on what was taken back since stay. */
export function remarksWith(
	report: NightReport,
	before: Remarks,
	texts: ReadonlyMap<string, string>,
): Remarks {
	const textOf = (heading: string): string | null => remarkOrNull(texts.get(heading));
	const shown = new Set(report.incidents.map(({ record }) => record));
	return {
		night: textOf('night'),
		signed: textOf('signed'),
		incidents: Object.fromEntries([
			...Object.entries(before.incidents).filter(([record]) => !shown.has(record)),
			...report.incidents.flatMap(({ id, record }) => {
				const text = textOf(`incident ${id}`);
				return text === null ? [] : [[record, text] as const];
			}),
		]),
	};
}
