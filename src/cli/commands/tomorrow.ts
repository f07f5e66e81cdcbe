// `rackside tomorrow`: what is to be done before the next show, to be ticked off on a terminal, else printed.

import { dirname } from 'node:path';
import { cleanText } from '../../base/clean-text.ts';
import { showIdentity } from '../../disk/paths.ts';
import { realDisk } from '../../disk/real-disk.ts';
import { settingsNow } from '../../disk/settings.ts';
import { keepTick, readTicks, type TicksPlace } from '../../disk/ticks-file.ts';
import { tomorrowLines } from '../../report/tomorrow.ts';
import {
	type TomorrowPage,
	tickOf,
	tomorrowCsv,
	tomorrowJson,
	tomorrowMarkdown,
} from '../../report/tomorrow-forms.ts';
import { drawnOrder, drawTomorrow } from '../../screen/tomorrow-view.ts';
import { styledRow, stylingOf } from '../../ui/styled-row.ts';
import { COMMAND_WORDS } from '../../words/commands.ts';
import { diskFaultWords } from '../../words/disk.ts';
import { UNKNOWN_FORM } from '../../words/requests.ts';
import { nightWords } from '../../words/tomorrow.ts';
import type { CliCommand, Request } from '../command.ts';
import { JSON_OPTION, optionText } from '../command.ts';
import { EXIT } from '../exit-code.ts';
import type { Io } from '../io.ts';
import { screenAbilities } from '../live/live-screen.ts';
import { showPage } from '../live/page-screen.ts';
import { type KnownNight, manyNights } from '../nights/many-nights.ts';
import { notAmong } from '../not-among.ts';
import { openShow } from '../open-show.ts';
import { placesOf } from '../places.ts';
import { tellProblems } from '../tell-problems.ts';

/** So many nights back strings are followed. */
const MOST_NIGHTS = 20;

const FORMS: Readonly<Record<string, (page: TomorrowPage) => string>> = {
	markdown: tomorrowMarkdown,
	csv: tomorrowCsv,
	json: tomorrowJson,
};

export const tomorrowCommand: CliCommand = {
	usage: 'tomorrow [NIGHT...]',
	about: [COMMAND_WORDS.tomorrow.about],
	example: 'rackside tomorrow --as csv',
	options: {
		...JSON_OPTION,
		as: { value: 'FORM', oneOf: Object.keys(FORMS), words: COMMAND_WORDS.tomorrow.options.as },
		next: { value: 'SHOW', words: COMMAND_WORDS.tomorrow.options.next },
	},
	words: { least: 0, most: 50 },
	run: async (request, io) => {
		const asked = request.options.json === true ? 'json' : optionText(request, 'as');
		const form = asked === null || Object.hasOwn(FORMS, asked) ? asked : undefined;
		if (form === undefined) return unknownForm(asked ?? '', io);
		const nights = manyNights(
			{ named: request.words, most: MOST_NIGHTS, since: null },
			request,
			io,
		);
		if (typeof nights === 'number') return nights;
		const last = nights.at(-1);
		if (last === undefined) return EXIT.unusable;
		const next = await nextShow(request, io);
		if (typeof next === 'number') return next;
		const lines = tomorrowLines({
			...last,
			...{ nights: nights.map(({ facts }) => facts), next },
		});
		const place = { disk: realDisk, folder: placesOf(request, io).nights, night: last.night.id };
		const { ticked, problem } = readTicks(place);
		if (problem !== null) io.complain(`${cleanText(diskFaultWords(problem))}\n`);
		const page = { night: nightWords(last.report.title, last.day), lines, ticked };
		if (form === null && io.isInputTerminal && io.isOutputTerminal) {
			return tickOff({ page, place }, request, io);
		}
		io.write((FORMS[form ?? 'markdown'] ?? tomorrowMarkdown)(page));
		return codeOf(last);
	},
};

/** As a report's: 1 where the night is not finished or its file is damaged. */
function codeOf({ report }: KnownNight): number {
	return report.isOver && report.damage.length === 0 ? EXIT.fine : EXIT.toLookAt;
}

function unknownForm(found: string, io: Io): number {
	const unknown = { code: 'unknown-form', what: UNKNOWN_FORM, found };
	return tellProblems([notAmong(unknown, Object.keys(FORMS))], io);
}

/** The next show where one is named; the exit code where it cannot be read, which is said. */
async function nextShow(request: Request, io: Io) {
	const file = optionText(request, 'next');
	if (file === null) return null;
	const { show, problems, path } = await openShow(file, request, io);
	return show ? { show, folder: dirname(showIdentity(path)) } : tellProblems(problems, io);
}

/** The page with keys: each tick is kept at once. */
async function tickOff(
	{ page, place }: { readonly page: TomorrowPage; readonly place: TicksPlace },
	request: Request,
	io: Io,
): Promise<number> {
	const abilities = screenAbilities(request, io);
	if (abilities === null) return EXIT.unusable;
	const settings = settingsNow({ disk: realDisk, folder: placesOf(request, io).settings });
	const styling = stylingOf(settings.values.colours, abilities.colorDepth);
	const order = drawnOrder(page.lines);
	const ticked = new Set(page.ticked);
	let picked = 0;
	let note: string | null = null;
	let isKept = true;
	const tick = (): void => {
		const line = order[picked];
		if (line === undefined) return;
		const name = tickOf(line);
		const isDone = !ticked.has(name);
		const fault = keepTick(place, name, isDone);
		isKept = fault === null;
		if (fault !== null) {
			note = diskFaultWords(fault);
			return;
		}
		if (isDone) ticked.add(name);
		else ticked.delete(name);
	};
	await showPage({
		rowsAt: (size) =>
			drawTomorrow({ ...page, ticked, picked, note }, size, { isAscii: !abilities.isUnicode }).map(
				(row) => styledRow(row, styling, size.columns),
			),
		press: (key) => {
			note = null;
			if (key === 'up') picked = Math.max(0, picked - 1);
			if (key === 'down') picked = Math.min(Math.max(0, order.length - 1), picked + 1);
			if (key === 'space' || key === 'enter' || key === 'x') tick();
			return key === 'esc' || key === 'q' || key === 'Q';
		},
	});
	return isKept ? EXIT.fine : EXIT.notKept;
}
