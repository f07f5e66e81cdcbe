// `rackside report`: the post-show report of a night, to read, to send, or for a spreadsheet.

import { basename, dirname, extname, resolve } from 'node:path';
import { cleanText } from '../../base/clean-text.ts';
import { nearestName } from '../../base/nearest-name.ts';
import { writeExport } from '../../disk/export-file.ts';
import type { NightSummary } from '../../disk/nights-folder.ts';
import { listNights } from '../../disk/nights-folder.ts';
import { realDisk } from '../../disk/real-disk.ts';
import type { NightReport } from '../../report/night-report.ts';
import { nightReport } from '../../report/night-report.ts';
import { nightSteps } from '../../report/night-steps.ts';
import { handOversCsv, incidentsCsv } from '../../report/report-csv.ts';
import { reportJson } from '../../report/report-json.ts';
import { reportMarkdown } from '../../report/report-markdown.ts';
import { effectiveRecords } from '../../session/timeline.ts';
import { exportProblem } from '../../words/disk.ts';
import { nightFindingWords } from '../../words/night-file.ts';
import type { CliCommand, Request } from '../command.ts';
import { JSON_OPTION, optionText } from '../command.ts';
import { EXIT } from '../exit-code.ts';
import type { Io } from '../io.ts';
import { localOffsetMinutes } from '../local-offset.ts';
import { type NightOnDisk, nightOnDisk } from '../night-on-disk.ts';
import { nightFolders, placesOf } from '../places.ts';
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
	about: [
		'Prints the report of a night, the last one with a song played unless named: songs with their times, hand-overs,',
		'incidents, what to repair for tomorrow. Ends with 1 when the night is not finished or its record',
		"is damaged. In the CSV tables a text that could be taken for a formula begins with one extra '.",
	],
	example: 'rackside report --save',
	options: {
		...JSON_OPTION,
		as: { value: 'FORM', words: 'markdown (the default), json, incidents or hand-overs (CSV)' },
		save: { words: 'into a file of the working folder, with a name of its own' },
		out: { value: 'FILE', words: 'into this file' },
		force: { words: 'replace the file of --out if it is there' },
	},
	words: { least: 0, most: 1 },
	run: (request, io) => {
		const form = request.options.json === true ? 'json' : (optionText(request, 'as') ?? 'markdown');
		const chosen = Object.hasOwn(FORMS, form) ? FORMS[form] : undefined;
		if (!chosen) {
			const near = nearestName(form, Object.keys(FORMS));
			return tellProblems(
				[
					{
						code: 'unknown-form',
						what: 'a report cannot be written as this',
						found: cleanText(form),
						expected: Object.keys(FORMS).join(', '),
						...(near === null ? {} : { hint: `Did you mean ${near}?` }),
					},
				],
				io,
			);
		}
		const night = chosenNight(request, io);
		if (typeof night === 'number') return night;
		const report = reportOf(night);
		if (!report) {
			return tellProblems(
				[
					{
						code: 'no-show-in-night',
						what: "this night's copy of the show cannot be read, so there is no report of it",
						found: cleanText(night.id),
						hint: 'rackside nights lists the others.',
					},
				],
				io,
			);
		}
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
	const folders = nightFolders(placesOf(request, io));
	const nights = listNights(realDisk, folders);
	const id = request.words[0] ?? lastPlayed(folders, nights) ?? nights[0]?.id;
	if (id === undefined) {
		const hint = 'rackside run SHOW records one.';
		return tellProblems(
			[
				{
					code: 'no-night',
					what: 'no night was recorded yet',
					where: { file: cleanText(folders[0] ?? '') },
					hint,
				},
			],
			io,
		);
	}
	const night = nightOnDisk(folders, id);
	if (night.isThere) return night;
	const near = nearestName(
		id,
		nights.map((one) => one.id),
	);
	const hint = near === null ? 'rackside nights lists those that are.' : `Did you mean ${near}?`;
	return tellProblems(
		[{ code: 'no-night', what: 'there is no such night', found: cleanText(id), hint }],
		io,
	);
}

/** The newest night in which a song began: one that was only looked at has nothing to tell. */
function lastPlayed(folders: readonly string[], nights: readonly NightSummary[]): string | null {
	const isPlayed = ({ id }: NightSummary): boolean =>
		effectiveRecords(nightOnDisk(folders, id).records).some(
			({ record, isTakenBack }) => !isTakenBack && record.e.some(({ k }) => k === 'song-began'),
		);
	return nights.find(isPlayed)?.id ?? null;
}

function reportOf(night: NightOnDisk): NightReport | null {
	if (!night.show) return null;
	return nightReport({
		show: night.show,
		night: night.id,
		isRehearsal: night.isRehearsal,
		...nightSteps(night.show, night.records),
		dayOffsetMinutes: localOffsetMinutes(night.startedAtMs ?? 0),
		damage: night.findings.filter(({ isWarning }) => isWarning).map(nightFindingWords),
	});
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
	if (!isData) io.write(`Written: ${cleanText(done.path)}\n`);
	return EXIT.fine;
}
