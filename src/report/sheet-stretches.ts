// The night of a sheet as stretches, a song with the gap after it or an interval each: where a piece of work falls, and
// what the clock says then.

import type { NightMs } from '../journal/entry.ts';
import type { Work } from '../plan/plan.ts';
import { runningOrder, type SetSong } from '../showfile/running-order.ts';
import { firstWithoutLength } from '../showfile/song-length.ts';
import { expectedClock, whenWords } from '../words/paper.ts';
import type { SheetSource } from './sheet-gear.ts';

/** A stretch of the night: a song with the gap after it, or an interval. */
export type Stretch = {
	readonly kind: 'song' | 'interval';
	readonly position: number;
	readonly fromMs: NightMs;
	/** Of a song: when it ends. */
	readonly endMs: NightMs;
};

/** The stretches ahead, in order. */
export function momentsOf({ plan }: SheetSource, order: readonly SetSong[]): readonly Stretch[] {
	return order.flatMap(({ position, isAfterInterval }): readonly Stretch[] => {
		const sections = plan.sections.filter((section) => section.position === position);
		const [first] = sections;
		const last = sections.at(-1);
		if (first === undefined || last === undefined) return [];
		const { startMs, previousEndMs } = first;
		const interval: readonly Stretch[] =
			isAfterInterval && first.isAfterInterval && previousEndMs !== null
				? [{ kind: 'interval', position, fromMs: previousEndMs, endMs: startMs }]
				: [];
		return [...interval, { kind: 'song', position, fromMs: startMs, endMs: last.endMs }];
	});
}

/** In which stretch something is begun; null before all of them. */
export function stretchAt(moments: readonly Stretch[], atMs: NightMs): Stretch | null {
	return moments.findLast(({ fromMs }) => fromMs <= atMs) ?? null;
}

/** What the clock says at a moment of the song at this place, or at one that its start fixes. */
export function clockAt(
	{ session, plan, zeroMs }: SheetSource,
	{ atMs, position }: { readonly atMs: NightMs; readonly position: number },
): string {
	const first = firstWithoutLength(session.show, plan.sections);
	const isAbout = first !== null && position > first;
	return expectedClock(session.show, { seconds: (atMs - zeroMs) / 1000, isAbout });
}

export function whenOf(source: SheetSource, moments: readonly Stretch[], work: Work): string {
	const at = stretchAt(moments, work.startMs);
	if (at === null) return whenWords({ kind: 'before' });
	if (at.kind === 'interval') return whenWords({ kind: 'interval' });
	const song = songAt(source, at.position);
	return whenWords({ kind: work.startMs < at.endMs ? 'during' : 'after', song });
}

/** `3 Gravel`. */
export function songAt({ session: { show } }: SheetSource, position: number): string {
	const playing = runningOrder(show).find((one) => one.position === position);
	return `${position} ${playing?.song.title ?? ''}`.trimEnd();
}
