// The night's own clock. It follows the machine's uptime, time asleep included, so that setting the
// machine's clock moves nothing; it is anchored to the wall clock when the night is opened.

import type { MachineClock } from '../base/machine-clock.ts';
import type { Entry } from '../journal/entry.ts';
import type { ClockReading, JournalRecord } from '../journal/record.ts';

/** A difference between the clocks beyond which the machine's clock was set, not merely adjusted. */
const CLOCK_SET_MS = 2000;
/** Sleep between two ticks that is worth an entry. */
const SLEPT_MS = 10_000;

export type NightClock = {
	readonly nowMs: () => number;
	readonly reading: () => ClockReading;
	/** To be called with each tick: what happened to the clocks since the last, as entries. */
	readonly notice: () => readonly Entry[];
};

/** What a journal says about the clocks at its end; plain data. */
export type LastKnown = {
	/** The last record's latest entry, in night milliseconds. */
	readonly atMs: number;
	/** Uptime at the last record. */
	readonly upMs: number;
	/** The last time that the program was started: in which start of the machine, and the night's clock less uptime. */
	readonly started: { readonly boot: string; readonly anchorMs: number } | null;
};

/** What is known after one more record. */
export function lastKnown(known: LastKnown | null, { e, m }: JournalRecord<Entry>): LastKnown {
	let { started } = known ?? { started: null };
	for (const entry of e) {
		if ((entry.k === 'night-opened' || entry.k === 'resumed') && 'boot' in entry)
			started = { boot: entry.boot, anchorMs: entry.at - m };
	}
	return { atMs: Math.max(...e.map((entry) => entry.at), 0), upMs: m, started };
}

/** The night's clock going on from what is known; from now for a night without records. */
export function goOn(clock: MachineClock, known: LastKnown | null): NightClock {
	const anchor = anchorOf(clock, known);
	let apart = clock.wallMs() - clock.upMs();
	// Not told by how late a tick comes: long work of our own, or a busy machine, is no sleep.
	const asleepMs = () => clock.asleepMs?.() ?? 0;
	let lastAsleepMs = asleepMs();
	const nowMs = () => anchor + clock.upMs();
	return {
		nowMs,
		reading: () => ({ wallMs: clock.wallMs(), upMs: clock.upMs() }),
		notice: () => {
			const entries: Entry[] = [];
			const apartNow = clock.wallMs() - clock.upMs();
			if (Math.abs(apartNow - apart) > CLOCK_SET_MS) {
				entries.push({
					k: 'clock-set',
					at: nowMs(),
					bySeconds: Math.round((apartNow - apart) / 1000),
				});
				apart = apartNow;
			}
			const sleptMs = asleepMs() - lastAsleepMs;
			lastAsleepMs += sleptMs;
			if (sleptMs > SLEPT_MS)
				entries.push({ k: 'slept', at: nowMs(), seconds: Math.round(sleptMs / 1000) });
			return entries;
		},
	};
}

/** What to add to uptime for night milliseconds. */
function anchorOf(clock: MachineClock, known: LastKnown | null): number {
	const fromWall = clock.wallMs() - clock.upMs();
	if (!known) return fromWall;
	const { atMs, upMs, started } = known;
	if (started?.boot === clock.bootId && clock.upMs() >= upMs) return started.anchorMs;
	// Another start of the machine: the wall clock is all there is, but the night never runs backwards.
	return Math.max(fromWall, atMs - clock.upMs());
}
