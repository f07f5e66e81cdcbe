// What a command comes to: the entries it makes, or the sentence that says why it cannot be.

import { advance } from '../../machines/advance.ts';
import { type InstrumentEvent, instrumentMachine } from '../../machines/instrument.ts';
import { cueIndex, cuePoints } from '../../machines/song.ts';
import type { Entry, SongEnd } from '../journal/entry.ts';
import { instrumentName, playerName } from '../showfile/shown-names.ts';
import { songSeconds } from '../showfile/song-length.ts';
import { apply } from './apply.ts';
import type { Command, HandOver } from './command.ts';
import { findSong, findSongItem, holderOf, nextSongItem, songOnNow } from './find.ts';
import type { Incident, Session, SongItem } from './session.ts';

export type Decision =
	| { readonly ok: true; readonly entries: readonly Entry[] }
	/** `why`: a whole sentence for the person at the keys. */
	| { readonly ok: false; readonly why: string };

/** A song left within this many seconds of being reached was skipped: common practice, no source. */
const SKIPPED_WITHIN_SECONDS = 5;
/** A song left in its last so many seconds was played: common practice, no source. */
const PLAYED_WITHIN_SECONDS = 20;
/** How long a planned hand-over may still be corrected by an exchange. */
const CORRECTABLE_MS = 60_000;

/** The entries that a command makes at `atMs`, all for one record, or why it makes none. */
export function decide(session: Session, command: Command, atMs: number): Decision {
	if (session.phase.value === 'packed')
		return no('The show is over and packed; nothing more is recorded.');
	switch (command.do) {
		case 'step':
			return step(session, command, atMs);
		case 'step-back':
			return stepBack(session, atMs);
		case 'finish-song':
			return songOnNow(session) ? yes(...endOfSong(session, 'played', atMs)) : no('No song is on.');
		case 'go-to-next-song':
			return goToSong(session, nextSongItem(session), atMs);
		case 'go-to-previous-song':
			return goToSong(session, previousSongItem(session), atMs);
		case 'choose-next':
			return chooseNext(session, command.song, atMs);
		case 'hand-over':
			return handOver(session, command.handOvers, atMs);
		case 'exchange':
			return exchange(session, command, atMs);
		case 'make-ready':
			return makeReady(session, command, atMs);
		case 'make-all-ready':
			return makeAllReady(session, atMs);
		case 'report-break':
			return reportBreak(session, command.instrument, atMs);
		case 'stand-in':
			return standIn(session, command, atMs);
		case 'play-on': {
			const open = openBreak(session);
			return open
				? yes({ k: 'played-on', at: atMs, incident: open.id })
				: no('No break is waiting for an answer.');
		}
		case 'note-incident':
			return yes({ k: 'incident-noted', at: atMs, incident: session.incidents.length + 1 });
		case 'describe-incident':
			return describeIncident(session, command, atMs);
		case 'write-memo':
			return command.words.trim() === ''
				? no('The memo is empty.')
				: yes({ k: 'memo-written', at: atMs, words: command.words.trim() });
		case 'correct-instrument':
			return yes({
				k: 'found-as',
				at: atMs,
				instrument: command.instrument,
				...(command.tuning ? { tuning: command.tuning } : {}),
				...(command.capo === null ? {} : { capo: command.capo }),
			});
		case 'put-aside':
			return session.instruments[command.instrument]?.value === 'out' && command.fault === null
				? no(
						`${instrumentName(session.show, command.instrument)} is out already; r brings it back.`,
					)
				: yes({ k: 'put-aside', at: atMs, instrument: command.instrument, fault: command.fault });
		case 'bring-back':
			return canTake(session, command.instrument, { type: 'broughtBack' })
				? yes({ k: 'brought-back', at: atMs, instrument: command.instrument })
				: no(`${instrumentName(session.show, command.instrument)} is not on the bench or out.`);
		case 'stage':
			return canTake(session, command.instrument, { type: 'staged' })
				? yes({ k: 'staged', at: atMs, instrument: command.instrument })
				: no(`${instrumentName(session.show, command.instrument)} is not on the rack.`);
		case 'doubt-all':
			return yes({
				k: 'all-doubted',
				at: atMs,
				...(command.celsius === null ? {} : { celsius: command.celsius }),
			});
		case 'correct-pedal': {
			const pedal = session.boards[command.player]?.context.pedals[command.pedal];
			return pedal
				? yes({
						k: 'pedal-corrected',
						at: atMs,
						player: command.player,
						pedal: command.pedal,
						on: !pedal.on,
					})
				: no('There is no such pedal on that board.');
		}
		case 'change-pack':
			return yes({ k: 'pack-changed', at: atMs, player: command.player, pack: command.pack });
		case 'suspect-pack': {
			const pack = session.players[command.player]?.pack ?? null;
			return pack === null
				? no(`${playerName(session.show, command.player)} has no pack on.`)
				: yes({ k: 'pack-suspected', at: atMs, player: command.player, pack });
		}
		case 'end-show':
			return yes(...(songOnNow(session) ? endOfSong(session, endedHow(session, atMs), atMs) : []), {
				k: 'show-ended',
				at: atMs,
			});
	}
}

type Step = Extract<Command, { do: 'step' }>;

function yes(...entries: readonly Entry[]): Decision {
	return { ok: true, entries };
}

function no(why: string): Decision {
	return { ok: false, why };
}

function canTake(session: Session, instrument: string, event: InstrumentEvent): boolean {
	const state = session.instruments[instrument];
	return state !== undefined && advance(instrumentMachine, state, event) !== null;
}

/** Why an instrument cannot be given to this player from the plan; null when it can. */
function obstacle(session: Session, handOver: HandOver, all: readonly HandOver[]): string | null {
	if (handOver.instrument === null) return null;
	const state = session.instruments[handOver.instrument];
	const name = instrumentName(session.show, handOver.instrument);
	if (!state) return `${name} is not in this show.`;
	if (state.context.stringsDown.length > 0)
		return `${name} has a string down; t when it is restrung.`;
	if (state.value === 'out' || state.value === 'cased')
		return `${name} is out tonight; r brings it back.`;
	if (state.context.faults.length > 0)
		return `${name} is on the bench as faulty; r brings it back.`;
	const holder = holderOf(session, handOver.instrument);
	const isFreed = all.some(
		(one) => one.player === holder && one.instrument !== handOver.instrument,
	);
	return holder !== null && holder !== handOver.player && !isFreed
		? `${name} is in ${playerName(session.show, holder)}'s hands.`
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

function handedEntry(handOver: HandOver, atMs: number): Entry {
	return {
		k: 'handed-over',
		at: atMs,
		by: 'plan',
		player: handOver.player,
		instrument: handOver.instrument,
		...(handOver.instrument !== null && handOver.tuning ? { tuning: handOver.tuning } : {}),
		...(handOver.instrument === null ? {} : { capo: handOver.capo }),
	};
}

/** The hand-overs that a song's start or a cue records: what is settled or cannot be played is left out. */
function impliedHandOvers(
	session: Session,
	handOvers: readonly HandOver[],
	reached: { item: string; atMs: number },
): readonly Entry[] {
	const settled = session.settled.item === reached.item ? session.settled.players : [];
	const open = handOvers.filter((one) => !settled.includes(one.player) && !isDone(session, one));
	return open
		.filter((one) => obstacle(session, one, open) === null)
		.map((one) => handedEntry(one, reached.atMs));
}

/** The song's end, and what goes with it: before an interval everything in hands comes back to the rack. */
function endOfSong(session: Session, how: SongEnd, atMs: number): readonly Entry[] {
	const ended: Entry = { k: 'song-ended', at: atMs, how };
	if (apply(session, ended).phase.value !== 'interval') return [ended];
	const back = Object.values(session.players).flatMap(({ holds }): Entry[] =>
		holds === null ? [] : [{ k: 'came-back', at: atMs, instrument: holds }],
	);
	return [ended, ...back];
}

function step(session: Session, asked: Step, atMs: number): Decision {
	const { handOvers } = asked;
	const on = songOnNow(session);
	if (on && session.song) {
		const index = cueIndex(session.song) ?? 0;
		if (index + 1 < cuePoints(on.song).length) {
			const handed = impliedHandOvers(session, handOvers, { item: on.item.key, atMs });
			return yes(...handed, ...capoEntries(session, asked, atMs), {
				k: 'cue-reached',
				at: atMs,
				index: index + 1,
			});
		}
		const ending = endOfSong(session, 'played', atMs);
		const next = findSongItem(session, session.next);
		if (on.song.ends !== 'segue' || next === null) return yes(...ending);
		return yes(...ending, ...beginning(session, next, { asked, atMs }));
	}
	const next = nextSongItem(session);
	if (next === null) return no('The set is over; j plays one more song, q ends the show.');
	return yes(...beginning(session, next, { asked, atMs }));
}

/** The capos that players move themselves, on what they really have in hands. */
function capoEntries(session: Session, { capoMoves = [] }: Step, atMs: number): readonly Entry[] {
	return capoMoves
		.filter(({ player, instrument }) => session.players[player]?.holds === instrument)
		.filter(({ instrument, capo }) => session.instruments[instrument]?.context.capo !== capo)
		.map(({ instrument, capo }): Entry => ({ k: 'found-as', at: atMs, instrument, capo }));
}

function beginning(
	session: Session,
	item: SongItem,
	start: { asked: Step; atMs: number },
): readonly Entry[] {
	return [
		{ k: 'song-began', at: start.atMs, item: item.key },
		...impliedHandOvers(session, start.asked.handOvers, { item: item.key, atMs: start.atMs }),
		...capoEntries(session, start.asked, start.atMs),
	];
}

function stepBack(session: Session, atMs: number): Decision {
	const on = songOnNow(session);
	if (!on || !session.song) return no('No song is on; left goes back into the song before.');
	const index = cueIndex(session.song) ?? 0;
	return index === 0
		? no('This is the start of the song; left goes to the song before.')
		: yes({ k: 'cue-reached', at: atMs, index: index - 1 });
}

/** How the song on now counts when it is left at `atMs`. */
function endedHow(session: Session, atMs: number): SongEnd {
	const on = songOnNow(session);
	const run = on?.item.runs.at(-1);
	if (!on || !run) return 'played';
	const elapsed = (atMs - run.beganAtMs) / 1000;
	if (elapsed <= SKIPPED_WITHIN_SECONDS) return 'skipped';
	return elapsed >= songSeconds(session.show, on.song) - PLAYED_WITHIN_SECONDS
		? 'played'
		: 'cut-short';
}

function goToSong(session: Session, item: SongItem | null, atMs: number): Decision {
	if (item === null) return no('There is no song that way; d ends this one.');
	return yes(
		...(songOnNow(session)
			? [{ k: 'song-ended', at: atMs, how: endedHow(session, atMs) } as const]
			: []),
		{ k: 'song-began', at: atMs, item: item.key },
	);
}

/** The song before the one on now; between songs, the one just ended. */
function previousSongItem(session: Session): SongItem | null {
	const current = findSongItem(session, session.current);
	if (current === null || session.phase.value !== 'song') return current;
	return (
		session.list
			.slice(0, session.list.indexOf(current))
			.findLast((item): item is SongItem => item.kind === 'song' && !item.isPassedOver) ?? null
	);
}

function chooseNext(session: Session, songId: string, atMs: number): Decision {
	const song = findSong(session, songId);
	if (!song) return no('There is no such song in this show.');
	const next = nextSongItem(session);
	if (next?.song === songId && findSongItem(session, session.next))
		return no(`${song.title} is next already.`);
	const places = session.list.filter(
		(item): item is SongItem => item.kind === 'song' && item.song === songId,
	);
	const from = session.list.findIndex((item) => item.key === session.next);
	const coming = from < 0 ? undefined : places.find((item) => session.list.indexOf(item) >= from);
	const chosen = coming ?? places.find((item) => item.runs.length === 0) ?? places.at(-1);
	if (chosen) return yes({ k: 'next-chosen', at: atMs, item: chosen.key });
	return yes({
		k: 'next-chosen',
		at: atMs,
		item: String(session.list.length + 1),
		inserted: { song: songId, before: session.next },
	});
}

function handOver(session: Session, handOvers: readonly HandOver[], atMs: number): Decision {
	const open = handOvers.filter((one) => !isDone(session, one));
	if (open.length === 0) return no('No hand-over is open.');
	const stopped = open.map((one) => obstacle(session, one, open)).filter((why) => why !== null);
	if (stopped[0] !== undefined) return no(stopped[0]);
	return yes(...open.map((one) => handedEntry(one, atMs)));
}

function exchange(
	session: Session,
	command: Extract<Command, { do: 'exchange' }>,
	atMs: number,
): Decision {
	const { player, instrument } = command;
	const state = session.players[player];
	if (!state) return no('There is no such player in this show.');
	const { correctable } = state;
	if (state.holds === instrument) {
		return no(
			instrument === null
				? `${playerName(session.show, player)} has empty hands already.`
				: `${playerName(session.show, player)} has ${instrumentName(session.show, instrument)} already.`,
		);
	}
	const place = instrument === null ? null : session.instruments[instrument]?.value;
	if (instrument !== null && (place === 'out' || place === 'cased')) {
		return no(
			`${instrumentName(session.show, instrument)} is out tonight; r brings it back first.`,
		);
	}
	if (correctable !== null && atMs - correctable.atMs <= CORRECTABLE_MS) {
		return yes({ k: 'hand-over-corrected', at: atMs, player, instrument });
	}
	const open = session.incidents.findLast((one) => one.isOpen && one.player === player);
	return yes({
		k: 'handed-over',
		at: atMs,
		by: 'exchange',
		player,
		instrument,
		...(open && instrument !== null ? { incident: open.id } : {}),
	});
}

function makeReady(
	session: Session,
	command: Extract<Command, { do: 'make-ready' }>,
	atMs: number,
): Decision {
	const { instrument, due } = command;
	const state = session.instruments[instrument];
	if (!state) return no('There is no such instrument in this show.');
	const isRestrung = state.context.stringsDown.length > 0;
	if (!canTake(session, instrument, { type: 'madeReady', atMs, isRestrung })) {
		const holder = holderOf(session, instrument);
		return no(
			holder === null
				? `${instrumentName(session.show, instrument)} is out tonight; r brings it back.`
				: `${instrumentName(session.show, instrument)} is in ${playerName(session.show, holder)}'s hands.`,
		);
	}
	return yes({
		k: 'made-ready',
		at: atMs,
		instrument,
		...(due ? { tuning: due.tuning, capo: due.capo } : {}),
		...(isRestrung ? { isRestrung } : {}),
	});
}

function makeAllReady(session: Session, atMs: number): Decision {
	const entries = session.show.instruments
		.filter((one) => {
			const state = session.instruments[one.id];
			return state?.value === 'racked' && canTake(session, one.id, { type: 'madeReady', atMs });
		})
		.map((one): Entry => ({ k: 'made-ready', at: atMs, instrument: one.id }));
	return entries.length === 0 ? no('Nothing on the rack can be marked ready.') : yes(...entries);
}

function reportBreak(session: Session, instrument: string, atMs: number): Decision {
	if (!session.instruments[instrument]) return no('There is no such instrument in this show.');
	return yes({
		k: 'string-broke',
		at: atMs,
		incident: session.incidents.length + 1,
		instrument,
		player: holderOf(session, instrument),
	});
}

/** The latest break that still waits for its answer. */
export function openBreak(session: Session): Incident | null {
	return session.incidents.findLast((one) => one.isOpen) ?? null;
}

function standIn(
	session: Session,
	command: Extract<Command, { do: 'stand-in' }>,
	atMs: number,
): Decision {
	const { instrument, tuning, capo } = command;
	const open = openBreak(session);
	if (!open || open.player === null) return no('No break is waiting for an answer.');
	const stopped = obstacle(session, { player: open.player, instrument, tuning: null, capo: 0 }, []);
	if (stopped !== null) return no(stopped);
	return yes({
		k: 'handed-over',
		at: atMs,
		by: 'stand-in',
		incident: open.id,
		player: open.player,
		instrument,
		...(tuning === null ? {} : { tuning }),
		...(capo === null ? {} : { capo }),
	});
}

function describeIncident(
	session: Session,
	command: Extract<Command, { do: 'describe-incident' }>,
	atMs: number,
): Decision {
	const last = session.incidents.at(-1);
	if (!last) return no('There is no incident to add to; i marks one.');
	const words = command.words.trim();
	if (command.string === null && command.kind === null && words === '')
		return no('Nothing was added.');
	return yes({
		k: 'incident-described',
		at: atMs,
		incident: last.id,
		...(command.string === null ? {} : { string: command.string }),
		...(command.kind === null ? {} : { kind: command.kind }),
		...(words === '' ? {} : { words }),
	});
}
