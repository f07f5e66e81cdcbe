// What entries about hands do: an instrument handed over, exchanged, corrected, back on the rack.

import { cueIndex } from '../../machines/song.ts';
import type { Entry } from '../journal/entry.ts';
import type { RecordId } from '../journal/record.ts';
import { changeIncident } from './apply-incidents.ts';
import { holderOf, itemConcerned, songOnNow } from './find.ts';
import { changePlayer, moveInstrument, setInstrument } from './move-parts.ts';
import type { Incident, Session } from './session.ts';
import { ownPack, packAfter, packFor } from './suspect-packs.ts';

/** The session with this in a player's hands, and a break that waited for it answered. */
export function handOver(
	session: Session,
	entry: Extract<Entry, { k: 'handed-over' }>,
	of: RecordId,
): Session {
	const before = session.players[entry.player];
	if (!before) return session;
	const given = entry.by === 'plan' ? { ...ownWorn(session, entry), ...entry } : entry;
	const exchanged = withUnmarked(exchange(session, given, entry.at), {
		before: session,
		entry,
		of,
	});
	const closed =
		entry.incident === undefined
			? exchanged
			: changeIncident(exchanged, entry.incident, (incident) => answered(session, incident, entry));
	if (entry.by === 'exchange') {
		return settle(changePlayer(closed, entry.player, { correctable: null }), entry.player);
	}
	const givenBefore =
		entry.instrument === null ? null : (session.instruments[entry.instrument] ?? null);
	const correctable = { of, atMs: entry.at, given: entry.instrument, givenBefore };
	const handed = changePlayer(closed, entry.player, { correctable });
	// What was put into their hands for the coming song is what they play it on: the plan takes nothing back.
	if (entry.by !== 'plan') return settle(handed, entry.player);
	if (entry.item !== undefined) return stayFor(handed, entry.item, entry.player);
	return songOnNow(handed) === null ? settle(handed, entry.player) : handed;
}

/** The session with what the plan logs of pitches and capo that nobody had said of the instrument before. */
function withUnmarked(
	session: Session,
	{
		before,
		entry,
		of,
	}: {
		readonly before: Session;
		readonly entry: Extract<Entry, { k: 'handed-over' }>;
		readonly of: RecordId;
	},
): Session {
	const { by, player, instrument, tuning, capo } = entry;
	const was = instrument === null ? undefined : before.instruments[instrument]?.context;
	if (by !== 'plan' || instrument === null || was === undefined) return session;
	const isSo = tuning === undefined || tuning.notes.join(' ') === was.tuning.notes.join(' ');
	const one = {
		player,
		instrument,
		tuning: isSo ? null : tuning.name,
		capo: capo === undefined || capo === was.capo ? null : capo,
	};
	if (one.tuning === null && one.capo === null) return session;
	const { instruments = [] } = session.unmarked ?? {};
	return { ...session, unmarked: { of, instruments: [...instruments, one] } };
}

/** What the plan gives goes on with its own pack, whatever the song says. */
function ownWorn(session: Session, { player, instrument }: Given): Pick<Given, 'pack'> {
	return { pack: packAfter(session, player, ownPack(session, instrument)) };
}

/** The break once something is in hands: as a stand-in, or from the plan, be it the broken one with new strings. */
function answered(
	session: Session,
	incident: Incident,
	{ at, by, instrument }: Extract<Entry, { k: 'handed-over' }>,
): Incident {
	const beganMs = songOnNow(session)?.item.runs.at(-1)?.beganAtMs;
	const isSameSong = beganMs !== undefined && beganMs <= incident.atMs;
	return {
		...incident,
		standIn: instrument === incident.instrument ? null : instrument,
		// Who was given nothing until the next song has played on.
		silenceSeconds: by === 'plan' && !isSameSong ? null : Math.max(0, at - incident.atMs) / 1000,
		isOpen: false,
	};
}

/** The session with this player staying on what they have for an item of the list, its capo moved where that is said. */
export function stay(session: Session, entry: Extract<Entry, { k: 'stayed' }>): Session {
	const { at, item, player, instrument, capo } = entry;
	const isMoved =
		instrument !== null &&
		capo !== undefined &&
		session.instruments[instrument]?.context.capo !== capo;
	const moved = isMoved ? moveInstrument(session, instrument, { type: 'foundAs', capo }) : session;
	const said = changePlayer(moved, player, { stayedMs: at });
	return item === null ? settle(said, player) : stayFor(said, item, player);
}

/** The session with the player staying on what they have for this item of the list. */
function stayFor(session: Session, item: string, player: string): Session {
	if (item === itemConcerned(session)) return settle(session, player);
	const others = session.staying.item === item ? session.staying.players : [];
	return {
		...session,
		staying: { item, players: [...others.filter((one) => one !== player), player] },
	};
}

/** The session with the hand-over recorded last to a player put right, its time kept. */
export function correctHandOver(
	session: Session,
	entry: Extract<Entry, { k: 'hand-over-corrected' }>,
): Session {
	const correctable = session.players[entry.player]?.correctable;
	// One that is not there any more, or is not the last, is put right from now on.
	const isThat = entry.of === undefined || entry.of === correctable?.of;
	if (!correctable || !isThat) return settle(exchange(session, entry, entry.at), entry.player);
	const { atMs, given, givenBefore } = correctable;
	let now = changePlayer(session, entry.player, { holds: null, correctable: null });
	if (given !== null && givenBefore !== null) {
		now = setInstrument(now, given, givenBefore);
		// It was in hands before, to be given back in another tuning: then it came back all the same.
		if (givenBefore.value === 'inHands') {
			now = moveInstrument(now, given, { type: 'returned', atMs });
		}
	}
	// Who stood in for a break was that one, too.
	const stoodIn = now.incidents.findLast(
		(one) => one.player === entry.player && one.standIn === given && given !== null,
	);
	if (stoodIn)
		now = changeIncident(now, stoodIn.id, (one) => ({ ...one, standIn: entry.instrument }));
	return settle(exchange(now, entry, atMs), entry.player);
}

type Given = {
	readonly player: string;
	readonly instrument: string | null;
	readonly tuning?: object;
	readonly capo?: number;
	/** The pack that goes on with it, null for none; left out where that follows from what is asked. */
	readonly pack?: string | null;
};

function exchange(session: Session, given: Given, at: number): Session {
	const held = session.players[given.player]?.holds ?? null;
	let now = session;
	if (held !== null && held !== given.instrument) now = takeBack(now, held, at);
	if (given.instrument === null)
		return changePlayer(now, given.player, { holds: null, sinceMs: at, putDown: null });
	const holder = holderOf(now, given.instrument);
	if (holder !== null && holder !== given.player) now = takeBack(now, given.instrument, at);
	for (const [id, { putDown }] of Object.entries(now.players)) {
		if (putDown === given.instrument) now = changePlayer(now, id, { putDown: null });
	}
	const { pack: asked = packFor(now, given.player, given.instrument) } = given;
	const pack = given.pack === null ? null : packAfter(now, given.player, asked);
	return changePlayer(
		moveInstrument(now, given.instrument, {
			type: 'handed',
			atMs: at,
			...(given.tuning ? { tuning: given.tuning as never } : {}),
			...(given.capo === undefined ? {} : { capo: given.capo }),
		}),
		given.player,
		{ holds: given.instrument, sinceMs: at, putDown: null, pack },
	);
}

export function takeBack(session: Session, instrument: string, at: number): Session {
	return moveInstrument(emptyHandsOf(session, instrument, at), instrument, {
		type: 'returned',
		atMs: at,
	});
}

/** The session with this instrument in nobody's hands; where it is now is for the caller to say. */
export function emptyHandsOf(session: Session, instrument: string, at: number): Session {
	const holder = holderOf(session, instrument);
	if (holder === null) return session;
	return changePlayer(unsettle(session, holder), holder, {
		holds: null,
		sinceMs: at,
		correctable: null,
	});
}

/** The session with the plan answering for this player again: what they were to play on is gone or broken. */
export function unsettle(session: Session, player: string): Session {
	const { staying, settled } = session;
	const { [player]: _, ...others } = settled.players;
	return {
		...session,
		staying: { ...staying, players: staying.players.filter((one) => one !== player) },
		settled: { ...settled, players: others },
	};
}

function settle(session: Session, player: string): Session {
	const item = itemConcerned(session);
	const players = session.settled.item === item ? session.settled.players : {};
	const point = (session.song && cueIndex(session.song)) ?? 0;
	return { ...session, settled: { item, players: { ...players, [player]: point } } };
}
