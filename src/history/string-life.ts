// How long strings have been on an instrument, in hours in hands, over the nights that are known of it.

import type { InstrumentNight, NightFacts } from './night-facts.ts';

export type StringHours = {
	readonly hours: number;
	/** Nothing says how old they were at first: it may be more. */
	readonly isAtLeast: boolean;
};

/**
 * Hours in hands of the oldest strings on it after the last of these nights, oldest first; null where it was in none of
 * them. One new string in place of a broken one leaves the others as old as they were. Where the show file says
 * something else of the strings than the night before, it counts from there.
 *
 * @example
 * stringHours([{ instruments: [{ gear: 'a', strung: { on: null, hours: 3 }, hours: 1.5, restrings: [] }] }], 'a') // => { hours: 4.5, isAtLeast: false }
 * stringHours([{ instruments: [{ gear: 'a', strung: { on: null, hours: null }, hours: 1.5, restrings: [{ afterHours: 1, strings: [] }] }] }], 'a') // => { hours: 0.5, isAtLeast: false }
 * stringHours([{ instruments: [{ gear: 'a', strung: { on: '2026-06-09', hours: 9 }, hours: 1, restrings: [] }] }, { instruments: [{ gear: 'a', strung: { on: '2026-06-11', hours: null }, hours: 2, restrings: [] }] }], 'a') // => { hours: 2, isAtLeast: false }
 * stringHours([{ instruments: [] }], 'a') // => null
 */
export function stringHours(
	nights: readonly Pick<NightFacts, 'instruments'>[],
	gear: string,
): StringHours | null {
	let now: StringHours | null = null;
	let said: InstrumentNight['strung'] | null = null;
	for (const { instruments } of nights) {
		const night = instruments.find((one) => one.gear === gear);
		if (night === undefined) continue;
		const { strung } = night;
		const isSaidAnew = said === null || said.on !== strung.on || said.hours !== strung.hours;
		if (now === null || isSaidAnew) {
			// Another day alone says that they are new since the night before.
			const isNew = said !== null && strung.on !== null && said.on !== strung.on;
			now = { hours: strung.hours ?? 0, isAtLeast: strung.hours === null && !isNew };
		}
		said = strung;
		const whole = night.restrings.findLast(({ strings }) => strings.length === 0);
		now =
			whole === undefined
				? { ...now, hours: now.hours + night.hours }
				: { hours: Math.max(0, night.hours - whole.afterHours), isAtLeast: false };
	}
	return now;
}
