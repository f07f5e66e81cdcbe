// What damp does to wood, as far as a number is honest: the water that wood comes to hold. No cents.

/**
 * Moisture that wood comes to, in per cent of its dry weight, at a temperature (°C) and a relative humidity
 * (per cent): the sorption equation of the Wood Handbook, two-hydrate form, in Fahrenheit;
 * coefficients from memory. Good to 0.9 against tables (abstract in Forest Products Journal).
 *
 * @example
 * equilibriumMoisture(60, 55).toFixed(1) // => '8.4'
 */
export function equilibriumMoisture(celsius: number, humidity: number): number {
	const t = celsius * 1.8 + 32;
	const h = humidity / 100;
	const w = 330 + 0.452 * t + 0.00415 * t ** 2;
	const k = 0.791 + 0.000463 * t - 0.000000844 * t ** 2;
	const k1 = 6.34 + 0.000775 * t - 0.0000935 * t ** 2;
	const k2 = 1.09 + 0.0284 * t - 0.0000904 * t ** 2;
	const kh = k * h;
	const hydrates = k1 * kh + 2 * k1 * k2 * kh ** 2;
	return (1800 / w) * (kh / (1 - kh) + hydrates / (1 + k1 * kh + k1 * k2 * kh ** 2));
}

/** Wanted about the gear, in per cent (several public accounts of technicians). */
const DRIEST = 45;
const DAMPEST = 55;

/**
 * Whether a stage is too damp or too dry for the gear.
 *
 * @example
 * humidityOf(50) // => 'fine'
 * humidityOf(80) // => 'damp'
 */
export function humidityOf(percent: number): 'damp' | 'dry' | 'fine' {
	if (percent > DAMPEST) return 'damp';
	return percent < DRIEST ? 'dry' : 'fine';
}
