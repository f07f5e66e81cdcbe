// What is not ready for a hand-over that is near, what was ready and no longer is, and what cannot be
// ready in time.

import { minutesSeconds } from '../../base/duration.ts';
import type { NightMs } from '../../journal/entry.ts';
import { openBreak } from '../../session/find.ts';
import { readinessOf } from '../../session/readiness.ts';
import type { Session } from '../../session/session.ts';
import { playerName, songTitle } from '../../showfile/shown-names.ts';
import { standIns } from '../backups/stand-ins.ts';
import type { Plan, Warning, Work } from '../plan.ts';
import { type Call, sentence } from './sentence.ts';

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
	return show.players.flatMap(({ id, name }): readonly Warning[] => {
		const held = players[id]?.holds ?? null;
		const context = held === null ? undefined : instruments[held]?.context;
		if (held === null || context === undefined || context.stringsDown.length === 0) return [];
		// While the break waits for its answer, what to take is asked, with what each costs later.
		const isAsked = openBreak(session)?.player === id;
		const [best] = isAsked ? [] : standIns({ session, plan, nowMs, player: id, instrument: held });
		const said = sentence(show, (call) => {
			const instead = best === undefined ? '' : `; ${call(best.instrument)} can stand in`;
			return `${call(held)} in ${name}'s hands has a string down${instead}`;
		});
		return [{ code: 'not-ready', player: id, instrument: held, ...said }];
	});
}

function workWarnings(asked: ReadyAsked, work: Work): readonly Warning[] {
	const { session, nowMs, plan } = asked;
	const { section, player, instrument } = work;
	const { show } = session;
	const title = songTitle(show, section.song);
	const about = { song: section.song, player, instrument };
	const { isStale } = readinessOf(session, instrument, nowMs);
	const isNear = work.wantedMs - nowMs <= NEAR_MS;
	const isComing = section === plan.handOvers[0]?.section;
	return [
		...(work.slackSeconds < 0
			? [
					{
						...about,
						code: 'late' as const,
						...sentence(show, lateWords(asked, work, title)),
					},
				]
			: []),
		...(isStale && (isComing || isNear)
			? [
					{
						...about,
						code: 'stale' as const,
						...sentence(show, (call) => `${call(instrument)} is stale; ${title} wants it`),
					},
				]
			: []),
		...(!isStale && isNear
			? [
					{
						...about,
						code: 'not-ready' as const,
						...sentence(show, (call) => `${call(instrument)} is not ready for ${title}`),
					},
				]
			: []),
	];
}

function lateWords(
	{ session, nowMs, plan }: ReadyAsked,
	work: Work,
	title: string,
): (call: Call) => string {
	const { section, player, instrument, slackSeconds } = work;
	const [best] = standIns({ session, plan, nowMs, player, instrument, section });
	const late = (call: Call) =>
		`${call(instrument)} is ${minutesSeconds(-slackSeconds)} late for ${title}`;
	if (best === undefined) return late;
	const isHeld = session.players[player]?.holds === best.instrument;
	if (!isHeld) return (call) => `${late(call)}; ${call(best.instrument)} can stand in`;
	const isCapoMoved = session.instruments[best.instrument]?.context.capo !== best.capo;
	const capo = best.capo === 0 ? ' without capo' : ` with capo ${best.capo}`;
	const who = playerName(session.show, player);
	return (call) =>
		`${late(call)}; ${who} can keep ${call(best.instrument)}${isCapoMoved ? capo : ''}`;
}
