// Sound that reaches the desk from two sources at once, of one instrument or by two ways of one rig: how much later one
// comes than the other, and what they cancel by that.

import type { Arrival, Output, RigPart } from '../showfile/rig.ts';
import type { Show } from '../showfile/show.ts';

export type Source = {
	/** What it comes from: an output of an instrument, or the direct box, amplifier or cabinet that ends its way. */
	readonly from: Output | RigPart;
	/** Milliseconds after the sound itself; null where the file does not say where its microphone stands. */
	readonly delayMilliseconds: number | null;
	readonly isInverted: boolean;
};

export type Offset = {
	/** From one to the other, never under 0. */
	readonly milliseconds: number;
	/** Which of the two comes later. */
	readonly later: 0 | 1;
	/** Their polarities are opposite: they take the lows from each other. */
	readonly isOpposed: boolean;
	/** The first frequency above 0 that they cancel; null for none that can be heard, as they come at the same time. */
	readonly cancelledHertz: number | null;
};

export type TwoSources = {
	/** Whose rig has both ways; null for two outputs of an instrument. */
	readonly player: string | null;
	/** The instrument that has both outputs; null for two ways of a rig. */
	readonly instrument: string | null;
	readonly sources: readonly [Source, Source];
	/** Null where the file does not say where a microphone stands. */
	readonly offset: Offset | null;
};

/** Nobody hears what is cancelled above this: the upper end of hearing as it is usually given. */
const HIGHEST_HEARD = 20_000;

/** Where a file says nothing of the stage: common practice, no source. */
const ROOM_CELSIUS = 20;

/**
 * Metres a second that sound goes in dry air: as the root of the absolute temperature, 331.3 at 0 °C (any handbook of
 * acoustics).
 *
 * @example
 * speedOfSound(20).toFixed(1) // => '343.2'
 */
export function speedOfSound(celsius: number): number {
	return 331.3 * Math.sqrt(1 + celsius / 273.15);
}

/**
 * The first frequency above 0 that two equal sounds cancel: half a period apart where their polarity is the same, a
 * whole one where it is opposite. Null for no delay.
 *
 * @example
 * firstCancelled(1, false) // => 500
 * firstCancelled(1, true) // => 1000
 */
export function firstCancelled(milliseconds: number, isOpposed: boolean): number | null {
	return milliseconds === 0 ? null : 1000 / (milliseconds * (isOpposed ? 1 : 2));
}

/**
 * Two equal sounds of opposite polarity are weaker together than one alone below this: |1 - exp(-iωτ)| is 1 at a
 * sixth of a period. Infinite for no delay: they are weaker everywhere.
 *
 * @example
 * lowsLostBelow(1).toFixed(1) // => '166.7'
 */
export function lowsLostBelow(milliseconds: number): number {
	return 1000 / (6 * milliseconds);
}

/**
 * Each two outputs of an instrument, and each two ways of a player's rig, that carry one sound.
 *
 * @example
 * twoSources(CORDS) // => []
 * twoSources(TWO_WAYS)[0].sources.map(({ from }) => from.id) // => ['box', 'head']
 * twoSources(TWO_WAYS)[0].offset.cancelledHertz.toFixed(0) // => '572'
 */
export function twoSources(
	show: Pick<Show, 'rigs' | 'instruments' | 'stage'>,
): readonly TwoSources[] {
	const speed = speedOfSound(show.stage?.temperature ?? ROOM_CELSIUS);
	const ofInstruments = show.instruments.flatMap(({ id: instrument, output = [] }) => {
		const sources = [output].flat().map((one) => sourceOf(one, [one], speed));
		return pairsOf(sources).map((pair) => ({ player: null, instrument, ...pair }));
	});
	const ofRigs = Object.entries(show.rigs ?? {}).flatMap(([player, parts]) =>
		pairsOf(waySources(parts, speed)).map((pair) => ({ player, instrument: null, ...pair })),
	);
	return [...ofInstruments, ...ofRigs];
}

function pairsOf(all: readonly Source[]): readonly Pick<TwoSources, 'sources' | 'offset'>[] {
	return all.flatMap((one, at) =>
		all.slice(at + 1).map((other) => ({
			sources: [one, other] as const,
			offset: offsetOf(one, other),
		})),
	);
}

function offsetOf(one: Source, other: Source): Offset | null {
	if (one.delayMilliseconds === null || other.delayMilliseconds === null) return null;
	const after = other.delayMilliseconds - one.delayMilliseconds;
	const milliseconds = Math.abs(after);
	const isOpposed = one.isInverted !== other.isInverted;
	const hertz = firstCancelled(milliseconds, isOpposed);
	return {
		milliseconds,
		later: after < 0 ? 0 : 1,
		isOpposed,
		cancelledHertz: hertz === null || hertz > HIGHEST_HEARD ? null : hertz,
	};
}

/** One a direct box and one an amplifier, or one each microphone before its cabinets where there are several. */
function waySources(parts: readonly RigPart[], speed: number): readonly Source[] {
	return waysOf(parts).flatMap(({ end, way }) => {
		const heard = way.filter(({ distanceMetres }) => distanceMetres !== undefined);
		if (heard.length < 2) return [sourceOf(end, way, speed)];
		return heard.map((part) =>
			sourceOf(
				part,
				way.filter((one) => one === part || !heard.includes(one)),
				speed,
			),
		);
	});
}

type Way = { readonly end: RigPart; readonly way: RigPart[] };

/**
 * The ways that part at the first direct box or amplifier. What stands before the next one is on its way, cabinets and
 * a line to the desk on the way before them.
 */
function waysOf(parts: readonly RigPart[]): readonly Way[] {
	const ways: Way[] = [];
	let before: RigPart[] = [];
	for (const part of parts) {
		const { kind } = part;
		if (kind === 'amp' || kind === 'direct-box') {
			ways.push({ end: part, way: ways.length === 0 ? [part] : [...before, part] });
			before = [];
		} else if (kind === 'cab') {
			ways.findLast(({ end }) => end.kind === 'amp')?.way.push(part);
		} else if (kind === 'desk') {
			ways.at(-1)?.way.push(part);
		} else {
			before.push(part);
		}
	}
	return ways;
}

/** What a microphone hears: an amplifier, a cabinet, an instrument, which is no part. */
const HEARD: ReadonlySet<string | undefined> = new Set(['amp', 'cab', undefined]);

/** What an instrument or a direct box gives is there at once; what a microphone hears needs its distance, or a delay of its own. */
function sourceOf(
	from: Source['from'],
	way: readonly (Arrival & { readonly kind?: string })[],
	speed: number,
): Source {
	const isElectric =
		'kind' in from
			? from.kind === 'direct-box'
			: from.ohms !== undefined || from.picofarads !== undefined;
	const isPlaced = way.some(
		({ kind, distanceMetres, delayMilliseconds }) =>
			distanceMetres !== undefined || (delayMilliseconds !== undefined && HEARD.has(kind)),
	);
	const delays = way.flatMap(({ distanceMetres, delayMilliseconds = [] }) => [
		...(distanceMetres === undefined ? [] : [(distanceMetres / speed) * 1000]),
		...[delayMilliseconds].flat(),
	]);
	return {
		from,
		delayMilliseconds: isElectric || isPlaced ? delays.reduce((sum, one) => sum + one, 0) : null,
		isInverted: way.filter(({ isInverted }) => isInverted === true).length % 2 === 1,
	};
}
