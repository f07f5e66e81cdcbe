// The stints that begin ahead, with each instrument as it will be when its turn comes: a stint leaves
// it in that tuning, used and to be wiped, and back only once it has been exchanged.

import type { InstrumentState } from '../../../machines/instrument.ts';
import type { NightMs } from '../../journal/entry.ts';
import type { Instrument } from '../../showfile/show.ts';
import type { Hand } from '../demand/hand.ts';
import { instrumentById } from '../demand/instrument-by-id.ts';
import type { Outlook } from '../demand/outlook.ts';
import { type OpenWithCapo, samePitches } from '../demand/same-pitches.ts';
import type { Section } from '../plan.ts';
import type { Choice } from './choice.ts';

/** One instrument in one player's hands, beginning at one section. */
export type Stint = {
	readonly choice: Choice;
	readonly instrument: Instrument;
	readonly hand: Hand;
	/** As it is before any work for this stint. */
	readonly state: InstrumentState;
	/** When it is back on the rack; null when it has not been in hands since now. */
	readonly backMs: NightMs | null;
	/** Its open pitches are to be other than before. */
	readonly isRetuned: boolean;
};

/** What was given at the moment at which another is taken is on the rack this much later: common practice, no source. */
export const BACK_MS = 15_000;
const MS_AN_HOUR = 3_600_000;

/**
 * When what is taken from hands before this section, not at its start, is on the rack: so long after the song
 * before; at any time before the night's first.
 *
 * @example
 * backAtOnceMs({ ...section, previousEndMs: 465000 }) // => 480000
 */
export function backAtOnceMs({ previousEndMs }: Section): NightMs {
	return previousEndMs === null ? Number.NEGATIVE_INFINITY : previousEndMs + BACK_MS;
}

/**
 * Every stint that begins, in playing order, then in the file's order of players.
 *
 * @example
 * stintsAhead(outlook, choices).map(({ instrument }) => instrument.id) // => ['A1', 'B1', 'A4', 'A1']
 */
export function stintsAhead(outlook: Outlook, choices: readonly Choice[]): readonly Stint[] {
	const instruments = instrumentById(outlook.show);
	const states = new Map(Object.entries(outlook.instruments));
	const backMs = new Map<string, NightMs>();
	for (const { instrument } of outlook.heldBefore.values()) {
		const cameBackMs = states.get(instrument)?.context.backAtMs ?? null;
		if (cameBackMs !== null) backMs.set(instrument, cameBackMs + BACK_MS);
	}
	const stints: Stint[] = [];

	const release = (id: string, atMs: NightMs): void => {
		const state = states.get(id);
		if (state === undefined) return;
		states.set(id, releasedAhead(state, atMs));
		backMs.set(id, atMs);
	};

	let inHands: readonly Hand[] = [...outlook.hands.values()].filter((hand) => hand !== null);
	for (const [section, ofSection] of bySection(choices)) {
		const before = ofSection.flatMap((choice) => (choice.before === null ? [] : [choice.before]));
		const atOnceMs = backAtOnceMs(section);
		for (const hand of inHands) {
			const isHeld = before.some(({ instrument }) => instrument === hand.instrument);
			if (!isHeld) release(hand.instrument, atOnceMs);
		}
		for (const choice of ofSection) {
			if (choice.before === null || choice.goesOn) continue;
			const id = choice.before.instrument;
			const isGivenAgain = ofSection.some(({ after }) => after?.instrument === id);
			const isAtOnce = isGivenAgain || choice.after === null;
			release(id, isAtOnce ? atOnceMs : section.startMs);
		}
		for (const choice of ofSection) {
			const hand = choice.after;
			const instrument = hand && instruments.get(hand.instrument);
			const state = hand && states.get(hand.instrument);
			if (!hand || !instrument || !state) continue;
			if (choice.goesOn) {
				if (hand.capo !== state.context.capo) {
					states.set(hand.instrument, {
						...state,
						context: { ...state.context, capo: hand.capo },
					});
				}
				continue;
			}
			stints.push({
				choice,
				instrument,
				hand,
				state,
				backMs: backMs.get(hand.instrument) ?? null,
				isRetuned: !samePitches(state.context.tuning, hand.tuning),
			});
			states.set(hand.instrument, handedAhead(state, hand, section.startMs));
			backMs.delete(hand.instrument);
		}
		inHands = ofSection.flatMap(({ after }) => (after === null ? [] : [after]));
	}
	return stints;
}

/** The choices of each section, in order. */
function bySection(choices: readonly Choice[]): ReadonlyMap<Section, readonly Choice[]> {
	const grouped = new Map<Section, Choice[]>();
	for (const choice of choices) {
		const group = grouped.get(choice.section);
		if (group === undefined) grouped.set(choice.section, [choice]);
		else group.push(choice);
	}
	return grouped;
}

/**
 * In hands in this tuning and with this capo; restrung, where a string was down.
 *
 * @example
 * handedAhead(states.A1, { tuning: dropD, capo: 2 }, 0).context.capo // => 2
 */
export function handedAhead(
	state: InstrumentState,
	hand: OpenWithCapo,
	atMs: NightMs,
): InstrumentState {
	const isRestrung = state.context.stringsDown.length > 0;
	return {
		value: 'inHands',
		context: {
			...state.context,
			tuning: hand.tuning,
			capo: hand.capo,
			readyAtMs: null,
			isToWipe: true,
			stringsDown: [],
			stringHours: isRestrung ? 0 : state.context.stringHours,
			inHandsSinceMs: atMs,
		},
	};
}

/**
 * Back on the rack, used, its strings so many hours older.
 *
 * @example
 * releasedAhead(handedAhead(states.A1, { tuning: dropD, capo: 0 }, 0), 60000).context.isToWipe // => true
 */
export function releasedAhead(state: InstrumentState, atMs: NightMs): InstrumentState {
	const { stringHours, inHandsSinceMs } = state.context;
	const hours = inHandsSinceMs === null ? 0 : Math.max(0, atMs - inHandsSinceMs) / MS_AN_HOUR;
	return {
		value: 'racked',
		context: {
			...state.context,
			readyAtMs: null,
			isToWipe: true,
			stringHours: stringHours === null ? null : stringHours + hours,
			inHandsSinceMs: null,
			backAtMs: atMs,
		},
	};
}
