// How colours are seen: their contrast, how they look to those who see fewer of them, and how far
// apart two of them are. Formulas and figures are from outside; tones.test.ts checks them against
// values that were published with them before it uses them.

/** Linear light of red, green and blue, 0 to 1. */
export type Light = readonly [red: number, green: number, blue: number];

/**
 * Light of a colour `#rrggbb`; WCAG 2.2, "relative luminance" (threshold 0.04045, as in IEC 61966-2-1).
 */
export function lightOf(rgb: string): Light {
	const part = (at: number) => {
		const value = Number.parseInt(rgb.slice(at, at + 2), 16) / 255;
		return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
	};
	return [part(1), part(3), part(5)];
}

/** Contrast of two colours, 1 to 21; WCAG 2.2, "contrast ratio". */
export function contrast(one: string, other: string): number {
	const luminance = (rgb: string) => {
		const [red, green, blue] = lightOf(rgb);
		return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
	};
	const [a, b] = [luminance(one), luminance(other)];
	return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
}

/** A colour of xterm's 256 from 16 on: a cube of six levels each, then 24 greys (ctlseqs, 88colres). */
export function fixedColor(index: number): string {
	const hex = (value: number) => value.toString(16).padStart(2, '0');
	if (index >= 232) return `#${hex(8 + 10 * (index - 232)).repeat(3)}`;
	const levels = [0, 95, 135, 175, 215, 255];
	const cube = index - 16;
	return `#${[Math.trunc(cube / 36), Math.trunc(cube / 6) % 6, cube % 6].map((at) => hex(levels[at]!)).join('')}`;
}

/**
 * What is seen of linear light by eyes without one kind of cone: Machado, Oliveira, Fernandes, "A
 * Physiologically-based Model for Simulation of Color Vision Deficiency", 2009, severity 1.0.
 */
export const EYES: Readonly<Record<string, readonly Light[]>> = {
	usual: [
		[1, 0, 0],
		[0, 1, 0],
		[0, 0, 1],
	],
	protanopia: [
		[0.152286, 1.052583, -0.204868],
		[0.114503, 0.786281, 0.099216],
		[-0.003882, -0.048116, 1.051998],
	],
	deuteranopia: [
		[0.367322, 0.860646, -0.227968],
		[0.280085, 0.672501, 0.047413],
		[-0.01182, 0.04294, 0.968881],
	],
	tritanopia: [
		[1.255528, -0.076749, -0.178779],
		[-0.078411, 0.930809, 0.147602],
		[0.004733, 0.691367, 0.3039],
	],
};

/** The light as these eyes see it. */
export function seenBy(eyes: readonly Light[], light: Light): Light {
	const [red = 0, green = 0, blue = 0] = eyes.map((row) =>
		Math.min(1, Math.max(0, row[0] * light[0] + row[1] * light[1] + row[2] * light[2])),
	);
	return [red, green, blue];
}

/** Lightness and the two axes of colour. */
export type Lab = readonly [lightness: number, a: number, b: number];

/** CIE 1976 L*a*b* of linear sRGB light; matrix of IEC 61966-2-1, white D65. */
export function labOf([red, green, blue]: Light): Lab {
	const curve = (value: number) =>
		value > 216 / 24_389 ? Math.cbrt(value) : ((24_389 / 27) * value + 16) / 116;
	const x = curve((0.4124564 * red + 0.3575761 * green + 0.1804375 * blue) / 0.95047);
	const y = curve(0.2126729 * red + 0.7151522 * green + 0.072175 * blue);
	const z = curve((0.0193339 * red + 0.119192 * green + 0.9503041 * blue) / 1.08883);
	return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

const radians = (degrees: number) => (degrees * Math.PI) / 180;
const hueOf = (a: number, b: number) => ((Math.atan2(b, a) * 180) / Math.PI + 360) % 360;

/** Difference of two colours by CIEDE2000 (CIE 142-2001; as in Sharma, Wu, Dalal, 2005). */
export function difference([l1, a1, b1]: Lab, [l2, a2, b2]: Lab): number {
	const chromaFactor = (chroma: number) => Math.sqrt(chroma ** 7 / (chroma ** 7 + 25 ** 7));
	const stretch = 1.5 - 0.5 * chromaFactor((Math.hypot(a1, b1) + Math.hypot(a2, b2)) / 2);
	const [c1, c2] = [Math.hypot(a1 * stretch, b1), Math.hypot(a2 * stretch, b2)];
	const [h1, h2] = [hueOf(a1 * stretch, b1), hueOf(a2 * stretch, b2)];
	const isGrey = c1 * c2 === 0;
	const isFar = Math.abs(h1 - h2) > 180;
	const turn = isGrey ? 0 : h2 - h1 + (isFar ? (h2 > h1 ? -360 : 360) : 0);
	const hue = isGrey ? h1 + h2 : (h1 + h2 + (isFar ? (h1 + h2 < 360 ? 360 : -360) : 0)) / 2;
	const lightness = (l1 + l2) / 2;
	const chroma = (c1 + c2) / 2;
	const t =
		1 -
		0.17 * Math.cos(radians(hue - 30)) +
		0.24 * Math.cos(radians(2 * hue)) +
		0.32 * Math.cos(radians(3 * hue + 6)) -
		0.2 * Math.cos(radians(4 * hue - 63));
	const dL =
		(l2 - l1) / (1 + (0.015 * (lightness - 50) ** 2) / Math.sqrt(20 + (lightness - 50) ** 2));
	const dC = (c2 - c1) / (1 + 0.045 * chroma);
	const dH = (2 * Math.sqrt(c1 * c2) * Math.sin(radians(turn / 2))) / (1 + 0.015 * chroma * t);
	const rotation =
		-2 * chromaFactor(chroma) * Math.sin(radians(60 * Math.exp(-(((hue - 275) / 25) ** 2))));
	return Math.sqrt(dL ** 2 + dC ** 2 + dH ** 2 + rotation * dC * dH);
}
