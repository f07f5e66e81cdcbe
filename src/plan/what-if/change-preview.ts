// What a song in another place would mean, before anybody is told: who would change to what, whether it
// is ready, and when it can be in hands.

import type { NightMs } from '../../journal/entry.ts';
import { readinessOf } from '../../session/readiness.ts';
import type { Tuning } from '../../tuning/tuning.ts';
import { cueWindows } from '../demand/cue-windows.ts';
import type { Moment } from '../demand/sections-ahead.ts';
import type { PlannedHandOver, Section, Unplayable, Work } from '../plan.ts';
import type { FreeClock } from '../schedule/free-clock.ts';
import { busyWindows, freeClock } from '../schedule/free-clock.ts';
import type { ChangedNight } from './what-if.ts';

/** What one player would do. */
export type PlayerPreview = {
	readonly player: string;
	/** What they hold before; null for empty hands. */
	readonly from: string | null;
	/** What they would play; null for nothing. */
	readonly instrument: string | null;
	readonly tuning: Tuning | null;
	readonly capo: number;
	/** The named instrument that it stands in for; null where nothing does. */
	readonly for: string | null;
	/** Whether it is a change of hands at all. */
	readonly isHandOver: boolean;
	/** Why nothing can be had; null otherwise. */
	readonly why: Unplayable | null;
	/** How what they would get stands now; `in-hands` where nothing changes hands. */
	readonly condition: 'ready' | 'stale' | 'not-ready' | 'in-hands';
	/** Work on it before it can be handed; 0 for none. */
	readonly workSeconds: number;
	/** In hands at the earliest; null where nothing changes hands. */
	readonly inHandsMs: NightMs | null;
	/** That, from the end of the song on or just ended; null before the first. */
	readonly afterEndSeconds: number | null;
};

/** What one song of a changed list would mean. */
export type SongPreview = {
	readonly song: string;
	readonly section: Section;
	/** One for each player with something to play or to give back, in the file's order. */
	readonly players: readonly PlayerPreview[];
};

/**
 * What this item of a changed night's list would mean, told from how things stand now. Next, the work for it is
 * done first, then what is ready is handed over as soon as the song before has ended; later, it is done in its turn.
 * Null where it does not come.
 *
 * @example
 * previewSong({ session, nowMs: 0, plannedZeroMs: 0 }, { session, plan }, '2').players.map(({ condition }) => condition) // => ['ready', 'in-hands']
 */
export function previewSong(now: Moment, after: ChangedNight, item: string): SongPreview | null {
	const { session, plan } = after;
	const ahead = plan.sections.filter(({ hasBegun }) => !hasBegun);
	const section = ahead.find((one) => one.item === item && one.point === 0);
	if (section === undefined) return null;
	const isHere = (one: { readonly section: Section }): boolean => one.section === section;
	const [slots, handOvers, work] = [
		plan.slots.filter(isHere),
		plan.handOvers.filter(isHere),
		plan.work.filter(isHere),
	];
	const given = handOvers.filter(({ instrument }) => instrument !== null);
	const clock = freeClock(busyWindows(cueWindows(session, plan.sections), []));
	const inHands =
		section === ahead[0]
			? earliest({ given, work, endMs: section.previousEndMs ?? now.nowMs, clock }, now.nowMs)
			: inTurn(given, work);
	const players = session.show.players.flatMap(({ id }): readonly PlayerPreview[] => {
		const handOver = handOvers.find(({ player }) => player === id);
		const slot = slots.find(({ player }) => player === id);
		if (handOver === undefined && slot === undefined) return [];
		const { instrument = null, tuning = null, capo = 0 } = slot ?? handOver ?? {};
		const mine = work.filter(({ player }) => player === id);
		const inHandsMs = inHands.get(id) ?? null;
		const { previousEndMs } = section;
		const isAfter = inHandsMs !== null && previousEndMs !== null;
		return [
			{
				player: id,
				from: handOver?.from ?? session.players[id]?.holds ?? null,
				instrument,
				tuning,
				capo,
				for: slot?.for ?? null,
				isHandOver: handOver !== undefined,
				why: slot?.isMissing ? slot.why : null,
				condition: handOver === undefined ? 'in-hands' : conditionOf(now, mine),
				workSeconds: mine.reduce((sum, { seconds }) => sum + seconds, 0),
				inHandsMs,
				afterEndSeconds: isAfter ? (inHandsMs - previousEndMs) / 1000 : null,
			},
		];
	});
	return { song: section.song, section, players };
}

function conditionOf({ session, nowMs }: Moment, [work]: readonly Work[]) {
	if (work === undefined) return 'ready';
	return readinessOf(session, work.instrument, nowMs).isStale ? 'stale' : 'not-ready';
}

type Hurry = {
	readonly given: readonly PlannedHandOver[];
	readonly work: readonly Work[];
	readonly endMs: NightMs;
	readonly clock: FreeClock;
};

/** When each player has theirs in hands: one pair of hands, work put down for what can be handed. */
function earliest(
	{ given, work, endMs, clock }: Hurry,
	nowMs: NightMs,
): ReadonlyMap<string, NightMs> {
	const inHands = new Map<string, NightMs>();
	let time = nowMs;
	const hand = (player: string): void => {
		const handOver = given.find((one) => one.player === player);
		if (handOver === undefined) return;
		time = Math.max(time, endMs) + handOver.seconds * 1000;
		inHands.set(player, time);
	};
	let ready = given
		.map(({ player }) => player)
		.filter((player) => !work.some((one) => one.player === player));
	for (const [place, { player, seconds, fromMs }] of work.entries()) {
		let leftMs = seconds * 1000;
		const startMs = Math.max(time, fromMs);
		const isDoneAfterEnd = clock.firstMs(clock.at(startMs) + leftMs) > endMs;
		if (ready.length > 0 && isDoneAfterEnd) {
			leftMs -= Math.max(0, clock.at(endMs) - clock.at(startMs));
			time = Math.max(time, endMs);
			for (const one of ready) hand(one);
			ready = [];
		}
		time = clock.firstMs(clock.at(Math.max(time, fromMs)) + leftMs);
		const isLast = !work.slice(place + 1).some((one) => one.player === player);
		if (isLast) ready.push(player);
	}
	for (const one of ready) hand(one);
	return inHands;
}

/** When each player has theirs in hands when all is done in the order of the plan. */
function inTurn(
	given: readonly PlannedHandOver[],
	work: readonly Work[],
): ReadonlyMap<string, NightMs> {
	let time = Number.NEGATIVE_INFINITY;
	return new Map(
		given.map(({ player, seconds, wantedMs }) => {
			const last = work.findLast((one) => one.player === player);
			time = Math.max(time, wantedMs, last?.finishMs ?? wantedMs) + seconds * 1000;
			return [player, time];
		}),
	);
}
