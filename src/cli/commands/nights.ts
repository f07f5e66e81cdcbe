// `rackside nights`: the nights recorded, newest first, with their state.

import { cleanText } from '../../base/clean-text.ts';
import { dayTimeText } from '../../base/show-clock.ts';
import type { NightSummary } from '../../disk/nights-folder.ts';
import { listNights } from '../../disk/nights-folder.ts';
import { realDisk } from '../../disk/real-disk.ts';
import { readTroubles, type Trouble } from '../../disk/trouble-log.ts';
import { COMMAND_WORDS } from '../../words/commands.ts';
import { diskFaultWords } from '../../words/disk.ts';
import { incompleteWords } from '../../words/night-file.ts';
import { NIGHT_STATES, noNights } from '../../words/program.ts';
import { NO_TROUBLES, TROUBLES_TITLE, troubleWords } from '../../words/trouble-log.ts';
import type { CliCommand } from '../command.ts';
import { JSON_OPTION } from '../command.ts';
import { EXIT } from '../exit-code.ts';
import { localOffsetMinutes } from '../local-offset.ts';
import { isFinished } from '../night-on-disk.ts';
import { nightFolders } from '../night-places.ts';
import { placesOf } from '../places.ts';

export const nightsCommand: CliCommand = {
	usage: 'nights',
	about: [COMMAND_WORDS.nights.about],
	example: 'rackside nights',
	options: { ...JSON_OPTION, verbose: { words: COMMAND_WORDS.nights.options.verbose } },
	words: { least: 0, most: 0 },
	run: (request, io) => {
		const places = placesOf(request, io);
		const folder = places.nights;
		const nights = listNights(realDisk, nightFolders(places)).map((night) => ({
			id: night.id,
			title: night.header?.title ?? null,
			state: stateOf(night),
			isRehearsal: night.header?.isRehearsal ?? false,
			startedAt: night.startedAtMs === null ? null : new Date(night.startedAtMs).toISOString(),
			startedAtMs: night.startedAtMs,
			bytes: night.sizeBytes,
			incomplete: night.cutOff.map(incompleteWords),
			problem: night.problem && diskFaultWords(night.problem),
		}));
		const isVerbose = request.options.verbose === true;
		const troubles = isVerbose ? readTroubles(realDisk, places.data) : [];
		const more = isVerbose ? { troubles: troubles.map(troubleJson) } : {};
		if (request.options.json) io.write(`${JSON.stringify({ folder, nights, ...more })}\n`);
		else if (nights.length === 0) io.write(`${noNights(cleanText(folder))}\n`);
		else for (const night of nights) io.write(`${cleanText(lineOf(night))}\n`);
		if (isVerbose && !request.options.json) io.write(troubleLines(troubles));
		const isToLookAt = nights.some(
			({ state, isRehearsal }) => state !== 'finished' && !isRehearsal,
		);
		return isToLookAt ? EXIT.toLookAt : EXIT.fine;
	},
};

function troubleJson({ atMs, code, detail }: Trouble) {
	return { at: new Date(atMs).toISOString(), code, detail };
}

function troubleLines(troubles: readonly Trouble[]): string {
	if (troubles.length === 0) return `\n${NO_TROUBLES}\n`;
	const lines = troubles.map((one) => `${momentOf(one.atMs, true)}  ${troubleWords(one)}\n`);
	return `\n${TROUBLES_TITLE}\n${lines.join('')}`;
}

/** Day and time where the machine stands: `2026-06-12 20:41`. */
function momentOf(atMs: number, hasSeconds: boolean): string {
	const offset = localOffsetMinutes(atMs);
	const day = new Date(atMs + offset * 60_000).toISOString().slice(0, 10);
	return `${day} ${dayTimeText(atMs, offset).slice(0, hasSeconds ? 8 : 5)}`;
}

type NightState = 'finished' | 'unfinished' | 'unreadable';

function stateOf(night: NightSummary): NightState {
	if (night.header === null) return 'unreadable';
	return isFinished(night.lastRecords) ? 'finished' : 'unfinished';
}

type NightLine = {
	readonly id: string;
	readonly title: string | null;
	readonly state: NightState;
	readonly isRehearsal: boolean;
	readonly startedAtMs: number | null;
	readonly incomplete: readonly string[];
	readonly problem: string | null;
};

function lineOf({
	id,
	title,
	state,
	isRehearsal,
	startedAtMs,
	incomplete,
	problem,
}: NightLine): string {
	const day = startedAtMs === null ? '' : momentOf(startedAtMs, false);
	const parts = [
		day,
		NIGHT_STATES[state],
		isRehearsal ? NIGHT_STATES.rehearsal : null,
		title,
		...incomplete,
		problem,
		id,
	];
	return parts.filter((part) => part).join('  ');
}
