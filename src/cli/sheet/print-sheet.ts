// `rackside plan SHOW --sheet` and the pages beside it: as text, as a page to print, as a PDF; which printing it is,
// and what changed since the last one.

import { dirname, resolve } from 'node:path';
import { cleanText } from '../../base/clean-text.ts';
import type { Problem } from '../../base/problem.ts';
import { showIdentity } from '../../disk/paths.ts';
import { keepPrinted, lastPrinted, type PrintedSheet } from '../../disk/printed-sheets.ts';
import { realDisk } from '../../disk/real-disk.ts';
import { PAPERS, type Paper } from '../../report/html-page.ts';
import { runSheet } from '../../report/run-sheet.ts';
import type { Sheet } from '../../report/sheet.ts';
import { chosenOf, type SheetChoice } from '../../report/sheet-choice.ts';
import { sheetHtml } from '../../report/sheet-html.ts';
import { pageText, type SheetPage } from '../../report/sheet-pages.ts';
import { ringWords } from '../../report/sheet-rings.ts';
import {
	differencesSince,
	type SheetDifference,
	saidBy,
	sheetHash,
} from '../../report/sheet-version.ts';
import { diskFaultWords } from '../../words/disk.ts';
import {
	NEXT_CANNOT_TELL,
	NOTHING_CHANGED,
	OTHERS_CHANGED,
	sinceWords,
	versionWords,
} from '../../words/paper.ts';
import { written } from '../../words/program.ts';
import {
	LEAVE_ONE_OUT,
	NO_BROWSER,
	NO_PLAYER,
	NO_SUCH_PAGE,
	NO_TECH,
	NOT_PRINTED,
	notBoth,
	PAGES,
	PRINT_BY_HAND,
	UNKNOWN_PAPER,
	UNKNOWN_SHEET_FORM,
} from '../../words/requests.ts';
import { measuredOnGear } from '../bench/gear-journal.ts';
import { optionText, type Request } from '../command.ts';
import { EXIT } from '../exit-code.ts';
import type { Io } from '../io.ts';
import { localMoment } from '../local-day.ts';
import { notAmong } from '../not-among.ts';
import { placesOf } from '../places.ts';
import { tellProblems } from '../tell-problems.ts';
import { type ToWrite, writeNamed } from '../write-named.ts';
import { foundBrowser, pdfOf } from './browser-pdf.ts';

/** A sheet to be printed; `file`: its show's, as typed. */
export type ToPrint = {
	readonly sheet: Sheet;
	readonly file: string;
	/** Somebody asked for it, so that the next printing can say what changed. */
	readonly isKept: boolean;
};

/** Prints what the request asks for; gives back the exit code. */
export function printSheet(toPrint: ToPrint, request: Request, io: Io): number {
	const { file, isKept } = toPrint;
	const asked = askedOf(toPrint.sheet, request);
	if ('code' in asked) return tellProblems([asked], io);
	const show = showIdentity(resolve(io.cwd, file));
	const { ringsOn } = measuredOnGear(placesOf(request, io), dirname(show));
	const rings = ringWords(toPrint.sheet.show, ringsOn);
	const warnings = [...toPrint.sheet.warnings, ...rings.map((text) => ({ player: null, text }))];
	const sheet = { ...toPrint.sheet, warnings };
	const printing = printingOf(sheet, show, { request, io });
	const code = asked.isPage
		? writeHtml(sheetHtml(sheet, { ...printing, ...asked }), request, io)
		: writeText(textOf(sheet, { printing, asked }), request, io);
	const isWhole = asked.pages.some(({ kind }) => kind === 'run');
	if (code === EXIT.fine && isKept && isWhole) keep(printing.now, request, io);
	return code;
}

// What was asked for.

type Asked = {
	/** As a page of HTML, or a PDF of it. */
	readonly isPage: boolean;
	readonly pages: readonly SheetPage[];
	readonly choice: SheetChoice;
	readonly hasBoards: boolean;
	readonly paper: Paper | null;
};

const SHEET_FORMS = ['text', 'html'];

function askedOf(sheet: Sheet, request: Request): Asked | Problem {
	const isPdf = request.options.pdf !== undefined;
	if (isPdf && request.options.out !== undefined) {
		return { code: 'two-answers', what: notBoth('pdf', 'out'), hint: LEAVE_ONE_OUT };
	}
	const form = optionText(request, 'as') ?? 'text';
	if (!SHEET_FORMS.includes(form))
		return notAmong({ code: 'not-among', what: UNKNOWN_SHEET_FORM, found: form }, SHEET_FORMS);
	const paper = paperOf(optionText(request, 'paper')?.toLowerCase() ?? (isPdf ? 'a4' : null));
	if (paper !== null && typeof paper === 'object') return paper;
	const players = playersOf(sheet, request);
	if (players !== null && 'code' in players) return players;
	const isPage = isPdf || form === 'html';
	const pages = pagesOf(sheet, { named: optionText(request, 'page'), isPage, players });
	if ('code' in pages) return pages;
	return {
		isPage,
		pages,
		choice: { players, isChangesOnly: request.options.changes === true },
		hasBoards: request.options.boards === true,
		paper,
	};
}

function paperOf(named: string | null): Paper | null | Problem {
	const papers = Object.keys(PAPERS) as Paper[];
	const paper = papers.find((one) => one === named);
	if (paper !== undefined || named === null) return paper ?? null;
	return notAmong({ code: 'not-among', what: UNKNOWN_PAPER, found: named }, papers);
}

/** Ids of the players that `--player` or `--tech` names; null for all. */
function playersOf({ show }: Sheet, request: Request): readonly string[] | null | Problem {
	const player = optionText(request, 'player');
	const tech = optionText(request, 'tech');
	if (player !== null && tech !== null) {
		return { code: 'two-answers', what: notBoth('player', 'tech'), hint: LEAVE_ONE_OUT };
	}
	if (player !== null) {
		const found = idOf(show.players, player);
		return found === null ? unknownName(NO_PLAYER, player, show.players) : [found];
	}
	if (tech === null) return null;
	const found = idOf(show.techs, tech);
	if (found === null) return unknownName(NO_TECH, tech, show.techs);
	return show.players.filter((one) => one.tech === found).map(({ id }) => id);
}

type Person = { readonly id: string; readonly name: string };

function idOf(people: readonly Person[], named: string): string | null {
	const isNamed = (text: string) => text.toLowerCase() === named.toLowerCase();
	return people.find(({ id, name }) => isNamed(id) || isNamed(name))?.id ?? null;
}

function unknownName(what: string, named: string, people: readonly Person[]): Problem {
	return notAmong(
		{ code: 'not-among', what, found: named },
		people.map(({ name }) => name),
	);
}

type WantedPages = {
	readonly named: string | null;
	readonly isPage: boolean;
	readonly players: readonly string[] | null;
};

function pagesOf(
	{ show }: Sheet,
	{ named, isPage, players }: WantedPages,
): readonly SheetPage[] | Problem {
	if (named === null) {
		if (!isPage) return [{ kind: 'run' }];
		const floors = show.players
			.map(({ id }) => id)
			.filter((player) => players === null || players.includes(player))
			.map((player): SheetPage => ({ kind: 'floor', player }));
		return [{ kind: 'run' }, { kind: 'rack' }, ...floors];
	}
	const [, kind = '', player = null] = /^(\w+)(?:=(.*))?$/s.exec(named) ?? [];
	if (player === null && (kind === 'run' || kind === 'rack' || kind === 'radio')) {
		return [{ kind }];
	}
	if ((kind !== 'cues' && kind !== 'floor') || player === null) {
		return notAmong({ code: 'not-among', what: NO_SUCH_PAGE, found: named }, PAGES);
	}
	const found = idOf(show.players, player);
	return found === null ? unknownName(NO_PLAYER, player, show.players) : [{ kind, player: found }];
}

// Which printing it is.

type Printing = {
	readonly version: string;
	readonly since: {
		readonly heading: string;
		readonly changes: readonly SheetDifference[];
	} | null;
	readonly now: PrintedSheet;
};

function printingOf(
	sheet: Sheet,
	show: string,
	{ request, io }: { readonly request: Request; readonly io: Io },
): Printing {
	const { sheet: last, fault } = lastPrinted(placeOf(request, io), show);
	const hash = sheetHash(sheet);
	const songs = saidBy(sheet);
	const version = last === null ? 1 : last.version + (last.hash === hash ? 0 : 1);
	const printedAtMs = io.wallMs();
	const now = { show, version, hash, printedAtMs, songs };
	const printed = localMoment(printedAtMs);
	const same = last?.hash === hash ? NOTHING_CHANGED : OTHERS_CHANGED;
	const changes = last === null ? [] : differencesSince(last.songs, sheet);
	return {
		version: versionWords({ version: fault === null ? version : null, hash, printed }),
		since:
			last === null
				? null
				: {
						heading: sinceWords(last.version, localMoment(last.printedAtMs)),
						changes: changes.length > 0 ? changes : [{ key: null, text: same, isNew: false }],
					},
		now,
	};
}

function placeOf(request: Request, io: Io) {
	return { disk: realDisk, folder: placesOf(request, io).data };
}

/** What cannot be kept is said, and fails nothing. */
function keep(now: PrintedSheet, request: Request, io: Io): void {
	const fault = keepPrinted(placeOf(request, io), now);
	if (fault !== null) io.complain(`${cleanText(diskFaultWords(fault))} ${NEXT_CANNOT_TELL}\n`);
}

// Writing.

function textOf(
	sheet: Sheet,
	{ printing, asked }: { readonly printing: Printing; readonly asked: Asked },
): string {
	const { version, since } = printing;
	const [page = { kind: 'run' as const }] = asked.pages;
	if (page.kind !== 'run') return pageText(sheet, page, version);
	const lines = since === null ? [] : [since.heading, ...since.changes.map(({ text }) => text)];
	return runSheet(chosenOf(sheet, asked.choice), {
		version,
		since: lines,
		hasBoards: asked.hasBoards,
	});
}

function writeHtml(html: string, request: Request, io: Io): number {
	const pdf = optionText(request, 'pdf');
	if (pdf === null) return writeText(html, request, io);
	const browser = foundBrowser(io.env);
	if (browser === null) {
		return tellProblems([{ code: 'no-browser', what: NO_BROWSER, hint: PRINT_BY_HAND }], io);
	}
	const bytes = pdfOf(browser, html);
	if (bytes === null) {
		const found = cleanText(browser);
		return tellProblems(
			[{ code: 'not-printed', what: NOT_PRINTED, found, hint: PRINT_BY_HAND }],
			io,
		);
	}
	return writeFile({ name: pdf, content: bytes, option: '--pdf' }, request, io);
}

function writeText(text: string, request: Request, io: Io): number {
	const out = optionText(request, 'out');
	if (out !== null) return writeFile({ name: out, content: text, option: '--out' }, request, io);
	io.write(text);
	return EXIT.fine;
}

function writeFile(file: ToWrite, request: Request, io: Io): number {
	const done = writeNamed(file, request, io);
	if ('problem' in done) return tellProblems([done.problem], io);
	io.write(`${written(cleanText(done.path))}\n`);
	return EXIT.fine;
}
