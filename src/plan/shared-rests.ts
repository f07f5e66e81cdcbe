// What each shared instrument's own way through its tunings costs from every section on: its re-tunings,
// less what it is paid for the tunings that it is in.

import type { Prices } from './prices.ts';
import type { SeatWays } from './seat-ways.ts';
import { tuningByte } from './tuning-bytes.ts';

/** A seat's ways, and for each of their places where among the prices its own stands. */
export type Paying = { readonly ways: SeatWays; readonly cells: Int32Array };

export type SharedRests = Rests;

/**
 * The rests of all instruments that have a price, paid by those who may have them.
 *
 * @example
 * sharedRests({ prices: noPrices(board, [0, 1], groupSetting(board, [0, 1])), paying: [], retuning: 9 }).cost // => 0
 */
export function sharedRests(asked: Asked): SharedRests {
	return new Rests(asked);
}

type Asked = {
	readonly prices: Prices;
	readonly paying: readonly Paying[];
	/** What a re-tuning weighs. */
	readonly retuning: number;
};

class Rests {
	/** What all of them come to from the beginning. */
	readonly cost: number;
	readonly prices: Prices;
	/** The instruments' places in the show. */
	readonly instruments: readonly number[];
	readonly #retuning: number;
	/** For each section and column what being in it is paid, less than anything where it cannot be in it. */
	readonly #paid: Float64Array;
	readonly #rests: Float64Array;

	constructor({ prices, paying, retuning }: Asked) {
		this.prices = prices;
		this.#retuning = retuning;
		const isPaying = new Uint8Array(prices.of.length);
		for (const { cells } of paying) {
			for (const cell of cells) if (cell >= 0) isPaying[cell] = 1;
		}
		this.#paid = prices.of.map((price, cell) => (isPaying[cell] === 1 ? price : 0));
		const instruments: number[] = [];
		prices.firstColumn.forEach((first, instrument) => {
			if (first >= 0) instruments.push(instrument);
		});
		this.instruments = instruments;
		for (const one of paying) this.#settle(one);
		this.#rests = new Float64Array(prices.of.length + prices.columnCount);
		this.#goBack();
		this.cost = instruments.reduce((sum, one) => sum + this.restOf(0, one, tuningByte(0)), 0);
	}

	/** What an instrument's way costs from this section on, coming with this tuning byte; 0 where it has no price. */
	restOf(section: number, instrument: number, tuning: number): number {
		const { firstColumn, columnCounts, columnCount } = this.prices;
		const first = firstColumn[instrument] ?? -1;
		if (first < 0) return 0;
		const isTold = tuning > 0 && (columnCounts[instrument] ?? 0) > 1;
		return this.#rests[section * columnCount + first + (isTold ? tuning - tuningByte(0) : 0)] ?? 0;
	}

	/** Takes one from each of these for every cell that the best way of each instrument goes through. */
	takeFrom(counts: Float64Array): void {
		const { firstColumn, columnCounts, columnCount } = this.prices;
		for (const instrument of this.instruments) {
			const first = firstColumn[instrument] ?? 0;
			const end = first + (columnCounts[instrument] ?? 0);
			let column = first;
			for (let row = 0; row < this.#paid.length; row += columnCount) {
				column = this.#next(row, column, { first, end });
				counts[row + column] = (counts[row + column] ?? 0) - 1;
			}
		}
	}

	/** What somebody has whatever is chosen is in that tuning. */
	#settle({ ways, cells }: Paying): void {
		const { firstColumn, columnCounts, columnCount } = this.prices;
		for (let section = 0; section + 1 < ways.firstPlace.length; section += 1) {
			const place = ways.firstPlace[section] ?? 0;
			const cell = cells[place] ?? -1;
			if ((ways.firstPlace[section + 1] ?? 0) !== place + 1 || cell < 0) continue;
			const column = cell - section * columnCount;
			const mine = this.instruments.find((instrument) => {
				const first = firstColumn[instrument] ?? 0;
				return column >= first && column < first + (columnCounts[instrument] ?? 0);
			});
			const from = cell - column + (firstColumn[mine ?? 0] ?? 0);
			this.#paid.fill(Number.NEGATIVE_INFINITY, from, from + (columnCounts[mine ?? 0] ?? 0));
			this.#paid[cell] = this.prices.of[cell] ?? 0;
		}
	}

	#goBack(): void {
		const { firstColumn, columnCounts, columnCount } = this.prices;
		for (
			let row = this.#paid.length - columnCount;
			row >= 0 && columnCount > 0;
			row -= columnCount
		) {
			for (const instrument of this.instruments) {
				const first = firstColumn[instrument] ?? 0;
				const end = first + (columnCounts[instrument] ?? 0);
				for (let column = first; column < end; column += 1) {
					const next = this.#next(row, column, { first, end });
					this.#rests[row + column] = this.#through(row, column, next);
				}
			}
		}
	}

	/** The column that it is best gone on with from this one. */
	#next(row: number, from: number, { first, end }: { first: number; end: number }): number {
		let best = from;
		let least = this.#through(row, from, from);
		for (let column = first; column < end; column += 1) {
			const cost = this.#through(row, from, column);
			if (cost >= least) continue;
			best = column;
			least = cost;
		}
		return best;
	}

	#through(row: number, from: number, to: number): number {
		const rest = this.#rests[row + this.prices.columnCount + to] ?? 0;
		return (from === to ? 0 : this.#retuning) - (this.#paid[row + to] ?? 0) + rest;
	}
}
