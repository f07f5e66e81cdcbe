// `rackside new` by questions: the screen, the draft that outlives it, and the file at the end.

import { basename, dirname, relative, resolve } from 'node:path';
import { cleanText } from '../../base/clean-text.ts';
import { slug } from '../../base/slug.ts';
import { realClock } from '../../disk/clock.ts';
import { writeExport } from '../../disk/export-file.ts';
import { makeFolders } from '../../disk/folders.ts';
import { realDisk } from '../../disk/real-disk.ts';
import { drawNewShow } from '../../new-show/draw-new-show.ts';
import { fileText } from '../../new-show/file-so-far.ts';
import type { Beginning, FileThere } from '../../new-show/making.ts';
import {
	type Kept,
	keptOf,
	type NewShow,
	paste,
	press,
	startNewShow,
} from '../../new-show/new-show.ts';
import type { Carried } from '../../report/carried-over.ts';
import { addToShowFile } from '../../setlist/add-to-file.ts';
import { draftOfShow } from '../../setlist/draft-of-show.ts';
import type { ShowDraft } from '../../setlist/show-draft.ts';
import { nodeClock } from '../../terminal/clock.ts';
import { styledRow, stylingOf } from '../../ui/styled-row.ts';
import { beforeTheDoors, CARRIED_TITLE, NOTHING_CARRIED } from '../../words/carried.ts';
import { exportProblem } from '../../words/disk.ts';
import * as words from '../../words/new-show.ts';
import { problemText } from '../../words/problem-text.ts';
import { ADD_BY_HAND, CANNOT_ADD_HERE, NOT_A_SHOW_TO_ADD } from '../../words/set-list.ts';
import type { Request } from '../command.ts';
import { EXIT } from '../exit-code.ts';
import type { Io } from '../io.ts';
import { livePreferences } from '../live/live-preferences.ts';
import { type ShownNight, screenAbilities, screenOptions, showLive } from '../live/live-screen.ts';
import { unkeptWayOut } from '../live/way-out.ts';
import { localDay } from '../local-day.ts';
import { loadBytes } from '../open-show.ts';
import { placesOf } from '../places.ts';
import { shellWord } from '../shell/shell-word.ts';
import { tellProblems } from '../tell-problems.ts';
import { terminalText } from '../terminal-text.ts';
import { checkNewFile } from './check-new-file.ts';
import { keptDraft, NO_DRAFT } from './kept-draft.ts';
import { nextDay } from './next-day.ts';
import { showOrGear } from './rack-file.ts';

const TICK_MS = 60_000;
const ENDING = '.yaml';

/** What is asked for. */
export type Wanted = {
	/** As it was typed; null for a name made of the title. */
	readonly file: string | null;
	/** Where all but the day comes from an earlier night, with what was carried over, a line each. */
	readonly earlier?: { readonly draft: ShowDraft; readonly carried: readonly Carried[] };
	/** Where the file is there and is added to. */
	readonly adding?: FileThere;
};

/** Asks what is to be added to a file that is there; all that stands in it stays. */
export async function addByQuestions(file: string, request: Request, io: Io): Promise<number> {
	const where = { file: cleanText(file) };
	const { show, problems } = showOrGear(file, io);
	const bytes = loadBytes(resolve(io.cwd, file));
	if (!show || !(bytes instanceof Uint8Array)) {
		return tellProblems([{ code: 'no-show', what: NOT_A_SHOW_TO_ADD, where }, ...problems], io);
	}
	const text = new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes);
	const adding = { text, draft: draftOfShow(show) };
	if (addToShowFile(text, { ...adding.draft, players: [], remarks: [] }) === null) {
		return tellProblems(
			[{ code: 'one-line', what: CANNOT_ADD_HERE, where, hint: ADD_BY_HAND }],
			io,
		);
	}
	return newByQuestions({ file, adding }, request, io);
}

/** Asks for a show and writes it; comes back only where it could not ask. */
export async function newByQuestions(wanted: Wanted, request: Request, io: Io): Promise<number> {
	const { earlier } = wanted;
	const abilities = screenAbilities(request, io);
	if (abilities === null) return EXIT.unusable;
	const places = placesOf(request, io);
	makeFolders(realDisk, places.data);
	// What an earlier night says is there the next time without being kept.
	const drafts = earlier ? NO_DRAFT : await keptDraft(places.data, wanted, io);
	const page = newShowPage({
		first: startNewShow(beginning(wanted, io), drafts.kept()),
		keep: drafts.keep,
		end: (code) => {
			shutdown.begin({ kind: 'quit', code });
		},
		fail: (error) => {
			shutdown.begin({ kind: 'fault', error });
		},
		finish: ({ making }) => {
			const done = writeNew({ draft: making.draft, text: fileText(making) }, wanted, io);
			return 'why' in done ? done : checked(done.name, wanted, { request, io });
		},
	});
	const clock = nodeClock();
	const shutdown = unkeptWayOut({
		...{ clock, io },
		keep: async () => page.keepNow(),
		farewell: () => {
			const said = page.ended() ?? `${drafts.words(page.state())}\n`;
			drafts.release();
			return said;
		},
	});
	const { colours } = livePreferences({ disk: realDisk, folder: places.settings }).values();
	const { isAscii, colorDepth } = screenOptions(abilities);
	const styling = stylingOf(colours, colorDepth);
	await showLive({
		night: page,
		rowsAt: (size) =>
			drawNewShow(page.state(), size, {
				isAscii,
				file: fileName(page.state().making.draft, wanted),
			}).map((row) => styledRow(row, styling, size.columns)),
		clock,
		shutdown,
		codeAtEnd: () => EXIT.toLookAt,
		handMs: realClock().upMs,
		tickMs: TICK_MS,
	});
	// The way out ends the process.
	return new Promise(() => {});
}

function beginning({ file, earlier, adding }: Wanted, io: Io): Beginning {
	if (adding) return { today: localDay(io.wallMs()), title: adding.draft.title, adding };
	if (earlier) {
		const { draft, carried } = earlier;
		return {
			...{ today: nextDay(draft.date, localDay(io.wallMs())), title: draft.title },
			earlier: { draft, carried: carried.length, toDo: toDoOf(carried) },
		};
	}
	const name = file === null ? '' : cleanText(basename(file).replace(/\.ya?ml$/i, ''));
	return { today: localDay(io.wallMs()), title: name === '' ? words.DEFAULT_TITLE : name };
}

/** The file's name: as it was typed, or made of the title, and of the day where the title may be many nights'. */
function fileName({ title, date }: ShowDraft, { file, earlier }: Wanted): string {
	if (file !== null) return basename(file);
	return `${slug(title)}${earlier && date ? `-${date}` : ''}${ENDING}`;
}

/** What is to be said on the plain terminal once the file is written, and the exit code. */
type Finished = { readonly text: Promise<string>; readonly code: () => number };

type PageParts = {
	readonly first: NewShow;
	readonly keep: (kept: Kept | null) => void;
	readonly end: (code: number) => void;
	/** A bug of ours in checking what was written. */
	readonly fail: (error: unknown) => void;
	readonly finish: (state: NewShow) => Finished | { readonly why: string };
};

/** The questions as the live screen shows what takes keys. */
function newShowPage({ first, keep, end, fail, finish }: PageParts): ShownNight & {
	readonly state: () => NewShow;
	readonly keepNow: () => void;
	readonly ended: () => string | null;
} {
	let state = first;
	let ended: string | null = null;
	let isWritten = false;
	let kept = '';
	const listeners = new Set<() => void>();
	const change = (next: NewShow): void => {
		state = next;
		keepNow();
		for (const tell of listeners) tell();
	};
	function keepNow(): void {
		const now = isWritten ? null : keptOf(state);
		const isNothing = now !== null && now.answers.length === 0 && now.typed === '';
		const asText = JSON.stringify(now);
		// A draft of an earlier time stays until there is something to keep in its place.
		if (asText === kept || isWritten || now === null || (isNothing && kept === '')) return;
		kept = asText;
		keep(now);
	}
	const write = (): void => {
		const finished = finish(state);
		if ('why' in finished) {
			change({ ...state, end: null, message: finished.why });
			return;
		}
		keep(null);
		isWritten = true;
		change({ ...state, message: words.WRITTEN_CHECKING });
		finished.text.then((text) => {
			ended = text;
			end(finished.code());
		}, fail);
	};
	return {
		state: () => state,
		ended: () => ended,
		keepNow,
		press: (key) => {
			if (state.end !== null) return;
			change(press(state, key));
			if (state.end === 'done') write();
		},
		paste: (text) => change(paste(state, text)),
		burst: (_count, text) => change(paste(state, text ?? '')),
		tick: () => {},
		onChange: (tell) => {
			listeners.add(tell);
			return () => listeners.delete(tell);
		},
		wantsToLeave: () => state.end === 'left',
	};
}

/** Writes the file, never over one; its name from the working folder, or why it could not be written. */
export function writeNew(
	{ draft, text }: { readonly draft: ShowDraft; readonly text: string | null },
	wanted: Wanted,
	io: Io,
): { readonly name: string } | { readonly why: string } {
	const { file, adding } = wanted;
	const target = resolve(io.cwd, file ?? fileName(draft, wanted));
	if (text === null) return { why: CANNOT_ADD_HERE };
	if (adding && !isAsItWas(target, adding)) return { why: words.CHANGED_MEANWHILE };
	const done = writeExport(realDisk, {
		folder: dirname(target),
		name: basename(target),
		text,
		isDefaultName: file === null,
		isForced: adding !== undefined,
	});
	return 'fault' in done
		? { why: cleanText(problemText(exportProblem(done.fault))) }
		: { name: relative(io.cwd, done.path) };
}

function isAsItWas(path: string, { text }: FileThere): boolean {
	const bytes = loadBytes(path);
	return bytes instanceof Uint8Array && Buffer.from(text).equals(bytes);
}

/** What is to be said of a file just written: what was carried into it, what is wrong or risky, what to do next. */
export function checked(
	name: string,
	{ earlier }: Wanted,
	{ request, io }: { readonly request: Request; readonly io: Io },
): Finished {
	let code: number = EXIT.toLookAt;
	const check = async (): Promise<string> => {
		const found = await checkNewFile(name, { request, io });
		code = found.code;
		const carried = earlier === undefined ? '' : carriedText(earlier.carried);
		const toDo = toDoOf(earlier?.carried ?? []);
		const first = toDo.length === 0 ? '' : `${beforeTheDoors(toDo)}\n`;
		const made = `${words.madeFile(cleanText(name))}\n`;
		return terminalText(
			`${carried}${made}${found.text}${first}${words.whatNext(shellWord(name))}\n`,
			io,
		);
	};
	return { text: check(), code: () => code };
}

const toDoOf = (carried: readonly Carried[]): readonly string[] =>
	carried.flatMap(({ toDo }) => toDo ?? []);

function carriedText(carried: readonly Carried[]): string {
	if (carried.length === 0) return `${NOTHING_CARRIED}\n`;
	return [CARRIED_TITLE, ...carried.map(({ text }) => `  ${text}`)]
		.map((one) => `${one}\n`)
		.join('');
}
