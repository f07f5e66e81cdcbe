// What entries about batteries do: from a change on the hours in use count anew.

import type { BatteryIn, Entry } from '../journal/entry.ts';
import type { Session } from './session.ts';

/** Whether both are the same battery's place. */
export function isSameBattery(one: BatteryIn, other: BatteryIn): boolean {
	return one.what === other.what && one.player === other.player && one.id === other.id;
}

/** Whether a battery is on a player's sound path: in a pedal or a part of theirs, in what they hold, in the pack that they wear. */
export function isOnPathOf(
	{ players }: Pick<Session, 'players'>,
	player: string,
	battery: Pick<BatteryIn, 'player' | 'id'>,
): boolean {
	if (battery.player !== null) return battery.player === player;
	const { holds = null, pack = null } = players[player] ?? {};
	return battery.id === holds || battery.id === pack;
}

/** The session with a fresh battery in something; a pack that is on counts its hours from here. */
export function changeBattery(
	session: Session,
	{ at, what, player, id }: Extract<Entry, { k: 'battery-changed' }>,
): Session {
	const fresh = { what, player, id, atMs: at };
	const others = session.freshBatteries.filter((one) => !isSameBattery(one, fresh));
	const time = what === 'pack' ? session.packTimes[id] : undefined;
	return {
		...session,
		freshBatteries: [...others, fresh],
		...(time === undefined
			? {}
			: {
					packTimes: {
						...session.packTimes,
						[id]: { wornMs: 0, sinceMs: time.sinceMs === null ? null : at },
					},
				}),
	};
}
