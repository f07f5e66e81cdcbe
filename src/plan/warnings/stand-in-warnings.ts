// What nothing can stand in for, said where that matters now.

import type { NightMs } from '../../journal/entry.ts';
import type { Session } from '../../session/session.ts';
import { standIns } from '../backups/stand-ins.ts';
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
		return isBroken ? [{ player: id, instrument: held }] : [];
	});
	const late = plan.work.filter(({ slackSeconds }) => slackSeconds < 0);
	const missing = plan.slots.flatMap(({ player, named, isMissing }) =>
		!isMissing || named === null ? [] : [{ player, instrument: named }],
	);
	const said = new Set<string>();
	return [...broken, ...late, ...missing].flatMap(({ player, instrument }): readonly Warning[] => {
		if (said.has(instrument)) return [];
		said.add(instrument);
		if (standIns({ session, plan, nowMs, player, instrument }).length > 0) return [];
		return [{ code: 'no-stand-in', player, instrument }];
	});
}
