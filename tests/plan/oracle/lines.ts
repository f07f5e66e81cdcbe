// A show before the doors as lines, one for each part of a song between two hand-overs, read straight
// off the show: a second reading that shares nothing with the planner's.

import type { Instrument, Part, Show } from '../../../src/showfile/show.ts';

export type Line = {
	readonly song: string;
	/** 0 for a song's start, else the number of the cue. */
	readonly point: number;
	readonly startSeconds: number;
	/** Null where there is room for all. */
	readonly gapSeconds: number | null;
	/** The end of what was before; null for the first. */
	readonly previousEndSeconds: number | null;
	readonly isAfterInterval: boolean;
	/** What the song has asked for so far. */
	readonly parts: Readonly<Record<string, Part>>;
	/** Whom a cue hands something; null at a song's start. */
	readonly handed: readonly string[] | null;
};

/** In order; songs here all have lengths, and cues that hand over all have their `near`. */
export function linesOf(show: Show): readonly Line[] {
	const lines: Line[] = [];
	let endSeconds: number | null = null;
	let intervalSeconds: number | null = null;
	for (const item of show.set) {
		if (item.kind === 'interval') {
			intervalSeconds = (intervalSeconds ?? 0) + item.seconds;
			continue;
		}
		const song = show.songs.find(({ id }) => id === item.song)!;
		const gap = intervalSeconds ?? item.gapSeconds ?? 15;
		const startSeconds: number = endSeconds === null ? 0 : endSeconds + gap;
		let parts = song.parts;
		lines.push({
			song: song.id,
			point: 0,
			startSeconds,
			gapSeconds: endSeconds === null || intervalSeconds !== null ? null : gap,
			previousEndSeconds: endSeconds,
			isAfterInterval: intervalSeconds !== null,
			parts,
			handed: null,
		});
		song.cues.forEach(({ hand, nearSeconds }, index) => {
			parts = { ...parts, ...hand };
			if (Object.keys(hand).length === 0) return;
			lines.push({
				song: song.id,
				point: index + 1,
				startSeconds: startSeconds + nearSeconds!,
				gapSeconds: null,
				previousEndSeconds: startSeconds + nearSeconds!,
				isAfterInterval: false,
				parts,
				handed: Object.keys(hand),
			});
		});
		endSeconds = startSeconds + song.lengthSeconds!;
		intervalSeconds = null;
	}
	return lines;
}

/**
 * What is asked of a player there. In the middle of a song a cue asks nothing of whom it does not name,
 * as long as they have something: nobody would exchange it.
 */
export function partIn(line: Line, player: string, before: Held | null): Part | undefined {
	const isNamed = line.handed === null || line.handed.includes(player);
	return isNamed || before === null ? line.parts[player] : undefined;
}

/** What one player has in hands: instrument, open strings as semitones, capo. */
export type Held = {
	readonly instrument: string;
	readonly strings: readonly number[];
	readonly capo: number;
};

const STEPS: Readonly<Record<string, number>> = { C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 };

/** Semitones from C0 of each note. */
export function semitones(notes: readonly string[]): readonly number[] {
	return notes.map((note) => {
		const [, letter = '', sign = '', octave = ''] = /^([A-G])(#|b)?(-?\d+)$/.exec(note) ?? [];
		return STEPS[letter]! + (sign === '#' ? 1 : sign === 'b' ? -1 : 0) + 12 * Number(octave);
	});
}

export function sameStrings(one: readonly number[], other: readonly number[]): boolean {
	return one.join() === other.join();
}

const known = new WeakMap<Part, Map<string, readonly Wanted[]>>();

/** Everything that would do for a part, with the points against it; nobody else is thought of. */
export function whatWouldDo(show: Show, player: string, part: Part): readonly Wanted[] {
	const ofPart = known.get(part) ?? new Map<string, readonly Wanted[]>();
	known.set(part, ofPart);
	const found = ofPart.get(player) ?? findWhatWouldDo(show, player, part);
	ofPart.set(player, found);
	return found;
}

function findWhatWouldDo(show: Show, player: string, part: Part): readonly Wanted[] {
	if (part.kind === 'none') return [];
	if (part.kind === 'named') {
		const instrument = show.instruments.find(({ id }) => id === part.instrument)!;
		const own = semitones(instrument.tuning.notes);
		const strings = part.tuning === null ? own : semitones(part.tuning.notes);
		if (instrument.bridge === 'floating' && !sameStrings(own, strings)) return [];
		return [{ held: { instrument: instrument.id, strings, capo: part.capo }, points: 0 }];
	}
	const sounds = semitones(part.sounds.notes);
	return show.instruments
		.filter(
			(one) =>
				one.kind === part.instrumentKind &&
				(one.for === null || one.for.includes(player)) &&
				part.features.every((feature) => one.features.includes(feature)),
		)
		.flatMap((instrument) =>
			[0, 1, 2, 3, 4, 5, 6, 7]
				.map((capo) => ({ capo, strings: sounds.map((semitone) => semitone - capo) }))
				.filter(({ strings }) => canBeBroughtTo(instrument, strings))
				.map(({ capo, strings }) => ({
					held: { instrument: instrument.id, strings, capo },
					points:
						(part.prefer !== null && part.prefer !== instrument.id ? 10 : 0) +
						(instrument.spare ? 5 : 0) +
						(capo > 0 ? 1 : 0),
				})),
		);
}

export type Wanted = { readonly held: Held; readonly points: number };

function canBeBroughtTo({ tuning, bridge }: Instrument, strings: readonly number[]): boolean {
	const own = semitones(tuning.notes);
	if (own.length !== strings.length) return false;
	const moves = strings.map((semitone, index) => semitone - own[index]!);
	if (bridge === 'floating') return moves.every((move) => move === 0);
	return (
		moves.every((move) => Math.abs(move) <= 2) && moves.filter((move) => move === 2).length <= 2
	);
}
