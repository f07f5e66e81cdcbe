// `rackside plan`: who plays what when, the work between, stand-ins; or the run sheet for the case.

import { cleanText } from '../../base/clean-text.ts';
import { minutesSeconds } from '../../base/duration.ts';
import { markText } from '../../base/show-clock.ts';
import type { Plan, Slot } from '../../plan/plan.ts';
import { planBeforeDoors } from '../../plan/plan-before-doors.ts';
import { planJson } from '../../plan/plan-json.ts';
import { instrumentWords } from '../../report/entry-words.ts';
import { runSheet } from '../../report/run-sheet.ts';
import type { Show } from '../../showfile/show.ts';
import { playerName, songTitle } from '../../showfile/shown-names.ts';
import type { CliCommand } from '../command.ts';
import { JSON_OPTION } from '../command.ts';
import { EXIT } from '../exit-code.ts';
import { openShow } from '../open-show.ts';
import { tellProblems } from '../tell-problems.ts';
import { textTable } from '../text-table.ts';

export const planCommand: CliCommand = {
	usage: 'plan SHOW',
	about: [
		'Shows who plays what in each song, the work between, and what could go wrong, as it stands',
		'before the doors open. Marks are on the show clock: zero is the start of the first song.',
	],
	example: 'rackside plan shows/club.yaml --sheet',
	options: {
		...JSON_OPTION,
		sheet: { words: 'the run sheet to tape to the case, 80 columns wide' },
	},
	words: { least: 1, most: 1 },
	run: async (request, io) => {
		const { show, problems } = await openShow(request.words[0] ?? '', io);
		if (!show) return tellProblems(problems, io);
		const plan = planBeforeDoors(show);
		if (request.options.json) io.write(`${JSON.stringify(planJson(plan, show))}\n`);
		else io.write(request.options.sheet ? runSheet(show, plan) : planText(show, plan));
		return EXIT.fine;
	},
};

function planText(show: Show, plan: Plan): string {
	const slots = plan.slots.map((slot) => [
		slot.section.point === 0 ? String(slot.section.position) : '',
		songTitle(show, slot.section.song),
		playerName(show, slot.player),
		slot.instrument === null ? (slot.why ?? 'nothing') : instrumentWords(slot.instrument, show),
		slot.tuning?.name ?? '',
		slot.capo > 0 ? `capo ${slot.capo}` : '',
		handWords(slot),
	]);
	const work = plan.work.map((one) => [
		markText(one.startMs),
		one.job,
		instrumentWords(one.instrument, show),
		one.capo > 0 ? `${one.to.name}, capo ${one.capo}` : one.to.name,
		minutesSeconds(one.seconds),
		`begin by ${markText(one.beginByMs)}`,
		`${minutesSeconds(one.slackSeconds)} spare`,
		`for ${songTitle(show, one.section.song)}`,
	]);
	const standIns = planJson(plan, show).standIns.map((one) => [
		songTitle(show, one.song),
		playerName(show, one.player),
		one.for === null ? '' : `for ${instrumentWords(one.for, show)}`,
		instrumentWords(one.instrument, show),
		minutesSeconds(one.readyIn),
		one.why,
	]);
	const warnings = plan.warnings.map((one) => {
		const song = one.song === undefined ? '' : `${songTitle(show, one.song)}: `;
		return `${one.code}: ${song}${one.text}`;
	});
	return [
		cleanText(show.title),
		'',
		...textTable(['#', 'song', 'player', 'instrument', 'tuning', 'capo', ''], slots),
		...(work.length > 0
			? ['', 'Work', ...textTable(['from', 'job', 'on', 'to', 'takes', '', '', ''], work)]
			: []),
		...(standIns.length > 0
			? [
					'',
					'Stand-ins',
					...textTable(['song', 'player', '', 'instrument', 'in hands in', ''], standIns),
				]
			: []),
		...(warnings.length > 0 ? ['', 'Warnings', ...warnings.map(cleanText)] : []),
	]
		.map((line) => `${line}\n`)
		.join('');
}

function handWords(slot: Slot): string {
	if (slot.isHandOver) return 'hand-over';
	return slot.instrument !== null || slot.isKept ? 'keeps' : '';
}
