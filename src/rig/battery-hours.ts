// How long batteries last: of packs, pedals, preamps and active instruments.

import type { BatteryIn } from '../journal/entry.ts';
import type { Show } from '../showfile/show.ts';
import { powered } from './supply-loads.ts';

/** What a battery is to have left when the last song ends: common practice, no source. */
const MARGIN_HOURS = 0.5;

/** A battery as the show file gives it. */
export type Battery = BatteryIn & {
	/** Hours from fresh; null where the draw is not known. */
	readonly hours: number | null;
	readonly usedHours: number;
};

export type BatteryLeft = BatteryIn & {
	/** Capacity over draw less the hours used, no margin taken off; never under 0. Null where the draw is not known. */
	readonly hoursLeft: number | null;
};

/**
 * Hours that a battery gives from fresh: what it holds over what is drawn.
 *
 * @example
 * freshHours(500, 12).toFixed(3) // => '41.667'
 */
export function freshHours(milliampHours: number, milliamps: number): number {
	return milliampHours / milliamps;
}

/**
 * Every battery of a show: packs, then pedals, parts of rigs, instruments.
 *
 * @example
 * batteriesOf(PACKS) // => [{ what: 'pack', player: null, id: 'P1', hours: 6, usedHours: 2.5 }]
 */
export function batteriesOf(
	show: Pick<Show, 'packs' | 'boards' | 'rigs' | 'instruments'>,
): readonly Battery[] {
	const packs = show.packs.flatMap(({ id, battery }): readonly Battery[] =>
		battery === undefined
			? []
			: [{ what: 'pack', player: null, id, hours: battery.hours, usedHours: battery.used }],
	);
	const others = powered(show).flatMap(({ player, id, power }): readonly Battery[] => {
		const { battery, milliamps } = power;
		if (battery === null) return [];
		const what =
			player === null
				? 'instrument'
				: show.boards[player]?.some((one) => one.id === id && one.power === power)
					? 'pedal'
					: 'part';
		const hours =
			milliamps === null || milliamps === 0 ? null : freshHours(battery.milliampHours, milliamps);
		return [{ what, player, id, hours, usedHours: battery.hoursUsed }];
	});
	return [...packs, ...others];
}

/**
 * What is left in each by the show file alone.
 *
 * @example
 * batteriesLeft(PACKS) // => [{ what: 'pack', player: null, id: 'P1', hoursLeft: 3.5 }]
 */
export function batteriesLeft(show: Parameters<typeof batteriesOf>[0]): readonly BatteryLeft[] {
	return batteriesOf(show).map((battery) => leftOf(battery, battery.usedHours));
}

/**
 * What is left in one after so many hours of use.
 *
 * @example
 * leftOf({ what: 'pack', player: null, id: 'P1', hours: 6, usedHours: 2.5 }, 4) // => { what: 'pack', player: null, id: 'P1', hoursLeft: 2 }
 */
export function leftOf({ what, player, id, hours }: Battery, usedHours: number): BatteryLeft {
	const hoursLeft = hours === null ? null : Math.max(0, hours - usedHours);
	return { what, player, id, hoursLeft };
}

/**
 * Whether a battery is empty before the last song ends, so many hours from now, with a margin.
 *
 * @example
 * isShort({ hoursLeft: 1 }, 2) // => true
 */
export function isShort(
	{ hoursLeft }: Pick<BatteryLeft, 'hoursLeft'>,
	endsInHours: number,
): boolean {
	return hoursLeft !== null && hoursLeft < endsInHours + MARGIN_HOURS;
}

/** With less than this it may be empty by now: what a file gives is an estimate. Common practice, no source. */
const EMPTY_HOURS = 0.25;

/**
 * Whether a battery may well be empty.
 *
 * @example
 * isEmpty({ hoursLeft: 0.1 }) // => true
 * isEmpty({ hoursLeft: null }) // => false
 */
export function isEmpty({ hoursLeft }: Pick<BatteryLeft, 'hoursLeft'>): boolean {
	return hoursLeft !== null && hoursLeft < EMPTY_HOURS;
}
