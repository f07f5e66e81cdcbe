// What the plan warns of, when it must all be over, whether the night is kept, and what was last done.

import { displayWidth } from '../base/display-width.ts';
import { keyOfAction } from '../keys/key-choices.ts';
import {
	curfewLeft,
	curfewWords,
	moreAndKey,
	moreWords,
	NO_CURFEW,
	NOTHING,
	NOTHING_YET,
	PLACES,
	pastCurfew,
	undoHint,
} from '../words/stage.ts';
import { warningWords } from '../words/warnings.ts';
import { type Area, placeAt, type Row, rowWidth, span } from './row.ts';
import type { LogLine, ScreenState } from './screen-state.ts';
import { wallClock } from './show-clock-words.ts';
import { storageRow } from './storage.ts';

const LABEL_COLUMNS = 10;
/** Narrower screens have no room for the key that shows the rest. */
const LEAST_HINT_COLUMNS = 50;
const MINUTES_A_DAY = 1440;

/** The first warnings, a row each; the label says how many more there are. */
export function warningSection(state: ScreenState, { columns, rows }: Area): Row[] {
	// Only what is wrong in somebody's hands calls to act at once; the rest is work or a risk.
	const warnings = state.plan.warnings.map((one) =>
		span(warningWords(state.session.show, one), one.code === 'wrong-tuning' ? 'accent' : 'plain'),
	);
	if (warnings.length === 0) {
		return [
			placeAt(columns, [
				[0, [span(PLACES.watch, 'title')]],
				[LABEL_COLUMNS, [span(NOTHING, 'dim')]],
			]),
		];
	}
	const more = warnings.length - rows;
	const hint =
		more > 0 && columns >= LEAST_HINT_COLUMNS
			? moreAndKey(0, keyOfAction('warnings', state.preferences.keys))
			: '';
	return warnings.slice(0, rows).map((warning, index) => {
		// No warning is cut for the sake of the key.
		const hasRoom = LABEL_COLUMNS + rowWidth([warning]) + 2 + hint.length <= columns;
		return placeAt(columns, [
			[0, index === 0 ? watchLabel(more) : []],
			[LABEL_COLUMNS, [warning]],
			...(index === 0 && hint !== '' && hasRoom
				? [[columns - hint.length, [span(hint, 'dim')]] as const]
				: []),
		]);
	});
}

function watchLabel(more: number): Row {
	return [span(PLACES.watch, 'title'), ...(more > 0 ? [span(` +${more}`)] : [])];
}

/** One row: what is to be said of where the night is kept, else curfew. */
export function curfewSection(state: ScreenState, { columns }: Area): Row[] {
	const storage = storageRow(state, columns);
	if (storage !== null) return [storage];
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
		? [span(words), span(pastCurfew(-left * 60), 'accent')]
		: [span(words), span(curfewLeft(left * 60))];
}

/**
 * One row: what the last step did, or, where that is too long, what it did first and how many things
 * more; and that it can be taken back.
 */
export function lastSection(state: ScreenState, { columns }: Area): Row[] {
	const lines = lastStep(state.log);
	const [first] = lines;
	// What the program wrote down by itself is nobody's step and stays.
	const isTakeable = first !== undefined && first.step === state.takeableStep;
	const hint =
		!isTakeable || columns < 50 ? '' : undoHint(keyOfAction('take-back', state.preferences.keys));
	const clock = first === undefined ? '' : `${wallClock(state, first.atMs)}  `;
	const room = columns - LABEL_COLUMNS - clock.length - hint.length - 2;
	const words =
		first === undefined ? [span(NOTHING_YET, 'dim')] : [span(clock), span(stepWords(lines, room))];
	return [
		placeAt(columns, [
			[0, [span(PLACES.last, 'title')]],
			[LABEL_COLUMNS, words],
			...(hint === '' ? [] : [[columns - hint.length, [span(hint, 'dim')]] as const]),
		]),
	];
}

function stepWords(lines: readonly LogLine[], room: number): string {
	const said = lines.map(({ words }) => words);
	const first = (count: number) =>
		[
			...said.slice(0, count),
			...(count < said.length ? [moreWords(said.length - count)] : []),
		].join('; ');
	const counts = said.map((_, index) => said.length - index);
	return counts.map(first).find((words) => displayWidth(words) <= room) ?? first(1);
}

/** The lines of the newest step that stands, in the order in which they happened. */
function lastStep(log: Iterable<LogLine>): readonly LogLine[] {
	const lines: LogLine[] = [];
	for (const line of log) {
		if (line.isTakenBack) continue;
		if (lines[0] && lines[0].step !== line.step) break;
		lines.unshift(line);
	}
	return lines;
}

function hoursMinutes(minutes: number): string {
	const whole = Math.floor(modulo(minutes, MINUTES_A_DAY));
	return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`;
}

function modulo(value: number, by: number): number {
	return ((value % by) + by) % by;
}
