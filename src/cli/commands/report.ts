// `rackside report`: the post-show report of a night, to read, to send, or for a spreadsheet.

import { basename, dirname, extname, resolve } from 'node:path';
import { cleanText } from '../../base/clean-text.ts';
import { nearestName } from '../../base/nearest-name.ts';
import { writeExport } from '../../disk/export-file.ts';
import { realDisk } from '../../disk/real-disk.ts';
import type { NightReport } from '../../report/night-report.ts';
import { handOversCsv, incidentsCsv } from '../../report/report-csv.ts';
import { reportJson } from '../../report/report-json.ts';
import { reportMarkdown } from '../../report/report-markdown.ts';
import { COMMAND_WORDS } from '../../words/commands.ts';
import { exportProblem } from '../../words/disk.ts';
import { nightFindingWords } from '../../words/night-file.ts';
import { written } from '../../words/program.ts';
import {
	didYouMean,
	NIGHTS_LISTS,
	NO_NIGHT_YET,
	NO_SHOW_IN_NIGHT,
	NO_SUCH_NIGHT,
	nameItsShow,
	OWN_COPY,
	RUN_RECORDS_ONE,
	UNKNOWN_FORM,
} from '../../words/requests.ts';
import type { CliCommand, Request } from '../command.ts';
import { JSON_OPTION, optionText } from '../command.ts';
import { EXIT } from '../exit-code.ts';
import type { Io } from '../io.ts';
import { lastPlayed, type NightOnDisk, nightOnDisk } from '../night-on-disk.ts';
import { searchedNights } from '../night-places.ts';
import { asksForNights, nightsBeside } from '../nights-beside.ts';
import type { ShowOpening } from '../open-show.ts';
import { placesOf } from '../places.ts';
import { reportOfNight } from '../report-of-night.ts';
import { tellProblems } from '../tell-problems.ts';

/** What a report can be written as: the file's ending, and the text. */
const FORMS: Readonly<
	Record<string, { readonly ending: string; readonly text: (report: NightReport) => string }>
> = {
	markdown: { ending: '.md', text: reportMarkdown },
	json: { ending: '.json', text: reportJson },
	incidents: { ending: '-incidents.csv', text: incidentsCsv },
	'hand-overs': { ending: '-hand-overs.csv', text: handOversCsv },
};

export const reportCommand: CliCommand = {
	usage: 'report [NIGHT]',
	about: [COMMAND_WORDS.report.about],
	example: 'rackside report --save',
	options: {
		...JSON_OPTION,
		show: { value: 'FILE', words: COMMAND_WORDS.report.options.show },
		as: { value: 'FORM', words: COMMAND_WORDS.report.options.as },
		nights: { value: 'N', words: COMMAND_WORDS.report.options.nights },
		since: { value: 'DATE', words: COMMAND_WORDS.report.options.since },
		save: { words: COMMAND_WORDS.report.options.save },
		out: { value: 'FILE', words: COMMAND_WORDS.report.options.out },
		force: { words: COMMAND_WORDS.report.options.force },
	},
	words: { least: 0, most: 1 },
	run: async (request, io) => {
		if (asksForNights(request)) {
			const several = nightsBeside(request, io);
			return typeof several === 'number' ? several : write(several, request, io);
		}
		const form = request.options.json === true ? 'json' : (optionText(request, 'as') ?? 'markdown');
		const chosen = Object.hasOwn(FORMS, form) ? FORMS[form] : undefined;
		if (!chosen) {
			const near = nearestName(form, Object.keys(FORMS));
			return tellProblems(
				[
					{
						code: 'unknown-form',
						what: UNKNOWN_FORM,
						found: cleanText(form),
						expected: Object.keys(FORMS).join(', '),
						...(near === null ? {} : { hint: didYouMean(near) }),
					},
				],
				io,
			);
		}
		const night = chosenNight(request, io);
		if (typeof night === 'number') return night;
		const { show, problems } = await showOf(night, request, io);
		if (!show) return tellProblems(problems, io);
		const { report } = reportOfNight(night, show);
		const code = write(
			{ text: chosen.text(report), ending: chosen.ending, night: night.id },
			request,
			io,
		);
		if (code !== EXIT.fine) return code;
		return report.isOver && report.damage.length === 0 ? EXIT.fine : EXIT.toLookAt;
	},
};

function chosenNight(request: Request, io: Io): NightOnDisk | number {
	const { folders, nights, isPart } = searchedNights(placesOf(request, io), io);
	const id = request.words[0] ?? lastPlayed(folders, nights)?.id ?? nights[0]?.id;
	if (id === undefined) {
		// There may be one in the folder that cannot be read, which was said.
		if (isPart) return EXIT.unusable;
		const hint = RUN_RECORDS_ONE;
		return tellProblems(
			[
				{
					code: 'no-night',
					what: NO_NIGHT_YET,
					where: { file: cleanText(folders[0] ?? '') },
					hint,
				},
			],
			io,
		);
	}
	const night = nightOnDisk(folders, id);
	if (night.isThere) return night;
	if (isPart) return EXIT.unusable;
	const near = nearestName(
		id,
		nights.map((one) => one.id),
	);
	const hint = near === null ? NIGHTS_LISTS : didYouMean(near);
	return tellProblems([{ code: 'no-night', what: NO_SUCH_NIGHT, found: cleanText(id), hint }], io);
}

/** The night's own copy of its show; the named file where that cannot be read. */
async function showOf(
	{ id, show, findings }: NightOnDisk,
	request: Request,
	io: Io,
): Promise<Pick<ShowOpening, 'show' | 'problems'>> {
	const file = optionText(request, 'show');
	if (show) {
		if (file !== null) io.complain(`${OWN_COPY}\n`);
		return { show, problems: [] };
	}
	if (file !== null) return (await import('../open-show.ts')).openShow(file, request, io);
	const found = cleanText(id);
	const what = findings.filter(({ code }) => code !== 'header-missing').map(nightFindingWords);
	const hint = [...what, nameItsShow(found)].join(' ');
	return {
		show: null,
		problems: [{ code: 'no-show-in-night', what: NO_SHOW_IN_NIGHT, found, hint }],
	};
}

function write(
	file: { readonly text: string; readonly ending: string; readonly night: string },
	request: Request,
	io: Io,
): number {
	const out = optionText(request, 'out');
	if (out === null && request.options.save === undefined) {
		io.write(file.text);
		return EXIT.fine;
	}
	const target = resolve(io.cwd, out ?? `${file.night}-report${file.ending}`);
	const done = writeExport(realDisk, {
		folder: dirname(target),
		name: basename(target),
		text: file.text,
		isDefaultName: out === null,
		isForced: out !== null && request.options.force === true,
	});
	if ('fault' in done) return tellProblems([exportProblem(done.fault)], io);
	const isData = extname(done.path) === '.json' && request.options.json === true;
	// Where data was asked for nothing else may stand on standard output.
	(isData ? io.complain : io.write)(`${written(cleanText(done.path))}\n`);
	return EXIT.fine;
}
