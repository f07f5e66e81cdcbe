// A night that nobody keeps: the real one in everything but that its journal is in memory and its clock is turned
// by whoever leads through it; and the steps by which a show goes as planned.

import type { Entry } from '../journal/entry.ts';
import { memoryJournal } from '../journal/memory-journal.ts';
import { unkeptHeader } from '../journal/night-header.ts';
import type { JournalRecord } from '../journal/record.ts';
import { type Night, openNight } from '../night/night.ts';
import { plannedZero } from '../night/planned-zero.ts';
import type { PreferenceStore } from '../night/preference-store.ts';
import { songEndMs } from '../plan/demand/first-song.ts';
import { goesOutFirst } from '../plan/out-first.ts';
import type { ScreenState } from '../screen/screen-state.ts';
import { songOnNow } from '../session/find.ts';
import type { Show } from '../showfile/show.ts';
import { LED_BY } from '../words/walk.ts';
import { type SceneClock, sceneClock } from './scene-clock.ts';

/** A trial has no day: any serves, so long as it is always the same (2000-01-01 12:00 UTC). */
const TRIAL_DAY_MS = 946_728_000_000;

/** What a trial night is opened with. */
export type TrialOptions = {
	readonly show: Show;
	/** Milliseconds that the hands live by. */
	readonly handMs: () => number;
	readonly preferences?: PreferenceStore;
};

/** Where it goes on: after these records, at this moment after the planned start. */
export type TrialPlace = {
	readonly records: readonly JournalRecord<Entry>[];
	readonly atMs: number;
};

export type TrialNight = { readonly night: Night; readonly clock: SceneClock };

/** The trial night at this place, its clock standing. */
export function openTrial(options: TrialOptions, { records, atMs }: TrialPlace): TrialNight {
	const { show, handMs, preferences } = options;
	const zeroMs = plannedZero(show, TRIAL_DAY_MS, 0);
	const clock = sceneClock({ zeroMs, atMs, handMs });
	const night = openNight({
		show,
		journal: memoryJournal(unkeptHeader('trial', show.title), { records, checkpoint: null }),
		clock,
		plannedZeroMs: zeroMs,
		dayOffsetMinutes: 0,
		isRehearsal: true,
		handMs,
		...(preferences && { preferences }),
	});
	return { night, clock };
}

/** The place where a trial stands now, to go on from. */
export function placeOf({ night }: TrialNight): TrialPlace {
	const zeroMs = plannedZero(night.session().show, TRIAL_DAY_MS, 0);
	return { records: [...night.records()], atMs: night.nowMs() - zeroMs };
}

/** What the screen shows of a trial: that it was laid down and taken up is no news of the night. */
export function trialScreen(night: Night): ScreenState {
	const shown = night.screen();
	const takenUp = new Set(
		night.records().flatMap(({ id, e }) => (e[0]?.k === 'resumed' ? [id] : [])),
	);
	if (takenUp.size === 0) return shown;
	const log = {
		[Symbol.iterator]: () => Iterator.from(shown.log).filter(({ step }) => !takenUp.has(step)),
	};
	return { ...shown, log };
}

/** The clock at this moment of the night, if it is not past. */
function leapTo({ night, clock }: TrialNight, atMs: number): void {
	clock.leap(atMs - night.nowMs());
}

/** Everything on the rack counts as ready, as it is before the doors open. */
export function makeAllReady({ night }: TrialNight): void {
	night.submit({ do: 'make-all-ready' }, LED_BY);
}

/** What can be done on the rack until the next song begins is done. */
export function doWork({ night }: TrialNight): void {
	const plan = night.plan();
	const untilMs = plan.sections.find(({ hasBegun }) => !hasBegun)?.startMs ?? night.nowMs();
	for (const work of plan.work) {
		const { instrument, to, capo, isEarly } = work;
		const place = night.session().instruments[instrument]?.value;
		if (place === 'inHands' || work.finishMs > untilMs || goesOutFirst(plan, work)) continue;
		const due = { tuning: to, capo, ...(isEarly && { isEarly }) };
		night.submit({ do: 'make-ready', instrument, due }, LED_BY);
	}
}

/** The song on, if one is, comes to its end at its time. */
export function endSong(trial: TrialNight): void {
	const { night } = trial;
	if (songOnNow(night.session()) === null) return;
	leapTo(trial, songEndMs(night.plan().sections) ?? night.nowMs());
	night.submit({ do: 'finish-song' }, LED_BY);
}

/** The next song begins at its time, with its planned hand-overs made; false where none is to come. */
export function beginNext(trial: TrialNight): boolean {
	const { night } = trial;
	const before = night.session().current;
	endSong(trial);
	if (songOnNow(night.session()) === null) {
		const [next] = night.plan().sections;
		if (next === undefined) return false;
		leapTo(trial, next.startMs);
		night.submit({ do: 'step' }, LED_BY);
	}
	return night.session().current !== before;
}
