// What the plan warns of, what harms most and soonest first.

import { keyOfAction } from '../keys/key-choices.ts';
import type { Plan, Warning } from '../plan/plan.ts';
import { moreAndKey, NOTHING, PLACES } from '../words/stage.ts';
import { warningWords } from '../words/warnings.ts';
import { brokenOnCards } from './coming.ts';
import { type Area, placeAt, type Row, rowWidth, type Span, span } from './row.ts';
import type { ScreenState } from './screen-state.ts';

const LABEL_COLUMNS = 10;
/** Narrower screens have no room for the key that shows the rest. */
const LEAST_HINT_COLUMNS = 50;

/** What harms the sound now, then what takes it away, what makes it late, what may go wrong, what is only to be known. */
const HARM: Readonly<Record<Warning['code'], number>> = {
	'wrong-tuning': 0,
	'empty-hands': 0,
	'no-pack': 0,
	// One of the two is not heard.
	'shared-pack': 0,
	missing: 1,
	// It is heard now, and nobody knows whether it is wrong.
	unmarked: 1,
	late: 2,
	'missed-hand-over': 1,
	'not-ready': 3,
	// The row of its board says so too.
	'stuck-pedal': 3,
	'suspect-pack': 3,
	'crossed-packs': 3,
	'pack-channel': 3,
	'tight-gap': 4,
	stale: 4,
	'no-stand-in': 5,
	substituted: 5,
	'kept-unsaid': 5,
	'short-curfew': 5,
};

/** The first warnings, a row each and none twice, nor what a card says; the label says how many more there are. */
export function warningSection(state: ScreenState, { columns, rows }: Area): Row[] {
	const { show } = state.session;
	// Only what is wrong in somebody's hands calls to act at once; the rest is work or a risk.
	const broken = brokenOnCards(state);
	const isOnCard = (one: Warning) =>
		one.code === 'not-ready' && one.song === undefined && broken.includes(one.instrument);
	const worst = inOrder(state.plan).filter((one) => !isOnCard(one));
	const ofPlan = worst.map((one) => ({
		words: warningWords(show, one),
		style: one.code === 'wrong-tuning' ? ('accent' as const) : ('plain' as const),
		harm: HARM[one.code],
	}));
	// Boards that do not follow are heard at the next cue: after what is heard now.
	const outside = state.outsideTrouble
		? [{ words: state.outsideTrouble, style: 'unready' as const, harm: HARM.late }]
		: [];
	const isNow = ({ harm }: { readonly harm: number }) => harm < HARM.late;
	const said = [...ofPlan.filter(isNow), ...outside, ...ofPlan.filter((one) => !isNow(one))];
	const warnings = said
		.filter(({ words }, at) => said.findIndex((one) => one.words === words) === at)
		.map(({ words, style }) => span(words, style));
	if (warnings.length === 0) {
		return [
			placeAt(columns, [
				[0, [span(PLACES.watch, 'title')]],
				[LABEL_COLUMNS, [span(NOTHING, 'dim')]],
			]),
		];
	}
	const more = warnings.length - rows;
	const hint =
		more > 0 && columns >= LEAST_HINT_COLUMNS
			? moreAndKey(0, keyOfAction('warnings', state.preferences.keys))
			: '';
	return warnings.slice(0, rows).map((warning, index) => {
		// No warning is cut for the sake of the key.
		const hasRoom = LABEL_COLUMNS + rowWidth([warning]) + 2 + hint.length <= columns;
		return placeAt(columns, [
			[0, index === 0 ? watchLabel(warning, more) : []],
			[LABEL_COLUMNS, [warning]],
			...(index === 0 && hint !== '' && hasRoom
				? [[columns - hint.length, [span(hint, 'dim')]] as const]
				: []),
		]);
	});
}

/** By harm, and among what harms alike by the song that it is about: what is about none is so now. */
function inOrder({ warnings, sections }: Plan): readonly Warning[] {
	const isOn = (song: string | undefined) =>
		sections.some((one) => one.hasBegun && one.song === song);
	const harmOf = ({ code, song }: Warning) =>
		(code === 'not-ready' && song === undefined) || (code === 'substituted' && isOn(song))
			? HARM.missing
			: HARM[code];
	const startOf = ({ song }: Warning) =>
		song === undefined
			? 0
			: (sections.find((one) => one.song === song)?.startMs ?? Number.POSITIVE_INFINITY);
	return warnings
		.filter((one) => !warnings.some((other) => saysMore(other, one)))
		.toSorted((one, other) => harmOf(one) - harmOf(other) || startOf(one) - startOf(other));
}

/** Of one instrument for one song that it will be late says that it is not ready. */
function saysMore(one: Warning, other: Warning): boolean {
	return (
		one.code === 'late' &&
		other.code === 'not-ready' &&
		one.song === other.song &&
		one.instrument === other.instrument
	);
}

/** What is wrong in somebody's hands is told by the word too. */
function watchLabel({ style }: Span, more: number): Row {
	const label = style === 'accent' ? span(PLACES.wrong, 'accent') : span(PLACES.watch, 'title');
	return [label, ...(more > 0 ? [span(` +${more}`)] : [])];
}
