// When boards are sent and what: the whole state of every board whenever the place in the songs changes, however it
// came to change, and the tempo where a song begins. What somebody's foot did is believed and not sent against.

import type { Pedal, PedalStates, Show } from '../showfile/show.ts';
import { boardBytes, messageBytes } from './midi-bytes.ts';

/** How it is to be outside. */
export type BoardsWanted = {
	/** The song that is on, and the cue point it is at, from 0; null between songs. */
	readonly song: { readonly id: string; readonly cue: number } | null;
	/** Every pedal that is believed to switch, by player, then pedal. */
	readonly boards: Readonly<Record<string, PedalStates>>;
};

export type Sending = {
	/** To be sent now. */
	readonly now: readonly number[];
	/** What follows, each so many milliseconds later; nothing of what was to follow before is sent any more. */
	readonly later: readonly { readonly afterMs: number; readonly bytes: readonly number[] }[];
	/** Milliseconds between two ticks of the clock until the next sending; null for no clock. */
	readonly clockMs: number | null;
};

/** MIDI 1.0: 24 clocks a quarter note, one status byte each. */
export const CLOCK_TICK = 0xf8;
const CLOCKS_A_QUARTER = 24;
/** A tempo is tapped by four beats: common practice, no source. */
const TAPS = 4;

/**
 * What is sent when it is to be so, and was to be `before`; null for nothing. `again`: whatever was sent before.
 *
 * @example
 * sendingOf(DELAY, { before: null, now: { song: null, boards: {} } }) // => null
 */
export function sendingOf(
	show: Pick<Show, 'boards' | 'songs'>,
	{
		before,
		now,
		again = false,
	}: {
		readonly before: BoardsWanted | null;
		readonly now: BoardsWanted;
		readonly again?: boolean;
	},
): Sending | null {
	const { song } = now;
	const isSame = before?.song?.id === song?.id && before?.song?.cue === song?.cue;
	if (isSame && !again) return null;
	// Between songs boards stay as the song left them, and only what goes on with the tempo stops; where a song's
	// beginning was undone they are to be as before it.
	const isLeft = before === null || isSameBoards(before, now);
	if (song === null && isLeft && !again) return { now: [], later: [], clockMs: null };
	const bytes = Object.entries(show.boards).flatMap(([player, pedals]) =>
		boardBytes(switching(pedals, now.boards[player]), now.boards[player] ?? {}),
	);
	const tempo = show.songs.find(({ id }) => id === song?.id)?.tempo ?? null;
	const pedals = Object.values(show.boards).flat();
	const isNewSong = again || before?.song?.id !== song?.id;
	const taps = tempo === null || !isNewSong ? [] : tapsOf(pedals, tempo);
	const hasClock = pedals.some(({ midi }) => midi?.tempo?.kind === 'clock');
	return {
		now: [...bytes, ...taps.filter(({ afterMs }) => afterMs === 0).flatMap((one) => one.bytes)],
		later: taps.filter(({ afterMs }) => afterMs > 0),
		clockMs: tempo === null || !hasClock ? null : 60_000 / tempo / CLOCKS_A_QUARTER,
	};
}

function isSameBoards(before: BoardsWanted, now: BoardsWanted): boolean {
	return JSON.stringify(before.boards) === JSON.stringify(now.boards);
}

/** Without those that are stuck: they do not switch. */
function switching(pedals: readonly Pedal[], states: PedalStates | undefined): readonly Pedal[] {
	return pedals.filter(({ id }) => states !== undefined && Object.hasOwn(states, id));
}

function tapsOf(pedals: readonly Pedal[], tempo: number): Sending['later'] {
	const bytes = pedals.flatMap(({ midi }) =>
		midi?.tempo?.kind === 'tap'
			? messageBytes(
					{ kind: 'control', controller: midi.tempo.controller, value: midi.tempo.value },
					midi.channel,
				)
			: [],
	);
	if (bytes.length === 0) return [];
	return Array.from({ length: TAPS }, (_, beat) => ({
		afterMs: Math.round((beat * 60_000) / tempo),
		bytes,
	}));
}
