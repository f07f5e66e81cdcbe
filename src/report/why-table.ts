// Why a song is played on what it is: what was considered for each hand-over, and what the night would
// cost with it, in the order in which plans are compared.

import { cleanText } from '../base/clean-text.ts';
import { minutesSeconds } from '../base/duration.ts';
import type { Considered } from '../plan/advice/alternatives.ts';
import type { Hand } from '../plan/demand/hand.ts';
import type { Cost, Plan } from '../plan/plan.ts';
import type { Show } from '../showfile/show.ts';
import { playerName, shownInstrument, songTitle } from '../showfile/shown-names.ts';
import {
	asksNothing,
	FIGURE_NAMES,
	HOW_COMPARED,
	nothingBecause,
	nothingElse,
	notInSet,
	OR,
	PLANNED,
	PREFERENCE_TOLD,
	whyHeading,
	withCapo,
} from '../words/paper.ts';
import { shortTuning } from '../words/tuning-names.ts';
import { leftOutWords, unplayableWords } from '../words/unplayable.ts';
import { PAPER_COLUMNS, paperTable, wrapped } from './paper.ts';

/** What plans are compared by, in this order. */
const FIGURES: readonly (readonly [name: string, figure: (cost: Cost) => string])[] = [
	[FIGURE_NAMES.missing, ({ missing }) => String(missing)],
	[FIGURE_NAMES.substituted, ({ substituted }) => String(substituted)],
	[FIGURE_NAMES.overGap, ({ overGap }) => String(overGap)],
	[FIGURE_NAMES.lateness, ({ lateness }) => minutesSeconds(lateness)],
	[FIGURE_NAMES.backup, ({ backup }) => String(backup)],
	[FIGURE_NAMES.handOvers, ({ handOvers }) => String(handOvers)],
	[FIGURE_NAMES.retunings, ({ retunings }) => String(retunings)],
	[FIGURE_NAMES.preference, ({ preference }) => String(preference)],
];

export type WhyTold = {
	readonly song: string;
	readonly plan: Plan;
	readonly considered: readonly Considered[];
};

/** Lines of at most 80 columns, the last one ended too. */
export function whyTable(show: Show, { song, plan, considered }: WhyTold): string {
	const title = cleanText(songTitle(show, song));
	const none = plan.sections.some((section) => section.song === song)
		? asksNothing(title)
		: notInSet(title);
	const lines =
		considered.length === 0
			? wrapped(none, PAPER_COLUMNS, '')
			: considered.flatMap((one) => ['', ...slotLines(show, plan.cost, one)]).slice(1);
	return lines.map((line) => `${line.trimEnd()}\n`).join('');
}

function slotLines(
	show: Show,
	planned: Cost,
	{ slot, isNamed, alternatives, leftOut }: Considered,
): readonly string[] {
	const { section, player, instrument, tuning, capo, why } = slot;
	const song = { title: songTitle(show, section.song), position: section.position };
	const shown = FIGURES.filter(([, figure]) =>
		alternatives.some(({ cost }) => figure(cost) !== figure(planned)),
	);
	const figures = (cost: Cost) => shown.map(([, figure]) => figure(cost));
	const what =
		instrument === null
			? nothingBecause(why === null ? '' : unplayableWords(show, why))
			: handWords(show, { instrument, tuning, capo });
	const rows = [
		[PLANNED, what, ...figures(planned)],
		...alternatives.map(({ hand, cost }) => [OR, handWords(show, hand), ...figures(cost)]),
	];
	return [
		...wrapped(cleanText(whyHeading(playerName(show, player), song, isNamed)), PAPER_COLUMNS, ''),
		...paperTable(['', '', ...shown.map(([name]) => name)], rows),
		...(shown.length === 0 ? [] : [HOW_COMPARED]),
		...(shown.some(([name]) => name === FIGURE_NAMES.preference)
			? wrapped(PREFERENCE_TOLD, PAPER_COLUMNS, '')
			: []),
		...(alternatives.length === 0
			? wrapped(cleanText(nothingElse(leftOutWords(show, leftOut))), PAPER_COLUMNS, '')
			: []),
	];
}

function handWords(show: Show, { instrument, tuning, capo }: Hand): string {
	return `${shownInstrument(show, instrument)} ${shortTuning(show, tuning)}${withCapo(capo)}`;
}
