// `rackside new` from a set list that is there already: a table, lines as people type them, or what `list` prints.

import { basename, dirname, resolve } from 'node:path';
import { cleanText } from '../../base/clean-text.ts';
import type { Problem } from '../../base/problem.ts';
import { slug } from '../../base/slug.ts';
import { writeExport } from '../../disk/export-file.ts';
import { realDisk } from '../../disk/real-disk.ts';
import { addToShowFile } from '../../setlist/add-to-file.ts';
import type { Asked, ListReading, Rack } from '../../setlist/list-reading.ts';
import { dateFrom, type ListedDay } from '../../setlist/listed-day.ts';
import { type ListText, type ReadList, readSetList } from '../../setlist/make-show.ts';
import type { ShowDraft } from '../../setlist/show-draft.ts';
import { withAbbreviations } from '../../setlist/take-over.ts';
import { writeShowFile } from '../../setlist/write-show-file.ts';
import { diskTrouble } from '../../words/disk.ts';
import { PLANNING, written } from '../../words/program.ts';
import * as words from '../../words/set-list.ts';
import { type Ask, askNobody, askOnTerminal } from '../ask-on-terminal.ts';
import { optionText, type Request } from '../command.ts';
import { EXIT } from '../exit-code.ts';
import type { Io } from '../io.ts';
import { localDay } from '../local-day.ts';
import { shellWord } from '../shell/shell-word.ts';
import { tellProblems } from '../tell-problems.ts';
import { terminalText } from '../terminal-text.ts';
import { whileWorking } from '../while-working.ts';
import { askAboutList } from './ask-about-list.ts';
import { checkNewFile } from './check-new-file.ts';
import { columnsOf, listProblem, nameOf, readSource, whatIsThere } from './list-source.ts';
import { readRack, showOrGear } from './rack-file.ts';

const USUAL_START = '20:00';

/** Whether the request brings a list. */
export function bringsList(request: Request): boolean {
	return optionText(request, 'songs') !== null || optionText(request, 'list') !== null;
}

/** Reads the list, asks where it can, writes the show and checks it; whoever leaves a question leaves nothing behind. */
export async function newFromList(request: Request, io: Io): Promise<number> {
	const isJson = request.options.json === true;
	// Where data was asked for nothing else stands on standard output.
	const shownAs = (text: string) => terminalText(text, io);
	const tell: Io = {
		...io,
		write: (text) => (isJson ? io.complain : io.write)(shownAs(text)),
		complain: (text) => io.complain(shownAs(text)),
	};
	const canAsk = !isJson && io.isInputTerminal && io.isOutputTerminal;
	const ask = canAsk ? askOnTerminal(io) : askNobody;
	const source = await readSource(request, io);
	if ('problem' in source) return tellProblems([source.problem], io);
	const { file: listFile, form, text } = source;
	const given = request.words[0];
	const out = given ?? `${listFile === '-' ? 'show' : slug(nameOf(listFile))}.yaml`;
	const columns = columnsOf(request);
	if (columns === null) {
		return tellProblems(
			[{ code: 'bad-column', what: words.BAD_COLUMN, expected: 'Gtr 1=ash' }],
			io,
		);
	}
	const there = given === undefined ? null : await whatIsThere(out, request, { io, ask });
	if (there !== null && 'problem' in there) return tellProblems([there.problem], io);

	const rackFile = there === null ? optionText(request, 'rack') : null;
	const fromFile = readRack(rackFile, out, io);
	if (!fromFile.ok) return tellProblems(fromFile.problems, io);
	const isAsked = canAsk && listFile !== '-';
	const rack: Rack = { ...(there === null ? fromFile.rack : there.rack), isAsked };
	const put = isAsked ? ask : askNobody;
	const read = await readAsked({ text, form, columns, rack }, put);
	if (!read.ok) return tellProblems([listProblem(read, listFile)], io);
	const { reading, abbreviations } = await askAboutList(read.list, rack, put);

	const date = dateFrom(read.list.day, localDay(io.wallMs()));
	const title = read.list.title ?? nameOf(listFile === '-' ? out : listFile);
	const draft = draftOf(reading, {
		title,
		day: read.list.day,
		date: date ?? localDay(io.wallMs()),
		include: fromFile.include,
		further: withAbbreviations(fromFile.further, abbreviations),
	});
	const guessed = {
		isTitleGuessed: read.list.title === null,
		isDateGuessed: date === null,
		isStartGuessed: read.list.day?.start == null,
	};
	const remarked = words.withRemarks(draft, reading, {
		source: listFile === '-' ? words.STANDARD_INPUT : basename(listFile),
		...guessed,
		players: rack.players,
	});
	const showText =
		there === null
			? writeShowFile(remarked)
			: addToShowFile(there.text, remarksBelow(remarked), abbreviations);
	if (showText === null) {
		const where = { file: cleanText(out) };
		return tellProblems(
			[{ code: 'one-line', what: words.CANNOT_ADD_HERE, where, hint: words.ADD_BY_HAND }],
			io,
		);
	}
	const path = writeChecked(
		showText,
		{ out, isNamed: given !== undefined, isAdding: there !== null },
		io,
	);
	if (typeof path === 'object') return tellProblems(path.problems, io);

	const shown = given ?? basename(path);
	tell.write(`${written(cleanText(shown))}\n`);
	const said = reading.said.flatMap((one) => words.saidLine(one) ?? []);
	const assumed = there === null ? [words.takenForNow(draft, guessed)] : [];
	for (const line of [...assumed, ...said, ...words.madeLines(reading)])
		tell.write(`${cleanText(line)}\n`);
	const from = listFile === '-' ? '' : `${cleanText(listFile)}: `;
	for (const one of reading.asked) {
		tell.complain(`${from}${cleanText(words.askedLine(one))}\n`);
	}
	const { understood, songs } = reading;
	const counts = { rows: read.list.rowCount, songs: songs.length, understood };
	tell.write(`${words.closingLine({ ...counts, left: reading.asked.length })}\n`);
	const checked = await checkNewFile(shown, { request, io }, (run) => whileWorking(PLANNING, run));
	tell.write(checked.text);
	tell.write(`${words.nextStep(shellWord(shown), reading.asked.length === 0)}\n`);
	if (isJson)
		io.write(
			`${JSON.stringify({ ...counts, asked: reading.asked.map(askedJson), file: shown })}\n`,
		);
	return reading.asked.length > 0 ? EXIT.toLookAt : checked.code;
}

/** The remarks of the whole above the first entry of the order, since a file that is there has its own beginning. */
function remarksBelow(draft: ShowDraft): ShowDraft {
	const [first, ...others] = draft.set;
	return first ? { ...draft, set: [{ ...first, remarks: draft.remarks }, ...others] } : draft;
}

function askedJson(one: Asked) {
	return { row: one.row, column: one.column, text: one.text, why: words.whyAsked(one) };
}

/** The rows, once it is asked which columns of mere names are players. */
async function readAsked(list: ListText, ask: Ask): Promise<ReadList> {
	const read = readSetList(list);
	if (!read.ok) return read;
	const columns = { ...list.columns };
	for (const one of read.list.decided) {
		if (one.code !== 'column-unclear') continue;
		const answer = (await ask(words.columnQuestion(one.column)))?.trim() ?? '';
		if (answer !== '') columns[one.column] = answer;
	}
	return readSetList({ ...list, columns });
}

function draftOf(
	{ players, instruments, songs, set }: ListReading,
	more: {
		readonly title: string;
		readonly day: ListedDay | undefined;
		readonly date: string;
		readonly include: readonly string[];
		readonly further: Readonly<Record<string, unknown>>;
	},
): ShowDraft {
	const { title, day, date, include, further } = more;
	return {
		...{ title: cleanText(title), venue: day?.venue ?? null, remarks: [] },
		...{ start: day?.start ?? USUAL_START, curfew: day?.curfew ?? null },
		date,
		...{ players, instruments, songs, set, include, further },
	};
}

/** Writes what can be read again as a show; gives back where, or why not. */
function writeChecked(
	text: string,
	{
		out,
		isNamed,
		isAdding,
	}: { readonly out: string; readonly isNamed: boolean; readonly isAdding: boolean },
	io: Io,
): string | { readonly problems: readonly Problem[] } {
	const { show, problems } = showOrGear(out, io, new TextEncoder().encode(text));
	const where = { file: cleanText(out) };
	if (!show) {
		return {
			problems: [{ code: 'not-read-again', what: words.NOT_READ_AGAIN, where }, ...problems],
		};
	}
	const path = resolve(io.cwd, out);
	const done = writeExport(realDisk, {
		...{ folder: dirname(path), name: basename(path), text },
		...{ isDefaultName: !isNamed, isForced: isAdding },
	});
	if ('path' in done) return done.path;
	const what =
		done.fault.code === 'file-exists'
			? words.fileIsThere(done.fault.kind === 'file')
			: words.notWritten(diskTrouble(done.fault.trouble));
	return { problems: [{ code: done.fault.code, what, where, hint: words.ANOTHER_NAME }] };
}
