// `rackside report`: the post-show report of a night, to read, to send, or for a spreadsheet.

import { extname, join, resolve } from 'node:path';
import { cleanText } from '../../base/clean-text.ts';
import { writeExport } from '../../disk/export-file.ts';
import { makeFolders } from '../../disk/folders.ts';
import { realDisk } from '../../disk/real-disk.ts';
import { readRemarks } from '../../disk/remarks-file.ts';
import { nightReport } from '../../report/night-report.ts';
import { partsWithoutNames, readerWithRole, withRoleIds } from '../../report/without-names.ts';
import type { Show } from '../../showfile/show.ts';
import { terminalAbilities } from '../../terminal/terminal-kind.ts';
import { COMMAND_WORDS } from '../../words/commands.ts';
import { diskFaultWords, exportProblem } from '../../words/disk.ts';
import { nightFindingWords } from '../../words/night-file.ts';
import { written } from '../../words/program.ts';
import {
	LEAVE_ONE_OUT,
	NO_SHOW_IN_NIGHT,
	nameItsShow,
	notBoth,
	OWN_COPY,
	UNKNOWN_FORM,
} from '../../words/requests.ts';
import type { CliCommand, Request } from '../command.ts';
import { JSON_OPTION, optionText } from '../command.ts';
import { EXIT } from '../exit-code.ts';
import type { Io } from '../io.ts';
import { chosenNight } from '../nights/chosen-night.ts';
import { editRemarks } from '../nights/edit-remarks.ts';
import type { NightOnDisk } from '../nights/night-on-disk.ts';
import { nightsBeside } from '../nights/nights-beside.ts';
import {
	everyFile,
	REPORT_FORMS,
	type ReportFile,
	type ReportForm,
	readerName,
	readReader,
} from '../nights/report-forms.ts';
import { partsOfNight } from '../nights/report-of-night.ts';
import { notAmong } from '../not-among.ts';
import type { ShowOpening } from '../open-show.ts';
import { placesOf } from '../places.ts';
import { tellProblems } from '../tell-problems.ts';
import { writeNamed } from '../write-named.ts';

export const reportCommand: CliCommand = {
	usage: 'report [NIGHT]',
	about: [COMMAND_WORDS.report.about],
	example: 'rackside report --save',
	options: {
		...JSON_OPTION,
		show: { value: 'FILE', words: COMMAND_WORDS.report.options.show },
		for: { value: 'READER', words: COMMAND_WORDS.report.options.for },
		as: { value: 'FORM', oneOf: Object.keys(REPORT_FORMS), words: COMMAND_WORDS.report.options.as },
		nights: { value: 'N', words: COMMAND_WORDS.report.options.nights },
		since: { value: 'DATE', words: COMMAND_WORDS.report.options.since },
		all: { words: COMMAND_WORDS.report.options.all },
		'no-names': { words: COMMAND_WORDS.report.options.noNames },
		edit: { words: COMMAND_WORDS.report.options.edit },
		save: { words: COMMAND_WORDS.report.options.save },
		out: { value: 'FILE', words: COMMAND_WORDS.report.options.out },
		force: { words: COMMAND_WORDS.report.options.force },
	},
	words: { least: 0, most: 1 },
	run: async (request, io) => {
		if (request.options.nights !== undefined || request.options.since !== undefined) {
			const several = nightsBeside(request, io);
			return typeof several === 'number' ? several : write(several, request, io);
		}
		const form = request.options.json === true ? 'json' : (optionText(request, 'as') ?? 'markdown');
		const chosen = Object.hasOwn(REPORT_FORMS, form) ? REPORT_FORMS[form] : undefined;
		if (!chosen) {
			const unknown = { code: 'unknown-form', what: UNKNOWN_FORM, found: form };
			return tellProblems([notAmong(unknown, Object.keys(REPORT_FORMS))], io);
		}
		const [id] = request.words;
		const night = chosenNight(id === undefined ? 'last' : { id }, request, io);
		if (typeof night === 'number') return night;
		const { show, problems } = await showOf(night, request, io);
		if (!show) return tellProblems(problems, io);
		return writeReport({ night, show, form: chosen }, request, io);
	},
};

/** The night for the reader that was asked for, in the form that was, wherever it is to go; gives the exit code. */
async function writeReport(
	{ night, show, form }: { night: NightOnDisk; show: Show; form: ReportForm },
	request: Request,
	io: Io,
): Promise<number> {
	const { options } = request;
	const read = readReader(optionText(request, 'for') ?? 'tech', show);
	if ('problem' in read) return tellProblems([read.problem], io);
	const clash = ['for', 'as', 'json'].find((name) => options[name] !== undefined);
	if (options.all === true && clash !== undefined) {
		return tellProblems(
			[{ code: 'two-options', what: notBoth('all', clash), hint: LEAVE_ONE_OUT }],
			io,
		);
	}
	const place = { folder: placesOf(request, io).nights, night: night.id };
	if (options.edit === true) {
		const code = await editRemarks(nightReport(partsOfNight(night, show)), place, io);
		const isWritten = ['save', 'out', 'all'].some((name) => options[name] !== undefined);
		if (code !== EXIT.fine || !isWritten) return code;
	}
	const { remarks, problem } = readRemarks({ disk: realDisk, ...place });
	if (problem) io.complain(`${cleanText(diskFaultWords(problem))}\n`);
	const parts = { ...partsOfNight(night, show), remarks };
	const nameless = options['no-names'] === true ? partsWithoutNames(parts) : null;
	const made = nightReport(nameless?.parts ?? parts);
	const report = nameless === null ? made : withRoleIds(made, nameless.roles);
	const reader = nameless === null ? read.reader : readerWithRole(read.reader, nameless.roles);
	const name = [`${night.id}-report`, readerName(reader)].filter((part) => part !== '').join('-');
	const code =
		options.all === true
			? writeAll({ files: await everyFile(report), night: night.id }, request, io)
			: write(
					{
						text: await form.text(report, reader),
						afterwards: () => form.picture?.(report, reader, isAsciiTerminal(io)) ?? '',
						name: name + form.ending,
					},
					request,
					io,
				);
	if (code !== EXIT.fine) return code;
	return report.isOver && report.damage.length === 0 && problem === null
		? EXIT.fine
		: EXIT.toLookAt;
}

function isAsciiTerminal({ env, isInputTerminal, isOutputTerminal }: Io): boolean {
	const facts = {
		env,
		isInputTerminal,
		isOutputTerminal,
		isColorRefused: false,
		platform: process.platform,
	};
	return !terminalAbilities(facts).isUnicode;
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
	if (file !== null) {
		const { openShow } = await import('../show-commands.ts');
		return openShow(file, request, io);
	}
	const found = cleanText(id);
	const what = findings.filter(({ code }) => code !== 'header-missing').map(nightFindingWords);
	const hint = [...what, nameItsShow(found)].join(' ');
	return {
		show: null,
		problems: [{ code: 'no-show-in-night', what: NO_SHOW_IN_NIGHT, found, hint }],
	};
}

function write(
	file: {
		readonly text: string;
		/** On a terminal alone. */
		readonly afterwards?: () => string;
		readonly name: string;
	},
	request: Request,
	io: Io,
): number {
	const out = optionText(request, 'out');
	if (out === null && request.options.save === undefined) {
		io.write(io.isOutputTerminal ? file.text + (file.afterwards?.() ?? '') : file.text);
		return EXIT.fine;
	}
	const named = out === null ? { name: file.name } : { name: out, option: '--out' };
	const done = writeNamed({ ...named, content: file.text }, request, io);
	if ('problem' in done) return tellProblems([done.problem], io);
	const isData = extname(done.path) === '.json' && request.options.json === true;
	// Where data was asked for nothing else may stand on standard output.
	(isData ? io.complain : io.write)(`${written(cleanText(done.path))}\n`);
	return EXIT.fine;
}

/** Folders whose names are tried before there is none for all readers. */
const MOST_FOLDERS = 99;

/** Every file into one folder: a new one, or the one named, where none of the names may be taken unless that is forced. */
function writeAll(
	{ files, night }: { readonly files: readonly ReportFile[]; readonly night: string },
	request: Request,
	io: Io,
): number {
	const out = optionText(request, 'out');
	const isForced = out !== null && request.options.force === true;
	const wanted = resolve(io.cwd, out ?? `${night}-reports`);
	const folder = out === null ? freeFolder(wanted) : wanted;
	const trouble = makeFolders(realDisk, folder);
	if (trouble) {
		io.complain(`${cleanText(diskFaultWords(trouble))}\n`);
		return EXIT.unusable;
	}
	// All or none: a name that is taken is said before anything is written.
	const taken = isForced ? undefined : files.find(({ name }) => realDisk.stat(join(folder, name)));
	if (taken !== undefined) {
		const path = join(folder, taken.name);
		const kind = realDisk.stat(path)?.kind ?? null;
		return tellProblems([exportProblem({ code: 'file-exists', path, kind })], io);
	}
	for (const { name, text } of files) {
		const done = writeExport(realDisk, { folder, name, text, isDefaultName: false, isForced });
		if ('fault' in done) return tellProblems([exportProblem(done.fault)], io);
		io.write(`${written(cleanText(done.path))}\n`);
	}
	return EXIT.fine;
}

function freeFolder(path: string): string {
	for (let number = 1; number < MOST_FOLDERS; number += 1) {
		const name = number === 1 ? path : `${path}-${number}`;
		if (realDisk.stat(name) === null) return name;
	}
	return `${path}-${MOST_FOLDERS}`;
}
