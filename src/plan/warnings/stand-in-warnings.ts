// What nothing can stand in for, said where that matters now.

import type { NightMs } from '../../journal/entry.ts';
import type { Session } from '../../session/session.ts';
import { leftOutOf } from '../backups/left-out.ts';
import { rackNow, standIns } from '../backups/stand-ins.ts';
import type { Plan, Warning } from '../plan.ts';

/**
 * One warning for each instrument that is broken in somebody's hands, late or not to be had, and that
 * nothing else could take over from.
 *
 * @example
 * standInWarnings({ session, nowMs: 0, plan }) // => []
 */
export function standInWarnings({
	session,
	nowMs,
	plan,
}: {
	readonly session: Session;
	readonly nowMs: NightMs;
	readonly plan: Plan;
}): readonly Warning[] {
	const { show, players, instruments } = session;
	const broken = show.players.flatMap(({ id }) => {
		const held = players[id]?.holds ?? null;
		const isBroken = held !== null && instruments[held]?.context.stringsDown.length !== 0;
		return isBroken ? [{ player: id, instrument: held, section: null }] : [];
	});
	const late = plan.work.filter(({ slackSeconds }) => slackSeconds < 0);
	const missing = plan.slots.flatMap(({ player, named, isMissing, section }) =>
		!isMissing || named === null ? [] : [{ player, instrument: named, section }],
	);
	const said = new Set<string>();
	return [...broken, ...late, ...missing].flatMap((one): readonly Warning[] => {
		const { player, instrument, section } = one;
		if (said.has(instrument)) return [];
		said.add(instrument);
		const asked = { session, plan, nowMs, player, instrument, ...(section && { section }) };
		if (standIns(asked).length > 0) return [];
		const rack = rackNow(asked);
		const leftOut = rack === null ? [] : leftOutOf(rack);
		return [{ code: 'no-stand-in', player, instrument, leftOut }];
	});
}
