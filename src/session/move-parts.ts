// One part of a session moved on, all the rest as it was: an instrument, a board, a player. Apart, since
// every kind of entry moves some of them.

import { advance } from '../../machines/advance.ts';
import {
	type InstrumentEvent,
	type InstrumentState,
	instrumentLaw,
} from '../../machines/instrument.ts';
import { type BoardEvent, boardLaw } from '../../machines/rig.ts';
import type { PedalStates } from '../showfile/show.ts';
import type { PlayerState, Session } from './session.ts';

/** The session with this instrument moved by its machine; as it was where it is not known or the event does nothing. */
export function moveInstrument(session: Session, id: string, event: InstrumentEvent): Session {
	const state = session.instruments[id];
	const after = state && advance(instrumentLaw, state, event);
	return after ? setInstrument(session, id, after) : session;
}

/** The session with this instrument in the state given. */
export function setInstrument(session: Session, id: string, state: InstrumentState): Session {
	return { ...session, instruments: { ...session.instruments, [id]: state } };
}

/** The session with this player's board moved by its machine; as it was where they have none. */
export function moveBoard(session: Session, player: string, event: BoardEvent): Session {
	const board = session.boards[player];
	const after = board && advance(boardLaw, board, event);
	return after ? { ...session, boards: { ...session.boards, [player]: after } } : session;
}

/** The session with each board as a cue requires it. */
export function setBoards(
	session: Session,
	boards: Readonly<Record<string, PedalStates>>,
): Session {
	return Object.entries(boards).reduce(
		(now, [player, pedals]) => moveBoard(now, player, { type: 'cued', pedals }),
		session,
	);
}

/** The session with some of what is known of a player changed; as it was where they are not known. */
export function changePlayer(session: Session, id: string, change: Partial<PlayerState>): Session {
	const player = session.players[id];
	return player
		? { ...session, players: { ...session.players, [id]: { ...player, ...change } } }
		: session;
}
