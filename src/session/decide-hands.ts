// Commands about hands: hand-overs as planned, exchanges, stand-ins; and what reaching a point of a song
// records of them.

import type { Entry } from '../journal/entry.ts';
import type { Command, HandOver } from './command.ts';
import { stayEntries } from './decide-stays.ts';
import { type Decision, no, yes } from './decision.ts';
import { holderOf, isAfterInterval, itemConcerned, openBreak, openBreakOf } from './find.ts';
import { missedHandOver } from './missed-hand-over.ts';
import { type PackHanded, packHanded, packsHanded } from './packs-handed.ts';
import type { Refusal } from './refusal.ts';
import type { Session } from './session.ts';
import { openFromPoint } from './settled.ts';
import { ownPack } from './suspect-packs.ts';

/** How long a planned hand-over may still be corrected by an exchange. */
const CORRECTABLE_MS = 60_000;

type Asked<Name extends Command['do']> = Extract<Command, { do: Name }>;

/** Why an instrument cannot be given to this player from the plan; null when it can. */
function obstacle(session: Session, handOver: HandOver, all: readonly HandOver[]): Refusal | null {
	const { instrument } = handOver;
	if (instrument === null) return null;
	const state = session.instruments[instrument];
	if (!state) return { code: 'unknown-instrument' };
	if (state.context.stringsDown.length > 0) return { code: 'string-down', instrument };
	if (state.value === 'out') return { code: 'out', instrument };
	if (state.context.faults.length > 0) return { code: 'faulty', instrument };
	const holder = holderOf(session, instrument);
	const isFreed = all.some((one) => one.player === holder && one.instrument !== instrument);
	return holder !== null && holder !== handOver.player && !isFreed
		? { code: 'in-hands', player: holder, instrument }
		: null;
}

/** Whether the player has it already, in that tuning and with that capo. */
function isDone(session: Session, handOver: HandOver): boolean {
	if (session.players[handOver.player]?.holds !== handOver.instrument) return false;
	if (handOver.instrument === null) return true;
	const context = session.instruments[handOver.instrument]?.context;
	return (
		context !== undefined &&
		context.capo === handOver.capo &&
		(handOver.tuning === null || handOver.tuning.notes.join(' ') === context.tuning.notes.join(' '))
	);
}

/** One entry for each of those that are made together, with the packs that go on. */
function handedEntries(
	session: Session,
	handOvers: readonly HandOver[],
	atMs: number,
): readonly Entry[] {
	const packs = packsHanded(
		session,
		handOvers.map(({ player, instrument, pack }) => ({
			player,
			instrument,
			pack: pack ?? ownPack(session, instrument),
		})),
	);
	return handOvers.map((one, at) => handedEntry(session, one, { atMs, handed: packs[at] }));
}

function handedEntry(
	session: Session,
	handOver: HandOver,
	{ atMs, handed }: { readonly atMs: number; readonly handed: PackHanded | undefined },
): Entry {
	const waiting = handOver.instrument === null ? null : openBreakOf(session, handOver.player);
	const { pack = null, item = null } = handOver;
	const isOther = pack !== null && pack !== ownPack(session, handOver.instrument);
	return {
		k: 'handed-over',
		at: atMs,
		by: 'plan',
		...(waiting === null ? {} : { incident: waiting.id }),
		player: handOver.player,
		instrument: handOver.instrument,
		...(handOver.instrument !== null && handOver.tuning ? { tuning: handOver.tuning } : {}),
		...(handOver.instrument === null ? {} : { capo: handOver.capo }),
		...(isOther ? { pack } : {}),
		...packKept(handed),
		...(item === null || item === itemConcerned(session) ? {} : { item }),
	};
}

/** What is written where the pack that belongs to an instrument is on somebody else. */
function packKept(handed: PackHanded | undefined): { readonly pack?: string | null } {
	return handed === undefined || handed.wearer === null ? {} : { pack: handed.worn };
}

/** The same for what is given out of the plan's turn. */
function packKeptWith(
	session: Session,
	player: string,
	instrument: string | null,
): { readonly pack?: string | null } {
	return instrument === null ? {} : packKept(packHanded(session, player, instrument));
}

/** The hand-overs that a song's start or a cue records: what is settled or cannot be played is left out. */
export function impliedHandOvers(
	session: Session,
	handOvers: readonly HandOver[],
	reached: { item: string; point: number; atMs: number },
): readonly Entry[] {
	const open = handOvers.filter(
		(one) =>
			reached.point >= openFromPoint(session, reached.item, one.player) && !isDone(session, one),
	);
	const made = open.filter((one) => obstacle(session, one, open) === null);
	return handedEntries(session, made, reached.atMs);
}

/** The planned hand-overs that are still open, as made, and who stays; nothing where a hand-over cannot be. */
export function handOver(
	session: Session,
	{ handOvers, stays = [] }: Asked<'hand-over'>,
	atMs: number,
): Decision {
	const open = handOvers.filter((one) => !isDone(session, one));
	const staying = stayEntries(session, stays, atMs);
	if (open.length + staying.length === 0) return no({ code: 'no-hand-over-open' });
	const stopped = open.map((one) => obstacle(session, one, open)).filter((why) => why !== null);
	if (stopped[0] !== undefined) return no(stopped[0]);
	return yes(...handedEntries(session, open, atMs), ...staying);
}

/** Another instrument in hands, or a correction of the hand-over just recorded. */
export function exchange(session: Session, command: Asked<'exchange'>, atMs: number): Decision {
	const { player, instrument, sinceMs } = command;
	const state = session.players[player];
	if (!state) return no({ code: 'unknown-player' });
	if (instrument !== null && !session.instruments[instrument]) {
		return no({ code: 'unknown-instrument' });
	}
	const { correctable } = state;
	if (state.holds === instrument) return staysOn(session, command, atMs);
	if (sinceMs !== undefined && (sinceMs > atMs || sinceMs < (state.sinceMs ?? sinceMs))) {
		return no({ code: 'given-since', player });
	}
	const place = instrument === null ? null : session.instruments[instrument]?.value;
	if (instrument !== null && place === 'out') {
		return no({ code: 'out', instrument });
	}
	const kept = packKeptWith(session, player, instrument);
	if (sinceMs === undefined && correctable !== null && atMs - correctable.atMs <= CORRECTABLE_MS) {
		const { of } = correctable;
		return yes({ k: 'hand-over-corrected', at: atMs, of, player, instrument, ...kept });
	}
	const open = openBreakOf(session, player);
	return yes({
		k: 'handed-over',
		at: sinceMs ?? atMs,
		by: 'exchange',
		player,
		instrument,
		...kept,
		...(open && instrument !== null ? { incident: open.id } : {}),
	});
}

/** What they have in hands is no news of hands: they stay on it for a song, and nothing else is handed for it. */
function staysOn(
	session: Session,
	{ player, instrument, item = itemConcerned(session) ?? undefined }: Asked<'exchange'>,
	atMs: number,
): Decision {
	const { correctable = null, stayedMs = null } = session.players[player] ?? {};
	// What the plan gave them was not said of by anybody yet.
	const isSaid = correctable === null || (stayedMs !== null && stayedMs >= correctable.atMs);
	// An interval takes all from hands: nobody stays on anything over it.
	const isSettled =
		item === undefined ||
		isAfterInterval(session, item) ||
		(isSaid && openFromPoint(session, item, player) > 0);
	if (isSettled && missedHandOver(session, player) === null) {
		return no({ code: 'has-already', player, instrument });
	}
	return yes({ k: 'stayed', at: atMs, item: item ?? null, player, instrument });
}

/** The answer to the break that waits for one. */
export function standIn(session: Session, command: Asked<'stand-in'>, atMs: number): Decision {
	const open = openBreak(session);
	if (!open || open.player === null) return no({ code: 'no-break-open' });
	return spareInHands(session, { ...command, player: open.player, incident: open.id }, atMs);
}

/** A backup in hands, with the break that it answers where there is one. */
export function spareInHands(
	session: Session,
	spare: Pick<Asked<'stand-in'>, 'instrument' | 'tuning' | 'capo'> & {
		readonly player: string;
		readonly incident?: string;
	},
	atMs: number,
): Decision {
	const { player, incident, instrument, tuning, capo } = spare;
	const stopped = obstacle(session, { player, instrument, tuning: null, capo: 0 }, []);
	if (stopped !== null) return no(stopped);
	return yes({
		k: 'handed-over',
		at: atMs,
		by: 'stand-in',
		...(incident === undefined ? {} : { incident }),
		player,
		instrument,
		...packKeptWith(session, player, instrument),
		...(tuning === null ? {} : { tuning }),
		...(capo === null ? {} : { capo }),
	});
}
