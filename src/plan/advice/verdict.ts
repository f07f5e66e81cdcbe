// Whether a night works, in one sentence: the tightest moment when it does; when it does not, what is
// wrong and what would mend it.

import { minutesSeconds } from '../../base/duration.ts';
import type { Show } from '../../showfile/show.ts';
import { slotAndName, songTitle } from '../../showfile/shown-names.ts';
import type { Plan } from '../plan.ts';
import { missingSentences } from '../what-if/later-cost.ts';
import type { Mend } from './mend.ts';
import { isWorking, shortfallOf } from './shortfall.ts';
import type { TightPlace } from './tight-places.ts';
import { tightPlaces } from './tight-places.ts';

/**
 * The sentence for a plan made before the doors.
 *
 * @example
 * verdict(show, { plan: beforeDoors, mend: null }) // => 'Everything fits; the tightest moment is the gap before Lantern at 4:00, filled by one hand-over, 0:00 to spare, and there is one more like it.'
 */
export function verdict(
	show: Show,
	{ plan, mend }: { readonly plan: Plan; readonly mend: Mend | null },
): string {
	if (isWorking(shortfallOf(show, plan))) return `Everything fits; ${tightestWords(show, plan)}.`;
	const wrong = wrongWords(show, plan).join('; ');
	return `Not everything fits: ${wrong}; ${mend === null ? 'nothing was tried' : mendWords(mend)}.`;
}

function tightestWords(show: Show, plan: Plan): string {
	const places = tightPlaces(plan);
	const [first] = places;
	if (first === undefined) return 'nothing is to be done between songs';
	const alike = places.filter(({ spareSeconds }) => spareSeconds <= first.spareSeconds).length - 1;
	const more =
		alike === 0 ? '' : `, and there ${alike === 1 ? 'is one' : `are ${alike}`} more like it`;
	return `the tightest moment is ${placeWords(show, first)}${more}`;
}

/**
 * One tight place: which gap with how many hand-overs, or which work until when, and what is to spare.
 *
 * @example
 * placeWords(show, tightPlaces(plan)[0]) // => 'the gap before Lantern at 4:00, filled by one hand-over, 0:00 to spare'
 */
export function placeWords(show: Show, place: TightPlace): string {
	const { section, spareSeconds, work, handOvers } = place;
	const title = songTitle(show, section.song);
	const spare = `${minutesSeconds(spareSeconds)} to spare`;
	if (work !== null) {
		const what = `${work.job} of ${slotAndName(show, work.instrument)} for ${title}`;
		return `the ${what}, begin by ${minutesSeconds(work.beginByMs / 1000)}, ${spare}`;
	}
	const at = minutesSeconds((section.previousEndMs ?? section.startMs) / 1000);
	const filled = handOvers === 1 ? 'one hand-over' : `${handOvers} hand-overs`;
	return `the gap before ${title} at ${at}, filled by ${filled}, ${spare}`;
}

function wrongWords(show: Show, plan: Plan): readonly string[] {
	const late = plan.work
		.filter(({ slackSeconds }) => slackSeconds < 0)
		.sort((one, other) => one.slackSeconds - other.slackSeconds);
	const tight = tightPlaces(plan).filter(({ work, spareSeconds }) => !work && spareSeconds < 0);
	const { pastCurfew } = shortfallOf(show, plan);
	return [
		...missingSentences(
			show,
			plan.slots.filter(({ isMissing }) => isMissing),
		),
		...withMore(tight, ({ section, handOvers }) => {
			const takes = handOvers === 1 ? 'one hand-over takes' : `${handOvers} hand-overs take`;
			const gap = minutesSeconds(section.gapSeconds ?? 0);
			return `${takes} longer than the ${gap} before ${songTitle(show, section.song)}`;
		}),
		...withMore(late, ({ instrument, slackSeconds, section }) => {
			const lateBy = `${minutesSeconds(-slackSeconds)} late`;
			return `${slotAndName(show, instrument)} is ${lateBy} for ${songTitle(show, section.song)}`;
		}),
		...(pastCurfew > 0 ? [`the set ends ${minutesSeconds(pastCurfew)} after the curfew`] : []),
	];
}

function withMore<Thing>(
	[first, ...more]: readonly Thing[],
	words: (thing: Thing) => string,
): readonly string[] {
	if (first === undefined) return [];
	return [more.length === 0 ? words(first) : `${words(first)}, and ${more.length} more`];
}

function mendWords({ changes, isEachEnough, isMended }: Mend): string {
	const words = changes.map((change) => change.words);
	if (words.length === 0) return 'nothing that was tried helps';
	if (isEachEnough) return `enough to mend it: ${words.join(', or ')}`;
	return `${isMended ? 'together these mend it' : 'this helps, and is not enough'}: ${words.join(', and ')}`;
}
