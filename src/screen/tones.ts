// The tones of each set of colours, the only place where any stands. What must be read has a contrast of 7:1
// or more, the rest 4.5:1, and no two styles are told apart by hue alone; tests/screen/tones.test.ts
// measures both, so that a colour is changed here and nowhere else.

import type { ColourSet } from '../base/colours.ts';
import type { SpanStyle } from './row.ts';

/** A style's letters, for terminals of all colours, of 256 and of sixteen. */
export type Tone = {
	/** `#rrggbb`. */
	readonly rgb: string;
	/** Number in the fixed part, 16 to 255, of the 256 colours. */
	readonly of256: number;
	/** SGR parameter. What the user's terminal makes of it is not known. */
	readonly of16: number;
	readonly isBold: boolean;
};

export type Tones = Readonly<Record<SpanStyle, Tone>>;

/** The field under all sets of colours but `none`; it is painted, since a terminal's own may be white. */
export const FIELD = { rgb: '#000000', of256: 16, of16: 40 } as const;

const tone = (rgb: string, of256: number, of16: number): Tone => ({
	rgb,
	of256,
	of16,
	isBold: false,
});
const bold = (rgb: string, of256: number, of16: number): Tone => ({
	rgb,
	of256,
	of16,
	isBold: true,
});

/** The tones of each set of colours; `none` is words only. */
export const TONES: Readonly<Record<ColourSet, Tones | null>> = {
	dark: {
		plain: tone('#b4b4ae', 249, 37),
		dim: tone('#808080', 244, 36),
		title: tone('#7f97b0', 67, 36),
		bright: bold('#e8e8e4', 254, 37),
		unready: tone('#e0aa80', 180, 37),
		accent: bold('#ffd23e', 220, 33),
	},
	// Of the sixteen the yellow is nearest, but a Linux console shows it as brown, #aa5500, of 4.0:1 on
	// black: too little to be read. So there this set is grey with a yellow accent, which bold brightens.
	amber: {
		plain: tone('#cc955a', 208, 37),
		dim: tone('#997843', 137, 37),
		title: tone('#a69078', 102, 37),
		bright: bold('#f2d6a4', 222, 37),
		unready: tone('#f5a684', 216, 37),
		accent: bold('#fff4dc', 230, 33),
	},
	grey: {
		plain: tone('#a8a8a8', 248, 37),
		dim: tone('#7e7e7e', 244, 37),
		title: tone('#929292', 246, 37),
		bright: bold('#dcdcdc', 253, 37),
		unready: tone('#c0c0c0', 250, 37),
		accent: bold('#ffffff', 231, 37),
	},
	none: null,
};
