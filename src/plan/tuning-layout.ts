// Where the tunings of the followed instruments stand in a label of several players: each one's own
// first, from a whole number on, as their rests are asked for by them; then those that they share.

import type { SeatWays } from './seat-ways.ts';
import type { Seat } from './seats.ts';
import { wordsFor } from './tuning-bytes.ts';

export type TuningLayout = {
	/** How many whole numbers the tunings take. */
	readonly words: number;
	/** For each member where their own begin, in whole numbers. */
	readonly ownFrom: Int32Array;
	/** For each instrument its byte; -1 where it is not followed. */
	readonly byteOf: Int16Array;
	/** For each byte the last section in which somebody may have its instrument; -1 for none. */
	readonly lastUse: Int32Array;
};

/**
 * The layout for these seats with their ways; `isFollowed` is 1 for each instrument whose tuning is.
 *
 * @example
 * tuningLayout([], [], Uint8Array.of(0, 0)).words // => 0
 */
export function tuningLayout(
	seats: readonly Seat[],
	ways: readonly SeatWays[],
	isFollowed: Uint8Array,
): TuningLayout {
	const ownFrom = new Int32Array(seats.length);
	const byteOf = new Int16Array(isFollowed.length).fill(-1);
	const last = new Int32Array(isFollowed.length).fill(-1);
	let words = 0;
	for (const [index, { instrumentOf }] of seats.entries()) {
		const { firstPlace, handOf, ownOf, ownCount } = ways[index] as SeatWays;
		ownFrom[index] = words;
		for (let section = 0; section + 1 < firstPlace.length; section += 1) {
			const end = firstPlace[section + 1] ?? 0;
			for (let place = firstPlace[section] ?? 0; place < end; place += 1) {
				const instrument = instrumentOf[handOf[place] ?? 0] ?? -1;
				if (instrument < 0) continue;
				const own = ownOf[instrument] ?? -1;
				if (own >= 0) byteOf[instrument] = 4 * words + own;
				last[instrument] = Math.max(last[instrument] ?? -1, section);
			}
		}
		words += wordsFor(ownCount);
	}
	let bytes = 4 * words;
	for (const [instrument, is] of isFollowed.entries()) {
		if (is === 0 || byteOf[instrument] !== -1 || last[instrument] === -1) continue;
		byteOf[instrument] = bytes;
		bytes += 1;
	}
	const lastUse = new Int32Array(4 * wordsFor(bytes)).fill(-1);
	byteOf.forEach((byte, instrument) => {
		if (byte >= 0) lastUse[byte] = last[instrument] ?? -1;
	});
	return { words: wordsFor(bytes), ownFrom, byteOf, lastUse };
}
