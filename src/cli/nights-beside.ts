// `rackside report --nights N` and `--since DATE`: several nights beside one another.

import { cleanText } from '../base/clean-text.ts';
import type { Problem } from '../base/problem.ts';
import { nightsMarkdown } from '../report/nights-markdown.ts';
import { type NightsReport, nightsJson, nightsReport } from '../report/nights-report.ts';
import { parseDate } from '../showfile/calendar-date.ts';
import {
	BAD_NIGHTS,
	BAD_SINCE,
	LEAVE_ONE_OUT,
	NOT_WITH_ONE,
	notBoth,
	ONE_OR_MANY,
	range,
	SINCE_EXPECTED,
	UNKNOWN_FORM,
} from '../words/requests.ts';
import { optionText, type Request } from './command.ts';
import type { Io } from './io.ts';
import { manyNights } from './many-nights.ts';
import { tellProblems } from './tell-problems.ts';

/** More are no comparison. */
const MOST_NIGHTS = 100;

const FORMS: Readonly<Record<string, (report: NightsReport) => string>> = {
	markdown: nightsMarkdown,
	json: nightsJson,
};

/** Whether several nights are asked for. */
export function asksForNights({ options }: Request): boolean {
	return options.nights !== undefined || options.since !== undefined;
}

/** The nights in the form that is asked for, and a name for its file; the exit code where that cannot be, which is said. */
export function nightsBeside(
	request: Request,
	io: Io,
): { readonly text: string; readonly name: string } | number {
	const [named] = request.words;
	const form = request.options.json === true ? 'json' : (optionText(request, 'as') ?? 'markdown');
	const most = readCount(optionText(request, 'nights'));
	const since = optionText(request, 'since');
	const problem = problemOf({ named, form, most, since }, request);
	if (problem !== null) return tellProblems([problem], io);
	const nights = manyNights(
		{ named: [], most: most ?? MOST_NIGHTS, since: since === null ? null : parseDate(since) },
		request,
		io,
	);
	if (typeof nights === 'number') return nights;
	const text = FORMS[form]?.(nightsReport(nights.map(({ facts }) => facts))) ?? '';
	return { text, name: `nights-report${form === 'json' ? '.json' : '.md'}` };
}

type Asked = {
	readonly named: string | undefined;
	readonly form: string;
	/** Null where no number was typed. */
	readonly most: number | null;
	readonly since: string | null;
};

function problemOf({ named, form, most, since }: Asked, request: Request): Problem | null {
	if (named !== undefined) {
		return {
			code: 'one-or-many',
			what: ONE_OR_MANY,
			found: cleanText(named),
			expected: NOT_WITH_ONE,
		};
	}
	const clash = ['for', 'all', 'edit', 'no-names', 'show'].find(
		(name) => request.options[name] !== undefined,
	);
	if (clash !== undefined) {
		const asked = request.options.nights === undefined ? 'since' : 'nights';
		return { code: 'two-options', what: notBoth(asked, clash), hint: LEAVE_ONE_OUT };
	}
	if (!Object.hasOwn(FORMS, form)) {
		const expected = Object.keys(FORMS).join(', ');
		return { code: 'unknown-form', what: UNKNOWN_FORM, found: cleanText(form), expected };
	}
	if (most === null) {
		const found = cleanText(optionText(request, 'nights') ?? '');
		return { code: 'nights', what: BAD_NIGHTS, found, expected: range(1, MOST_NIGHTS) };
	}
	if (since !== null && parseDate(since) === null) {
		return { code: 'since', what: BAD_SINCE, found: cleanText(since), expected: SINCE_EXPECTED };
	}
	return null;
}

function readCount(text: string | null): number | null {
	if (text === null) return MOST_NIGHTS;
	const count = /^\d{1,3}$/.test(text) ? Number(text) : 0;
	return count >= 1 && count <= MOST_NIGHTS ? count : null;
}
