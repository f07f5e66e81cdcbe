// Judges who plays what in a show before the doors, line by line and in plain words of the model: whether
// it may be so at all, and what it costs. Shares nothing with the planner.

import type { Instrument, Part, Show } from '../../../src/showfile/show.ts';
import type { Busy, Chore } from './least-late.ts';
import { leastLate } from './least-late.ts';
import type { Held, Line } from './lines.ts';
import { partIn, sameStrings, semitones, whatWouldDo } from './lines.ts';

/** For each line, what each player plays, in the show's order of players; null for nothing. */
export type Plays = readonly (readonly (Held | null)[])[];

export type Judged = {
	readonly plays: Plays;
	readonly missing: number;
	readonly overGap: number;
	readonly handOvers: number;
	readonly retunings: number;
	readonly preference: number;
	readonly chores: readonly Chore[];
	readonly busy: Busy;
	/** Worked out when asked for: it takes long. */
	readonly lateness: () => number;
};

/** Whether one line may be played so after the hands before it; a reason where it may not. */
export function whyNot(show: Show, line: Line, { before, plays }: Hands): string | null {
	const holders = new Map<string, number>();
	for (const [index, held] of plays.entries()) {
		if (held === null) continue;
		if (holders.has(held.instrument)) return `${held.instrument} is in two hands`;
		holders.set(held.instrument, index);
	}
	for (const [index, { id }] of show.players.entries()) {
		const part = partIn(line, id, before[index] ?? null);
		const held = plays[index] ?? null;
		if (part === undefined) {
			if (!sameHeld(held, before[index] ?? null)) return `${id} does not keep what they have`;
			continue;
		}
		if (part.kind === 'none') {
			if (held !== null) return `${id} has something`;
			continue;
		}
		const ways = whatWouldDo(show, id, part);
		if (held !== null) {
			if (!ways.some((one) => sameHeld(one.held, held))) return `${id} has something else`;
			const isForOther = show.players.some(
				(other) => other.id !== id && isNamedFor(show, other.id, line.parts[other.id], held),
			);
			if (part.kind === 'needs' && isForOther) return `${held.instrument} is named for another`;
			continue;
		}
		const isFree = ways.some((one) => {
			const holder = holders.get(one.held.instrument);
			if (holder === undefined) return true;
			const theirs = partIn(line, show.players[holder]!.id, before[holder] ?? null);
			// Who only needs one has to give way to whoever is named for it.
			return part.kind === 'named' && theirs?.kind === 'needs';
		});
		if (isFree) return `${id} has nothing though something is free`;
	}
	return null;
}

export type Hands = {
	/** What is in hands as the line comes, for those who keep it: also what was before an interval. */
	readonly before: readonly (Held | null)[];
	readonly plays: readonly (Held | null)[];
};

function isNamedFor(show: Show, player: string, part: Part | undefined, held: Held): boolean {
	return (
		part?.kind === 'named' &&
		part.instrument === held.instrument &&
		whatWouldDo(show, player, part).length > 0
	);
}

export function sameHeld(one: Held | null, other: Held | null): boolean {
	if (one === null || other === null) return one === other;
	return (
		one.instrument === other.instrument &&
		one.capo === other.capo &&
		sameStrings(one.strings, other.strings)
	);
}

/** What these plays cost; they must be allowed. */
export function judge(show: Show, lines: readonly Line[], plays: Plays): Judged {
	const counts = { missing: 0, overGap: 0, handOvers: 0, retunings: 0, preference: 0 };
	const chores: Chore[] = [];
	const busy: (readonly [number, number])[] = [];
	const hands: (Held | null)[] = show.players.map(() => null);
	const hasHad = show.players.map(() => false);
	const rack = new Map(
		show.instruments.map((one): [string, Rack] => [
			one.id,
			{
				one,
				strings: semitones(one.tuning.notes),
				capo: 0,
				isFresh: true,
				isPlayed: false,
				back: null,
			},
		]),
	);
	for (const [at, line] of lines.entries()) {
		const atOnce = (line.previousEndSeconds ?? line.startSeconds) + 15;
		if (line.isAfterInterval) {
			for (const [index, held] of hands.entries()) {
				if (held !== null) rack.get(held.instrument)!.back = atOnce;
				hands[index] = null;
				hasHad[index] = false;
			}
		}
		const now = plays[at]!;
		const begins = now.map((held, index) => held !== null && !goesOn(hands[index]!, held, line));
		const given = now.filter((_, index) => begins[index]).map((held) => held!.instrument);
		// What leaves the hands it was in is on the rack again.
		for (const [index, held] of hands.entries()) {
			if (held === null || (now[index] !== null && !begins[index])) continue;
			const isAtOnce = given.includes(held.instrument) || now[index] === null;
			rack.get(held.instrument)!.back = isAtOnce ? atOnce : line.startSeconds;
		}
		const seconds = given.map((id) => rack.get(id)!.one.times.handOver);
		const total = seconds.reduce((sum, one) => sum + one, 0);
		const earliest = line.point === 0 ? line.previousEndSeconds : null;
		const wantedSeconds = Math.max(line.startSeconds - total, earliest ?? Number.NEGATIVE_INFINITY);
		if (total > 0) busy.push([wantedSeconds, line.startSeconds]);
		counts.overGap += notFitting(seconds, line.gapSeconds);
		for (const [index, { id }] of show.players.entries()) {
			const part = partIn(line, id, hands[index] ?? null);
			const held = now[index] ?? null;
			if (held === null) {
				if (part?.kind === 'named' || part?.kind === 'needs') counts.missing += 1;
				continue;
			}
			if (part?.kind === 'needs') {
				const way = whatWouldDo(show, id, part).find((one) => sameHeld(one.held, held));
				counts.preference += way!.points;
			}
			const on = rack.get(held.instrument)!;
			if (begins[index]) {
				if (hasHad[index]) counts.handOvers += 1;
				hasHad[index] = true;
				if (!sameStrings(on.strings, held.strings)) counts.retunings += 1;
				const chore = choreFor(show, on, { held, line, wantedSeconds });
				if (chore !== null) chores.push(chore);
				Object.assign(on, { strings: held.strings, isFresh: false, isPlayed: true, back: null });
			}
			on.capo = held.capo;
		}
		for (const index of hands.keys()) hands[index] = now[index] ?? null;
	}
	// A cue's hand-overs may begin before those of the song's start.
	busy.sort((one, other) => one[0] - other[0]);
	let late: number | null = null;
	return {
		plays,
		...counts,
		chores,
		busy,
		lateness: () => {
			late ??= leastLate(chores, busy);
			return late;
		},
	};
}

type Rack = {
	readonly one: Instrument;
	strings: readonly number[];
	capo: number;
	/** Made ready at zero and not played since. */
	isFresh: boolean;
	isPlayed: boolean;
	back: number | null;
};

/** The same instrument in the same tuning; the capo moved only where there is time. */
function goesOn(before: Held | null, held: Held, { point, gapSeconds }: Line): boolean {
	if (before === null || before.instrument !== held.instrument) return false;
	if (!sameStrings(before.strings, held.strings)) return false;
	const hasTime = point === 0 && (gapSeconds === null || gapSeconds >= 10);
	return before.capo === held.capo || hasTime;
}

function notFitting(seconds: readonly number[], gap: number | null): number {
	if (gap === null) return 0;
	let left = gap;
	let count = 0;
	for (const one of [...seconds].sort((a, b) => a - b)) {
		left -= one;
		if (left < 0) count += 1;
	}
	return count;
}

type For = { readonly held: Held; readonly line: Line; readonly wantedSeconds: number };

function choreFor(show: Show, on: Rack, { held, line, wantedSeconds }: For): Chore | null {
	const { times } = on.one;
	const isSame = sameStrings(on.strings, held.strings);
	const isFreshEnough = on.isFresh && line.startSeconds <= show.staleAfterSeconds;
	if (isFreshEnough && isSame && on.capo === held.capo) return null;
	const moves = held.strings.map((semitone, index) => semitone - on.strings[index]!);
	const changed = moves.filter((move) => move !== 0).length;
	const pitches =
		changed === 0
			? times.touchUp
			: changed === 1
				? times.touchUp + 15
				: changed === 2
					? times.touchUp + 30
					: new Set(moves).size === 1
						? 2 * times.touchUp
						: times.touchUp + 75;
	const freshFrom = line.startSeconds - show.staleAfterSeconds;
	return {
		instrument: on.one.id,
		seconds: (on.isPlayed ? times.wipe : 0) + pitches + (on.capo === held.capo ? 0 : times.capo),
		fromSeconds: Math.max(on.back ?? Number.NEGATIVE_INFINITY, freshFrom, -3600),
		wantedSeconds,
	};
}
