// What is said of an instrument that rings through the loudspeakers.

import type { BodyRegion, NearNote, RingingString } from '../tuning/ringing.ts';

const REGIONS: Readonly<Record<BodyRegion, string>> = {
	air: 'the air in the body (cover the soundhole or the f-holes)',
	top: 'the top (damp it, move it out of the monitor)',
};

export const POLARITY_FIRST =
	'Flip the polarity first, and keep the side that rings later. Then the filter.';
export const FEEDBACK_TITLES = {
	which: 'Slot that rings?',
	hint: 'Type what rings: 147, 147 Hz or D3, then enter.',
	heading: 'FEEDBACK',
} as const;
export const ringsTitle = (instrument: string): string => `${instrument} rings at:`;
export const notRinging = (typed: string): string =>
	`${typed === '' ? 'Nothing' : typed} is neither hertz, 25 to 20000, nor a note with its octave.`;

/** `147 Hz (D3)`. */
export function ringingWords(hertz: number, { note, cents }: NearNote): string {
	const off = Math.round(cents);
	const by = off === 0 ? '' : ` ${off > 0 ? '+' : '−'}${Math.abs(off)} c`;
	return `${hertzWords(hertz)} (${note}${by})`;
}

/** `It may be string 4 (D3), or the air in the body …`. */
export function whatRings(strings: readonly RingingString[], region: BodyRegion | null): string {
	const of = strings.slice(0, 2).map(({ string, note, partial }) => {
		const by = partial === 1 ? '' : `, its partial ${partial}`;
		return `string ${string} (${note}${by})`;
	});
	const all = [...of, ...(region === null ? [] : [REGIONS[region]])];
	return all.length === 0
		? 'No open string and no usual place of the body: move it or the monitor.'
		: `It may be ${all.join(', or ')}.`;
}

/** `Notch 147 Hz, Q 8 (18 Hz wide), or the 160 Hz band down.` */
export function filterWords(filter: {
	readonly hertz: number;
	readonly q: number;
	readonly band: number | null;
}): string {
	const { hertz, q, band } = filter;
	const width = Math.max(1, Math.round(hertz / q));
	const down = band === null ? '' : `, or the ${band} Hz band down`;
	return `Notch ${hertzWords(hertz)}, Q ${q} (${width} Hz wide)${down}.`;
}

/** On the run sheet: `5 Fell 62 Hz (B1): polarity first, notch 62 Hz, Q 8 …`. */
export function sheetRings(instrument: string, ringing: string, filter: string): string {
	return `${FEEDBACK_TITLES.heading} ${instrument} ${ringing}: polarity first, then ${filter.charAt(0).toLowerCase()}${filter.slice(1)}`;
}

export const RING_NOT_KEPT =
	'It is in the log of this night, but could not be kept with the instrument.';
export const ringMemo = (instrument: string, ringing: string): string =>
	`feedback: ${instrument} rings at ${ringing}`;

function hertzWords(hertz: number): string {
	return `${Math.round(hertz * 10) / 10} Hz`;
}
