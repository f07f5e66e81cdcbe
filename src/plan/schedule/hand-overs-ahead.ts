// Every change of hands still to be made and the stints that these begin, in one walk through the choices: with
// the moment at which the hand-overs of a section begin, and each instrument as it will be when its turn comes.

import type { InstrumentState } from '../../../machines/instrument.ts';
import type { NightMs } from '../../journal/entry.ts';
import type { Instrument } from '../../showfile/show.ts';
import type { Hand } from '../demand/hand.ts';
import { instrumentById } from '../demand/instrument-by-id.ts';
import type { Outlook } from '../demand/outlook.ts';
import type { PlannedHandOver, Section } from '../plan.ts';
import type { Choice } from './choice.ts';
import { whichFit } from './fit.ts';
import { BACK_MS, backAtOnceMs, handedAhead, releasedAhead } from './stints.ts';

/** One instrument in one player's hands, beginning at one section. */
export type Stint = {
	readonly choice: Choice;
	readonly section: Section;
	readonly instrument: Instrument;
	readonly hand: Hand;
	/** As it is before any work for this stint. */
	readonly state: InstrumentState;
	/** When it is back on the rack; null when it has not been in hands since now. */
	readonly backMs: NightMs | null;
	/** When the hand-overs of the section begin. */
	readonly wantedMs: NightMs;
};

export type HandOversAhead = {
	readonly handOvers: readonly PlannedHandOver[];
	/** One for each hand-over that gives something. */
	readonly stints: readonly Stint[];
};

/**
 * The hand-overs in order of time, then of the file's players, and their stints. Those of one section fill their
 * seconds just before it, never reaching into the song before; taking away without giving takes none. A stint
 * leaves its instrument in that tuning, used, and back on the rack once it has been exchanged.
 *
 * @example
 * handOversAhead(outlook, choices).handOvers.map(({ player, instrument }) => [player, instrument]) // => [['ash', 'A1'], ['bo', 'B1'], ['ash', 'A4'], ['ash', 'A1'], ['bo', null]]
 * handOversAhead(outlook, choices).stints.map(({ instrument }) => instrument.id) // => ['A1', 'B1', 'A4', 'A1']
 */
export function handOversAhead(outlook: Outlook, choices: readonly Choice[]): HandOversAhead {
	const instruments = instrumentById(outlook.show);
	const states = new Map(Object.entries(outlook.instruments));
	const backMs = new Map<string, NightMs>();
	for (const { instrument } of outlook.heldBefore.values()) {
		const cameBackMs = states.get(instrument)?.context.backAtMs ?? null;
		if (cameBackMs !== null) backMs.set(instrument, cameBackMs + BACK_MS);
	}
	const release = (id: string, atMs: NightMs): void => {
		const state = states.get(id);
		if (state === undefined) return;
		states.set(id, releasedAhead(state, atMs));
		backMs.set(id, atMs);
	};
	const handOvers: PlannedHandOver[] = [];
	const stints: Stint[] = [];
	let inHands = new Set([...outlook.hands.values()].flatMap((hand) => hand?.instrument ?? []));
	for (const [section, all] of Map.groupBy(choices, (choice) => choice.section)) {
		const atOnceMs = backAtOnceMs(section);
		// What an interval has ended.
		for (const { before } of all) if (before !== null) inHands.delete(before.instrument);
		for (const id of inHands) release(id, atOnceMs);
		for (const { before, after, goesOn } of all) {
			if (before === null || goesOn) continue;
			const isGivenAgain = all.some((one) => one.after?.instrument === before.instrument);
			release(before.instrument, isGivenAgain || after === null ? atOnceMs : section.startMs);
		}
		const made = handOversOf(outlook, section, all);
		handOvers.push(...made);
		for (const choice of all) {
			const { after: hand, goesOn } = choice;
			const instrument = hand && instruments.get(hand.instrument);
			const state = hand && states.get(hand.instrument);
			if (!hand || !instrument || !state) continue;
			if (goesOn) {
				const { context } = state;
				if (hand.capo !== context.capo) {
					states.set(instrument.id, { ...state, context: { ...context, capo: hand.capo } });
				}
				continue;
			}
			const wantedMs = made[0]?.wantedMs ?? section.startMs;
			const back = backMs.get(instrument.id) ?? null;
			stints.push({ choice, section, instrument, hand, state, backMs: back, wantedMs });
			states.set(instrument.id, handedAhead(state, hand, section.startMs));
			backMs.delete(instrument.id);
		}
		inHands = new Set(all.flatMap(({ after }) => after?.instrument ?? []));
	}
	return { handOvers, stints };
}

function handOversOf(
	{ show, nowMs }: Outlook,
	section: Section,
	all: readonly Choice[],
): readonly PlannedHandOver[] {
	const open = all.filter((choice) => isChangeOfHands(choice, all));
	const seconds = open.map(({ after }) =>
		after === null ? 0 : (instrumentById(show).get(after.instrument)?.times.handOver ?? 0),
	);
	const inAll = seconds.reduce((sum, one) => sum + one, 0);
	// In a song that is on, what is still open is wanted now.
	const wantedMs = section.hasBegun ? nowMs : beginningMs(section, inAll);
	const fits = whichFit(seconds, section.hasBegun ? null : section.gapSeconds);
	return open.map(({ player, before, after, leave, pack, for: named }, index) => ({
		section,
		player,
		from: before?.instrument ?? null,
		instrument: null,
		for: null,
		tuning: null,
		capo: 0,
		seconds: seconds[index] ?? 0,
		wantedMs,
		fits: fits[index] ?? true,
		leave: null,
		pack: null,
		...(after && { ...after, for: named, leave, pack }),
	}));
}

/**
 * When hand-overs of so many seconds begin, to be done as the section begins. Only a cue's may reach
 * into the song, which is its own.
 *
 * @example
 * beginningMs({ ...section, point: 0, startMs: 480000, previousEndMs: 465000 }, 37) // => 465000
 */
export function beginningMs(section: Section, seconds: number): NightMs {
	const earliest = section.point === 0 ? section.previousEndMs : null;
	return Math.max(section.startMs - seconds * 1000, earliest ?? Number.NEGATIVE_INFINITY);
}

/**
 * Given, exchanged or taken away. Where nothing can be had, nothing is taken either, unless somebody
 * else is to have it.
 */
function isChangeOfHands(choice: Choice, ofSection: readonly Choice[]): boolean {
	const { before, after, isMissing, goesOn } = choice;
	if (goesOn || (before === null && after === null)) return false;
	if (!isMissing) return true;
	return ofSection.some((one) => before !== null && one.after?.instrument === before.instrument);
}
