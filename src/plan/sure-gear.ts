// What is sure of each instrument on the way through the sections, whatever is chosen of what is still
// possible: the settings that it can only be in, whether it was played, when it is back at the earliest.

import { staleWithStrings } from '../session/readiness.ts';
import type { Board } from './board.ts';
import type { GearFigures } from './gear-figures.ts';
import type { Outlook } from './outlook.ts';
import type { Seat } from './seats.ts';
import { BACK_MS } from './stints.ts';
import type { SureStint } from './sure-stints.ts';
import { workNeeded } from './work-needed.ts';

/** Settings of one instrument are kept as bits; where there are more, any may be the one. */
const MOST_SETTINGS = 31;
const MS_AN_HOUR = 3_600_000;

const NOBODY = -1;
const UNSEEN = -2;

/** Whether a string of it is down. */
const WHOLE = 0;
const DOWN = 1;
const MAYBE_DOWN = 2;

export type SureGear = Gear;

/**
 * The instruments as they are now; `goTo` then leads from section to section.
 *
 * @example
 * sureGear(outlook, { board, figures: gearFigures(outlook, seating) }).pieceFor(0, 0, 0) // => null
 */
export function sureGear(
	outlook: Outlook,
	{ board, figures }: { readonly board: Board; readonly figures: GearFigures },
): SureGear {
	return new Gear(outlook, board, figures);
}

/** Work that has to be done at the least: seconds, and not before. */
export type LeastWork = { readonly seconds: number; readonly releaseMs: number };

class Gear {
	readonly #outlook: Outlook;
	readonly #board: Board;
	readonly #figures: GearFigures;
	readonly #settings: Int32Array;
	/** The seat that surely has it, or -1. */
	readonly #holder: Int8Array;
	readonly #isUsed: Uint8Array;
	readonly #down: Uint8Array;
	readonly #backMs: Float64Array;
	/** Hours on the strings, at the least and at the most. */
	readonly #leastHours: Float64Array;
	readonly #mostHours: Float64Array;
	/** Of the section gone to: the settings in which somebody may have it, surely whose it is, whether with new strings. */
	readonly #maySettings: Int32Array;
	readonly #willHold: Int8Array;
	readonly #mayBeWhole: Uint8Array;
	/** For each seat, whether its hands may be empty there, and whether anything may be in them. */
	readonly #mayBeEmpty: Uint8Array;
	readonly #mayBeFull: Uint8Array;

	constructor(outlook: Outlook, board: Board, figures: GearFigures) {
		const { instrumentCount, seats } = board.seating;
		this.#outlook = outlook;
		this.#board = board;
		this.#figures = figures;
		this.#settings = new Int32Array(instrumentCount).fill(1);
		this.#holder = new Int8Array(instrumentCount).fill(NOBODY);
		this.#isUsed = figures.isInHands.slice();
		this.#down = figures.stringsDown.map((count) => (count > 0 ? DOWN : WHOLE));
		this.#backMs = figures.backMs.slice();
		this.#leastHours = figures.stringHours.slice();
		this.#mostHours = figures.stringHours.slice();
		this.#maySettings = new Int32Array(instrumentCount);
		this.#willHold = new Int8Array(instrumentCount);
		this.#mayBeWhole = new Uint8Array(instrumentCount);
		this.#mayBeEmpty = new Uint8Array(seats.length);
		this.#mayBeFull = new Uint8Array(seats.length);
		seats.forEach(({ start, instrumentOf }, seat) => {
			const instrument = instrumentOf[start] ?? NOBODY;
			if (instrument >= 0) this.#holder[instrument] = seat;
		});
	}

	/** What comes back as this section comes, with the stints that surely begin in it. */
	goTo(section: number, stints: readonly SureStint[]): void {
		this.#look(section);
		for (let instrument = 0; instrument < this.#holder.length; instrument += 1) {
			if (this.#holder[instrument] === NOBODY) continue;
			const isGiven = stints.some(({ instruments }) => instruments.includes(instrument));
			if (isGiven || this.#willHold[instrument] === NOBODY) {
				this.#release(instrument, section, stints);
			}
		}
	}

	/** All that is in somebody's hands in the section gone to is in them now. */
	handOver(section: number, stints: readonly SureStint[]): void {
		for (const { instruments } of stints) {
			const [given = NOBODY, ...others] = instruments;
			if (given < 0 || others.length > 0 || this.#down[given] === WHOLE) continue;
			if (this.#down[given] === DOWN) this.#renewStrings(given);
			this.#down[given] = WHOLE;
		}
		for (let instrument = 0; instrument < this.#holder.length; instrument += 1) {
			const may = this.#maySettings[instrument] ?? 0;
			if (may === 0) continue;
			const isSure = this.#willHold[instrument] !== NOBODY;
			this.#settings[instrument] = isSure ? may : (this.#settings[instrument] ?? 0) | may;
			this.#holder[instrument] = this.#willHold[instrument] ?? NOBODY;
			if (isSure) this.#isUsed[instrument] = 1;
			if (this.#down[instrument] === DOWN && this.#mayBeWhole[instrument] === 1) {
				this.#down[instrument] = MAYBE_DOWN;
				this.#renewStrings(instrument);
			}
			this.#play(section, instrument, isSure);
		}
	}

	/** Its strings get older by a section, at the most up to when the next hand-over is done. */
	#play(section: number, instrument: number, isSure: boolean): void {
		const { sections, nowMs } = this.#outlook;
		const { startMs = 0, endMs = 0 } = sections[section] ?? {};
		const untilMs = Math.max(sections[section + 1]?.startMs ?? endMs, endMs + BACK_MS);
		const most = (untilMs - startMs) / MS_AN_HOUR;
		const least = Math.max(0, endMs - Math.max(startMs, nowMs)) / MS_AN_HOUR;
		this.#mostHours[instrument] = (this.#mostHours[instrument] ?? 0) + most;
		if (isSure) this.#leastHours[instrument] = (this.#leastHours[instrument] ?? 0) + least;
	}

	/** As old as new ones: they are not older, and played since then by this one's hands at the least. */
	#renewStrings(instrument: number): void {
		this.#leastHours[instrument] = 0;
		this.#mostHours[instrument] = 0;
	}

	/** How long it stays fresh at the longest. */
	#freshMs(instrument: number): number {
		const { show } = this.#outlook;
		const least = staleWithStrings(show, this.#leastHours[instrument] ?? null);
		const most = staleWithStrings(show, this.#mostHours[instrument] ?? null);
		return Math.max(least, most) * 1000;
	}

	/** The work for handing this instrument over in this setting; null where it may take none. */
	pieceFor(section: number, instrument: number, setting: number): LeastWork | null {
		const { show, instruments, sections, nowMs } = this.#outlook;
		const { startMs, hasBegun } = sections[section] ?? { startMs: nowMs, hasBegun: false };
		const down = this.#down[instrument] ?? WHOLE;
		const backMs = this.#backMs[instrument] ?? 0;
		if (down === MAYBE_DOWN) return null;
		if (down === DOWN) {
			const broken = show.instruments[instrument];
			const state = instruments[broken?.id ?? ''];
			const to = this.#board.seating.settings[instrument]?.[setting];
			if (broken === undefined || state === undefined || to === undefined) return null;
			const { seconds } = workNeeded({ instrument: broken, state, to });
			return { seconds, releaseMs: backMs };
		}
		const { readyAtMs } = this.#figures;
		const staleMs = this.#freshMs(instrument);
		const handedMs = hasBegun ? Math.max(startMs, nowMs) : startMs;
		const isFresh = handedMs - (readyAtMs[instrument] ?? 0) <= staleMs;
		if (this.#isUsed[instrument] === 0 && setting === 0 && isFresh) return null;
		return {
			seconds: this.#leastSeconds(instrument, setting),
			releaseMs: Math.max(backMs, startMs - staleMs),
		};
	}

	/** From whatever setting it can be in. */
	#leastSeconds(instrument: number, setting: number): number {
		const { isToWipe, secondsBetween } = this.#figures;
		const wipe = this.#outlook.show.instruments[instrument]?.times.wipe ?? 0;
		const bits = this.#settings[instrument] ?? 0;
		const count = this.#board.seating.settings[instrument]?.length ?? 0;
		let least = Number.POSITIVE_INFINITY;
		for (let from = 0; from < count; from += 1) {
			if (count <= MOST_SETTINGS && (bits & (1 << from)) === 0) continue;
			const isAsNow = from === 0 && this.#isUsed[instrument] === 0;
			const isWiped = isAsNow && isToWipe[instrument] === 0;
			const seconds = secondsBetween(instrument, from, setting) + (isWiped ? 0 : wipe);
			least = Math.min(least, seconds);
		}
		return least;
	}

	/** Back at once, or when the exchange is made; where that is open, at the earlier of the two. */
	#release(instrument: number, section: number, stints: readonly SureStint[]): void {
		const { startMs = 0, previousEndMs = null } = this.#outlook.sections[section] ?? {};
		const atOnceMs = (previousEndMs ?? startMs) + BACK_MS;
		const holder = this.#holder[instrument] ?? NOBODY;
		const isEnded = this.#board.seating.endsStints[section] === 1;
		const isGivenAgain = stints.some(
			({ instruments }) => instruments.length === 1 && instruments[0] === instrument,
		);
		const mayStay = this.#maySettings[instrument] !== 0;
		this.#holder[instrument] = NOBODY;
		if (isEnded || isGivenAgain || this.#mayBeFull[holder] === 0) {
			this.#backMs[instrument] = atOnceMs;
		} else if (!mayStay && this.#mayBeEmpty[holder] === 0) this.#backMs[instrument] = startMs;
		else this.#backMs[instrument] = Math.min(startMs, atOnceMs);
	}

	#look(section: number): void {
		const { seats } = this.#board.seating;
		this.#maySettings.fill(0);
		this.#willHold.fill(NOBODY);
		this.#mayBeWhole.fill(0);
		this.#mayBeEmpty.fill(0);
		this.#mayBeFull.fill(0);
		for (let place = 0; place < seats.length; place += 1) {
			const { size, instrumentOf, settingOf, wholeOf } = seats[place] as Seat;
			const open = this.#board.possible[place] as Uint8Array;
			const row = section * size;
			let only = UNSEEN;
			for (let hand = 0; hand < size; hand += 1) {
				if (open[row + hand] !== 1) continue;
				const instrument = instrumentOf[hand] ?? NOBODY;
				only = only === UNSEEN || only === instrument ? instrument : NOBODY;
				if (instrument < 0) {
					this.#mayBeEmpty[place] = 1;
					continue;
				}
				this.#mayBeFull[place] = 1;
				if (wholeOf[hand] === hand) this.#mayBeWhole[instrument] = 1;
				const bit = 1 << Math.min(settingOf[hand] ?? 0, MOST_SETTINGS);
				this.#maySettings[instrument] = (this.#maySettings[instrument] ?? 0) | bit;
			}
			if (only >= 0) this.#willHold[only] = place;
		}
	}
}
