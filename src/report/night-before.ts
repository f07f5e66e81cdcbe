// The night from which the next one is made, and how its gear stood at its end.

import { tenths } from '../base/show-clock.ts';
import type { BatteryIn, NightMs } from '../journal/entry.ts';
import { hoursUsed } from '../rig/battery-now.ts';
import type { Session } from '../session/session.ts';
import type { Instrument } from '../showfile/show.ts';
import { isReachable } from '../tuning/retune.ts';
import type { NightStep } from './night-steps.ts';
import { stringHoursAt } from './string-hours.ts';

export type NightBefore = {
	readonly night: string;
	readonly opened: Session;
	readonly steps: readonly NightStep[];
	/** Add to UTC for the time of day where the show was. */
	readonly dayOffsetMinutes: number;
	/** The day where the show was, `2026-06-12`. */
	readonly dayOf: (atMs: NightMs) => string;
};

/** The hours on its strings at the end, those in hands now among them; null where nobody knows. */
export function hoursAtEnd(id: string, last: Session, { steps }: NightBefore): number | null {
	const state = last.instruments[id];
	return state === undefined ? null : stringHoursAt(state, steps.at(-1)?.entry.at ?? 0);
}

/** A night that never began has used nothing, but for what was changed in it. */
export function usedAtEnd(
	last: Session,
	{ steps }: NightBefore,
	battery: BatteryIn & { readonly usedHours: number },
): number {
	const nowMs = steps.at(-1)?.entry.at ?? 0;
	return tenths(hoursUsed(last, battery, { nowMs, zeroMs: last.zeroAtMs ?? nowMs }));
}

export function isSameTuning(
	one: { readonly notes: readonly string[] } | undefined,
	other: { readonly notes: readonly string[] },
): boolean {
	return one === undefined || one.notes.join(' ') === other.notes.join(' ');
}

/**
 * Whether the file says the tuning that it hangs in now. What a file says is also what the strings are for: from there
 * its own tuning, and every one that a song names for it, must be within reach.
 */
export function isWrittenAs(
	{ id, kind, tuning: own }: Instrument,
	{ instruments, show }: Session,
): boolean {
	const now = instruments[id]?.context.tuning;
	if (now === undefined || isSameTuning(now, own)) return false;
	const named = show.songs
		.flatMap(({ parts, cues }) => [parts, ...cues.map(({ hand }) => hand)])
		.flatMap((parts) => Object.values(parts))
		.flatMap((part) => (part.kind === 'named' && part.instrument === id ? [part.tuning] : []));
	return [own, ...named].every((one) => one === null || isReachable(now.notes, one.notes, kind));
}
