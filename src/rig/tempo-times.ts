// Times of delays and tremolos that hang on a song's tempo.

import type { Pedal, PedalStates, Show, Song } from '../showfile/show.ts';

export type TempoTime = {
	readonly song: string;
	readonly player: string;
	readonly pedal: string;
	/** The control in the file's word. */
	readonly control: string;
	/** The note value in the file's words. */
	readonly value: string;
	/** Null: the song has no tempo. */
	readonly milliseconds: number | null;
};

/** In quarter notes. */
const NOTES: Readonly<Record<string, number>> = {
	whole: 4,
	half: 2,
	quarter: 1,
	eighth: 0.5,
	sixteenth: 0.25,
	'thirty-second': 0.125,
};

/**
 * Quarter notes that a note value lasts; null for anything else. Dotted is half as long again, three of a triplet
 * take the time of two.
 *
 * @example
 * quarterNotes('dotted-eighth') // => 0.75
 * quarterNotes('triplet half').toFixed(4) // => '1.3333'
 * quarterNotes('noon') // => null
 */
export function quarterNotes(value: string): number | null {
	const words = value.toLowerCase().trim().replace(/\s+/g, '-');
	const [, before, note = '', after] =
		/^(?:(dotted|triplet)-)?(whole|half|quarter|eighth|sixteenth|thirty-second)(?:-(dotted|triplet))?$/.exec(
			words,
		) ?? [];
	const length = NOTES[note];
	if (length === undefined || (before !== undefined && after !== undefined)) return null;
	const how = before ?? after;
	return how === 'dotted' ? length * 1.5 : how === 'triplet' ? (length * 2) / 3 : length;
}

/**
 * Milliseconds of a note value at a tempo in quarter notes a minute: 60000 / tempo for each.
 *
 * @example
 * tempoMilliseconds('dotted-eighth', 104)?.toFixed(1) // => '432.7'
 */
export function tempoMilliseconds(value: string, tempo: number): number | null {
	const quarters = quarterNotes(value);
	return quarters === null ? null : (quarters * 60_000) / tempo;
}

/** Beats a minute from one song to the next; null where a song has no tempo. */
export type TempoMove = { readonly from: number | null; readonly to: number | null };

/**
 * Whether a value of a pedal that stays on is to be set again because the tempo is another one. It is not where the
 * pedal is sent the tempo, nor where the song has none to set it by.
 *
 * @example
 * isSetAgain({}, 'quarter', { from: 76, to: 118 }) // => true
 * isSetAgain({}, 'wide', { from: 76, to: 118 }) // => false
 */
export function isSetAgain(
	{ midi }: Pick<Pedal, 'midi'>,
	value: string,
	{ from, to }: TempoMove,
): boolean {
	return to !== null && from !== to && midi?.tempo === undefined && quarterNotes(value) !== null;
}

/**
 * Every control that hangs on the tempo, song by song, each once.
 *
 * @example
 * tempoTimes(DELAY) // => [{ song: 'one', player: 'bo', pedal: 'delay', control: 'time', value: 'quarter', milliseconds: 500 }]
 */
export function tempoTimes({ songs }: Pick<Show, 'songs'>): readonly TempoTime[] {
	return songs.flatMap((song) => {
		const states = [song.board, ...song.cues.map(({ boards }) => boards)];
		const all = states.flatMap((boards) =>
			Object.entries(boards).flatMap(([player, board]) => ofBoard(song, player, board)),
		);
		const known = new Set<string>();
		return all.filter(({ player, pedal, control, value }) => {
			const key = JSON.stringify([player, pedal, control, value]);
			return !known.has(key) && known.add(key);
		});
	});
}

function ofBoard(song: Song, player: string, board: PedalStates): readonly TempoTime[] {
	return Object.entries(board).flatMap(([pedal, { settings = {} }]) =>
		Object.entries(settings).flatMap(([control, value]) => {
			if (quarterNotes(value) === null) return [];
			const milliseconds = song.tempo === null ? null : tempoMilliseconds(value, song.tempo);
			return [{ song: song.id, player, pedal, control, value, milliseconds }];
		}),
	);
}
