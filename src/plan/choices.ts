// What was chosen, as numbers, put back into the words of the plan: who plays what and why not.

import { KINDS } from '../tuning/kind.ts';
import type { Ask } from './asks.ts';
import type { Hands } from './clashes.ts';
import type { Demand } from './demand.ts';
import type { Hand } from './hand.ts';
import { goesOn } from './hand.ts';
import { instrumentById } from './instrument-by-id.ts';
import type { Outlook } from './outlook.ts';
import type { Section } from './plan.ts';
import type { OpenWithCapo } from './same-pitches.ts';
import { samePitches } from './same-pitches.ts';
import type { Seat, Seating } from './seats.ts';
import { whyUnplayable } from './why-unplayable.ts';

/** What a player should have: open tuning and capo, and the instrument where it is settled which. */
export type Wanted = OpenWithCapo & { readonly instrument: string | null };

/** One player's part in one section. */
export type Choice = {
	readonly section: Section;
	readonly player: string;
	readonly demand: Demand['kind'];
	/** In hands as the section comes. */
	readonly before: Hand | null;
	/** What is asked for, whether or not it can be had; null for empty hands. */
	readonly wanted: Wanted | null;
	/** What is to be played; null for nothing. */
	readonly play: Hand | null;
	/** In hands from here on: what is to be played, or what a settled player holds. */
	readonly after: Hand | null;
	/** Why nothing can be had; null otherwise. */
	readonly why: string | null;
	/** It stays in hands as it is, its capo perhaps moved. */
	readonly goesOn: boolean;
	/** Their hands are left alone here. */
	readonly isSettled: boolean;
	/** Points against the choice; 0 for what was not chosen. */
	readonly preference: number;
	/** To be checked before it leaves the rack. */
	readonly leave: string | null;
};

/**
 * One choice for each section and player, in playing order, then in the file's order of players.
 *
 * @example
 * choicesOf(outlook, seating, chosen.hands).filter(({ player }) => player === 'ash').map(({ play }) => play.instrument) // => ['A1', 'A4', 'A1']
 */
export function choicesOf(outlook: Outlook, seating: Seating, hands: Hands): readonly Choice[] {
	const held = new Map<string, Hand | null>(outlook.hands);
	const putDown = new Map(outlook.heldBefore);
	return outlook.sections.flatMap((section, place) => {
		if (seating.endsStints[place] === 1) {
			for (const [player, hand] of held) {
				if (hand !== null) putDown.set(player, hand);
				held.set(player, null);
			}
		}
		const taken = takenIn(outlook, seating, { hands, place });
		const choices = seating.seats.map((seat, index) => {
			const at = { outlook, section, place, seat, taken };
			const before = held.get(seat.player) ?? null;
			const kept = before ?? putDown.get(seat.player) ?? null;
			return choiceOf(at, { before, kept, number: hands[index]?.[place] ?? 0 });
		});
		for (const { player, after } of choices) held.set(player, after);
		putDown.clear();
		return choices;
	});
}

type At = {
	readonly outlook: Outlook;
	readonly section: Section;
	readonly place: number;
	readonly seat: Seat;
	/** Whose hands each instrument is in from here on. */
	readonly taken: ReadonlyMap<string, string>;
};

type Holding = {
	readonly before: Hand | null;
	/** What they have or, just after an interval, had. */
	readonly kept: Hand | null;
	/** The hand that was chosen. */
	readonly number: number;
};

type Played = Pick<Choice, 'play' | 'after' | 'why' | 'preference'>;

function takenIn(
	{ show }: Outlook,
	{ seats }: Seating,
	{ hands, place }: { readonly hands: Hands; readonly place: number },
): ReadonlyMap<string, string> {
	return new Map(
		seats.flatMap(({ player, instrumentOf }, seat) => {
			const instrument = show.instruments[instrumentOf[hands[seat]?.[place] ?? 0] ?? -1];
			return instrument === undefined ? [] : [[instrument.id, player] as const];
		}),
	);
}

function choiceOf(at: At, holding: Holding): Choice {
	const { section, place, seat, outlook } = at;
	const asked = seat.asks[place] as Ask;
	const { before } = holding;
	const goesOnHere = asked.isOfEmptyHands && !asked.isSettled && before !== null;
	const ask: Ask = goesOnHere ? { ...asked, demand: { kind: 'keeps' } } : asked;
	const played = ask.isSettled ? settled(at, ask, before) : playedOf(at, ask, holding);
	const { play, after } = played;
	const instrument = play && instrumentById(outlook.show).get(play.instrument);
	return {
		section,
		player: seat.player,
		demand: ask.demand.kind,
		before,
		wanted: wantedOf(ask.demand, play),
		...played,
		goesOn: before !== null && after !== null && goesOn(before, after, section),
		isSettled: ask.isSettled,
		leave: leaveOf(ask.demand, instrument?.leave ?? null),
	};
}

function playedOf(at: At, { demand, options }: Ask, { before, kept, number }: Holding): Played {
	const { seat, place } = at;
	const isEmpty = (seat.instrumentOf[number] ?? -1) < 0;
	if (demand.kind === 'none') return { play: null, after: null, why: null, preference: 0 };
	if (demand.kind === 'keeps') {
		const play = isEmpty ? null : kept;
		return { play, after: play, why: null, preference: 0 };
	}
	const whole = seat.wholeOf[number] ?? number;
	const option = options[seat.optionHands[place]?.indexOf(whole) ?? -1];
	// What has a string down and is still in hands does for a song that names it, not for a need.
	if (option === undefined || (demand.kind === 'needs' && whole !== number)) {
		return {
			play: null,
			after: isEmpty ? null : before,
			why: whyMissing(at, demand),
			preference: 0,
		};
	}
	return { play: option.hand, after: option.hand, why: null, preference: option.preference };
}

/** What a settled player should have is worked out for saying so: their hands do not change. */
function settled(at: At, { demand, options }: Ask, before: Hand | null): Played {
	const rest = { after: before, preference: 0 };
	if (demand.kind === 'none') return { ...rest, play: null, why: null };
	if (demand.kind === 'keeps') return { ...rest, play: before, why: null };
	const isTaken = ({ instrument }: Hand): boolean =>
		(at.taken.get(instrument) ?? at.seat.player) !== at.seat.player;
	const free = options.map(({ hand }) => hand).filter((hand) => !isTaken(hand));
	const isBroken = at.seat.wholeOf[at.seat.start] !== at.seat.start;
	const inHands = free.find(
		(hand) =>
			hand.instrument === before?.instrument &&
			(demand.kind === 'named' || (!isBroken && samePitches(hand.tuning, before.tuning))),
	);
	const play = inHands ?? free[0] ?? null;
	return { ...rest, play, why: play === null ? whyMissing(at, demand) : null };
}

function whyMissing({ outlook, taken }: At, demand: Demand): string | null {
	if (demand.kind === 'named') {
		const { instrument, tuning } = demand;
		const state = outlook.instruments[instrument.id];
		if (state === undefined) return `${instrument.id} is not in this show`;
		const why = whyUnplayable({ instrument, state, tuning });
		const other = taken.get(instrument.id);
		const player = outlook.show.players.find(({ id }) => id === other);
		return why ?? `${player?.name ?? 'Somebody else'} has ${instrument.id}`;
	}
	if (demand.kind !== 'needs') return null;
	const { instrumentKind, sounds } = demand.part;
	return `no ${KINDS[instrumentKind].words} for ${sounds.name} is free`;
}

function wantedOf(demand: Demand, play: Hand | null): Wanted | null {
	if (demand.kind === 'named') {
		return { instrument: demand.instrument.id, tuning: demand.tuning, capo: demand.capo };
	}
	if (demand.kind !== 'needs' || play !== null) return play;
	return { instrument: null, tuning: demand.part.sounds, capo: 0 };
}

function leaveOf(demand: Demand, own: string | null): string | null {
	if (demand.kind === 'named') return demand.leave;
	return demand.kind === 'needs' ? (demand.part.leave ?? own) : own;
}
