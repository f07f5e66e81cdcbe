// Which strings broke over many nights, and out of how many nights in hands.

import type { StringGauge } from '../showfile/show.ts';
import { chanceBetween, type Interval } from './break-chance.ts';
import type { NightFacts, StringBreak } from './night-facts.ts';

export type BrokenString = {
	readonly gear: string;
	/** As the last of the nights shows it. */
	readonly shown: string;
	/** Null for those of which nobody said which. */
	readonly string: number | null;
	readonly breaks: number;
	/** Nights in which it broke, out of those in which the instrument was in hands. */
	readonly nightsBroken: number;
	readonly nightsUsed: number;
	/** Between which chances a night breaks one, 95 % sure. */
	readonly chance: Interval;
};

/**
 * A line for each string that broke, the most breaks first.
 *
 * @example
 * brokenStrings([{ breaks: [{ gear: 'a', shown: '1 Amber', string: 1 }], instruments: [{ gear: 'a', hours: 1 }] }])[0].nightsUsed // => 1
 */
export function brokenStrings(
	nights: readonly Pick<NightFacts, 'breaks' | 'instruments'>[],
): readonly BrokenString[] {
	const byString = Map.groupBy(
		nights.flatMap(({ breaks }) => breaks),
		({ gear, string }) => JSON.stringify([gear, string]),
	);
	return [...byString.values()]
		.flatMap((breaks): BrokenString[] => {
			const last = breaks.at(-1);
			if (last === undefined) return [];
			const isIt = (one: StringBreak): boolean =>
				one.gear === last.gear && one.string === last.string;
			const nightsBroken = nights.filter((night) => night.breaks.some(isIt)).length;
			const nightsUsed = nights.filter(
				(night) => night.breaks.some(isIt) || isUsed(night, last.gear),
			).length;
			return [
				{
					...{ gear: last.gear, shown: last.shown, string: last.string },
					...{ breaks: breaks.length, nightsBroken, nightsUsed },
					chance: chanceBetween(nightsBroken, nightsUsed),
				},
			];
		})
		.toSorted((one, other) => other.breaks - one.breaks);
}

function isUsed({ instruments }: Pick<NightFacts, 'instruments'>, gear: string): boolean {
	return instruments.some((one) => one.gear === gear && one.hours > 0);
}

/**
 * Breaks of this gauge in a night, on average.
 *
 * @example
 * breaksANight([{ breaks: [{ gauge: { millimetres: 0.254, isWound: false } }] }, { breaks: [] }], { millimetres: 0.254, isWound: false }) // => 0.5
 */
export function breaksANight(
	nights: readonly { readonly breaks: readonly Pick<StringBreak, 'gauge'>[] }[],
	{ millimetres, isWound }: StringGauge,
): number {
	const all = nights.flatMap(({ breaks }) => breaks);
	const own = all.filter(
		({ gauge }) => gauge?.millimetres === millimetres && gauge.isWound === isWound,
	);
	return nights.length === 0 ? 0 : own.length / nights.length;
}
