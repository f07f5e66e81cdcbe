// The fold: what a session becomes with one more entry. Never refuses and never throws for what a
// journal holds: an entry that no longer makes sense (after damage) changes as much as it can.

import { advance } from '../../machines/advance.ts';
import {
	type InstrumentEvent,
	type InstrumentState,
	instrumentMachine,
} from '../../machines/instrument.ts';
import { type BoardEvent, boardMachine } from '../../machines/rig.ts';
import { cueIndex, cuePoints } from '../../machines/song.ts';
import { songAtPoint, songBegun } from '../../machines/song-machine.ts';
import type { Entry } from '../journal/entry.ts';
import { keptShow } from '../showfile/kept-show.ts';
import type { BoardState } from '../showfile/show.ts';
import { dropSong, insertSong, moveSong, newItem, restoreSong } from './apply-set.ts';
import {
	findInstrument,
	findSong,
	findSongItem,
	holderOf,
	itemConcerned,
	keyAfter,
	songOnNow,
} from './find.ts';
import { readAgain } from './read-again.ts';
import type { Incident, ListItem, PlayerState, Run, Session } from './session.ts';
import { ahead, moveShow, nextAfter } from './show-phase.ts';

/** The session with one more entry. */
export function apply(session: Session, entry: Entry): Session {
	switch (entry.k) {
		case 'song-began':
			return beginSong(session, entry.item, entry.at);
		case 'cue-reached':
			return reachCue(session, entry.index);
		case 'song-ended':
			return endSong(session, { endedAtMs: entry.at, how: entry.how });
		case 'next-chosen':
			return chooseNext(session, entry);
		case 'show-read-again': {
			const read = keptShow(entry.show);
			return read === null ? session : readAgain(session, read);
		}
		case 'song-moved':
			return moveSong(session, entry);
		case 'song-inserted':
			return insertSong(session, entry);
		case 'song-dropped':
			return dropSong(session, entry.item);
		case 'song-restored':
			return restoreSong(session, entry.item);
		case 'handed-over':
			return handOver(session, entry);
		case 'hand-over-corrected':
			return correctHandOver(session, entry);
		case 'came-back': {
			const holder = holderOf(session, entry.instrument);
			const back = takeBack(session, entry.instrument, entry.at);
			return holder === null ? back : changePlayer(back, holder, { putDown: entry.instrument });
		}
		case 'made-ready':
			return moveInstrument(session, entry.instrument, {
				type: 'madeReady',
				atMs: entry.at,
				...(entry.tuning ? { tuning: entry.tuning } : {}),
				...(entry.capo === undefined ? {} : { capo: entry.capo }),
				...(entry.isRestrung ? { isRestrung: true } : {}),
			});
		case 'string-broke':
			return noteIncident(moveInstrument(session, entry.instrument, { type: 'stringBroke' }), {
				...blankIncident(entry.incident, entry.at),
				kind: 'string-break',
				player: entry.player,
				instrument: entry.instrument,
				isOpen: entry.player !== null,
			});
		case 'played-on':
			return changeIncident(session, entry.incident, (incident) => ({
				...incident,
				isOpen: false,
			}));
		case 'incident-noted':
			return noteIncident(session, blankIncident(entry.incident, entry.at));
		case 'incident-described':
			return describeIncident(session, entry);
		case 'found-as':
			return moveInstrument(session, entry.instrument, {
				type: 'foundAs',
				...(entry.tuning ? { tuning: entry.tuning } : {}),
				...(entry.capo === undefined ? {} : { capo: entry.capo }),
			});
		case 'put-aside':
			return moveInstrument(
				emptyHandsOf(session, entry.instrument, entry.at),
				entry.instrument,
				entry.fault === null
					? { type: 'putOut', atMs: entry.at }
					: { type: 'foundFaulty', atMs: entry.at, fault: entry.fault },
			);
		case 'brought-back':
			return moveInstrument(session, entry.instrument, { type: 'broughtBack' });
		case 'staged':
			return moveInstrument(session, entry.instrument, { type: 'staged' });
		case 'all-doubted':
			return Object.keys(session.instruments).reduce(
				(now, id) => moveInstrument(now, id, { type: 'doubted' }),
				{ ...session, stageCelsius: entry.celsius ?? session.stageCelsius },
			);
		case 'pedal-corrected':
			return moveBoard(session, entry.player, {
				type: 'pedalFound',
				pedal: entry.pedal,
				on: entry.on,
			});
		case 'pack-changed':
			return changePlayer(session, entry.player, { pack: entry.pack });
		case 'pack-suspected':
			return session.suspectPacks.includes(entry.pack)
				? session
				: { ...session, suspectPacks: [...session.suspectPacks, entry.pack] };
		case 'show-ended':
			return moveShow(
				Object.values(session.players).reduce<Session>(
					(now, player) => (player.holds === null ? now : takeBack(now, player.holds, entry.at)),
					{ ...session, phaseSinceMs: entry.at },
				),
				{ type: 'showEnded' },
			);
		default:
			// Notes (opened, resumed, slept, clock set) change nothing, taking back is the timeline's, and a
			// kind that a newer version wrote is kept in the journal and passed over here.
			return session;
	}
}

function moveInstrument(session: Session, id: string, event: InstrumentEvent): Session {
	const state = session.instruments[id];
	const after = state && advance(instrumentMachine, state, event);
	return after ? setInstrument(session, id, after as InstrumentState) : session;
}

function setInstrument(session: Session, id: string, state: InstrumentState): Session {
	return { ...session, instruments: { ...session.instruments, [id]: state } };
}

function moveBoard(session: Session, player: string, event: BoardEvent): Session {
	const board = session.boards[player];
	const after = board && advance(boardMachine, board, event);
	return after
		? { ...session, boards: { ...session.boards, [player]: after as typeof board } }
		: session;
}

function setBoards(session: Session, boards: Readonly<Record<string, BoardState>>): Session {
	return Object.entries(boards).reduce(
		(now, [player, pedals]) => moveBoard(now, player, { type: 'cued', pedals }),
		session,
	);
}

function changePlayer(session: Session, id: string, change: Partial<PlayerState>): Session {
	const player = session.players[id];
	return player
		? { ...session, players: { ...session.players, [id]: { ...player, ...change } } }
		: session;
}

function changeItem(
	session: Session,
	key: string | null,
	change: (item: ListItem) => ListItem,
): Session {
	return { ...session, list: session.list.map((item) => (item.key === key ? change(item) : item)) };
}

function beginSong(session: Session, key: string, at: number): Session {
	const item = findSongItem(session, key);
	const song = item && findSong(session, item.song);
	if (!item || !song) return session;
	const run: Run = { beganAtMs: at, endedAtMs: null, how: null };
	const begun = moveShow(
		changeItem(session, key, (one) =>
			one.kind === 'song'
				? { ...one, isPassedOver: false, isDropped: false, runs: [...one.runs, run] }
				: one,
		),
		{ type: 'songBegan' },
	);
	return setBoards(
		{
			...begun,
			current: key,
			next: keyAfter(begun.list, key),
			song: songBegun(song),
			zeroAtMs: session.zeroAtMs ?? at,
			phaseSinceMs: at,
			settled: { item: key, players: settledAhead(session, key) },
		},
		cuePoints(song)[0]?.boards ?? {},
	);
}

function reachCue(session: Session, index: number): Session {
	const on = songOnNow(session);
	if (!on || session.song === null) return session;
	if (cueIndex(session.song) === null) return session;
	const state = songAtPoint(on.song, index);
	const reached = cueIndex(state);
	return setBoards(
		{ ...session, song: state },
		reached === null ? {} : (cuePoints(on.song)[reached]?.boards ?? {}),
	);
}

function endSong(session: Session, end: { endedAtMs: number; how: Run['how'] }): Session {
	if (session.phase.value !== 'song') return session;
	const ended = changeItem(session, session.current, (item) =>
		item.kind === 'song'
			? {
					...item,
					runs: item.runs.map((run) => (run.endedAtMs === null ? { ...run, ...end } : run)),
				}
			: item,
	);
	const stands = ahead(ended);
	return moveShow(
		{
			...ended,
			song: null,
			phaseSinceMs: end.endedAtMs,
			next: nextAfter(ended, stands),
		},
		{ type: 'songEnded', ahead: stands },
	);
}

function chooseNext(session: Session, entry: Extract<Entry, { k: 'next-chosen' }>): Session {
	let list = session.list;
	if (entry.inserted) {
		const { song, before } = entry.inserted;
		const displaced = list.find((item) => item.key === before);
		const isEncore = displaced?.kind === 'song' && displaced.isEncore;
		const inserted = newItem(entry.item, song, isEncore);
		const at = displaced ? list.indexOf(displaced) : list.length;
		const rest = list
			.slice(at)
			.map((item) =>
				item === displaced && item.kind === 'song' ? { ...item, isPassedOver: true } : item,
			);
		list = [...list.slice(0, at), inserted, ...rest];
	} else {
		list = list.map((item) =>
			item.key === entry.item && item.kind === 'song'
				? { ...item, isPassedOver: false, isDropped: false }
				: item,
		);
	}
	const chosen = { ...session, list, next: entry.item };
	return session.phase.value === 'song'
		? chosen
		: moveShow(chosen, { type: 'nextChosen', ahead: ahead(chosen) });
}

/** Takes an instrument out of whoever's hands it is in. */
function takeBack(session: Session, instrument: string, at: number): Session {
	return moveInstrument(emptyHandsOf(session, instrument, at), instrument, {
		type: 'returned',
		atMs: at,
	});
}

function emptyHandsOf(session: Session, instrument: string, at: number): Session {
	const holder = holderOf(session, instrument);
	return holder === null
		? session
		: changePlayer(session, holder, { holds: null, sinceMs: at, correctable: null });
}

type Given = {
	readonly player: string;
	readonly instrument: string | null;
	readonly tuning?: object;
	readonly capo?: number;
};

/** One player's hands after an exchange: the old one back, the new one out of wherever it was. */
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
	const pack =
		findInstrument(now, given.instrument)?.pack ?? now.players[given.player]?.pack ?? null;
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

function settle(session: Session, player: string): Session {
	const item = itemConcerned(session);
	const players = session.settled.item === item ? session.settled.players : {};
	const point = (session.song && cueIndex(session.song)) ?? 0;
	return { ...session, settled: { item, players: { ...players, [player]: point } } };
}

/** Whose hand-over at the start of this item is settled before it begins. */
function settledAhead(session: Session, key: string): Session['settled']['players'] {
	if (session.settled.item !== key) return {};
	return Object.fromEntries(
		Object.entries(session.settled.players).filter(([, point]) => point === 0),
	);
}

function handOver(session: Session, entry: Extract<Entry, { k: 'handed-over' }>): Session {
	const before = session.players[entry.player];
	if (!before) return session;
	const exchanged = exchange(session, entry, entry.at);
	const answered =
		entry.incident === undefined
			? exchanged
			: changeIncident(exchanged, entry.incident, (incident) => ({
					...incident,
					standIn: entry.instrument,
					silenceSeconds: Math.max(0, entry.at - incident.atMs) / 1000,
					isOpen: false,
				}));
	if (entry.by === 'exchange') {
		return settle(changePlayer(answered, entry.player, { correctable: null }), entry.player);
	}
	const givenBefore =
		entry.instrument === null ? null : (session.instruments[entry.instrument] ?? null);
	const correctable = { atMs: entry.at, given: entry.instrument, givenBefore };
	const handed = changePlayer(answered, entry.player, { correctable });
	return entry.by === 'plan' ? handed : settle(handed, entry.player);
}

function correctHandOver(
	session: Session,
	entry: Extract<Entry, { k: 'hand-over-corrected' }>,
): Session {
	const correctable = session.players[entry.player]?.correctable;
	if (!correctable) return settle(exchange(session, entry, entry.at), entry.player);
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

function blankIncident(id: number, atMs: number): Incident {
	return {
		id,
		atMs,
		kind: null,
		player: null,
		instrument: null,
		string: null,
		standIn: null,
		silenceSeconds: null,
		isOpen: false,
		words: [],
	};
}

function noteIncident(session: Session, incident: Incident): Session {
	return { ...session, incidents: [...session.incidents, incident] };
}

function changeIncident(
	session: Session,
	id: number,
	change: (incident: Incident) => Incident,
): Session {
	return {
		...session,
		incidents: session.incidents.map((one) => (one.id === id ? change(one) : one)),
	};
}

function describeIncident(
	session: Session,
	entry: Extract<Entry, { k: 'incident-described' }>,
): Session {
	const described = changeIncident(session, entry.incident, (incident) => ({
		...incident,
		string: entry.string ?? incident.string,
		kind: entry.kind ?? incident.kind,
		words: entry.words ? [...incident.words, entry.words] : incident.words,
	}));
	const instrument = session.incidents.find((one) => one.id === entry.incident)?.instrument;
	return entry.string !== undefined && instrument
		? moveInstrument(described, instrument, { type: 'stringNamed', string: entry.string })
		: described;
}
