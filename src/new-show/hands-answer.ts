// Answers to the question who plays what in a song.

import { cleanText } from '../base/clean-text.ts';
import type { DraftCell, DraftInstrument, DraftSong, ShowDraft } from '../setlist/show-draft.ts';
import * as words from '../words/new-show.ts';
import { type Answered, toPlace } from './answered.ts';
import { firstHands, handsAt, playersFor } from './guesses.ts';
import type { Making } from './making.ts';
import { readTuned } from './read-answer.ts';

/** The question about this song of the catalogue; the first song begins with what is likely. */
export function toHands(making: Making, song: number, songs: readonly DraftSong[]): Answered {
	const hands = song === 0 ? firstHands(making.draft) : {};
	const begun = songs.map((one, index) => (index === song ? { ...one, hands } : one));
	return toPlace(making, { ask: 'hands', song }, { songs: begun });
}

const HANDS = /^(hand|none|keep|tuned) (\S+)(?: (.*))?$/u;

/** `hand ash A1`, `none ash`, `keep ash`, `tuned ash drop D c2`; nothing: so it is played. */
export function takeHands(making: Making, text: string): Answered {
	const { draft, place } = making;
	if (place.ask !== 'hands') return { refused: words.notInList(cleanText(text)) };
	if (text === '') {
		const isLast = place.song >= draft.songs.length - 1;
		return toPlace(making, isLast ? { ask: 'write' } : { ask: 'hands', song: place.song + 1 }, {});
	}
	const [, what, id = '', more = ''] = HANDS.exec(text) ?? [];
	const player = draft.players.find((one) => one.id === id);
	if (!player) return { refused: words.notInList(cleanText(text)) };
	if (what === 'none') return withHands(making, { [id]: { kind: 'none' } });
	if (what === 'keep') return withHands(making, { [id]: null });
	if (what === 'tuned') return tuned(making, id, more);
	const given = draft.instruments.find((one) => one.id === more);
	if (!given) return { refused: words.notInList(cleanText(text)) };
	const before = handsAt(draft, place.song);
	const other = draft.players.find((one) => one.id !== id && has(before[one.id], given.id));
	const next = withHands(making, {
		...(other ? { [other.id]: { kind: 'none' } } : {}),
		[id]: { kind: 'named', instrument: given.id, tuning: null, capo: 0 },
	});
	return other && 'making' in next ? { ...next, says: words.hadIt(other.name, given.name) } : next;
}

const has = (cell: DraftCell | undefined, instrument: string): boolean =>
	cell?.kind === 'named' && cell.instrument === instrument;

function tuned(making: Making, id: string, text: string): Answered {
	const { draft, place } = making;
	const cell = place.ask === 'hands' ? handsAt(draft, place.song)[id] : undefined;
	const held =
		cell?.kind === 'named'
			? draft.instruments.find((one) => one.id === cell.instrument)
			: undefined;
	if (!held) return { refused: words.notTuned(cleanText(text)) };
	const read = text.trim() === '' ? { tuning: null, capo: 0 } : readTuned(text, held.kind);
	if (read === null) return { refused: words.notTuned(cleanText(text)) };
	const tuning = read.tuning === held.tuning ? null : read.tuning;
	return withHands(making, {
		[id]: { kind: 'named', instrument: held.id, tuning, capo: read.capo },
	});
}

/** The song asked about with these cells; null takes one out. In the order of the players. */
function withHands(making: Making, changed: Readonly<Record<string, DraftCell | null>>): Answered {
	const { draft, place } = making;
	if (place.ask !== 'hands') return { refused: words.NO_SONG };
	const songs = draft.songs.map((song, index) => {
		if (index !== place.song) return song;
		const cells = { ...song.hands, ...changed };
		const hands = Object.fromEntries(
			draft.players.flatMap(({ id }) => {
				const cell = cells[id];
				return cell ? [[id, cell] as const] : [];
			}),
		);
		return { ...song, hands };
	});
	return toPlace(making, place, { songs });
}

/** Who gets what is in a slot: the picked one if it can be theirs, else the first whose it can be. */
export function whoGets(draft: ShowDraft, instrument: DraftInstrument, picked: string): string {
	const able = playersFor(draft, instrument).map(({ id }) => id);
	return able.includes(picked) ? picked : (able[0] ?? picked);
}
