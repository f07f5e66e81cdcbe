// `rackside drill`: the moments that hurt, one after the other, on a clock; and the table of who was how fast.

import { randomInt } from 'node:crypto';
import { cleanText } from '../../base/clean-text.ts';
import { realClock } from '../../disk/clock.ts';
import {
	changeDrillResults,
	type DrillPlace,
	drillResultsPath,
	readDrillResults,
	withAnswer,
} from '../../disk/drill-results.ts';
import { realDisk } from '../../disk/real-disk.ts';
import { drawMoments } from '../../drill/draw-moments.ts';
import { type DrillResult, drill } from '../../drill/drill.ts';
import { ledNight } from '../../drill/led-night.ts';
import type { TrialOptions } from '../../drill/trial-night.ts';
import { keyOfAction } from '../../keys/key-choices.ts';
import { COMMAND_WORDS } from '../../words/commands.ts';
import { diskFaultWords } from '../../words/disk.ts';
import { DRILL, type DrillKind } from '../../words/drill.ts';
import { range } from '../../words/requests.ts';
import type { CliCommand, Request } from '../command.ts';
import { JSON_OPTION, optionText } from '../command.ts';
import { askPerson, LONGEST_NAME, personName } from '../drill-person.ts';
import { drillTable, resultsTables } from '../drill-tables.ts';
import { exampleShowPath } from '../example-show.ts';
import { EXIT } from '../exit-code.ts';
import type { Io } from '../io.ts';
import { livePreferences } from '../live-preferences.ts';
import { screenAbilities } from '../live-screen.ts';
import { openShow } from '../open-show.ts';
import { placesOf } from '../places.ts';
import { shellWord } from '../shell-word.ts';
import { showTrial, trialPreferences } from '../show-trial.ts';
import { tellProblems } from '../tell-problems.ts';
import { whileWorking } from '../while-working.ts';

/** Each kind of moment once. */
const USUAL_MOMENTS = 8;
const MOST_MOMENTS = 40;
const MOST_SEED = 999_999;

export const drillCommand: CliCommand = {
	usage: 'drill [SHOW]',
	about: [COMMAND_WORDS.drill.about],
	example: 'rackside drill shows/festival.yaml --moments 4',
	options: {
		...JSON_OPTION,
		seed: { value: 'N', words: COMMAND_WORDS.drill.options.seed },
		moments: { value: 'N', words: COMMAND_WORDS.drill.options.moments },
		name: { value: 'NAME', words: COMMAND_WORDS.drill.options.name },
		results: { words: COMMAND_WORDS.drill.options.results },
	},
	words: { least: 0, most: 1 },
	run: async (request, io) => {
		const place: DrillPlace = { disk: realDisk, folder: placesOf(request, io).data };
		// What is asked for as data can only be the table.
		if (request.options.results === true || request.options.json === true)
			return printResults(place, request, io);
		const seed = wholeNumber(request, 'seed', { least: 0, most: MOST_SEED });
		const count = wholeNumber(request, 'moments', { least: 1, most: MOST_MOMENTS });
		const named = optionText(request, 'name');
		const name = named === null ? null : personName(named);
		const problems = [
			...(seed === 'wrong' ? [refused(request, 'seed', range(0, MOST_SEED))] : []),
			...(count === 'wrong' ? [refused(request, 'moments', range(1, MOST_MOMENTS))] : []),
			...(named !== null && name === null
				? [refused(request, 'name', DRILL.nameExpected(LONGEST_NAME))]
				: []),
		];
		if (seed === 'wrong' || count === 'wrong' || problems.length > 0)
			return tellProblems(problems, io);
		const abilities = screenAbilities(request, io);
		if (abilities === null) return EXIT.unusable;
		const file = request.words[0] ?? exampleShowPath();
		const { show, problems: faults } = await openShow(file, request, io);
		if (!show) return tellProblems(faults, io);
		const { results, problem } = readDrillResults(place);
		if (problem !== null) io.complain(`${cleanText(diskFaultWords(problem))} ${DRILL.notKept}\n`);
		const person = name ?? results.who ?? (await askPerson());
		if (person === null) return EXIT.fine;
		const { upMs: handMs } = realClock();
		const settings = placesOf(request, io).settings;
		const preferences = trialPreferences(livePreferences({ disk: realDisk, folder: settings }));
		const options: TrialOptions = { show, handMs, preferences };
		const chosen = { seed: seed ?? randomInt(MOST_SEED + 1), count: count ?? USUAL_MOMENTS };
		const moments = whileWorking(DRILL.drawing, () =>
			drawMoments(options, {
				...chosen,
				keyOf: (id) => keyOfAction(id, preferences.values().keys),
			}),
		);
		if (moments.length === 0) {
			io.complain(`${DRILL.nothing}\n`);
			return EXIT.unusable;
		}
		const before = Object.hasOwn(results.people, person) ? results.people[person] : undefined;
		const bestOf = (kind: DrillKind) => before?.[kind]?.best ?? null;
		const done: DrillResult[] = [];
		let fault = problem;
		const onResult = (result: DrillResult): void => {
			done.push(result);
			// At once, so that a drill that is left, or killed, keeps what was done.
			fault ??= changeDrillResults(place, (all) => ({
				...withAnswer(all, { person, ...result }),
				who: person,
			}));
		};
		const night = ledNight(drill({ options, moments, bestOf, onResult }), handMs);
		const farewell = (): string => {
			const path = cleanText(drillResultsPath(place.folder));
			const kept =
				fault === null
					? DRILL.kept(person, path)
					: `${cleanText(diskFaultWords(fault))} ${DRILL.notKept}`;
			const table = done.length === 0 ? [] : [drillTable(done, bestOf), '', kept];
			const again = [
				...request.words.map((one) => shellWord(one)),
				...(count === null ? [] : ['--moments', String(count)]),
				...['--seed', String(chosen.seed)],
			];
			return `${[...table, DRILL.again(again)].join('\n')}\n`;
		};
		return showTrial({ night, abilities, handMs, farewell }, io);
	},
};

function printResults(place: DrillPlace, request: Request, io: Io): number {
	const { results, problem } = readDrillResults(place);
	if (problem !== null) {
		io.complain(`${cleanText(diskFaultWords(problem))}\n`);
		return EXIT.unusable;
	}
	const isJson = request.options.json === true;
	io.write(isJson ? `${JSON.stringify({ people: results.people })}\n` : resultsTables(results));
	return EXIT.fine;
}

/** The number that an option gives; null where it was not given. */
function wholeNumber(
	request: Request,
	name: string,
	{ least, most }: { readonly least: number; readonly most: number },
): number | null | 'wrong' {
	const text = optionText(request, name);
	if (text === null) return null;
	const number = /^\d{1,6}$/.test(text) ? Number(text) : Number.NaN;
	return number >= least && number <= most ? number : 'wrong';
}

function refused(request: Request, name: 'seed' | 'moments' | 'name', expected: string) {
	const what = DRILL.needs[name];
	return {
		code: `drill-${name}`,
		what,
		found: cleanText(optionText(request, name) ?? ''),
		expected,
	};
}
