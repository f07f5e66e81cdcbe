// Gauges and scale lengths as they are labelled, in millimetres.

import type { StringGauge } from './show.ts';

/** The international inch, exact since 1959. */
const INCH_MILLIMETRES = 25.4;

// The thinnest plain string and the thickest bass string that are made, with room to spare, and from
// the smallest ukulele to the longest upright: common practice, no source.
const THINNEST = 0.1;
const THICKEST = 5;
const SHORTEST_SCALE = 250;
const LONGEST_SCALE = 1300;

const GAUGE = /^(\d{1,3}(?:\.\d{1,4})?)\s*(mm)?\s*(w)?$/i;
const SCALE = /^(\d{1,4}(?:\.\d{1,4})?)\s*(mm|in|"|″|inch|inches)$/i;

/** A gauge from thousandths of an inch (`10`, `46w`) or millimetres (`0.25 mm`, `1.1 mm w`); null for anything else. */
export function parseGauge(text: string): StringGauge | null {
	const [, digits, unit, wound] = GAUGE.exec(text.trim()) ?? [];
	if (digits === undefined) return null;
	const millimetres = rounded(unit ? Number(digits) : (Number(digits) / 1000) * INCH_MILLIMETRES);
	if (millimetres < THINNEST || millimetres > THICKEST) return null;
	return { millimetres, isWound: wound !== undefined };
}

/** A gauge as sets are labelled, in thousandths of an inch: `10`, `46w`. */
export function gaugeText({ millimetres, isWound }: StringGauge): string {
	const thousandths = Number(((millimetres / INCH_MILLIMETRES) * 1000).toFixed(1));
	return `${thousandths}${isWound ? 'w' : ''}`;
}

/** Millimetres from `25.5 in` or `648 mm`; null for anything else, and for what is no instrument's scale. */
export function parseScale(text: string): number | null {
	const [, digits, unit] = SCALE.exec(text.trim()) ?? [];
	if (digits === undefined || unit === undefined) return null;
	const isMetric = unit.toLowerCase() === 'mm';
	const millimetres = rounded(isMetric ? Number(digits) : Number(digits) * INCH_MILLIMETRES);
	return millimetres >= SHORTEST_SCALE && millimetres <= LONGEST_SCALE ? millimetres : null;
}

function rounded(millimetres: number): number {
	return Math.round(millimetres * 10_000) / 10_000;
}
