// A show's rig as a page: each player's sound path, what its power comes to, and what every board is by
// song. For the bench and the case, before the doors.

import { textTable } from '../base/text-table.ts';
import { amplifierLoads } from '../rig/amplifier-loads.ts';
import { batteriesLeft } from '../rig/battery-hours.ts';
import { checkRig } from '../rig/check-rig.ts';
import { playersWithRig } from '../rig/rig-path.ts';
import { soundPath } from '../rig/sound-path.ts';
import { outputLoads } from '../rig/supply-loads.ts';
import { tempoTimes } from '../rig/tempo-times.ts';
import { toneCorners } from '../rig/tone-corners.ts';
import { twoSources } from '../rig/two-sources.ts';
import { runningOrder } from '../showfile/running-order.ts';
import type { Show } from '../showfile/show.ts';
import { pedalName, playerName, shownInstrument, songTitle } from '../showfile/shown-names.ts';
import { mendOfRisk } from '../words/mends.ts';
import {
	batteryOf,
	boardWords,
	cornerWords,
	hourWords,
	lostWords,
	milliampWords,
	noteWords,
	ohmWords,
	partWords,
	phaseWords,
	RIG_PAGE,
} from '../words/rig.ts';
import { rigFindingWords } from '../words/rig-findings.ts';
import { PAPER_COLUMNS, wrapped } from './paper.ts';
import { songBoards } from './song-boards.ts';

const HANG = '  ';

/** Lines without their ends; a heading over each part, parts that would be empty left out. */
export function rigPage(show: Show): readonly string[] {
	const parts = [
		part(RIG_PAGE.path, pathLines(show)),
		part(RIG_PAGE.loads, loadLines(show)),
		part(RIG_PAGE.supplies, supplyLines(show)),
		part(RIG_PAGE.batteries, batteryLines(show)),
		part(RIG_PAGE.tone, toneLines(show)),
		part(RIG_PAGE.phase, phaseLines(show)),
		part(RIG_PAGE.tempo, tempoLines(show)),
		part(RIG_PAGE.patch, patchLines(show)),
		part(RIG_PAGE.look, lookLines(show)),
	].filter((lines) => lines.length > 0);
	if (parts.length === 0) return [RIG_PAGE.nothing];
	return parts.flatMap((lines, at) => (at === 0 ? lines : ['', ...lines]));
}

function part(heading: string, lines: readonly string[]): readonly string[] {
	return lines.length === 0 ? [] : [heading, ...lines];
}

function table(names: readonly string[], rows: readonly (readonly string[])[]): readonly string[] {
	return rows.length === 0 ? [] : textTable(names, rows);
}

function pathLines(show: Show): readonly string[] {
	return playersWithRig(show).flatMap((player) => {
		const words = soundPath(show, player).map((one) =>
			one.kind === 'board'
				? boardWords((show.boards[player] ?? []).map(({ name }) => name))
				: partWords(one),
		);
		const way = [RIG_PAGE.instrumentFirst, ...words].join(' > ');
		return hanging(`${playerName(show, player)}: ${way}`);
	});
}

function loadLines(show: Show): readonly string[] {
	const rows = amplifierLoads(show).map(({ player, amplifier, cabs, ohms, tapOhms }) => [
		`${playerName(show, player)} ${amplifier.name}`,
		cabs.length === 0 ? RIG_PAGE.noLoad : ohms === null ? RIG_PAGE.unknown : ohmWords(ohms),
		tapOhms === null ? RIG_PAGE.unknown : ohmWords(tapOhms),
	]);
	return table(RIG_PAGE.loadColumns, rows);
}

function supplyLines(show: Show): readonly string[] {
	const rows = outputLoads(show).map(({ supply, output, on, usedMilliamps }) => [
		`${supply.name} ${output.id}`,
		milliampWords(usedMilliamps ?? (on.length === 0 ? 0 : null)),
		milliampWords(output.milliamps),
		on.map(({ name }) => name).join(', '),
	]);
	return table(RIG_PAGE.supplyColumns, rows);
}

function batteryLines(show: Show): readonly string[] {
	const rows = batteriesLeft(show).map((battery) => [
		batteryOf(show, battery),
		hourWords(battery.hoursLeft),
	]);
	return table(RIG_PAGE.batteryColumns, rows);
}

function toneLines(show: Show): readonly string[] {
	const rows = toneCorners(show).map((corner) => {
		const { player, instrument, output, kind, hertz } = corner;
		return [
			[shownInstrument(show, instrument), output ?? ''].join(' ').trimEnd(),
			playerName(show, player),
			cornerWords(kind, hertz),
			lostWords(corner),
		];
	});
	return table(RIG_PAGE.toneColumns, rows);
}

function phaseLines(show: Show): readonly string[] {
	return twoSources(show).flatMap((two) => hanging(phaseWords(show, two)));
}

function tempoLines(show: Show): readonly string[] {
	const rows = tempoTimes(show).map((one) => [
		songTitle(show, one.song),
		playerName(show, one.player),
		`${pedalName(show, one.player, one.pedal)} ${one.control}`,
		noteWords(one),
	]);
	return table(RIG_PAGE.tempoColumns, rows);
}

/** Song by song as they are played, each point that gives a board its whole state. */
function patchLines(show: Show): readonly string[] {
	const rows = runningOrder(show).flatMap(({ song }) =>
		songBoards(show, song).map(({ player, at, words }) => [
			song.title,
			playerName(show, player),
			at,
			words,
		]),
	);
	return table(RIG_PAGE.patchColumns, rows);
}

function lookLines(show: Show): readonly string[] {
	return checkRig(show).flatMap((finding) =>
		hanging(`${rigFindingWords(show, finding)} ${mendOfRisk(finding)}`),
	);
}

/** Further lines stand in from the first. */
function hanging(text: string): readonly string[] {
	const [first = '', ...others] = wrapped(text, PAPER_COLUMNS - HANG.length, HANG);
	return [first.trimStart(), ...others];
}
