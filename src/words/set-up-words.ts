// What an instrument's page says of its set-up: the target, what was measured, what moved since.

import { wrapWords } from '../base/wrap-words.ts';
import type { Measured } from '../gear/gear-entry.ts';
import { type MeasuredDrift, measuredDrift } from '../gear/measured-drift.ts';
import type { SetUp } from '../showfile/show.ts';
import { lengthWords } from '../tuning/length-unit.ts';
import type { SetUpMeasures } from '../tuning/set-up-drift.ts';
import { trussRodWords } from './bench-advice.ts';

const NAMES: Readonly<Record<keyof SetUpMeasures, string>> = {
	relief: 'relief',
	actionLast: 'action',
	actionFirst: 'first fret',
	pickup: 'pickup',
	nut: 'nut',
};

/** Blocks stand beside other lines. */
const BLOCK_COLUMNS = 60;
const DAY_MS = 86_400_000;
/** More records than these nobody compares at a rack. */
const MOST_RECORDS = 5;

/** The target, the last measurement and what moved from the one before; nothing where nothing is known. */
export function setUpLines(
	wanted: SetUp | undefined,
	past: readonly Measured[],
	nowMs: number,
): readonly string[] {
	const target = measureWords(wanted ?? {});
	const [newest] = past;
	const drift = Map.groupBy(measuredDrift(past), ({ days }) => days);
	return [
		...(target === '' ? [] : [`set-up target: ${target}`]),
		...(newest === undefined ? [] : [`measured ${agoWords(newest, nowMs)}: ${entryWords(newest)}`]),
		...[...drift].map(
			([days, all]) => `moved ${sinceWords(days)}: ${all.map(driftWords).join(', ')}`,
		),
	];
}

/** The measurements before the last, the newest first, under a heading; none when there was but one. */
export function historyBlock(past: readonly Measured[], nowMs: number): readonly string[] {
	const earlier = past.slice(1, MOST_RECORDS);
	const more = past.length - 1 - earlier.length;
	if (earlier.length === 0) return [];
	return [
		'measured before',
		...earlier.map((entry) => `${agoWords(entry, nowMs)}: ${entryWords(entry)}`),
		...(more > 0 ? [`and ${more} more before that`] : []),
	];
}

/** What to do with the truss rod, and what not, where the relief measured last is not the wanted one. */
export function rodBlock(wanted: SetUp | undefined, past: readonly Measured[]): readonly string[] {
	const [measured] =
		past.find(({ measures }) => measures.relief !== undefined)?.measures.relief ?? [];
	if (wanted?.relief === undefined || measured === undefined) return [];
	const words = trussRodWords(wanted.relief, measured);
	return ['truss rod', ...words.flatMap((line) => wrapWords(line, BLOCK_COLUMNS))];
}

function agoWords({ at }: Measured, nowMs: number): string {
	const days = Math.max(0, Math.floor((nowMs - at) / DAY_MS));
	if (days === 0) return 'today';
	return days === 1 ? 'yesterday' : `${days} days ago`;
}

function entryWords({ measures, at12 }: Measured): string {
	const cents = at12 === undefined ? [] : [`12th fret ${at12.map(signedCents).join(' ')} c`];
	return [measureWords(measures), ...cents].filter((words) => words !== '').join(', ');
}

function sinceWords(days: number): string {
	if (days === 0) return 'the same day';
	return days === 1 ? 'in a day' : `in ${days} days`;
}

function driftWords({ what, change }: MeasuredDrift): string {
	if (what === 'at12') {
		const moved = change.flatMap((cents, index) =>
			cents === 0 ? [] : [`string ${change.length - index} ${signedCents(cents)} c`],
		);
		return `12th fret of ${moved.join(', ')}`;
	}
	const by = change.map((one) => `${one > 0 ? '+' : ''}${lengthWords(one, 'mm')}`).join(' / ');
	return `${NAMES[what as keyof SetUpMeasures] ?? what} ${by}`;
}

function signedCents(cents: number): string {
	return `${cents > 0 ? '+' : ''}${cents}`;
}

function measureWords(measures: SetUpMeasures | Measured['measures']): string {
	return Object.entries(NAMES)
		.flatMap(([key, name]) => {
			const lengths = [(measures as Record<string, number | readonly number[]>)[key] ?? []].flat();
			return lengths.length === 0
				? []
				: [`${name} ${lengths.map((one) => lengthWords(one, 'mm')).join(' / ')}`];
		})
		.join(', ');
}
