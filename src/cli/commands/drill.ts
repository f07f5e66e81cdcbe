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
import { askOnTerminal } from '../ask-on-terminal.ts';
import { askedNumber } from '../asked-number.ts';
import type { CliCommand, Request } from '../command.ts';
import { JSON_OPTION, optionText } from '../command.ts';
import { askPerson, LONGEST_NAME, personName } from '../drill/drill-person.ts';
import { drillTable, resultsTables } from '../drill/drill-tables.ts';
import { showTrial, trialPreferences } from '../drill/show-trial.ts';
import { exampleShowPath } from '../example-show.ts';
import { EXIT } from '../exit-code.ts';
import type { Io } from '../io.ts';
import { livePreferences } from '../live/live-preferences.ts';
import { screenAbilities } from '../live/live-screen.ts';
import { openShow } from '../open-show.ts';
import { placesOf } from '../places.ts';
import { shellWord } from '../shell/shell-word.ts';
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
		const whole = { isWhole: true, otherwise: null } as const;
		const seed = askedNumber(request, 'seed', { from: 0, to: MOST_SEED, ...whole });
		const count = askedNumber(request, 'moments', { from: 1, to: MOST_MOMENTS, ...whole });
		const named = optionText(request, 'name');
		const name = named === null ? null : personName(named);
		if (!seed.ok) return tellProblems(seed.problems, io);
		if (!count.ok) return tellProblems(count.problems, io);
		if (named !== null && name === null) {
			const expected = DRILL.nameExpected(LONGEST_NAME);
			const problem = { code: 'drill-name', what: DRILL.needsName, found: cleanText(named) };
			return tellProblems([{ ...problem, expected }], io);
		}
		const abilities = screenAbilities(request, io);
		if (abilities === null) return EXIT.unusable;
		const file = request.words[0] ?? exampleShowPath();
		const { show, problems: faults } = await openShow(file, request, io);
		if (!show) return tellProblems(faults, io);
		const { results, problem } = readDrillResults(place);
		if (problem !== null) io.complain(`${cleanText(diskFaultWords(problem))} ${DRILL.notKept}\n`);
		const person = name ?? results.who ?? (await askPerson(askOnTerminal(io)));
		if (person === null) return EXIT.fine;
		const { upMs: handMs } = realClock();
		const settings = placesOf(request, io).settings;
		const preferences = trialPreferences(livePreferences({ disk: realDisk, folder: settings }));
		const options: TrialOptions = { show, handMs, preferences };
		const chosen = {
			seed: seed.value ?? randomInt(MOST_SEED + 1),
			count: count.value ?? USUAL_MOMENTS,
		};
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
				...(count.value === null ? [] : ['--moments', String(count.value)]),
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
