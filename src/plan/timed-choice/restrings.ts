// Strings that are down: from when an instrument can be had again. The plan is first made without; then each
// restring is offered, in the order of the slots on the rack, to what wants the instrument, and goes to the
// first for which it can be done in time without making other work late, or later than it was.

import type { InstrumentState } from '../../../machines/instrument.ts';
import type { NightMs } from '../../journal/entry.ts';
import { recheckSeconds } from '../../session/readiness.ts';
import type { Session } from '../../session/session.ts';
import type { Instrument } from '../../showfile/show.ts';
import { MISSING } from '../choice/criteria.ts';
import type { Hand } from '../demand/hand.ts';
import { slotsAhead } from '../demand/large-night.ts';
import { choicesFor } from '../demand/options.ts';
import type { Outlook } from '../demand/outlook.ts';
import { whyUnplayable } from '../demand/why-unplayable.ts';
import type { IdleWork, PlannedHandOver, Section, Work } from '../plan.ts';
import type { Choice } from '../schedule/choice.ts';
import { busyWindows, freeClock } from '../schedule/free-clock.ts';
import { beginningMs } from '../schedule/hand-overs-ahead.ts';
import { nodesFor } from '../schedule/least-late.ts';
import { exactOrder, jackson, type PiecesOfWork, startingAt } from '../schedule/one-machine.ts';
import type { Piece } from '../schedule/order-work.ts';
import { firstShown, onFreeClock } from '../schedule/order-work.ts';
import type { Schedule } from '../schedule/schedule.ts';
import { backAtOnceMs } from '../schedule/stints.ts';
import { intervalEnd, partsOf } from '../schedule/work-ahead.ts';
import { workNeeded } from '../schedule/work-needed.ts';
import type { InTime } from './choose-in-time.ts';

/** Pieces of work that restrings are held against, all of them at all their slots and in all orders together: those of a real show, many times over. */
const OFFERED = 5_000;

/** `held`: what a restring is held against, those given a place since the choice was made among it. */
type Restrung = { readonly outlook: Outlook; readonly best: InTime; readonly held: Held };

/** As much of a schedule as that takes. */
type Held = {
	readonly handOvers: readonly Pick<
		PlannedHandOver,
		'section' | 'player' | 'seconds' | 'wantedMs'
	>[];
	readonly work: readonly Pick<
		Work,
		'section' | 'player' | 'instrument' | 'seconds' | 'fromMs' | 'wantedMs' | 'finishMs' | 'isEarly'
	>[];
};

/** So many slots are chosen for anew in between: those of a real show, with two restrings in it. */
const ANEW = 150;

/**
 * The outlook with each restring that can be done in time, and the best choice with it. It is chosen anew
 * after each; in a large show, once there was much of that, once for all that are left, unless something is
 * missing: which of them that one waits for is known only then.
 *
 * @example
 * restrungInTime(session, { outlook, choose }).outlook.restrungFor.size // => 0
 */
export function restrungInTime(
	session: Session,
	{
		outlook: first,
		choose,
	}: { readonly outlook: Outlook; readonly choose: (outlook: Outlook) => InTime },
): Pick<Restrung, 'outlook' | 'best'> {
	const chosenFor = (outlook: Outlook): Restrung => {
		const best = choose(outlook);
		return { outlook, best, held: best.schedule };
	};
	const effort: Effort = { left: OFFERED };
	let now = chosenFor(first);
	let isChosen = true;
	let left = ANEW;
	for (const instrument of brokenOf(first)) {
		const found = firstInTime(session, now, { instrument, effort });
		if (found === null) continue;
		const restrungFor = new Map(now.outlook.restrungFor).set(instrument.id, found.place);
		const outlook = { ...now.outlook, restrungFor };
		left -= slotsAhead(first.show, first.sections);
		isChosen = left >= 0 || (now.best.counts[MISSING] as number) > 0;
		now = isChosen ? chosenFor(outlook) : { ...now, outlook, held: found.held };
	}
	return isChosen ? now : chosenFor(now.outlook);
}

/**
 * What is to be restrung though nothing is to be played on it.
 *
 * @example
 * idleRestrings(outlook, schedule) // => []
 */
export function idleRestrings(outlook: Outlook, { work }: Schedule): readonly IdleWork[] {
	return brokenOf(outlook).flatMap((instrument): readonly IdleWork[] => {
		if (work.some((one) => one.job === 'restring' && one.instrument === instrument.id)) return [];
		const state = outlook.instruments[instrument.id] as InstrumentState;
		const to = { tuning: state.context.tuning, capo: state.context.capo };
		const { seconds } = workNeeded({ instrument, state, to });
		return [{ job: 'restring', instrument: instrument.id, to: to.tuning, seconds }];
	});
}

/** What has strings down and could be had with new ones, in the order of the slots on the rack. */
function brokenOf({ show, instruments }: Outlook): readonly Instrument[] {
	const slotPlace = ({ slot }: Instrument): number =>
		slot === null ? Number.MAX_SAFE_INTEGER : (slot.codePointAt(0) ?? 0);
	return show.instruments
		.filter((one) => {
			const state = instruments[one.id];
			if (state === undefined || state.context.stringsDown.length === 0) return false;
			return whyUnplayable({ instrument: one, state, tuning: state.context.tuning }) === null;
		})
		.sort((one, other) => slotPlace(one) - slotPlace(other));
}

type Found = { readonly place: number; readonly held: Held };

/** The place of the first section that wants the instrument and for which the restring can be done in time; null for none. */
function firstInTime(
	session: Session,
	now: Restrung,
	{ instrument, effort }: { readonly instrument: Instrument; readonly effort: Effort },
): Found | null {
	const { outlook, best } = now;
	const state = outlook.instruments[instrument.id] as InstrumentState;
	const seats = outlook.show.players.length;
	const backMs = backOf(now, { instrument, state });
	if (backMs === null) return null;
	for (const [index, choice] of best.schedule.choices.entries()) {
		if (effort.left <= 0) return null;
		const to = wantedAs(outlook, { choice, instrument, place: Math.floor(index / seats) });
		if (to === null || choice.section.hasBegun) continue;
		const asked = { instrument, state, choice, to, backMs };
		const held = withRestring(session, now, { ...asked, effort });
		if (held !== null) return { place: Math.floor(index / seats), held };
		effort.left -= now.held.work.length;
	}
	return null;
}

type Offered = { readonly instrument: Instrument; readonly state: InstrumentState };

/** When it is on the rack or the bench: now, or once it is taken out of hands; null where it never is. */
function backOf({ outlook, best }: Restrung, { instrument, state }: Offered): NightMs | null {
	if (state.value !== 'inHands') return state.context.backAtMs ?? Number.NEGATIVE_INFINITY;
	const given = best.schedule.choices.find(
		({ before, after }) =>
			before?.instrument === instrument.id && after?.instrument !== instrument.id,
	);
	if (given !== undefined) {
		const { section } = given;
		return given.after === null ? backAtOnceMs(section) : section.startMs;
	}
	const after = outlook.sections.find(({ isAfterInterval }, place) => isAfterInterval && place > 0);
	return after === undefined ? null : backAtOnceMs(after);
}

/** What the choice's player would have it in: where the song names it, or would else have nothing that it needs. */
function wantedAs(
	outlook: Outlook,
	{ choice, instrument, place }: { choice: Choice; instrument: Instrument; place: number },
): Hand | null {
	const seat = outlook.show.players.findIndex(({ id }) => id === choice.player);
	const demand = outlook.asked[place]?.[seat]?.demand;
	if (demand === undefined || choice.isSettled) return null;
	if (demand.kind === 'named') {
		const isAsked = choice.isMissing || choice.for === instrument.id || choice.isNamed;
		if (demand.instrument.id !== instrument.id || !isAsked) return null;
		const state = outlook.instruments[instrument.id] as InstrumentState;
		if (whyUnplayable({ instrument, state, tuning: demand.tuning }) !== null) return null;
		return { instrument: instrument.id, tuning: demand.tuning, capo: demand.capo };
	}
	if (demand.kind !== 'needs' || !choice.isMissing) return null;
	const rack = {
		show: outlook.show,
		instruments: outlook.instruments,
		isStrung: (id: string) => id === instrument.id,
	};
	const [first] = choicesFor(rack, { part: demand.part, player: choice.player });
	return first?.hand ?? null;
}

/** How many pieces of work may still be looked at. */
type Effort = { left: number };

type Asked = Offered & {
	readonly choice: Choice;
	readonly to: Hand;
	readonly backMs: NightMs;
	readonly effort: Effort;
};

/** A piece of work, with the instrument that it is on. */
type Named = Piece & { readonly on: string };

/** With it, where there is an order in which it is on time and nothing else is late, or later than it was; null where there is none. */
function withRestring(session: Session, { outlook, held }: Restrung, asked: Asked): Held | null {
	const { handOvers, work } = held;
	const { nowMs, show } = outlook;
	const { section, player } = asked.choice;
	const { instrument, state, to: hand, backMs, effort } = asked;
	// Handing it over takes its seconds too: of the hands that work, and of whatever is wanted there.
	const atOnce = handOvers.filter((one) => one.section === section);
	const handing = atOnce
		.filter((one) => one.player !== player)
		.reduce((sum, { seconds }) => sum + seconds, instrument.times.handOver);
	const wantedMs = beginningMs(section, handing);
	const clock = freeClock(busyWindows(outlook.cues, [...handOvers, { section, wantedMs }]));
	const soonerMs = (atOnce[0]?.wantedMs ?? wantedMs) - wantedMs;
	// Not marked by the moment at which it is wanted, it cannot be had there.
	if (nowMs >= wantedMs) return null;
	// What stands in for it there is not needed then.
	const isOther = (one: { section: Section; player: string }) =>
		one.section !== section || one.player !== player;
	const needed = work.filter(isOther).map((one) => ({
		...one,
		wantedMs: one.wantedMs - (one.section === section ? soonerMs : 0),
	}));
	const others = needed.map(
		(one): Named => ({
			seconds: one.seconds,
			releaseMs: one.fromMs,
			// What is late already is to be no later.
			dueMs: Math.max(one.wantedMs, one.finishMs),
			isEarly: one.isEarly,
			on: one.instrument,
		}),
	);
	const recheck = recheckSeconds(show, instrument, 0);
	const mine = partsOf(
		{ instrument, hand, state, backMs, section },
		{ dueMs: wantedMs, recheck, nowMs },
	).map((one): Named => ({ ...one, on: instrument.id }));
	const pieces = [...others, ...mine];
	const sinceOn = workedSince(session);
	const worked = (one: Named): Named => {
		const sinceMs = Math.max(one.releaseMs, sinceOn(one.on));
		const workedMs = Number.isFinite(sinceMs) ? clock.at(nowMs) - clock.at(sinceMs) : 0;
		return { ...one, seconds: Math.max(0, one.seconds - Math.max(0, workedMs) / 1000) };
	};
	const left = (all: readonly Named[]) => startingAt(clock.at(nowMs), onFreeClock(all, clock));
	const nodes = (): number =>
		Math.min(nodesFor(pieces.length), Math.ceil(effort.left / pieces.length));
	const isInTime = (all: PiecesOfWork): boolean => {
		if (jackson(all, { isPreemptive: true }).latenessMs > 0) return false;
		const found = exactOrder(all, { enoughMs: 0, nodes: nodes() });
		effort.left -= found.nodes * pieces.length;
		return found.latenessMs <= 0;
	};
	// Of most it can be told without knowing which one stands first: as if none of them had been worked on,
	// and as if all had.
	const added = (): Held => ({
		handOvers: [
			...handOvers
				.filter(isOther)
				.map((one) => (one.section === section ? { ...one, wantedMs } : one)),
			{ section, player, seconds: instrument.times.handOver, wantedMs },
		],
		work: [
			...needed,
			...mine.map(({ seconds, releaseMs, dueMs, isEarly }) => ({
				section,
				player,
				instrument: instrument.id,
				seconds,
				fromMs: Math.max(releaseMs, nowMs),
				wantedMs: dueMs,
				finishMs: dueMs,
				isEarly,
			})),
		],
	});
	if (isInTime(left(pieces))) return added();
	if (jackson(left(pieces.map(worked)), { isPreemptive: true }).latenessMs > 0) return null;
	const intervalEndsMs = intervalEnd(outlook);
	const first = firstShown(pieces, { nowMs, clock, intervalEndsMs, nodes: nodes() });
	return isInTime(left(pieces.map((one) => (one === first ? worked(one) : one)))) ? added() : null;
}

/** What stands first in the list counts as worked on since it came back or broke, or since something was last marked ready. */
function workedSince({ instruments, readyMarks, incidents }: Session): (id: string) => NightMs {
	const marks = Object.values(readyMarks).map(({ atMs }) => atMs);
	const markedMs = Math.max(Number.NEGATIVE_INFINITY, ...marks);
	const breaks = incidents.filter(({ kind }) => kind === 'string-break');
	const brokeMs = new Map(breaks.map(({ instrument, atMs }) => [instrument, atMs]));
	return (id) => {
		const backMs = instruments[id]?.context.backAtMs ?? Number.NEGATIVE_INFINITY;
		return Math.max(backMs, brokeMs.get(id) ?? Number.NEGATIVE_INFINITY, markedMs);
	};
}
