// When it must all be over, and when it will be.

import { curfewLeft, curfewWords, NO_CURFEW, PLACES, pastCurfew } from '../words/stage.ts';
import { type Area, placeAt, type Row, span } from './row.ts';
import type { ScreenState } from './screen-state.ts';

const LABEL_COLUMNS = 10;
const MINUTES_A_DAY = 1440;

/** One row. */
export function curfewSection(state: ScreenState, { columns }: Area): Row[] {
	return [
		placeAt(columns, [
			[0, [span(PLACES.curfew, 'title')]],
			[LABEL_COLUMNS, curfewRow(state)],
		]),
	];
}

function curfewRow({ session, plan, nowMs, dayOffsetMinutes }: ScreenState): Row {
	const { curfewMinutes } = session.show;
	if (curfewMinutes === null) return [span(NO_CURFEW, 'dim')];
	const aheadMs = plan.sections.map(({ endMs: end }) => end);
	const playedMs = session.list.flatMap((item) =>
		item.kind === 'song' ? item.runs.flatMap(({ endedAtMs }) => endedAtMs ?? []) : [],
	);
	// Once nothing is left to play, the set has ended when its last song did, however long nobody says so.
	const hasEnded = aheadMs.length === 0 && playedMs.length > 0;
	const endMs = hasEnded ? Math.max(...playedMs) : Math.max(nowMs, ...aheadMs);
	const endMinutes = endMs / 60_000 + dayOffsetMinutes;
	const apart = modulo(curfewMinutes - endMinutes, MINUTES_A_DAY);
	const left = apart > MINUTES_A_DAY / 2 ? apart - MINUTES_A_DAY : apart;
	const words = curfewWords(hoursMinutes(curfewMinutes), hoursMinutes(endMinutes), hasEnded);
	return left < 0
		? [span(words), span(pastCurfew(-left * 60, hasEnded), 'accent')]
		: [span(words), span(curfewLeft(left * 60))];
}

function hoursMinutes(minutes: number): string {
	const whole = Math.floor(modulo(minutes, MINUTES_A_DAY));
	return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`;
}

function modulo(value: number, by: number): number {
	return ((value % by) + by) % by;
}
