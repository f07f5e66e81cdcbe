// What the ear will say of strings in tune, as an instrument's page has it: open strings and the shapes
// that the next song leaves exposed.

import type { Song } from '../showfile/show.ts';
import { type ChordShape, type HeardPair, shapeWords } from '../tuning/chord-shape.ts';
import { fromPureWords, isPure } from '../tuning/interval.ts';

/** A chord shape on the strings that it is heard on. */
type HeardShape = {
	readonly song: Song;
	readonly capo: number;
	readonly shape: ChordShape;
	/** What fingers call it; null where it has no name. */
	readonly name: string | null;
	readonly pairs: readonly HeardPair[];
};

/** Every neighbouring pair of open strings as they are tuned, under a heading. */
export function openStringsBlock(pairs: readonly HeardPair[]): readonly string[] {
	return pairsBlock('open', pairs);
}

/** Every neighbouring pair of a shape's strings, under its name. */
export function shapeBlock(shape: HeardShape): readonly string[] {
	return pairsBlock(shapeName(shape), shape.pairs);
}

/** Courses of two have many pure pairs, which need no line each. */
function pairsBlock(what: string, pairs: readonly HeardPair[]): readonly string[] {
	const others = pairs.filter((pair) => !isPure(pair));
	const last = others.length === pairs.length ? [] : ['all others pure'];
	return [heading(what), ...others.map(pairCells), ...last];
}

/** Which shape is heard exposed in which song, and which pair of its strings is furthest from pure. */
export function exposedLine(shape: HeardShape, labelOf: (string: number) => string): string {
	const { song, capo, pairs } = shape;
	const under = capo === 0 ? '' : ` at capo ${capo}`;
	const worst = pairs.reduce<HeardPair | null>(
		(one, pair) =>
			one === null || Math.abs(pair.centsFromPure) > Math.abs(one.centsFromPure) ? pair : one,
		null,
	);
	const heard =
		worst === null
			? ''
			: `, worst pair ${worst.strings.map(labelOf).join(' and ')}: ${fromPureWords(worst)}, ${worst.beatsHz.toFixed(1)} beats/s`;
	return `exposed in ${song.title}: ${shapeName(shape)}${under}${heard}`;
}

function shapeName({ shape, name }: HeardShape): string {
	return name === null ? shapeWords(shape) : `${shapeWords(shape)} (${name})`;
}

const PAIR_COLUMNS = 10;
const PURE_COLUMNS = 13;
const BEATS_COLUMNS = 8;

function heading(what: string): string {
	const first = what.padEnd(PAIR_COLUMNS);
	const room = Math.max(0, PAIR_COLUMNS + PURE_COLUMNS - first.length);
	return `${first}${'from pure'.padStart(room)}${'beats/s'.padStart(BEATS_COLUMNS)}`;
}

function pairCells(pair: HeardPair): string {
	const { strings, interval, beatsHz } = pair;
	const first = `${strings.join('-')} ${interval}`.padEnd(PAIR_COLUMNS);
	return `${first}${fromPureWords(pair).padStart(PURE_COLUMNS)}${beatsHz.toFixed(2).padStart(BEATS_COLUMNS)}`;
}
