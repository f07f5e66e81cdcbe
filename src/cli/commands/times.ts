// `rackside times`: what hand-overs and work really took over several nights, beside what the plan takes for them;
// used as own times only where that is asked for.

import { cleanText } from '../../base/clean-text.ts';
import { textTable } from '../../base/text-table.ts';
import { realDisk } from '../../disk/real-disk.ts';
import { openSettings } from '../../disk/settings.ts';
import { type NeededTime, neededTimes } from '../../history/needed-times.ts';
import { OWN_TIMES, usableTimes } from '../../showfile/own-times.ts';
import type { OwnTimes } from '../../showfile/show.ts';
import { COMMAND_WORDS } from '../../words/commands.ts';
import { diskFaultWords } from '../../words/disk.ts';
import {
	NOTHING_MEASURED,
	NOTHING_TO_USE,
	NOW_BUILT_IN,
	notInOneGo,
	PIECES_TABLE,
	secondsText,
	TIMES_MEAN,
	TIMES_TABLE,
	TOO_FEW,
	timesTitle,
	USE_TIMES,
	usedFrom,
} from '../../words/history.ts';
import { ownTimeWords, timeName, timeText, workOfTime } from '../../words/own-times.ts';
import { CAREFUL_ALONE, CAREFUL_WITH } from '../../words/requests.ts';
import type { CliCommand } from '../command.ts';
import { JSON_OPTION } from '../command.ts';
import { EXIT } from '../exit-code.ts';
import { type KnownNight, manyNights } from '../nights/many-nights.ts';
import { placesOf } from '../places.ts';
import { tellProblems } from '../tell-problems.ts';

/** Of older nights the hands and the act may have been others. */
const MOST_NIGHTS = 10;

export const timesCommand: CliCommand = {
	usage: 'times [NIGHT...]',
	about: [COMMAND_WORDS.times.about],
	example: 'rackside times --use',
	options: {
		...JSON_OPTION,
		each: { words: COMMAND_WORDS.times.options.each },
		use: { words: COMMAND_WORDS.times.options.use },
		careful: { words: COMMAND_WORDS.times.options.careful },
	},
	words: { least: 0, most: 50 },
	run: async (request, io) => {
		if (request.options.careful === true && request.options.use !== true) {
			return tellProblems([{ code: 'careful', what: CAREFUL_ALONE, hint: CAREFUL_WITH }], io);
		}
		const nights = manyNights(
			{ named: request.words, most: MOST_NIGHTS, since: null },
			request,
			io,
		);
		if (typeof nights === 'number') return nights;
		const times = neededTimes(nights.map(({ facts }) => facts));
		const store = await openSettings({ disk: realDisk, folder: placesOf(request, io).settings });
		const own = usableTimes(store.values.times).times;
		const isCareful = request.options.careful === true;
		const used = request.options.use === true ? measured(times, isCareful) : null;
		if (used !== null && Object.keys(used).length > 0) {
			const fault = store.change({ times: { ...store.values.times, ...used } });
			if (fault !== null) {
				io.complain(`${cleanText(diskFaultWords(fault))}\n`);
				return EXIT.unusable;
			}
		}
		if (request.options.json === true) {
			const told = times.map((time) => ({ ...time, ownSeconds: own[time.work] ?? null }));
			const of = nights.map(({ night }) => night.id);
			const pieces = nights.flatMap(({ night, facts }) =>
				facts.pieces.map((piece) => ({ night: night.id, ...piece })),
			);
			io.write(`${JSON.stringify({ nights: of, times: told, pieces, used })}\n`);
			return EXIT.fine;
		}
		const lines =
			used !== null
				? usedLines(used)
				: request.options.each === true
					? pieceLines(nights)
					: timesLines(nights.length, times, own);
		io.write(lines.map((line) => `${cleanText(line)}\n`).join(''));
		return EXIT.fine;
	},
};

function measured(times: readonly NeededTime[], isCareful: boolean): OwnTimes {
	return Object.fromEntries(
		times.flatMap(({ work, medianSeconds, highSeconds }) => {
			const seconds = isCareful ? highSeconds : medianSeconds;
			return seconds === null ? [] : [[work, seconds]];
		}),
	);
}

function usedLines(used: OwnTimes): readonly string[] {
	const lines = Object.entries(used).map(([work, seconds]) => `  ${ownTimeWords(work, seconds)}`);
	return lines.length === 0 ? [NOTHING_TO_USE] : [usedFrom, ...lines];
}

function pieceLines(nights: readonly KnownNight[]): readonly string[] {
	const rows = nights.flatMap(({ day, facts }) =>
		facts.pieces.map((piece) => [
			day,
			piece.title ?? '',
			piece.shown,
			workWords(piece.work),
			secondsText(piece.plannedSeconds),
			secondsText(piece.seconds),
		]),
	);
	return rows.length === 0 ? [NOTHING_MEASURED] : textTable(PIECES_TABLE, rows);
}

function workWords(work: string): string {
	const named = OWN_TIMES.find(({ name }) => name === work);
	return named === undefined ? work : workOfTime(named);
}

function timesLines(
	nights: number,
	times: readonly NeededTime[],
	own: OwnTimes,
): readonly string[] {
	if (times.length === 0) return [NOTHING_MEASURED];
	const rows = times.map(({ work, count, usedSeconds, ...time }) => {
		const named = OWN_TIMES.find(({ name }) => name === work);
		const mine = own[work];
		return [
			named === undefined ? work : timeName(named),
			String(count),
			time.medianSeconds === null ? TOO_FEW : secondsText(time.medianSeconds),
			secondsText(time.highSeconds),
			secondsText(usedSeconds),
			mine === undefined ? `${timeText(named?.usual ?? null)}${NOW_BUILT_IN}` : timeText(mine),
		];
	});
	const leftOut = times.reduce((sum, one) => sum + one.leftOut, 0);
	return [
		timesTitle(nights),
		'',
		...textTable(TIMES_TABLE, rows),
		'',
		...TIMES_MEAN,
		...(leftOut === 0 ? [] : [notInOneGo(leftOut)]),
		USE_TIMES,
	];
}
