// The night's own clock. It follows the machine's uptime, time asleep included, so that setting the
// machine's clock moves nothing; it is anchored to the wall clock when the night is opened.

import type { MachineClock } from '../base/machine-clock.ts';
import type { Entry } from '../journal/entry.ts';
import type { JournalRecord, Moment } from '../journal/record.ts';

/** A difference between the clocks beyond which the machine's clock was set, not merely adjusted. */
const CLOCK_SET_MS = 2000;
/** A silence between two ticks beyond which the machine slept or was stopped. */
const SLEPT_MS = 10_000;

export type NightClock = {
	readonly nowMs: () => number;
	readonly moment: () => Moment;
	/** To be called with each tick: what happened to the clocks since the last, as entries. */
	readonly notice: () => readonly Entry[];
};

/** The night's clock going on from what a journal holds; from now for a night without records. */
export function goOn(clock: MachineClock, records: readonly JournalRecord<Entry>[]): NightClock {
	const anchor = anchorOf(clock, records);
	let apart = clock.wallMs() - clock.upMs();
	let lastUpMs = clock.upMs();
	const nowMs = () => anchor + clock.upMs();
	return {
		nowMs,
		moment: () => ({ wallMs: clock.wallMs(), upMs: clock.upMs() }),
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
			const silentMs = clock.upMs() - lastUpMs;
			lastUpMs = clock.upMs();
			if (silentMs > SLEPT_MS)
				entries.push({ k: 'slept', at: nowMs(), seconds: Math.round(silentMs / 1000) });
			return entries;
		},
	};
}

/** What to add to uptime for night milliseconds. */
function anchorOf(clock: MachineClock, records: readonly JournalRecord<Entry>[]): number {
	const fromWall = clock.wallMs() - clock.upMs();
	const last = records.at(-1);
	if (!last) return fromWall;
	const latest = Math.max(...last.e.map((entry) => entry.at), 0);
	for (const record of records.toReversed()) {
		const note = record.e.find((entry) => entry.k === 'night-opened' || entry.k === 'resumed');
		if (note === undefined || !('boot' in note)) continue;
		if (note.boot !== clock.bootId || clock.upMs() < last.m) break;
		return note.at - record.m;
	}
	// Another start of the machine: the wall clock is all there is, but the night never runs backwards.
	return Math.max(fromWall, latest - clock.upMs());
}
