// What a song, from one of its points on, asks of a player.

import { cuePoints } from '../../machines/song.ts';
import type { Instrument, Part, Show, Song } from '../showfile/show.ts';
import type { Tuning } from '../tuning/tuning.ts';
import type { Section } from './plan.ts';

export type Demand =
	/** Exactly this. */
	| {
			readonly kind: 'named';
			readonly instrument: Instrument;
			readonly tuning: Tuning;
			readonly capo: number;
			readonly leave: string | null;
	  }
	/** Anything like this. */
	| { readonly kind: 'needs'; readonly part: NeedsPart }
	/** What they have stays in their hands. */
	| { readonly kind: 'keeps' }
	/** Hands empty. */
	| { readonly kind: 'none' };

export type NeedsPart = Extract<Part, { kind: 'needs' }>;

/** Which player, in which song, from which of its cue points on (0 is the start). */
export type DemandAt = { readonly song: Song; readonly point: number; readonly player: string };

/**
 * Whether the section begins in the middle of a song, at a cue that hands this player nothing: what they
 * have by then stays in their hands, whatever the song asks for.
 *
 * @example
 * goesOnWithin(songs.bridge, { point: 1, hasBegun: false }, 'ash') // => false
 * goesOnWithin(songs.bridge, { point: 1, hasBegun: false }, 'bo') // => true
 */
export function goesOnWithin(
	song: Song,
	{ point, hasBegun }: Pick<Section, 'point' | 'hasBegun'>,
	player: string,
): boolean {
	const hand = cuePoints(song)[point]?.hand ?? {};
	return point > 0 && !hasBegun && !Object.hasOwn(hand, player);
}

/**
 * What the player needs there. A part without a tuning asks for the one that the file gives the
 * instrument.
 *
 * @example
 * demandAt(show, { song: songs.lantern, point: 0, player: 'ash' }).tuning.name // => 'drop D'
 * demandAt(show, { song: songs.lantern, point: 0, player: 'cleo' }) // => { kind: 'keeps' }
 */
export function demandAt(show: Show, { song, point, player }: DemandAt): Demand {
	const parts = cuePoints(song)[point]?.parts ?? song.parts;
	const part = Object.hasOwn(parts, player) ? parts[player] : undefined;
	if (part === undefined) return { kind: 'keeps' };
	if (part.kind === 'none') return { kind: 'none' };
	if (part.kind === 'needs') return { kind: 'needs', part };
	const instrument = show.instruments.find(({ id }) => id === part.instrument);
	if (instrument === undefined) return { kind: 'keeps' };
	return {
		kind: 'named',
		instrument,
		tuning: part.tuning ?? instrument.tuning,
		capo: part.capo,
		leave: part.leave ?? instrument.leave,
	};
}
