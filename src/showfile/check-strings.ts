// What the strings of a show risk: breaking in a tuning that is asked for, and offsets that spoil octaves.

import { humidityOf } from '../tuning/humidity.ts';
import { spoiltOctaves, WORST_OCTAVE_CENTS } from '../tuning/offsets.ts';
import { LEAST_STRENGTH_LEFT } from '../tuning/string-set.ts';
import type { Finding } from './finding.ts';
import {
	offsetCents,
	offsetWords,
	onlyPlayer,
	stringsOf,
	type Tuned,
} from './instrument-strings.ts';
import type { Show } from './show.ts';
import { driftOrder } from './stage-drift.ts';
import type { SetPoint } from './walk-set.ts';

/** Findings of every instrument in every tuning that the show has it in. */
export function checkStrings(show: Show, points: readonly SetPoint[]): readonly Finding[] {
	const inShow = tunedInShow(show, points);
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
	const drifted = driftOrder(show, {
		tuningOf: ({ tuning }) => tuning,
		kelvinsOf: () => kelvins,
	});
	const is = humidity === null ? 'fine' : humidityOf(humidity);
	return [
		...(drifted.length === 0 ? [] : [{ code: 'stage-drift', severity: 'note', drifted } as const]),
		...(humidity === null || is === 'fine'
			? []
			: [{ code: 'stage-humidity', severity: 'note', percent: humidity, is } as const]),
	];
}

function tunedInShow(show: Show, points: readonly SetPoint[]): readonly Tuned[] {
	const found = new Map<string, Tuned>();
	const add = (tuned: Tuned) =>
		found.set(
			`${tuned.instrument.id} ${tuned.tuning.notes.join(' ')} ${tuned.player ?? ''}`,
			tuned,
		);
	for (const instrument of show.instruments) {
		add({ instrument, tuning: instrument.tuning, player: onlyPlayer(instrument) });
	}
	for (const { hands } of points) {
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
		return [
			{
				code: 'string-tension',
				severity: 'risk',
				instrument: instrument.id,
				string,
				tuning: tuning.name,
				percentLeft: Math.round(strengthLeft * 100),
				isEstimated: uncertainty > 0,
			},
		];
	});
}

function octavesSpoilt(show: Show, tuned: Tuned): Finding[] {
	const { instrument, tuning } = tuned;
	const [worst] = spoiltOctaves(tuning.notes, offsetCents(show, tuned)).toSorted(
		(one, other) => Math.abs(other.cents) - Math.abs(one.cents),
	);
	if (worst === undefined) return [];
	return [
		{
			code: 'octaves-spoilt',
			severity: 'note',
			instrument: instrument.id,
			tuning: tuning.name,
			strings: worst.strings,
			cents: worst.cents,
			mostCents: WORST_OCTAVE_CENTS,
		},
	];
}

/** An instrument that goes from hands to hands in one tuning is ready for one of them and not for the other. */
function offsetsDiffer(show: Show, inShow: readonly Tuned[]): Finding[] {
	if (show.offsets === undefined) return [];
	const held = inShow.filter(({ player }) => player !== null);
	const together = Map.groupBy(
		held,
		({ instrument, tuning }) => `${instrument.id} ${tuning.notes.join(' ')}`,
	);
	return [...together.values()].flatMap((all): Finding[] => {
		const wanted = all.map((tuned) => ({
			player: tuned.player ?? '',
			offsets: offsetWords(show, tuned),
		}));
		const [first] = all;
		if (first === undefined || new Set(wanted.map(({ offsets }) => offsets)).size < 2) return [];
		const { instrument, tuning } = first;
		const about = { instrument: instrument.id, tuning: tuning.name, wanted };
		return [{ code: 'offsets-differ', severity: 'note', ...about }];
	});
}
