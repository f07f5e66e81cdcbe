// The colours, measured: what must be read can be read in the dark by everybody, what means different
// things looks different to everybody, and in a calm moment hardly anything shines.

import { describe, expect, test } from 'vitest';
import { COLOUR_SETS } from '../../src/base/colours.ts';
import { drawScreen } from '../../src/screen/draw-screen.ts';
import type { SpanStyle } from '../../src/screen/row.ts';
import type { ScreenState } from '../../src/screen/screen-state.ts';
import { FIELD, TONES, type Tone } from '../../src/screen/tones.ts';
import {
	contrast,
	difference,
	EYES,
	fixedColor,
	type Lab,
	labOf,
	lightOf,
	seenBy,
} from './color-vision.ts';
import { middleOfASong } from './states.ts';

const styles: readonly SpanStyle[] = ['plain', 'dim', 'title', 'bright', 'unready', 'accent'];
const sets = COLOUR_SETS.flatMap((name) => {
	const tones = TONES[name];
	return tones === null ? [] : [{ name, tones }];
});
/** Nothing is to be done at once, and no key was pressed just now. */
function calmMoment(): ScreenState {
	const state = middleOfASong();
	const work = state.plan.work.filter(({ slackSeconds }) => slackSeconds >= 0);
	return { ...state, message: null, plan: { ...state.plan, work } };
}

const depths = [
	{ colors: 'all colours', colorOf: ({ rgb }: Tone) => rgb },
	{ colors: '256 colours', colorOf: ({ of256 }: Tone) => fixedColor(of256) },
];
const cases = sets.flatMap((one) => depths.map((depth) => ({ ...one, ...depth })));

describe('the measures are right', () => {
	// WCAG 2.2, Understanding 1.4.3 (4.4781 for #777777 on white fails 4.5); W3C technique G183.
	test.each([
		['#000000', '#ffffff', 21],
		['#777777', '#ffffff', 4.4781],
		['#767676', '#ffffff', 4.5422],
		['#3366cc', '#000000', 3.9132],
	])('contrast of %s and %s', (one, other, wanted) => {
		expect(contrast(one, other)).toBeCloseTo(wanted, 3);
	});

	// Sharma, Wu, Dalal, "The CIEDE2000 Color-Difference Formula", 2005, table 1, pairs 1, 4, 7, 17, 25;
	// from memory.
	test.each<[Lab, Lab, number]>([
		[[50, 2.6772, -79.7751], [50, 0, -82.7485], 2.0425],
		[[50, -1.3802, -84.2814], [50, 0, -82.7485], 1],
		[[50, 0, 0], [50, -1, 2], 2.3669],
		[[50, 2.5, 0], [73, 25, -18], 27.1492],
		[[60.2574, -34.0099, 36.2677], [60.4626, -34.1751, 39.4387], 1.2644],
	])('difference of %j and %j', (one, other, wanted) => {
		expect(difference(one, other)).toBeCloseTo(wanted, 4);
	});

	test.each(Object.keys(EYES))('white, grey and black stay as they are: %s', (eyes) => {
		for (const grey of [0, 0.2, 1]) {
			const seen = seenBy(EYES[eyes]!, [grey, grey, grey]);
			for (const part of seen) expect(part).toBeCloseTo(grey, 5);
		}
	});

	test('each kind of eyes takes some for alike that the usual ones tell apart', () => {
		const apart = (eyes: string, one: string, other: string) =>
			difference(
				labOf(seenBy(EYES[eyes]!, lightOf(one))),
				labOf(seenBy(EYES[eyes]!, lightOf(other))),
			);
		// Red and green of like lightness, and blue and green: what the three are known to confuse.
		for (const eyes of ['protanopia', 'deuteranopia']) {
			expect(apart(eyes, '#c08060', '#909058')).toBeLessThan(
				apart('usual', '#c08060', '#909058') / 2,
			);
		}
		expect(apart('tritanopia', '#5090b0', '#509898')).toBeLessThan(
			apart('usual', '#5090b0', '#509898') / 1.5,
		);
	});
});

describe.each(cases)('$name in $colors', ({ tones, colorOf }) => {
	test.each(styles)('%s can be read', (style) => {
		const least = style === 'dim' || style === 'title' ? 4.5 : 7;
		expect(contrast(colorOf(tones[style]), FIELD.rgb)).toBeGreaterThanOrEqual(least);
	});

	// A terminal that is all black gives more contrast than the one the colours are made for.
	test.each(['plain', 'dim', 'title', 'unready'] as const)('%s does not shine', (style) => {
		expect(contrast(colorOf(tones[style]), '#000000')).toBeLessThan(12);
	});

	// CIEDE2000 of 1 is what is just seen side by side; 5 is seen in letters apart. Common practice, no
	// source.
	const pairs = styles.flatMap((one, index) =>
		styles.slice(index + 1).map((two) => [one, two] as const),
	);
	test.each(pairs)('%s and %s differ for all eyes', (one, two) => {
		for (const [name, eyes] of Object.entries(EYES)) {
			const lab = (style: SpanStyle) => labOf(seenBy(eyes, lightOf(colorOf(tones[style]))));
			expect([name, difference(lab(one), lab(two)) >= 5]).toEqual([name, true]);
		}
	});

	// Each cell that is not blank and no part of a tall glyph.
	const sizes = [
		{ columns: 80, rows: 24 },
		{ columns: 120, rows: 40 },
		{ columns: 200, rows: 60 },
	];
	test.each(sizes)('at most 24 cells shine in a calm moment at $columns columns', (size) => {
		const shining = drawScreen(calmMoment(), size, { isAscii: false }).flatMap((row) =>
			row
				.filter(({ style }) => contrast(colorOf(tones[style]), '#000000') > 12)
				.flatMap(({ text }) => [...text.replaceAll(/[\s▀▄█]/g, '')]),
		);
		expect(shining.length, shining.join('')).toBeLessThanOrEqual(24);
	});
});

// The palettes of the sixteen colours differ; these two are far apart. XTerm's app-defaults
// (XTerm-col), and the text mode of the VGA, which the Linux console has.
const sixteens = {
	xterm: ['#000000', '#cd0000', '#00cd00', '#cdcd00', '#0000ee', '#cd00cd', '#00cdcd', '#e5e5e5'],
	vga: ['#000000', '#aa0000', '#00aa00', '#aa5500', '#0000aa', '#aa00aa', '#00aaaa', '#aaaaaa'],
};
describe.each(sets)('$name in sixteen colours', ({ tones }) => {
	test.each(Object.entries(sixteens))('can be read with the palette of %s', (_, palette) => {
		for (const style of styles) {
			const { of16, isBold } = tones[style];
			const least = style === 'dim' || style === 'title' ? 4.5 : 7;
			// There bold letters take the brighter colour, which is never less.
			const color = isBold && of16 === 33 ? '#ffff55' : palette[of16 - 30]!;
			expect(contrast(color, '#000000')).toBeGreaterThanOrEqual(least);
		}
	});

	test('says "act now" in bold', () => {
		expect(tones.accent.isBold).toBe(true);
	});
});
