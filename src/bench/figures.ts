// How figures of the bench are rounded for JSON and for reading.

/** To four places, as the JSON of the bench has every measure. */
export function to4(value: number): number {
	return Math.round(value * 10_000) / 10_000;
}

/** With its sign, `+` for what is above zero; a zero has none. */
export function signed(value: number, digits: number): string {
	const text = value.toFixed(digits);
	if (Number(text) === 0) return (0).toFixed(digits);
	return value > 0 ? `+${text}` : text;
}

/** Hertz as a tuner shows them. */
export function inHertz(hertz: number): string {
	return hertz.toFixed(2);
}
