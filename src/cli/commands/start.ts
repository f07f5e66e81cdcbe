// `rackside` alone: a page with all that one may want to begin with. Without a terminal it prints the run sheet of
// the example, so that a first look never fails.

import type { NightSummary } from '../../disk/nights-folder.ts';
import { showIdentity } from '../../disk/paths.ts';
import { realDisk } from '../../disk/real-disk.ts';
import { settingsNow } from '../../disk/settings.ts';
import { drawStartPage } from '../../screen/start-page.ts';
import { expectLateEnter } from '../../terminal/late-enter.ts';
import type { TerminalAbilities } from '../../terminal/terminal-kind.ts';
import { styledRow, stylingOf } from '../../ui/styled-row.ts';
import { COMMAND_WORDS } from '../../words/commands.ts';
import { EXAMPLE_SHEET } from '../../words/program.ts';
import { momentWords, moreUnfinished } from '../../words/start-page.ts';
import type { CliCommand, Request } from '../command.ts';
import { exampleShowPath } from '../example-show.ts';
import { EXIT } from '../exit-code.ts';
import type { Io } from '../io.ts';
import { runLive } from '../live/live.ts';
import { screenAbilities } from '../live/live-screen.ts';
import { showPage } from '../live/page-screen.ts';
import { localDay, localTime } from '../local-day.ts';
import { isFinished, lastPlayed, nightOnDisk, standsAt } from '../nights/night-on-disk.ts';
import { searchedNights } from '../nights/night-places.ts';
import { offeredShows } from '../offered-shows.ts';
import { placesOf } from '../places.ts';
import {
	type Choice,
	type Opening,
	pressOnPage,
	startChoices,
	startItems,
	unofferedCount,
} from '../start-choices.ts';

/** The commands that the page may lead to, by name. */
export type Reachable = Readonly<Record<string, { readonly load: () => Promise<CliCommand> }>>;

export const startCommand = (commands: Reachable): CliCommand => ({
	usage: '',
	about: [COMMAND_WORDS.start.about],
	example: 'rackside',
	options: {},
	words: { least: 0, most: 0 },
	run: async (request, io) => {
		if (!io.isInputTerminal || !io.isOutputTerminal) return printSheet(request, io);
		const abilities = screenAbilities(request, io);
		if (abilities === null) return EXIT.unusable;
		const hasCommand = (name: string) => Object.hasOwn(commands, name);
		const chosen = await choose(await offer(hasCommand, request, io), abilities);
		if (chosen === null) return EXIT.fine;
		const { options } = request;
		if (chosen.kind === 'show') {
			const live = { file: chosen.file, request: { words: [chosen.file], options } };
			return runLive({ ...live, speed: 1, isRehearsal: false }, io);
		}
		const words = chosen.kind === 'night' ? [chosen.night] : [];
		const command = await commands[chosen.name]?.load();
		return command?.run({ words, options }, io) ?? EXIT.unusable;
	},
});

async function printSheet(request: Request, io: Io): Promise<number> {
	const { planShow } = await import('../plan-commands.ts');
	const path = exampleShowPath();
	const sheet = { words: [path], options: { ...request.options, sheet: true } } as const;
	const code = await planShow(sheet, io, false);
	if (code === EXIT.fine) {
		io.write(`\n${EXAMPLE_SHEET}\n`);
	}
	return code;
}

type Offer = {
	readonly choices: readonly Choice[];
	readonly day: string;
	readonly note: string | null;
	readonly colours: Parameters<typeof stylingOf>[0];
};

async function offer(
	hasCommand: (name: string) => boolean,
	request: Request,
	io: Io,
): Promise<Offer> {
	const places = placesOf(request, io);
	const { values } = settingsNow({ disk: realDisk, folder: places.settings });
	const { folders, nights } = searchedNights(places, io);
	const day = localDay(io.wallMs());
	const more = unofferedCount(nights);
	const own = nights.filter(({ header }) => header?.isRehearsal === false);
	const isOver = ({ lastRecords }: NightSummary) => isFinished(lastRecords);
	const played = lastPlayed(folders, own.filter(isOver)) ?? lastPlayed(folders, own);
	const choices = startChoices({
		nights,
		standsAt: ({ id }) => standsAt(nightOnDisk(folders, id)),
		shows: await offeredShows({ today: day, last: values.lastShow }, request, io),
		played: own.find(({ id }) => id === played?.id) ?? null,
		example: showIdentity(exampleShowPath()),
		moment: (atMs) => momentWords(localDay(atMs), localTime(atMs), day),
		hasCommand,
	});
	return {
		choices,
		day,
		note: more === 0 ? null : moreUnfinished(more),
		colours: values.colours,
	};
}

/** What was chosen on the page; null where it was left. */
async function choose(
	{ choices, day, note, colours }: Offer,
	{ isUnicode, colorDepth }: TerminalAbilities,
): Promise<Opening | null> {
	const items = startItems(choices);
	const styling = stylingOf(colours, colorDepth);
	let picked = 0;
	let chosen: Opening | null = null;
	await showPage({
		rowsAt: (size) =>
			drawStartPage({ items, picked, day, note }, size, { isAscii: !isUnicode }).map((row) =>
				styledRow(row, styling, size.columns),
			),
		press: (key) => {
			const step = pressOnPage(items, picked, key);
			({ picked } = step);
			if (step.done === 'open') chosen = choices[picked]?.opens ?? null;
			if (step.done === 'open' && key !== 'enter') expectLateEnter();
			return step.done !== null;
		},
	});
	return chosen;
}
