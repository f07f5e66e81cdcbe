// What is not ready for a hand-over that is near, what was ready and no longer is, what cannot be ready in
// time, and what nothing can stand in for.

import { tenths } from '../../base/show-clock.ts';
import type { NightMs } from '../../journal/entry.ts';
import { openBreak } from '../../session/find.ts';
import { readinessOf } from '../../session/readiness.ts';
import type { Session } from '../../session/session.ts';
import { rackNow, standIns } from '../backups/stand-ins.ts';
import { leftOutOf, takeOvers } from '../backups/take-over.ts';
import type { Plan, Section, Warning, Work } from '../plan.ts';

/** A hand-over this near whose instrument is not ready is said: common practice, no source. */
const NEAR_MS = 90_000;

type ReadyAsked = {
	readonly session: Session;
	readonly nowMs: NightMs;
	readonly plan: Plan;
};

/** What is to be replaced; `section`: where it is wanted, left out where it is in hands. */
type Trouble = {
	readonly player: string;
	readonly instrument: string;
	readonly section?: Section;
};

/**
 * Strings down in somebody's hands; then for each piece of work, in the order in which to do it, the one
 * thing about it that presses most: late, with what could stand in; stale; or not ready though near. Then
 * each instrument that is broken in somebody's hands, late or not to be had, and that nothing can stand in for.
 *
 * @example
 * readyWarnings({ session, nowMs: 0, plan }) // => []
 */
export function readyWarnings(asked: ReadyAsked): readonly Warning[] {
	const { session, plan } = asked;
	const broken = session.show.players.flatMap(({ id: player }): readonly Trouble[] => {
		const instrument = session.players[player]?.holds ?? null;
		const down = session.instruments[instrument ?? '']?.context.stringsDown ?? [];
		return instrument !== null && down.length > 0 ? [{ player, instrument }] : [];
	});
	const late = plan.work
		.filter(isLate)
		.map(({ player, instrument, section }): Trouble => ({ player, instrument, section }));
	const missing = plan.slots.flatMap(({ isMissing, named, player, section }): readonly Trouble[] =>
		isMissing && named !== null ? [{ player, instrument: named, section }] : [],
	);
	return [
		...broken.map((one) => stringsDown(asked, one)),
		...plan.work.flatMap((work) => workWarnings(asked, work)),
		...aloneWarnings(asked, [...broken, ...late, ...missing]),
	];
}

function isLate({ slackSeconds }: Work): boolean {
	return slackSeconds < 0;
}

function stringsDown(asked: ReadyAsked, { player, instrument }: Trouble): Warning {
	// While the break waits for its answer, what to take is asked, with what each costs later.
	const isAsked = openBreak(asked.session)?.player === player;
	const [best] = isAsked ? [] : standIns({ ...asked, player, instrument });
	return { code: 'not-ready', player, instrument, ...(best && { standIn: best.instrument }) };
}

function workWarnings(asked: ReadyAsked, work: Work): readonly Warning[] {
	const { session, nowMs, plan } = asked;
	const { section, player, instrument } = work;
	const about = { song: section.song, player, instrument };
	const { isStale } = readinessOf(session, instrument, nowMs);
	const isNear = work.wantedMs - nowMs <= NEAR_MS;
	const isComing = section === plan.handOvers[0]?.section;
	return [
		...(isLate(work) ? [lateWarning(asked, work)] : []),
		...(isStale && (isComing || isNear) ? [{ ...about, code: 'stale' as const }] : []),
		...(!isStale && isNear ? [{ ...about, code: 'not-ready' as const }] : []),
	];
}

function lateWarning(asked: ReadyAsked, work: Work): Warning {
	const { session, nowMs } = asked;
	const { section, player, instrument, finishMs } = work;
	// One that takes as long is no help.
	const best = standIns({ ...asked, player, instrument, section }).find(
		({ readyInSeconds }) => nowMs + readyInSeconds * 1000 < finishMs,
	);
	const isKept = best !== undefined && session.players[player]?.holds === best.instrument;
	const isCapoMoved = isKept && session.instruments[best.instrument]?.context.capo !== best.capo;
	return {
		...lateness(work),
		...(work.job === 'restring' ? { isRestring: true } : {}),
		...(best && { standIn: best.instrument }),
		...(isKept ? { keeps: { capo: isCapoMoved ? best.capo : null } } : {}),
	};
}

/**
 * By how much a piece of work is late.
 *
 * @example
 * lateness({ ...plan.work[0], slackSeconds: -30, shortSeconds: 15 }).lateSeconds // => 30
 */
export function lateness({
	section: { song },
	player,
	instrument,
	slackSeconds,
	shortSeconds,
}: Work): Extract<Warning, { code: 'late' }> {
	const late = { lateSeconds: tenths(-slackSeconds), shortSeconds: tenths(shortSeconds) };
	return { code: 'late', song, player, instrument, ...late };
}

/** Of each instrument the first only. */
function aloneWarnings(asked: ReadyAsked, troubles: readonly Trouble[]): readonly Warning[] {
	const byInstrument = Map.groupBy(troubles, ({ instrument }) => instrument);
	return [...byInstrument].flatMap(([instrument, [one]]): readonly Warning[] => {
		const rack = one === undefined ? null : rackNow({ ...asked, ...one });
		if (one === undefined || (rack !== null && takeOvers(rack).length > 0)) return [];
		const { player } = one;
		const leftOut = rack === null ? [] : leftOutOf(rack);
		return [{ code: 'no-stand-in', player, instrument, leftOut }];
	});
}
