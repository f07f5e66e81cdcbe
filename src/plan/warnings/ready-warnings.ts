// What is not ready for a hand-over that is near, what was ready and no longer is, and what cannot be
// ready in time.

import { tenths } from '../../base/show-clock.ts';
import type { NightMs } from '../../journal/entry.ts';
import { openBreak } from '../../session/find.ts';
import { readinessOf } from '../../session/readiness.ts';
import type { Session } from '../../session/session.ts';
import { standIns } from '../backups/stand-ins.ts';
import type { Plan, StandIn, Warning, Work } from '../plan.ts';

/** A hand-over this near whose instrument is not ready is said: common practice, no source. */
const NEAR_MS = 90_000;

export type ReadyAsked = {
	readonly session: Session;
	readonly nowMs: NightMs;
	readonly plan: Plan;
};

/**
 * Strings down in somebody's hands; then for each piece of work, in the order in which to do it, the one
 * thing about it that presses most: late, with what could stand in; stale; or not ready though near.
 *
 * @example
 * readyWarnings({ session, nowMs: 0, plan }) // => []
 */
export function readyWarnings(asked: ReadyAsked): readonly Warning[] {
	return [...stringsDown(asked), ...asked.plan.work.flatMap((work) => workWarnings(asked, work))];
}

function stringsDown({ session, nowMs, plan }: ReadyAsked): readonly Warning[] {
	const { show, players, instruments } = session;
	return show.players.flatMap(({ id: player }): readonly Warning[] => {
		const instrument = players[player]?.holds ?? null;
		const context = instrument === null ? undefined : instruments[instrument]?.context;
		if (instrument === null || !context || context.stringsDown.length === 0) return [];
		// While the break waits for its answer, what to take is asked, with what each costs later.
		const isAsked = openBreak(session)?.player === player;
		const [best] = isAsked ? [] : standIns({ session, plan, nowMs, player, instrument });
		return [{ code: 'not-ready', player, instrument, ...standInOf(best) }];
	});
}

function workWarnings(asked: ReadyAsked, work: Work): readonly Warning[] {
	const { session, nowMs, plan } = asked;
	const { section, player, instrument } = work;
	const about = { song: section.song, player, instrument };
	const { isStale } = readinessOf(session, instrument, nowMs);
	const isNear = work.wantedMs - nowMs <= NEAR_MS;
	const isComing = section === plan.handOvers[0]?.section;
	return [
		...(work.slackSeconds < 0 ? [lateWarning(asked, work)] : []),
		...(isStale && (isComing || isNear) ? [{ ...about, code: 'stale' as const }] : []),
		...(!isStale && isNear ? [{ ...about, code: 'not-ready' as const }] : []),
	];
}

function lateWarning({ session, nowMs, plan }: ReadyAsked, work: Work): Warning {
	const { section, player, instrument, slackSeconds, shortSeconds } = work;
	// One that takes as long is no help.
	const readyMs = work.wantedMs - slackSeconds * 1000;
	const best = standIns({ session, plan, nowMs, player, instrument, section }).find(
		({ readyInSeconds }) => nowMs + readyInSeconds * 1000 < readyMs,
	);
	const late: Warning = {
		code: 'late',
		song: section.song,
		player,
		instrument,
		lateSeconds: tenths(-slackSeconds),
		shortSeconds: tenths(shortSeconds),
		...(work.job === 'restring' ? { isRestring: true } : {}),
		...standInOf(best),
	};
	if (best === undefined || session.players[player]?.holds !== best.instrument) return late;
	const isCapoMoved = session.instruments[best.instrument]?.context.capo !== best.capo;
	return { ...late, keeps: { capo: isCapoMoved ? best.capo : null } };
}

function standInOf(best: StandIn | undefined): { readonly standIn?: string } {
	return best === undefined ? {} : { standIn: best.instrument };
}
