// What is known of the instruments as numbers, each by its place in the show: how they stand now, and
// what it takes from one setting, a tuning with a capo, to another. Bounds are worked out from them for
// thousands of sets of choices.

import type { Outlook } from './outlook.ts';
import type { Seating } from './seats.ts';
import { BACK_MS } from './stints.ts';
import { pitchSeconds } from './work-needed.ts';

const MS_AN_HOUR = 3_600_000;

export type GearFigures = {
	readonly isInHands: Uint8Array;
	readonly isToWipe: Uint8Array;
	/** How many strings are down. */
	readonly stringsDown: Uint8Array;
	/** `-Infinity` where it is not ready. */
	readonly readyAtMs: Float64Array;
	/** Not on the rack again before; `-Infinity` where it is there, or in hands. */
	readonly backMs: Float64Array;
	/** Hours on its strings if it comes back now; infinite where nobody knows. */
	readonly stringHours: Float64Array;
	/** Seconds from one setting of an instrument to another, touch-up included, wiping not. */
	readonly secondsBetween: (instrument: number, from: number, to: number) => number;
};

/**
 * The figures of the outlook's instruments.
 *
 * @example
 * gearFigures(outlook, seating).secondsBetween(0, 0, 0) // => 45
 */
export function gearFigures(outlook: Outlook, { settings }: Seating): GearFigures {
	const { show, instruments, hands, heldBefore } = outlook;
	const contexts = show.instruments.map(({ id }) => instruments[id]?.context);
	const held = new Set([...hands.values()].map((hand) => hand?.instrument));
	const putDown = new Set([...heldBefore.values()].map(({ instrument }) => instrument));
	const known = settings.map(({ length }) => new Float64Array(length * length));
	return {
		isInHands: Uint8Array.from(show.instruments, ({ id }) => (held.has(id) ? 1 : 0)),
		isToWipe: Uint8Array.from(contexts, (one) => (one?.isToWipe === true ? 1 : 0)),
		stringsDown: Uint8Array.from(contexts, (one) => one?.stringsDown.length ?? 0),
		readyAtMs: Float64Array.from(contexts, (one) => one?.readyAtMs ?? Number.NEGATIVE_INFINITY),
		backMs: Float64Array.from(show.instruments, ({ id }, place) => {
			const cameBackMs = putDown.has(id) ? (contexts[place]?.backAtMs ?? null) : null;
			return cameBackMs === null ? Number.NEGATIVE_INFINITY : cameBackMs + BACK_MS;
		}),
		stringHours: Float64Array.from(contexts, (one) => {
			const { stringHours = null, inHandsSinceMs = null } = one ?? {};
			if (stringHours === null) return Number.POSITIVE_INFINITY;
			const heldMs = inHandsSinceMs === null ? 0 : Math.max(0, outlook.nowMs - inHandsSinceMs);
			return stringHours + heldMs / MS_AN_HOUR;
		}),
		secondsBetween: (place, from, to) => {
			const ofInstrument = known[place] ?? new Float64Array();
			const count = settings[place]?.length ?? 0;
			const at = from * count + to;
			if (ofInstrument[at] === 0) {
				const [one, other] = [settings[place]?.[from], settings[place]?.[to]];
				const instrument = show.instruments[place];
				if (one === undefined || other === undefined || instrument === undefined) return 0;
				const pitches = pitchSeconds(instrument, one.tuning, other.tuning);
				ofInstrument[at] = pitches + (one.capo === other.capo ? 0 : instrument.times.capo);
			}
			return ofInstrument[at] ?? 0;
		},
	};
}
