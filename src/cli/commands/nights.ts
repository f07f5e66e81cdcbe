// `rackside nights`: the nights recorded, newest first, with their state.

import { tmpdir } from 'node:os';
import { cleanText } from '../../base/clean-text.ts';
import { dayTimeText } from '../../base/show-clock.ts';
import type { NightSummary } from '../../disk/nights-folder.ts';
import { findingsOf } from '../../disk/nights-folder.ts';
import { isWipedByRestart } from '../../disk/paths.ts';
import { realDisk } from '../../disk/real-disk.ts';
import { readTroubles, type Trouble } from '../../disk/trouble-log.ts';
import type { Finding } from '../../journal/findings.ts';
import { COMMAND_WORDS } from '../../words/commands.ts';
import { diskFaultWords, liesElsewhere, liesUnsafe } from '../../words/disk.ts';
import { nightFindingWords } from '../../words/night-file.ts';
import { NIGHT_STATES, noNights } from '../../words/program.ts';
import { NO_TROUBLES, TROUBLES_TITLE, troubleWords } from '../../words/trouble-log.ts';
import { readGear } from '../bench/gear-journal.ts';
import type { CliCommand } from '../command.ts';
import { JSON_OPTION } from '../command.ts';
import { EXIT } from '../exit-code.ts';
import { localDay, localMoment } from '../local-day.ts';
import { localOffsetMinutes } from '../local-offset.ts';
import { isFinished } from '../nights/night-on-disk.ts';
import { seenNights } from '../nights/night-places.ts';
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
		const { nights: seen, isPart } = seenNights(places, io);
		const nights = seen.map((night) => ({
			id: night.id,
			title: night.header?.title ?? null,
			state: stateOf(night),
			isRehearsal: night.header?.isRehearsal ?? false,
			startedAt: night.startedAtMs === null ? null : new Date(night.startedAtMs).toISOString(),
			startedAtMs: night.startedAtMs,
			bytes: night.sizeBytes,
			elsewhere: whereOf(night, folder),
			...noticed(findingsOf(realDisk, folder, night)),
			problem: night.problem && diskFaultWords(night.problem),
		}));
		const isVerbose = request.options.verbose === true;
		const { troubles, fault } = isVerbose ? readTroubles(realDisk, places.data) : NONE_READ;
		const more = isVerbose ? { troubles: troubles.map(troubleJson) } : {};
		if (request.options.json) io.write(`${JSON.stringify({ folder, nights, ...more })}\n`);
		// Where a folder cannot be listed, there may be some.
		else if (nights.length === 0 && !isPart) io.write(`${noNights(cleanText(folder))}\n`);
		else for (const night of nights) io.write(`${cleanText(lineOf(night))}\n`);
		if (isVerbose && !request.options.json && fault === null) io.write(troubleLines(troubles));
		const gear = isVerbose ? readGear(places).findings : [];
		for (const one of gear) io.complain(`${cleanText(one)}\n`);
		if (fault) io.complain(`${cleanText(diskFaultWords(fault))}\n`);
		if (isPart || fault) return EXIT.unusable;
		return gear.length > 0 || nights.some(isToLookAt) ? EXIT.toLookAt : EXIT.fine;
	},
};

/** Where a night lies, where that is to be told; null where it is in its own folder, and safe there. */
function whereOf({ away }: NightSummary, home: string): string | null {
	const isWiped = isWipedByRestart(away ?? home, tmpdir());
	if (away !== null) return liesElsewhere(away, isWiped);
	return isWiped ? liesUnsafe(home) : null;
}

const NONE_READ = { troubles: [], fault: null };

/** What its files say of a night, beside that its beginning is lost, which its problem says. */
function noticed(findings: readonly Finding[]) {
	const words = (isCutOff: boolean) =>
		findings
			.filter(({ code }) => code !== 'header-missing' && (code === 'tail-cut-off') === isCutOff)
			.map(nightFindingWords);
	return { incomplete: words(true), damage: words(false) };
}

function isToLookAt({ state, isRehearsal, elsewhere, damage }: NightLine): boolean {
	return (state !== 'finished' && !isRehearsal) || elsewhere !== null || damage.length > 0;
}

function troubleJson({ atMs, code, detail }: Trouble) {
	return { at: new Date(atMs).toISOString(), code, detail };
}

function troubleLines(troubles: readonly Trouble[]): string {
	if (troubles.length === 0) return `\n${NO_TROUBLES}\n`;
	const lines = troubles.map(
		(one) =>
			`${localDay(one.atMs)} ${dayTimeText(one.atMs, localOffsetMinutes(one.atMs))}  ${troubleWords(one)}\n`,
	);
	return `\n${TROUBLES_TITLE}\n${lines.join('')}`;
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
	readonly elsewhere: string | null;
	readonly incomplete: readonly string[];
	readonly damage: readonly string[];
	readonly problem: string | null;
};

function lineOf({
	id,
	title,
	state,
	isRehearsal,
	startedAtMs,
	elsewhere,
	incomplete,
	damage,
	problem,
}: NightLine): string {
	const day = startedAtMs === null ? '' : localMoment(startedAtMs);
	const parts = [
		day,
		NIGHT_STATES[state],
		isRehearsal ? NIGHT_STATES.rehearsal : null,
		title,
		elsewhere,
		...incomplete,
		...damage,
		problem !== null && damage.includes(problem) ? null : problem,
		id,
	];
	return parts.filter((part) => part).join('  ');
}
