// The moments of a drill drawn by a seed: the same seed, show and keys give the same ones.

import { songOnNow } from '../session/find.ts';
import type { DrillKind } from '../words/drill.ts';
import { DRILL_KINDS } from '../words/drill.ts';
import { chance } from './chance.ts';
import { type DrillMoment, LEAD_SPEED, LIMIT_SECONDS } from './moment.ts';
import type { KeyOf } from './right-keys.ts';
import { type SongBegun, songsOfShow } from './show-songs.ts';
import type { Staged } from './stage.ts';
import { STAGES } from './stage-moments.ts';
import { doWork, endSong, openTrial, placeOf, type TrialOptions } from './trial-night.ts';

export type Draw = {
	readonly seed: number;
	readonly count: number;
	readonly keyOf: KeyOf;
	/** Only of these kinds; all unless said. */
	readonly kinds?: readonly DrillKind[];
};

/** The hands have settled. */
const SETTLED_SECONDS = 15;

/** One looks on for so long, by the hands' clock: no shorter than it takes to read the screen, and never the same. */
const LOOKS_ON_SECONDS = { least: 4, spread: 3 } as const;

/**
 * So many moments in the order of the show, each kind once before one comes again; fewer kinds where the show has
 * nothing for one, none where it has nothing at all.
 *
 * @example
 * drawMoments({ show, handMs }, { seed: 1, count: 8, keyOf }).length // => 8
 */
export function drawMoments(options: TrialOptions, draw: Draw): readonly DrillMoment[] {
	const by = chance(draw.seed);
	const songs = songsOfShow(options);
	let kinds: readonly DrillKind[] = draw.kinds ?? (Object.keys(DRILL_KINDS) as DrillKind[]);
	let round: readonly DrillKind[] = [];
	const moments: DrillMoment[] = [];
	while (moments.length < draw.count && kinds.length > 0) {
		if (round.length === 0) round = by.shuffled(kinds);
		const [kind, ...rest] = round;
		round = rest;
		if (kind === undefined) break;
		const taken = moments.filter((one) => one.kind === kind).map(({ song }) => song);
		const order = by.shuffled(songs);
		// Another song each time, as long as there are any.
		const inOrder = [
			...order.filter(({ song }) => !taken.includes(song)),
			...order.filter(({ song }) => taken.includes(song)),
		];
		let found: DrillMoment | null = null;
		for (const song of inOrder) {
			found = staged(options, { ...draw, by }, { kind, song });
			if (found !== null) break;
		}
		if (found === null) kinds = kinds.filter((one) => one !== kind);
		else moments.push(found);
	}
	return moments.toSorted((one, other) => one.strike.atMs - other.strike.atMs);
}

/** The moment of this kind in this song; null where it has none. */
function staged(
	options: TrialOptions,
	{ by, keyOf }: Pick<Staged, 'by' | 'keyOf'>,
	{ kind, song }: { readonly kind: DrillKind; readonly song: SongBegun },
): DrillMoment | null {
	const { isBetweenSongs, before, happens } = STAGES[kind];
	const looksOn = LOOKS_ON_SECONDS.least + by.below(LOOKS_ON_SECONDS.spread * 10) / 10;
	const leadSeconds = looksOn * LEAD_SPEED;
	const room = song.seconds - leadSeconds - (isBetweenSongs ? 0 : LIMIT_SECONDS);
	if (room < SETTLED_SECONDS) return null;
	const trial = openTrial(options, song.place);
	const { night, clock } = trial;
	if (isBetweenSongs) {
		clock.leap((room * 1000) / 2);
		doWork(trial);
		clock.leap((room * 1000) / 2);
	} else {
		const spare = Math.floor(room - SETTLED_SECONDS);
		// In the first half, so that there is something to decide about the rest of the song.
		clock.leap((SETTLED_SECONDS + by.below(Math.floor(spare / 2) + 1)) * 1000);
	}
	const parts: Staged = { trial, by, keyOf };
	if (before && !before(parts)) return null;
	const lead = placeOf(trial);
	clock.leap(leadSeconds * 1000);
	if (isBetweenSongs) {
		endSong(trial);
		// Where a segue went straight on there is nothing between.
		if (songOnNow(night.session()) !== null) return null;
	}
	const happening = happens(parts);
	if (happening === null || happening.isAnswered(night.session())) return null;
	return { kind, song: song.song, lead, strike: placeOf(trial), ...happening };
}
