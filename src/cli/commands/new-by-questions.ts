// `rackside new` by questions: the screen, the draft that outlives it, and the file at the end.

import { basename, dirname, relative, resolve } from 'node:path';
import { cleanText } from '../../base/clean-text.ts';
import { slug } from '../../base/slug.ts';
import { realClock } from '../../disk/clock.ts';
import { draftFile } from '../../disk/draft-file.ts';
import { writeExport } from '../../disk/export-file.ts';
import { makeFolders } from '../../disk/folders.ts';
import { realDisk } from '../../disk/real-disk.ts';
import { drawNewShow } from '../../new-show/draw-new-show.ts';
import {
	type Kept,
	keptOf,
	type NewShow,
	paste,
	press,
	startNewShow,
} from '../../new-show/new-show.ts';
import { writeShowFile } from '../../setlist/write-show-file.ts';
import { nodeClock } from '../../terminal/clock.ts';
import { styledRow, stylingOf } from '../../ui/styled-row.ts';
import { exportProblem } from '../../words/disk.ts';
import * as words from '../../words/new-show.ts';
import { problemText } from '../../words/problem-text.ts';
import { faultWords } from '../../words/program.ts';
import type { Request } from '../command.ts';
import { EXIT } from '../exit-code.ts';
import type { Io } from '../io.ts';
import { livePreferences } from '../live-preferences.ts';
import { type ShownNight, screenAbilities, screenOptions, showLive } from '../live-screen.ts';
import { localOffsetMinutes } from '../local-offset.ts';
import { openShow, showTree } from '../open-show.ts';
import { placesOf } from '../places.ts';
import { shellWord } from '../shell-word.ts';
import { screenWayOut } from '../way-out.ts';
import { writeTrace } from '../write-trace.ts';
import { risksOf, risksText } from './check.ts';

const TICK_MS = 60_000;
const DRAFT = 'new-show';
const ENDING = '.yaml';

/** Asks for a show and writes it to the file, or to one named after its title; comes back only where it could not ask. */
export async function newByQuestions(
	file: string | null,
	request: Request,
	io: Io,
): Promise<number> {
	if (!io.isInputTerminal || !io.isOutputTerminal) {
		io.complain(`${words.NEEDS_LIST_OR_TERMINAL}\n`);
		return EXIT.unusable;
	}
	const abilities = screenAbilities(request, io);
	if (abilities === null) return EXIT.unusable;
	if (file !== null && realDisk.stat(resolve(io.cwd, file)) !== null) {
		io.complain(`${words.fileThere(cleanText(file))}\n`);
		return EXIT.unusable;
	}
	const places = placesOf(request, io);
	makeFolders(realDisk, places.data);
	const drafts = keptDraft(places.data);
	const page = newShowPage({
		first: startNewShow({ today: today(io), title: titleOf(file) }, drafts.kept()),
		keep: drafts.keep,
		end: (state) => {
			shutdown.begin({ kind: 'quit', code: state });
		},
		finish: (state) => writeAndCheck(state, file, { request, io }),
	});
	const clock = nodeClock();
	const shutdown = screenWayOut({
		...{ clock, io },
		syncJournal: async () => page.keepNow(),
		tell: ({ ending }) => {
			if (ending.kind === 'fault')
				io.complain(`${faultWords(writeTrace(ending.error, io), false)}\n`);
			const ended = page.ended();
			if (ended !== null) io.write(ended);
			else io.write(`${drafts.words(page.state())}\n`);
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
				file: fileName(file, page.state()),
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

/** The day where this laptop is. */
function today(io: Io): string {
	const nowMs = io.wallMs();
	return new Date(nowMs + localOffsetMinutes(nowMs) * 60_000).toISOString().slice(0, 10);
}

function titleOf(file: string | null): string {
	const name = file === null ? '' : cleanText(basename(file).replace(/\.ya?ml$/i, ''));
	return name === '' ? words.DEFAULT_TITLE : name;
}

function fileName(file: string | null, { making }: NewShow): string {
	return file === null ? `${slug(making.draft.title)}${ENDING}` : basename(file);
}

/** The draft in the data folder. */
function keptDraft(folder: string) {
	const store = draftFile(realDisk, { folder, night: DRAFT });
	const asStored = ({ answers, typed }: Kept) => ({ answers: JSON.stringify(answers), typed });
	return {
		kept: (): Kept | null => {
			const { answers, typed = '' } = store.kept();
			return answers === undefined ? null : { answers: textsIn(answers), typed };
		},
		keep: (kept: Kept | null): void => store.keep(kept === null ? {} : asStored(kept)),
		/** What is to be said when the questions are left: whether the draft is on the disk. */
		words: (state: NewShow): string => {
			const kept = keptOf(state);
			if (kept === null) return words.draftKept;
			if (kept.answers.length === 0 && kept.typed === '') return words.NOTHING_BEGUN;
			const isKept = store.kept().answers === asStored(kept).answers;
			return isKept ? words.draftKept : words.draftNotKept;
		},
	};
}

function textsIn(json: string): readonly string[] {
	try {
		const found: unknown = JSON.parse(json);
		return Array.isArray(found) ? found.filter((one) => typeof one === 'string') : [];
	} catch {
		return [];
	}
}

/** What came of writing the file: what is to be said on the plain terminal with the exit code, or why it could not be. */
type Finished =
	| { readonly text: Promise<string>; readonly code: () => number }
	| { readonly why: string };

type PageParts = {
	readonly first: NewShow;
	readonly keep: (kept: Kept | null) => void;
	readonly end: (code: number) => void;
	readonly finish: (state: NewShow) => Finished;
};

/** The questions as the live screen shows what takes keys. */
function newShowPage({ first, keep, end, finish }: PageParts): ShownNight & {
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
		finished.text.then(
			(text) => {
				ended = text;
				end(finished.code());
			},
			() => end(EXIT.toLookAt),
		);
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

/** Writes the file and checks it. */
function writeAndCheck(
	{ making }: NewShow,
	file: string | null,
	{ request, io }: { readonly request: Request; readonly io: Io },
): Finished {
	const target = resolve(io.cwd, file ?? `${slug(making.draft.title)}${ENDING}`);
	const done = writeExport(realDisk, {
		folder: dirname(target),
		name: basename(target),
		text: writeShowFile(making.draft),
		isDefaultName: file === null,
		isForced: false,
	});
	if ('fault' in done) return { why: cleanText(problemText(exportProblem(done.fault))) };
	const name = relative(io.cwd, done.path);
	let code: number = EXIT.toLookAt;
	const checked = async (): Promise<string> => {
		const { show, problems } = await openShow(name, request, io);
		const root = await showTree(name, io);
		const risks = show === null ? [] : risksOf(show, root);
		if (show !== null && risks.length === 0) code = EXIT.fine;
		const found = show === null ? `${problems.map(problemText).join('\n')}\n` : risksText(risks);
		return `${words.madeFile(cleanText(name))}\n${found}${words.whatNext(shellWord(name))}\n`;
	};
	return { text: checked(), code: () => code };
}
