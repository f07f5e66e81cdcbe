// What strings are made of: the constants, each beside its source, and what follows from a gauge and a
// kind of instrument alone. Plain steel is exact; wound strings and nylon are a model that says how
// far it can be off.

import type { InstrumentKind } from './kind.ts';

/** A string as it is sold. */
export type StringMake = {
	/** Over all, windings included. */
	readonly millimetres: number;
	readonly isWound: boolean;
	/** What the maker or a balance says; the model is not asked then. */
	readonly gramsPerMetre?: number;
};

export type StringBody = {
	readonly gramsPerMetre: number;
	/** How far the mass, and with it the tension, can be off: 0.08 is 8 % either way; 0 where exact. */
	readonly uncertainty: number;
	readonly from: 'plain steel' | 'unit mass given' | 'model of core and wrap' | 'model of nylon';
	/** Diameter of what bears the tension: the whole string, or the core of a wound one. */
	readonly coreMillimetres: number;
	readonly material: 'steel' | 'nylon';
};

/** kg/m³, music wire: a spring-material table in a CAD help page (7.8 g/cm³ in a materials database). */
const STEEL_DENSITY = 7850;
/** kg/m³, strings of nylon: from memory, 1060 to 1150 by make. */
const NYLON_DENSITY = 1100;
const NYLON_UNCERTAINTY = 0.06;

type Winding = {
	/** kg/m³ of the wrap. */
	readonly density: number;
	readonly core: (millimetres: number) => number;
	readonly uncertainty: number;
};

const INCH = 25.4;

/**
 * Cores of guitar sets grow from about 0.013 in under a 24 to 0.019 in under a 56; between them a
 * power of the gauge (from memory, common practice).
 */
const guitarCore = (millimetres: number) => 0.013 * INCH * (millimetres / (0.024 * INCH)) ** 0.448;

// Wraps are of nickel-plated steel, bronze (8,860 kg/m³) or silvered copper (8,900 kg/m³): densities,
// shares of cores and how far all that is off from memory.
const NICKEL: Winding = { density: STEEL_DENSITY, core: guitarCore, uncertainty: 0.08 };
const BRONZE: Winding = { density: 8860, core: guitarCore, uncertainty: 0.08 };
const BASS: Winding = { density: STEEL_DENSITY, core: (outer) => outer * 0.4, uncertainty: 0.1 };
const SILVERED: Winding = { density: 8900, core: (outer) => outer * 0.52, uncertainty: 0.2 };

function windingOf(kind: InstrumentKind): Winding {
	if (kind.startsWith('bass') || kind.startsWith('upright')) return BASS;
	if (kind === 'nylon-6' || kind === 'ukulele-4') return SILVERED;
	return kind.startsWith('acoustic') || kind === 'mandolin-8' ? BRONZE : NICKEL;
}

/** Round wire of diameter w, turn beside turn, weighs density × π² × w × (core + w) / 4 a length. */
function wrapMass(outer: number, core: number, density: number): number {
	const wire = (outer - core) / 2;
	return (density * Math.PI ** 2 * wire * (core + wire)) / 4 / 1000;
}

function roundMass(millimetres: number, density: number): number {
	return (density * Math.PI * millimetres ** 2) / 4 / 1000;
}

/**
 * What a string of this make weighs and what of it bears the tension, on this kind of instrument.
 * Nylon for `nylon-6` and `ukulele-4`, steel for all others.
 *
 * @example
 * stringBody({ millimetres: 0.254, isWound: false }, 'electric-6').gramsPerMetre.toFixed(5) // => '0.39777'
 * stringBody({ millimetres: 1.1684, isWound: true }, 'electric-6').uncertainty // => 0.08
 */
export function stringBody(make: StringMake, kind: InstrumentKind): StringBody {
	const { millimetres, isWound, gramsPerMetre: given } = make;
	const isNylon = kind === 'nylon-6' || kind === 'ukulele-4';
	const winding = windingOf(kind);
	const coreMillimetres = isWound ? winding.core(millimetres) : millimetres;
	const shared = { coreMillimetres, material: isNylon ? 'nylon' : 'steel' } as const;
	if (given !== undefined)
		return { ...shared, gramsPerMetre: given, uncertainty: 0, from: 'unit mass given' };
	const core = roundMass(coreMillimetres, isNylon ? NYLON_DENSITY : STEEL_DENSITY);
	if (!isWound && !isNylon)
		return { ...shared, gramsPerMetre: core, uncertainty: 0, from: 'plain steel' };
	if (!isWound) {
		const uncertainty = NYLON_UNCERTAINTY;
		return { ...shared, gramsPerMetre: core, uncertainty, from: 'model of nylon' };
	}
	return {
		...shared,
		gramsPerMetre: core + wrapMass(millimetres, coreMillimetres, winding.density),
		uncertainty: winding.uncertainty,
		from: 'model of core and wrap',
	};
}

const KSI = 6.894757;

/**
 * Least tensile strength of music wire, thousandths of an inch to ksi: ASTM A228 as reproduced on a wire
 * supplier's page for 10, 11, 13 and 16; the other rows from memory. To be checked against the
 * standard before it is called normative.
 */
const TENSILE: readonly (readonly [number, number])[] = [
	[8, 399],
	[9, 393],
	[10, 387],
	[11, 382],
	[12, 377],
	[13, 373],
	[14, 369],
	[15, 365],
	[16, 362],
	[18, 356],
	[20, 350],
	[22, 345],
	[24, 341],
	[26, 337],
	[28, 333],
	[30, 330],
];

/**
 * Least tensile strength of steel wire in MPa, by the table, straight between its rows; thinner than its
 * first row as the first, thicker than its last by the power law of `nominalStrength` let down to it.
 *
 * @example
 * leastStrength(0.254).toFixed(0) // => '2668'
 */
export function leastStrength(millimetres: number): number {
	const thousandths = (millimetres / INCH) * 1000;
	const above = TENSILE.findIndex(([gauge]) => gauge >= thousandths - 1e-9);
	const [lastGauge, lastKsi] = TENSILE.at(-1) ?? [0, 0];
	if (above < 0) return lastKsi * KSI * (lastGauge / thousandths) ** STRENGTH_POWER;
	const [gauge, ksi] = TENSILE[above] ?? [0, 0];
	const [under, more] = TENSILE[above - 1] ?? [gauge, ksi];
	const share = gauge === under ? 0 : (gauge - thousandths) / (gauge - under);
	return (ksi + (more - ksi) * Math.min(1, share)) * KSI;
}

const STRENGTH_POWER = 0.145;

/**
 * Nominal tensile strength of steel wire in MPa: A / d^m with A = 2211 MPa·mm^m and m = 0.145
 * ("Mechanical Engineering Design", table 10-4; 201 kpsi·in^m read in its solutions manual, 2211
 * from memory). About 1 % above the table's least for thin strings, so never a least.
 *
 * @example
 * nominalStrength(0.254).toFixed(1) // => '2697.0'
 */
export function nominalStrength(millimetres: number): number {
	return 2211 / millimetres ** STRENGTH_POWER;
}

/**
 * Young's modulus of music wire in GPa by diameter: 29.5 million psi to 0.032 in, 29.0 to 0.063 in (a
 * table of spring materials on an engineering reference site), 28.5 above (from memory).
 *
 * @example
 * steelModulus(0.254).toFixed(1) // => '203.4'
 */
export function steelModulus(millimetres: number): number {
	const inches = millimetres / INCH;
	const millionPsi = inches < 0.0325 ? 29.5 : inches < 0.0635 ? 29 : 28.5;
	return millionPsi * KSI;
}

/** Thermal expansion of music wire, 1/K: a materials database, A228, and "The Science of String Instruments", ch. 21. */
export const STEEL_EXPANSION = 12e-6;
