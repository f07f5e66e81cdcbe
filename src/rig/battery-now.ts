// How long batteries last from now on: what the show file gives, less what the night has taken since.

import type { Session } from '../session/session.ts';
import { type BatteryLeft, batteriesLeft } from './battery-hours.ts';

export type BatteryNow = BatteryLeft;

const HOUR_MS = 3_600_000;
/** What is to be left when the last song ends, as `check` has it. */
const MARGIN_HOURS = 0.5;

/**
 * Every battery of the night's show, the emptiest first, those of which nothing is known last. All but packs run
 * from the show clock's zero on; a pack runs while somebody wears it.
 *
 * @example
 * batteriesNow({ show: PACKS, packTimes: { P1: { wornMs: 1_800_000, sinceMs: 0 } } }, { nowMs: 3_600_000, zeroMs: 0 }) // => [{ what: 'pack', player: null, id: 'P1', hoursLeft: 2 }]
 */
export function batteriesNow(
	{ show, packTimes }: Pick<Session, 'show' | 'packTimes'>,
	{ nowMs, zeroMs }: { readonly nowMs: number; readonly zeroMs: number },
): readonly BatteryNow[] {
	const usedHours = ({ what, id }: BatteryLeft): number => {
		if (what !== 'pack') return Math.max(0, nowMs - zeroMs) / HOUR_MS;
		const { wornMs, sinceMs } = packTimes[id] ?? { wornMs: 0, sinceMs: null };
		return (wornMs + (sinceMs === null ? 0 : Math.max(0, nowMs - sinceMs))) / HOUR_MS;
	};
	return batteriesLeft(show)
		.map((one) => ({
			...one,
			hoursLeft: one.hoursLeft === null ? null : Math.max(0, one.hoursLeft - usedHours(one)),
		}))
		.toSorted(
			(one, other) =>
				(one.hoursLeft ?? Number.POSITIVE_INFINITY) - (other.hoursLeft ?? Number.POSITIVE_INFINITY),
		);
}

/**
 * Whether a battery is empty before the last song ends, so many hours from now, with a margin.
 *
 * @example
 * isShort({ what: 'pack', player: null, id: 'P1', hoursLeft: 1 }, 2) // => true
 */
export function isShort({ hoursLeft }: BatteryNow, endsInHours: number): boolean {
	return hoursLeft !== null && hoursLeft < endsInHours + MARGIN_HOURS;
}
