// What is not ready for a hand-over that is near, what was ready and no longer is, what cannot be ready in
// time, and what nothing can stand in for.

import { tenths } from '../../base/show-clock.ts';
import type { NightMs } from '../../journal/entry.ts';
import { openBreak } from '../../session/find.ts';
import { readinessOf } from '../../session/readiness.ts';
import type { Session } from '../../session/session.ts';
import { rackNow, standIns } from '../backups/stand-ins.ts';
import { leftOutOf } from '../backups/take-over.ts';
import type { Plan, Section, StandIn, Warning, Work } from '../plan.ts';

/** A hand-over this near whose instrument is not ready is said: common practice, no source. */
const NEAR_MS = 90_000;

export type ReadyAsked = {
	readonly session: Session;
	readonly nowMs: NightMs;
	readonly plan: Plan;
};

/** What is to be replaced, and by what it could be, best first. */
type Trouble = {
	readonly player: string;
	readonly instrument: string;
	/** Where it is wanted; left out where it is in hands. */
	readonly section?: Section;
	readonly standIns: readonly StandIn[];
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
	const trouble = ({ player, instrument, section }: Omit<Trouble, 'standIns'>): Trouble => {
		const of = { player, instrument, ...(section && { section }) };
		return { ...of, standIns: standIns({ ...asked, ...of }) };
	};
	const broken = session.show.players.flatMap(({ id: player }) => {
		const instrument = session.players[player]?.holds ?? null;
		const down = session.instruments[instrument ?? '']?.context.stringsDown ?? [];
		return instrument !== null && down.length > 0 ? [trouble({ player, instrument })] : [];
	});
	const late = new Map(
		plan.work.filter(({ slackSeconds }) => slackSeconds < 0).map((work) => [work, trouble(work)]),
	);
	const missing = plan.slots
		.filter(({ isMissing, named }, place, all) => {
			const isFirst = all.findIndex((one) => one.isMissing && one.named === named) === place;
			return isMissing && named !== null && isFirst;
		})
		.map(({ player, named, section }) => trouble({ player, instrument: named ?? '', section }));
	return [
		...broken.map((one) => stringsDown(session, one)),
		...plan.work.flatMap((work) => workWarnings(asked, work, late.get(work))),
		...aloneWarnings(asked, [...broken, ...late.values(), ...missing]),
	];
}

function stringsDown(session: Session, { player, instrument, standIns: [best] }: Trouble): Warning {
	// While the break waits for its answer, what to take is asked, with what each costs later.
	const isAsked = openBreak(session)?.player === player;
	return { code: 'not-ready', player, instrument, ...standInOf(isAsked ? undefined : best) };
}

function workWarnings(
	asked: ReadyAsked,
	work: Work,
	late: Trouble | undefined,
): readonly Warning[] {
	const { session, nowMs, plan } = asked;
	const { section, player, instrument } = work;
	const about = { song: section.song, player, instrument };
	const { isStale } = readinessOf(session, instrument, nowMs);
	const isNear = work.wantedMs - nowMs <= NEAR_MS;
	const isComing = section === plan.handOvers[0]?.section;
	return [
		...(late === undefined ? [] : [lateWarning(asked, work, late)]),
		...(isStale && (isComing || isNear) ? [{ ...about, code: 'stale' as const }] : []),
		...(!isStale && isNear ? [{ ...about, code: 'not-ready' as const }] : []),
	];
}

function lateWarning({ session, nowMs }: ReadyAsked, work: Work, late: Trouble): Warning {
	const { section, player, instrument, slackSeconds, shortSeconds } = work;
	// One that takes as long is no help.
	const readyMs = work.wantedMs - slackSeconds * 1000;
	const best = late.standIns.find(({ readyInSeconds }) => nowMs + readyInSeconds * 1000 < readyMs);
	const isKept = best !== undefined && session.players[player]?.holds === best.instrument;
	const isCapoMoved = isKept && session.instruments[best.instrument]?.context.capo !== best.capo;
	return {
		code: 'late',
		song: section.song,
		player,
		instrument,
		lateSeconds: tenths(-slackSeconds),
		shortSeconds: tenths(shortSeconds),
		...(work.job === 'restring' ? { isRestring: true } : {}),
		...standInOf(best),
		...(isKept ? { keeps: { capo: isCapoMoved ? best.capo : null } } : {}),
	};
}

function standInOf(best: StandIn | undefined): { readonly standIn?: string } {
	return best === undefined ? {} : { standIn: best.instrument };
}

/** Of each instrument the first only. */
function aloneWarnings(asked: ReadyAsked, troubles: readonly Trouble[]): readonly Warning[] {
	const said = new Set<string>();
	return troubles.flatMap(({ standIns: found, ...one }): readonly Warning[] => {
		const { player, instrument } = one;
		if (said.has(instrument)) return [];
		said.add(instrument);
		if (found.length > 0) return [];
		const rack = rackNow({ ...asked, ...one });
		return [
			{ code: 'no-stand-in', player, instrument, leftOut: rack === null ? [] : leftOutOf(rack) },
		];
	});
}
