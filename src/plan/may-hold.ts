// Which instruments each player may have in hands in each section at all: a slot may stay empty only
// where every instrument that would do can be in somebody else's.

import type { Seating } from './seats.ts';

/** For each section, then each instrument, how many players may have it; and the same for each seat. */
export type MayHold = {
	readonly bySeat: readonly Uint8Array[];
	readonly count: Uint8Array;
	/** For each instrument, how many players may have it at any time. */
	readonly players: Uint8Array;
};

/**
 * Everything that an ask allows, and whatever a player could then keep.
 *
 * @example
 * mayHold(seatingOf(outlook, null)).players[0] // => 1
 */
export function mayHold(seating: Seating): MayHold {
	const { seats, sectionCount, instrumentCount, endsStints } = seating;
	const count = new Uint8Array(sectionCount * instrumentCount);
	const players = new Uint8Array(instrumentCount);
	const bySeat = seats.map((seat) => {
		const held = new Uint8Array(sectionCount * instrumentCount);
		let before = new Uint8Array(instrumentCount);
		const hold = (hand: number): void => {
			const instrument = seat.instrumentOf[hand] ?? -1;
			if (instrument >= 0) before[instrument] = 1;
		};
		hold(seat.start);
		for (let place = 0; place < sectionCount; place += 1) {
			const { demand, isSettled, isOfEmptyHands } = seat.asks[place] ?? {
				demand: { kind: 'keeps' },
			};
			const mayKeep = isOfEmptyHands || demand.kind === 'keeps' || (place === 0 && seating.isOn);
			const keepsAll = isSettled || mayKeep;
			const isEmptied = isSettled && endsStints[place] === 1;
			if (!keepsAll || isEmptied) before = new Uint8Array(instrumentCount);
			if (place === 0 && !isSettled && demand.kind === 'keeps') hold(seat.putDown);
			for (const hand of seat.optionHands[place] ?? []) hold(hand);
			held.set(before, place * instrumentCount);
		}
		for (let instrument = 0; instrument < instrumentCount; instrument += 1) {
			let ever = 0;
			for (let place = 0; place < sectionCount; place += 1) {
				const at = place * instrumentCount + instrument;
				count[at] = (count[at] ?? 0) + (held[at] ?? 0);
				ever |= held[at] ?? 0;
			}
			players[instrument] = (players[instrument] ?? 0) + ever;
		}
		return held;
	});
	return { bySeat, count, players };
}
