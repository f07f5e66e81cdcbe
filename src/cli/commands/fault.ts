// `rackside fault`: the next best test for what is heard from a player, with what was answered so far.

import { dirname, resolve } from 'node:path';
import { cleanText } from '../../base/clean-text.ts';
import type { Problem } from '../../base/problem.ts';
import { showIdentity } from '../../disk/paths.ts';
import { faultJson, faultLines } from '../../report/fault-page.ts';
import { batteriesLeft, isEmpty } from '../../rig/battery-hours.ts';
import type { Answer } from '../../rig/fault-belief.ts';
import { SYMPTOMS, type Symptom } from '../../rig/fault-suspects.ts';
import { faultStep } from '../../rig/find-fault.ts';
import type { Show } from '../../showfile/show.ts';
import { COMMAND_WORDS } from '../../words/commands.ts';
import { BAD_ANSWER, BAD_SYMPTOM, NO_PLAYER, NO_TEST } from '../../words/requests.ts';
import type { Asked } from '../asked-number.ts';
import { instrumentNamed } from '../bench/asked-instrument.ts';
import type { CliCommand, Request } from '../command.ts';
import { JSON_OPTION, optionText } from '../command.ts';
import { EXIT } from '../exit-code.ts';
import { causesBefore, foundBefore } from '../nights/found-before.ts';
import { nightPlaces } from '../nights/night-places.ts';
import { notAmong, type Unknown } from '../not-among.ts';
import { openShow } from '../open-show.ts';
import { placesOf } from '../places.ts';
import { tellProblems } from '../tell-problems.ts';

const { options: WORDS } = COMMAND_WORDS.fault;

export const faultCommand: CliCommand = {
	usage: 'fault SHOW PLAYER',
	about: [COMMAND_WORDS.fault.about],
	example: 'rackside fault shows/club.yaml bo --symptom hum',
	options: {
		...JSON_OPTION,
		symptom: { value: 'WHAT', oneOf: SYMPTOMS, words: WORDS.symptom },
		answers: { value: 'ANSWERS', words: WORDS.answers },
		instrument: { value: 'INSTRUMENT', words: WORDS.instrument },
		'in-song': { words: WORDS.inSong },
	},
	words: { least: 2, most: 2 },
	run: async (request, io) => {
		const [file = '', word = ''] = request.words;
		const { show, problems } = await openShow(file, request, io);
		if (!show) return tellProblems(problems, io);
		const player = askedPlayer(show, word);
		if (!player.ok) return tellProblems(player.problems, io);
		const symptom = askedSymptom(request);
		if (!symptom.ok) return tellProblems(symptom.problems, io);
		const instrument = askedHands(request, { show, player: player.value });
		if (!instrument.ok) return tellProblems(instrument.problems, io);
		const { folders } = nightPlaces(placesOf(request, io));
		const about = {
			player: player.value,
			instrument: instrument.value,
			symptom: symptom.value,
			doubted: batteriesLeft(show)
				.filter((one) => isEmpty(one) && (one.player ?? player.value) === player.value)
				.map(({ id }) => id),
			found: foundBefore(await causesBefore(folders, null), {
				...{ show, player: player.value },
				folder: dirname(showIdentity(resolve(io.cwd, file))),
			}),
		};
		const { tests } = faultStep(show, about, { aim: 'cause', answers: [] });
		const answers = askedAnswers(
			request,
			tests.map(({ id }) => id),
		);
		if (!answers.ok) return tellProblems(answers.problems, io);
		const aim = request.options['in-song'] === true ? 'sound' : 'cause';
		const step = faultStep(show, about, { aim, answers: answers.value });
		const sought = { about, aim, step } as const;
		if (request.options.json === true) io.write(`${JSON.stringify(faultJson(show, sought))}\n`);
		else
			io.write(
				faultLines(show, sought)
					.map((line) => `${cleanText(line)}\n`)
					.join(''),
			);
		return step.isContradictory ? EXIT.toLookAt : EXIT.fine;
	},
};

function askedPlayer({ players }: Show, word: string): Asked<string> {
	const key = word.toLowerCase();
	const player =
		players.find(({ id }) => id === word) ??
		players.find(({ id, name }) => [id.toLowerCase(), name.toLowerCase()].includes(key));
	if (player) return { ok: true, value: player.id };
	return refused(
		{ code: 'unknown-player', what: NO_PLAYER, found: word },
		players.map(({ id }) => id),
	);
}

function askedSymptom(request: Request): Asked<Symptom> {
	const text = optionText(request, 'symptom') ?? 'silent';
	const symptom = SYMPTOMS.find((one) => one === text.trim().toLowerCase());
	if (symptom !== undefined) return { ok: true, value: symptom };
	return refused({ code: 'bad-symptom', what: BAD_SYMPTOM, found: text }, SYMPTOMS);
}

/** What the player has in hands: as asked, else what the first song that names them gives. */
function askedHands(
	request: Request,
	{ show, player }: { readonly show: Show; readonly player: string },
): Asked<string | null> {
	const text = optionText(request, 'instrument');
	if (text !== null) return instrumentNamed(show, text);
	const part = show.songs.map(({ parts }) => parts[player]).find((one) => one?.kind === 'named');
	return { ok: true, value: part?.kind === 'named' ? part.instrument : null };
}

/** What is said for "it is right with this done", and for "nothing has changed". */
const ANSWERS: Readonly<Record<string, Answer>> = {
	sound: 'sound',
	gone: 'sound',
	clean: 'sound',
	right: 'sound',
	same: 'same',
	silent: 'same',
	still: 'same',
	none: 'same',
};

function askedAnswers(
	request: Request,
	tests: readonly string[],
): Asked<readonly { readonly test: string; readonly answer: Answer }[]> {
	const text = optionText(request, 'answers') ?? '';
	const all: { readonly test: string; readonly answer: Answer }[] = [];
	for (const one of text.split(',').map((each) => each.trim())) {
		if (one === '') continue;
		const at = one.lastIndexOf('=');
		const test = one.slice(0, Math.max(at, 0)).trim();
		const answer = Object.hasOwn(ANSWERS, one.slice(at + 1).trim())
			? ANSWERS[one.slice(at + 1).trim()]
			: undefined;
		if (at < 0 || answer === undefined) {
			return refused({ code: 'bad-answer', what: BAD_ANSWER, found: one }, [
				'bypass-board=sound',
				'swap-lead=same',
			]);
		}
		if (!tests.includes(test)) {
			return refused({ code: 'unknown-test', what: NO_TEST, found: test }, tests);
		}
		all.push({ test, answer });
	}
	return { ok: true, value: all };
}

function refused(
	unknown: Unknown,
	known: readonly string[],
): { readonly ok: false; readonly problems: readonly Problem[] } {
	return { ok: false, problems: [notAmong(unknown, known)] };
}
