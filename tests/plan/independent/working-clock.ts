// The technician's time with the busy windows cut out of it: two readings of one clock, and the way between.

/** From `from` up to `to`, in seconds, when no work is done. */
export type Busy = { readonly from: number; readonly to: number };

export type WorkingClock = {
	/** Seconds of work that can be done before a moment. */
	readonly workedAt: (moment: number) => number;
	/** The earliest moment at which so much work can have been done. */
	readonly momentAt: (worked: number) => number;
	/** A moment, or the end of the window that it falls into. */
	readonly freeFrom: (moment: number) => number;
};

/** Moments are whole milliseconds; what sums of seconds are off by is far less. */
const ROUNDING = 1e-6;

/** The clock without these windows; they may overlap and stand in any order. */
export function workingClock(windows: readonly Busy[]): WorkingClock {
	const cuts: { from: number; to: number; before: number }[] = [];
	for (const { from, to } of [...windows].sort((a, b) => a.from - b.from)) {
		const last = cuts.at(-1);
		if (to <= from) continue;
		if (last && from <= last.to) last.to = Math.max(last.to, to);
		else cuts.push({ from, to, before: last ? last.before + (last.to - last.from) : 0 });
	}
	return {
		workedAt: (moment) => {
			let cut = 0;
			for (const { from, to, before } of cuts) {
				if (moment <= from) break;
				cut = before + (Math.min(moment, to) - from);
			}
			return moment - cut;
		},
		momentAt: (worked) => {
			let cut = 0;
			for (const { from, to, before } of cuts) {
				if (worked <= from - before + ROUNDING) break;
				cut = before + (to - from);
			}
			return worked + cut;
		},
		freeFrom: (moment) => cuts.find(({ from, to }) => from <= moment && moment < to)?.to ?? moment,
	};
}
