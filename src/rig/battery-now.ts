// How long batteries last from now on: what the show file gives, less what the night has taken since.

import { isOnPathOf, isSameBattery } from '../session/apply-batteries.ts';
import type { Session } from '../session/session.ts';
import { type Battery, type BatteryLeft, batteriesOf, isEmpty, leftOf } from './battery-hours.ts';

const HOUR_MS = 3_600_000;
type AtNight = Pick<Session, 'packTimes' | 'freshBatteries'>;

type Now = { readonly nowMs: number; readonly zeroMs: number };

/**
 * Hours that a battery was in use by now: those of the show file and the night's, or from its change tonight on. A
 * pack runs while somebody wears it, all else from the show clock's zero on.
 *
 * @example
 * hoursUsed({ packTimes: {}, freshBatteries: [] }, { what: 'pedal', player: 'bo', id: 'drive', usedHours: 2 }, { nowMs: 3_600_000, zeroMs: 0 }) // => 3
 */
export function hoursUsed(
	{ packTimes, freshBatteries }: AtNight,
	battery: Pick<Battery, 'what' | 'player' | 'id' | 'usedHours'>,
	{ nowMs, zeroMs }: Now,
): number {
	const fresh = freshBatteries.find((one) => isSameBattery(one, battery));
	const before = fresh === undefined ? battery.usedHours : 0;
	if (battery.what !== 'pack') {
		const sinceMs = Math.max(zeroMs, fresh?.atMs ?? zeroMs);
		return before + Math.max(0, nowMs - sinceMs) / HOUR_MS;
	}
	const { wornMs, sinceMs } = packTimes[battery.id] ?? { wornMs: 0, sinceMs: null };
	return before + (wornMs + (sinceMs === null ? 0 : Math.max(0, nowMs - sinceMs))) / HOUR_MS;
}

/**
 * Every battery of the night's show, the emptiest first, those of which nothing is known last.
 *
 * @example
 * batteriesNow({ show: PACKS, packTimes: { P1: { wornMs: 1_800_000, sinceMs: 0 } }, freshBatteries: [] }, { nowMs: 3_600_000, zeroMs: 0 }) // => [{ what: 'pack', player: null, id: 'P1', hoursLeft: 2 }]
 */
export function batteriesNow(
	session: AtNight & Pick<Session, 'show'>,
	now: Now,
): readonly BatteryLeft[] {
	return batteriesOf(session.show)
		.map((battery) => leftOf(battery, hoursUsed(session, battery, now)))
		.toSorted(
			(one, other) =>
				(one.hoursLeft ?? Number.POSITIVE_INFINITY) - (other.hoursLeft ?? Number.POSITIVE_INFINITY),
		);
}

/**
 * Ids of what may have run out on a player's sound path: pedals and parts of theirs, the pack that they wear, what they hold.
 *
 * @example
 * emptyOn({ show: PACKS, players: { bo: { holds: null, pack: 'P1' } }, packTimes: { P1: { wornMs: 12_240_000, sinceMs: null } }, freshBatteries: [] }, 'bo', { nowMs: 0, zeroMs: 0 }) // => ['P1']
 */
export function emptyOn(
	session: AtNight & Pick<Session, 'show' | 'players'>,
	player: string,
	now: Now,
): readonly string[] {
	return batteriesNow(session, now)
		.filter(isEmpty)
		.filter((one) => isOnPathOf(session, player, one))
		.map(({ id }) => id);
}
