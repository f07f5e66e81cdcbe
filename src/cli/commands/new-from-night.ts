// `rackside new --from NIGHT`: the next night from an earlier one. On a terminal its title, day and times are asked,
// each with what is likely; elsewhere they are taken as they are.

import { cleanText } from '../../base/clean-text.ts';
import { nextNight } from '../../report/next-night.ts';
import { nightSteps } from '../../report/night-steps.ts';
import { writeShowFile } from '../../setlist/write-show-file.ts';
import { nightFindingWords } from '../../words/night-file.ts';
import { NIGHTS_LISTS, NO_SHOW_IN_NIGHT } from '../../words/requests.ts';
import { chosenNight } from '../chosen-night.ts';
import type { Request } from '../command.ts';
import { EXIT } from '../exit-code.ts';
import type { Io } from '../io.ts';
import { localDay, localOffsetMinutes } from '../local-offset.ts';
import { nextDay } from '../next-day.ts';
import { tellProblems } from '../tell-problems.ts';
import { checked, newByQuestions, writeNew } from './new-by-questions.ts';

/** What `--from` takes for the newest night in which anything was played, rehearsals only for want of one. */
const LAST = 'last';

/** Makes the next night of the one named; gives back the exit code. */
export async function newFromNight(
	{ file, from }: { readonly file: string | null; readonly from: string },
	request: Request,
	io: Io,
): Promise<number> {
	const night = chosenNight(from === LAST ? 'last-show' : { id: from }, request, io);
	if (typeof night === 'number') return night;
	const findings = night.findings.map(nightFindingWords);
	if (!night.show) {
		const hint = findings.join(' ') || NIGHTS_LISTS;
		const found = cleanText(night.id);
		return tellProblems([{ code: 'no-show-in-night', what: NO_SHOW_IN_NIGHT, found, hint }], io);
	}
	for (const finding of findings) io.complain(`${cleanText(finding)}\n`);
	const { draft, carried } = nextNight({
		...{ night: night.id, ...nightSteps(night.show, night.records) },
		dayOffsetMinutes: localOffsetMinutes(night.startedAtMs ?? 0),
		dayOf: localDay,
	});
	const wanted = { file, earlier: { draft, carried } };
	const isJson = request.options.json === true;
	if (!isJson && io.isInputTerminal && io.isOutputTerminal) {
		return newByQuestions(wanted, request, io);
	}
	const tonight = { ...draft, date: nextDay(draft.date, localDay(io.wallMs())) };
	const done = writeNew({ draft: tonight, text: writeShowFile(tonight) }, wanted, io);
	if ('why' in done) {
		io.complain(`${done.why}\n`);
		return EXIT.unusable;
	}
	const { text, code } = checked(done.name, wanted, { request, io });
	const said = await text;
	io.write(isJson ? `${JSON.stringify({ file: done.name, from: night.id, carried })}\n` : said);
	return code();
}
