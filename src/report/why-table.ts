// Why a song is played on what it is: what was considered for each hand-over, and what the night would
// cost with it, in the order in which plans are compared.

import { cleanText } from '../base/clean-text.ts';
import { minutesSeconds } from '../base/duration.ts';
import type { Considered } from '../plan/advice/alternatives.ts';
import type { Hand } from '../plan/demand/hand.ts';
import type { Cost, Plan } from '../plan/plan.ts';
import type { Show } from '../showfile/show.ts';
import { instrumentName, playerName, songTitle } from '../showfile/shown-names.ts';
import { unplayableWords } from '../words/unplayable.ts';
import { PAPER_COLUMNS, paperTable, shortTuning, wrapped } from './paper.ts';

/** What plans are compared by, in this order. */
const FIGURES: readonly (readonly [name: string, figure: (cost: Cost) => string])[] = [
	['missing', ({ missing }) => String(missing)],
	['backups', ({ substituted }) => String(substituted)],
	['gap', ({ overGap }) => String(overGap)],
	['late', ({ lateness }) => minutesSeconds(lateness)],
	['backup', ({ backup }) => String(backup)],
	['changes', ({ handOvers }) => String(handOvers)],
	['retunes', ({ retunings }) => String(retunings)],
	['preference', ({ preference }) => String(preference)],
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
		? `${title} asks for nothing: everybody keeps what they have.`
		: `${title} is not in tonight's set.`;
	const lines =
		considered.length === 0
			? wrapped(none, PAPER_COLUMNS, '')
			: considered.flatMap((one) => ['', ...slotLines(show, plan.cost, one)]).slice(1);
	return lines.map((line) => `${line.trimEnd()}\n`).join('');
}

function slotLines(
	show: Show,
	planned: Cost,
	{ slot, isNamed, alternatives }: Considered,
): readonly string[] {
	const { section, player, instrument, tuning, capo, why } = slot;
	const place = `${songTitle(show, section.song)}, ${section.position} in the set`;
	const reason = isNamed
		? 'The song names it, so nothing else is taken of its own accord.'
		: 'The song leaves it open: the first column that differs decides.';
	const shown = FIGURES.filter(([, figure]) =>
		alternatives.some(({ cost }) => figure(cost) !== figure(planned)),
	);
	const figures = (cost: Cost) => shown.map(([, figure]) => figure(cost));
	const what =
		instrument === null
			? `nothing: ${why === null ? '' : unplayableWords(show, why)}`
			: handWords(show, { instrument, tuning, capo });
	const rows = [
		['planned', what, ...figures(planned)],
		...alternatives.map(({ hand, cost }) => ['or', handWords(show, hand), ...figures(cost)]),
	];
	return [
		...wrapped(cleanText(`${playerName(show, player)} in ${place}. ${reason}`), PAPER_COLUMNS, ''),
		...paperTable(['', '', ...shown.map(([name]) => name)], rows),
		...(alternatives.length === 0 ? ['Nothing else could be played.'] : []),
	];
}

function handWords(show: Show, { instrument, tuning, capo }: Hand): string {
	const slot = show.instruments.find(({ id }) => id === instrument)?.slot?.toUpperCase() ?? '-';
	const fret = capo === 0 ? '' : ` capo ${capo}`;
	return `${slot} ${instrumentName(show, instrument)} ${shortTuning(tuning)}${fret}`;
}
