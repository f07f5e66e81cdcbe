// A night as intervals: for each instrument where it was and how ready, for each player what was in hands. The
// intervals of one lane cover the night without gap or overlap; what the journal does not say is not in them.

import type { InstrumentState } from '../../machines/instrument.ts';
import type { Entry, NightMs } from '../journal/entry.ts';
import { findInstrument, holderOf } from '../session/find.ts';
import { readinessOf, recheckSeconds } from '../session/readiness.ts';
import type { Session } from '../session/session.ts';
import type { NightStep } from './night-steps.ts';

/** Where an instrument is, by its machine's condition. */
export type LanePlace = 'rack' | 'stage' | 'hands' | 'bench' | 'out';

/** `stale`: ready once, but too long ago. In hands none of them is asked. */
export type LaneReadiness = 'ready' | 'stale' | 'not-ready' | null;

export type InstrumentSpan = {
	readonly fromMs: NightMs;
	readonly toMs: NightMs;
	readonly place: LanePlace;
	/** Who has it; null where nobody has. */
	readonly player: string | null;
	readonly tuning: string;
	readonly capo: number;
	readonly readiness: LaneReadiness;
	/** How many strings are down. */
	readonly stringsDown: number;
	readonly hasFault: boolean;
};

export type PlayerSpan = {
	readonly fromMs: NightMs;
	readonly toMs: NightMs;
	/** Null: hands empty. */
	readonly instrument: string | null;
	/** What the instrument was in; null with hands empty. */
	readonly tuning: string | null;
	readonly capo: number | null;
};

export type Lanes = {
	readonly fromMs: NightMs;
	readonly toMs: NightMs;
	/** By instrument id, in the order of the show; each at least one span, but for a night of no length. */
	readonly instruments: Readonly<Record<string, readonly InstrumentSpan[]>>;
	/** By player id. */
	readonly players: Readonly<Record<string, readonly PlayerSpan[]>>;
};

const PLACES: Readonly<Record<InstrumentState['value'], LanePlace>> = {
	racked: 'rack',
	staged: 'stage',
	inHands: 'hands',
	onBench: 'bench',
	out: 'out',
};

/** A moment from which on a session holds, until the next. */
type Stretch = { readonly fromMs: NightMs; readonly toMs: NightMs; readonly session: Session };

/** The lanes of a night from the first record that counts to the last. */
export function lanesOf(opened: Session, steps: readonly NightStep[]): Lanes {
	const stretches = stretchesOf(opened, steps);
	const fromMs = stretches[0]?.fromMs ?? 0;
	const toMs = stretches.at(-1)?.toMs ?? fromMs;
	const { show } = stretches.at(-1)?.session ?? opened;
	const lane = <Span extends Stretched>(
		isSame: (one: Session, other: Session) => boolean,
		span: (stretch: Stretch) => readonly Span[],
	) => merged(together(stretches, isSame).flatMap(span));
	return {
		fromMs,
		toMs,
		instruments: Object.fromEntries(
			show.instruments.map(({ id }) => [
				id,
				lane(
					(one, other) =>
						one.show === other.show &&
						one.instruments[id] === other.instruments[id] &&
						(one.players === other.players || holderOf(one, id) === holderOf(other, id)),
					(one) => instrumentSpans(one, id),
				),
			]),
		),
		players: Object.fromEntries(
			show.players.map(({ id }) => [
				id,
				lane(
					(one, other) => inHands(one, id) === inHands(other, id),
					(one) => playerSpans(one, id),
				),
			]),
		),
	};
}

/** Neighbouring stretches in which nothing changed for a lane as one. */
function together(
	stretches: readonly Stretch[],
	isSame: (one: Session, other: Session) => boolean,
): readonly Stretch[] {
	const all: Stretch[] = [];
	for (const stretch of stretches) {
		const last = all.at(-1);
		if (last !== undefined && isSame(last.session, stretch.session))
			all[all.length - 1] = { ...last, toMs: stretch.toMs };
		else all.push(stretch);
	}
	return all;
}

/** What a player has, as it stands; null for nothing, undefined where there is no such player. */
function inHands(
	{ players, instruments }: Session,
	id: string,
): InstrumentState | null | undefined {
	const player = players[id];
	if (player === undefined) return undefined;
	return player.holds === null ? null : instruments[player.holds];
}

// Some entries say when something was, earlier than they were written; a lane goes on from where it is.
function stretchesOf(opened: Session, steps: readonly NightStep[]): readonly Stretch[] {
	const first = steps[0];
	if (first === undefined) return [];
	let atMs = first.entry.at;
	let session = opened;
	const all: Stretch[] = [];
	for (const step of steps) {
		const { entry, after } = step;
		if (entry.at > atMs) {
			all.push({ fromMs: atMs, toMs: entry.at, session });
			atMs = entry.at;
		}
		if (entry.k === 'hand-over-corrected') correct(all, entry, step);
		session = after;
	}
	return all;
}

/** What a correction says was in hands was there since the hand-over that it corrects. */
function correct(
	stretches: Stretch[],
	{ player, instrument, of }: Extract<Entry, { k: 'hand-over-corrected' }>,
	{ before, after }: NightStep,
): void {
	const made = before.players[player]?.correctable;
	if (!made || (of !== undefined && of !== made.of)) return;
	const things = [made.given, instrument].filter((one) => one !== null);
	for (let at = stretches.length - 1; at >= 0; at -= 1) {
		const stretch = stretches[at];
		if (stretch === undefined || stretch.fromMs < made.atMs) return;
		const { session } = stretch;
		const others = Object.keys(session.players).filter((id) => {
			const holds = session.players[id]?.holds ?? null;
			return id === player || (holds !== null && holds === instrument);
		});
		stretches[at] = {
			...stretch,
			session: {
				...session,
				players: { ...session.players, ...picked(after.players, others) },
				instruments: { ...session.instruments, ...picked(after.instruments, things) },
			},
		};
	}
}

function picked<Thing>(
	things: Readonly<Record<string, Thing>>,
	ids: readonly string[],
): Readonly<Record<string, Thing>> {
	return Object.fromEntries(
		ids.flatMap((id) => (things[id] === undefined ? [] : [[id, things[id]] as const])),
	);
}

function instrumentSpans({ fromMs, toMs, session }: Stretch, id: string): InstrumentSpan[] {
	const state = session.instruments[id];
	const instrument = findInstrument(session, id);
	if (state === undefined || instrument === null) return [];
	const { tuning, capo, stringsDown, faults, readyAtMs, stringHours } = state.context;
	const place = PLACES[state.value];
	const staleMs =
		readyAtMs === null
			? null
			: readyAtMs + recheckSeconds(session.show, instrument, stringHours) * 1000;
	// Ready ends by itself in the middle of a stretch.
	const cuts =
		staleMs !== null && staleMs > fromMs && staleMs < toMs ? [fromMs, staleMs] : [fromMs];
	return cuts.map((from, at) => ({
		fromMs: from,
		toMs: cuts[at + 1] ?? toMs,
		place,
		player: holderOf(session, id),
		tuning: tuning.name,
		capo,
		readiness:
			place === 'hands' ? null : readinessAt(session, id, from === staleMs ? from + 1 : from),
		stringsDown: stringsDown.length,
		hasFault: faults.length > 0,
	}));
}

function readinessAt(session: Session, id: string, atMs: NightMs): LaneReadiness {
	const { isReady, isStale } = readinessOf(session, id, atMs);
	return isReady ? 'ready' : isStale ? 'stale' : 'not-ready';
}

function playerSpans({ fromMs, toMs, session }: Stretch, id: string): PlayerSpan[] {
	const player = session.players[id];
	if (player === undefined) return [];
	const state = player.holds === null ? undefined : session.instruments[player.holds];
	return [
		{
			fromMs,
			toMs,
			instrument: player.holds,
			tuning: state?.context.tuning.name ?? null,
			capo: state?.context.capo ?? null,
		},
	];
}

type Stretched = { readonly fromMs: NightMs; readonly toMs: NightMs };

/** Neighbours that say the same as one. */
function merged<Span extends Stretched>(spans: readonly Span[]): readonly Span[] {
	const all: Span[] = [];
	for (const span of spans) {
		const last = all.at(-1);
		if (last !== undefined && isAlike(last, span))
			all[all.length - 1] = { ...last, toMs: span.toMs };
		else all.push(span);
	}
	return all;
}

/** The same in all but their time; what they hold is plain. */
function isAlike<Span extends Stretched>(one: Span, other: Span): boolean {
	for (const key in one) {
		if (key !== 'fromMs' && key !== 'toMs' && one[key] !== other[key]) return false;
	}
	return true;
}
