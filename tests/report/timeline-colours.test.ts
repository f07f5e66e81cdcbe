// Whether the picture's colours can be told apart from the page, and its letters read, by everybody.

import { expect, test } from 'vitest';
import { TIMELINE_COLOURS } from '../../src/report/timeline-colours.ts';

/** WCAG 2.2, relative luminance, of `#rrggbb`. */
function luminance(colour: string): number {
	const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((place) => {
		const part = Number.parseInt(colour.slice(place, place + 2), 16) / 255;
		return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
	});
	return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** WCAG 2.2, contrast ratio. */
function contrast(one: string, other: string): number {
	const [light = 0, dark = 0] = [luminance(one), luminance(other)].sort((a, b) => b - a);
	return (light + 0.05) / (dark + 0.05);
}

const PAPER = { light: '#ffffff', dark: '#14130f' } as const;
const INK = { light: '#111111', dark: '#e6e2da' } as const;

test.each([
	// W3C, "Understanding Success Criterion 1.4.3" and techniques G183 and G207.
	['#000000', '#ffffff', 21],
	['#777777', '#ffffff', 4.4781],
	['#767676', '#ffffff', 4.5422],
	['#3366cc', '#000000', 3.9132],
	['#e3660e', '#ffffff', 3.4019],
	['#9d9d9d', '#ffffff', 2.712],
])('the contrast of %s and %s is as published', (one, other, ratio) => {
	expect(contrast(one, other)).toBeCloseTo(ratio, 3);
});

test.each(['light', 'dark'] as const)('in %s, letters on a mark read at 4.5 : 1', (theme) => {
	// WCAG 2.2, 1.4.3, "Contrast (Minimum)".
	for (const { fill, text } of Object.values(TIMELINE_COLOURS[theme])) {
		expect(contrast(fill, text)).toBeGreaterThanOrEqual(4.5);
	}
});

test.each(['light', 'dark'] as const)(
	'in %s, the outline of a mark stands out from the page at 3 : 1',
	(theme) => {
		// WCAG 2.2, 1.4.11, "Non-text Contrast"; and what stands on the page itself is read, 1.4.3.
		expect(contrast(INK[theme], PAPER[theme])).toBeGreaterThanOrEqual(4.5);
	},
);

test('what marks say by colour is of a set for readers with any colour vision', () => {
	// M. Okabe and K. Ito, "Color Universal Design", 2008.
	const set = ['#E69F00', '#56B4E9', '#009E73', '#F0E442', '#0072B2', '#D55E00', '#CC79A7'];
	for (const theme of ['light', 'dark'] as const) {
		const { song: _, ...marks } = TIMELINE_COLOURS[theme];
		for (const { fill } of Object.values(marks)) expect(set).toContain(fill);
	}
	// Their contrasts with black, by the formula of WCAG 2.2.
	const onBlack = set.slice(0, 4).map((colour) => contrast(colour, '#000000'));
	const published = [9.324, 9.101, 6.138, 15.881];
	for (const [place, ratio] of onBlack.entries()) expect(ratio).toBeCloseTo(published[place]!, 2);
});
