// What the strings of a show risk: breaking in a tuning that is asked for, and offsets that spoil octaves.

import { humidityWords } from '../tuning/humidity.ts';
import { LEAST_STRENGTH_LEFT } from '../tuning/string-set.ts';
import { spoiltOctaves, WORST_OCTAVE_CENTS } from '../tuning/sweeten.ts';
import type { Finding } from './finding.ts';
import {
	offsetCents,
	offsetWords,
	onlyPlayer,
	stringsOf,
	type Tuned,
} from './instrument-strings.ts';
import type { Show } from './show.ts';
import { playerName, slotAndName } from './shown-names.ts';
import { driftOrder, driftWords } from './stage-drift.ts';
import type { Moment } from './walk-set.ts';

/** Findings of every instrument in every tuning that the show has it in. */
export function checkStrings(show: Show, moments: readonly Moment[]): readonly Finding[] {
	const inShow = tunedInShow(show, moments);
	const strings = inShow.flatMap((tuned) => [
		...nearBreaking(show, tuned),
		...octavesSpoilt(show, tuned),
	]);
	return [...strings, ...offsetsDiffer(show, inShow), ...stageFindings(show)];
}

/** What the stage does between soundcheck and show, as far as the file says how it will be. */
function stageFindings(show: Show): Finding[] {
	const { temperature = null, soundcheck = null, humidity = null } = show.stage ?? {};
	const kelvins = temperature === null || soundcheck === null ? 0 : temperature - soundcheck;
	const drift = driftWords(
		driftOrder(show, { tuningOf: ({ tuning }) => tuning, kelvinsOf: () => kelvins }),
	);
	const damp = humidity === null ? [] : humidityWords(humidity);
	return [
		...(drift === null
			? []
			: [
					{
						code: 'stage-drift',
						severity: 'note',
						text: `Expected since soundcheck, ${drift} That is a ceiling: wood moves too.`,
					} as const,
				]),
		...(damp.length === 0
			? []
			: [{ code: 'stage-humidity', severity: 'note', text: damp.join(' ') } as const]),
	];
}

function tunedInShow(show: Show, moments: readonly Moment[]): readonly Tuned[] {
	const found = new Map<string, Tuned>();
	const add = (tuned: Tuned) =>
		found.set(
			`${tuned.instrument.id} ${tuned.tuning.notes.join(' ')} ${tuned.player ?? ''}`,
			tuned,
		);
	for (const instrument of show.instruments) {
		add({ instrument, tuning: instrument.tuning, player: onlyPlayer(instrument) });
	}
	for (const { hands } of moments) {
		for (const [player, holding] of hands) {
			if (holding) add({ instrument: holding.instrument, tuning: holding.tuning, player });
		}
	}
	return [...found.values()];
}

function nearBreaking(show: Show, tuned: Tuned): Finding[] {
	const { instrument, tuning } = tuned;
	return stringsOf(show, tuned).flatMap(({ string, strengthLeft, uncertainty }) => {
		if (strengthLeft === null || strengthLeft >= LEAST_STRENGTH_LEFT) return [];
		const left = Math.round(strengthLeft * 100);
		const state = left > 0 ? `has ${left} % of its strength left` : 'is past its strength';
		const guess = uncertainty > 0 ? ', by a model of its windings' : '';
		const text = `String ${string} of ${slotAndName(show, instrument.id)} ${state} in ${tuning.name}${guess}: it may break. Keep eyes away, or choose another.`;
		return [{ code: 'string-tension', severity: 'risk', instrument: instrument.id, text }];
	});
}

function octavesSpoilt(show: Show, tuned: Tuned): Finding[] {
	const { instrument, tuning } = tuned;
	const [worst] = spoiltOctaves(tuning.notes, offsetCents(show, tuned)).toSorted(
		(one, other) => Math.abs(other.cents) - Math.abs(one.cents),
	);
	if (worst === undefined) return [];
	const [low, high] = worst.strings;
	const text = `The offsets for ${slotAndName(show, instrument.id)} in ${tuning.name} put octaves on strings ${low} and ${high} ${Math.abs(worst.cents).toFixed(1)} cents ${worst.cents > 0 ? 'wide' : 'narrow'}, more than ${WORST_OCTAVE_CENTS}.`;
	return [{ code: 'octaves-spoilt', severity: 'note', instrument: instrument.id, text }];
}

/** An instrument that goes from hands to hands in one tuning is ready for one of them and not for the other. */
function offsetsDiffer(show: Show, inShow: readonly Tuned[]): Finding[] {
	if (show.sweeten === undefined) return [];
	const held = inShow.filter(({ player }) => player !== null);
	const together = Map.groupBy(
		held,
		({ instrument, tuning }) => `${instrument.id} ${tuning.notes.join(' ')}`,
	);
	return [...together.values()].flatMap((all): Finding[] => {
		const wanted = all.map((tuned) => offsetWords(show, tuned) || 'no offsets');
		const [first] = all;
		if (first === undefined || new Set(wanted).size < 2) return [];
		const { instrument, tuning } = first;
		const who = all.map(
			({ player }, index) => `${playerName(show, player ?? '')} (${wanted[index]})`,
		);
		const text = `${slotAndName(show, instrument.id)} is played in ${tuning.name} by ${who.join(' and ')}: touch it up between them, the plan counts no time for it.`;
		return [{ code: 'offsets-differ', severity: 'note', instrument: instrument.id, text }];
	});
}
