// `rackside report --nights N` and `--since DATE`: several nights beside one another.

import { cleanText } from '../../base/clean-text.ts';
import type { Problem } from '../../base/problem.ts';
import { nightsHtml } from '../../report/nights-html.ts';
import { nightsPage } from '../../report/nights-page.ts';
import { type NightsReport, nightsJson, nightsReport } from '../../report/nights-report.ts';
import { readerMarkdown } from '../../report/reader-markdown.ts';
import { nightsTableCsv, TABLE_NAMES, type TableName } from '../../report/report-csv.ts';
import { parseDate } from '../../showfile/calendar-date.ts';
import {
	BAD_SINCE,
	LEAVE_ONE_OUT,
	NOT_WITH_ONE,
	notBoth,
	ONE_OR_MANY,
	SINCE_EXPECTED,
	UNKNOWN_FORM,
} from '../../words/requests.ts';
import { askedNumber } from '../asked-number.ts';
import { optionText, type Request } from '../command.ts';
import type { Io } from '../io.ts';
import { notAmong } from '../not-among.ts';
import { tellProblems } from '../tell-problems.ts';
import { type KnownNight, manyNights } from './many-nights.ts';

/** More are no comparison. */
const MOST_NIGHTS = 100;

type NightsForm = {
	/** Of the file's name. */
	readonly ending: string;
	readonly text: (nights: readonly KnownNight[]) => string;
};

const beside =
	(text: (report: NightsReport) => string): NightsForm['text'] =>
	(nights) =>
		text(nightsReport(nights.map(({ facts }) => facts)));

const table = (name: TableName): NightsForm => ({
	ending: `-${name}.csv`,
	text: (nights) =>
		nightsTableCsv(
			name,
			nights.map(({ night, day, report }) => ({ night: night.id, day, report })),
		),
});

/** By the name that is typed: the same as of one night. */
const FORMS: Readonly<Record<string, NightsForm>> = {
	markdown: { ending: '.md', text: beside((report) => readerMarkdown(nightsPage(report))) },
	html: { ending: '.html', text: beside(nightsHtml) },
	json: { ending: '.json', text: beside(nightsJson) },
	...Object.fromEntries(TABLE_NAMES.map((name) => [name, table(name)])),
};

/** The nights in the form that is asked for, and a name for its file; the exit code where that cannot be, which is said. */
export function nightsBeside(
	request: Request,
	io: Io,
): { readonly text: string; readonly name: string } | number {
	const [named] = request.words;
	const form = request.options.json === true ? 'json' : (optionText(request, 'as') ?? 'markdown');
	const most = askedNumber(request, 'nights', {
		...{ from: 1, to: MOST_NIGHTS },
		isWhole: true,
		otherwise: MOST_NIGHTS,
	});
	const since = optionText(request, 'since');
	const problem = problemOf({ named, since }, request);
	if (problem !== null) return tellProblems([problem], io);
	const chosen = Object.hasOwn(FORMS, form) ? FORMS[form] : undefined;
	if (!chosen) {
		const unknown = { code: 'unknown-form', what: UNKNOWN_FORM, found: form };
		return tellProblems([notAmong(unknown, Object.keys(FORMS))], io);
	}
	if (!most.ok) return tellProblems(most.problems, io);
	const nights = manyNights(
		{ named: [], most: most.value, since: since === null ? null : parseDate(since) },
		request,
		io,
	);
	if (typeof nights === 'number') return nights;
	return { text: chosen.text(nights), name: `nights-report${chosen.ending}` };
}

type Wanted = {
	readonly named: string | undefined;
	readonly since: string | null;
};

function problemOf({ named, since }: Wanted, request: Request): Problem | null {
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
	if (since !== null && parseDate(since) === null) {
		return { code: 'since', what: BAD_SINCE, found: cleanText(since), expected: SINCE_EXPECTED };
	}
	return null;
}
