// `rackside nights`: the nights recorded, newest first, with their state.

import { cleanText } from '../../base/clean-text.ts';
import { dayTimeText } from '../../base/show-clock.ts';
import type { NightSummary } from '../../disk/nights-folder.ts';
import { listNights } from '../../disk/nights-folder.ts';
import { realDisk } from '../../disk/real-disk.ts';
import { COMMAND_WORDS } from '../../words/commands.ts';
import { diskFaultWords } from '../../words/disk.ts';
import { incompleteWords } from '../../words/night-file.ts';
import { NIGHT_STATES, noNights } from '../../words/program.ts';
import type { CliCommand } from '../command.ts';
import { JSON_OPTION } from '../command.ts';
import { EXIT } from '../exit-code.ts';
import { localOffsetMinutes } from '../local-offset.ts';
import { isFinished } from '../night-on-disk.ts';
import { nightFolders, placesOf } from '../places.ts';

export const nightsCommand: CliCommand = {
	usage: 'nights',
	about: [COMMAND_WORDS.nights.about],
	example: 'rackside nights',
	options: JSON_OPTION,
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
		if (request.options.json) io.write(`${JSON.stringify({ folder, nights })}\n`);
		else if (nights.length === 0) io.write(`${noNights(cleanText(folder))}\n`);
		else for (const night of nights) io.write(`${cleanText(lineOf(night))}\n`);
		const isToLookAt = nights.some(
			({ state, isRehearsal }) => state !== 'finished' && !isRehearsal,
		);
		return isToLookAt ? EXIT.toLookAt : EXIT.fine;
	},
};

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
	const offset = localOffsetMinutes(startedAtMs ?? 0);
	const day =
		startedAtMs === null
			? ''
			: `${new Date(startedAtMs + offset * 60_000).toISOString().slice(0, 10)} ${dayTimeText(startedAtMs, offset).slice(0, 5)}`;
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
