// What was chosen, as numbers, put back into what the plan says: who plays what and why not.

import type { Instrument } from '../../showfile/show.ts';
import type { Demand } from '../demand/demand.ts';
import type { Hand } from '../demand/hand.ts';
import { goesOn } from '../demand/hand.ts';
import { instrumentById } from '../demand/instrument-by-id.ts';
import type { Outlook } from '../demand/outlook.ts';
import { isStrung } from '../demand/outlook.ts';
import { whyUnplayable } from '../demand/why-unplayable.ts';
import type { Section, Unplayable } from '../plan.ts';
import type { Choice, Wanted } from '../schedule/choice.ts';
import type { Hands } from './count-hands.ts';
import type { Seat, Seating, Slot } from './seats.ts';

/**
 * One choice for each section and player, in playing order, then in the file's order of players.
 *
 * @example
 * choicesOf(seating, hands).filter(({ player }) => player === 'ash').map(({ play }) => play.instrument) // => ['A1', 'A4', 'A1']
 */
export function choicesOf(seating: Seating, hands: Hands): readonly Choice[] {
	const { outlook, seats } = seating;
	const held = seats.map(({ hands: all, start }) => all[start] ?? null);
	return outlook.sections.flatMap((section, place) => {
		if (seating.endsStints[place] === 1) held.fill(null);
		const taken = new Map(
			seats.flatMap(({ player, hands: all }, seat) => {
				const hand = all[hands[seat]?.[place] ?? 0] ?? null;
				return hand === null ? [] : [[hand.instrument, player] as const];
			}),
		);
		return seats.map((seat, index) => {
			const before = held[index] ?? null;
			const choice = choiceOf(
				{ outlook, section, place, seat, taken },
				{ before, number: hands[index]?.[place] ?? 0 },
			);
			held[index] = choice.after;
			return choice;
		});
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

type Holding = { readonly before: Hand | null; readonly number: number };

function choiceOf(at: At, holding: Holding): Choice {
	const { section, place, seat, outlook } = at;
	const slot = seat.slots[place] as Slot;
	const { before } = holding;
	const played = slot.isSettled ? settled(at, slot, before) : playedOf(at, slot, holding);
	const { play, after } = played;
	const instrument = play && instrumentById(outlook.show).get(play.instrument);
	return {
		section,
		player: seat.player,
		demand: slot.demand,
		isNamed: slot.isNamed,
		before,
		wanted: wantedOf(slot.demand, play),
		...played,
		goesOn: before !== null && after !== null && isGoingOn(at, before, after),
		isSettled: slot.isSettled,
		leave: leaveOf(slot.demand, instrument ?? null),
		pack: packOf(slot.demand, instrument ?? null),
	};
}

/** What has a string down goes on as little as what is handed over anew, unless it simply stays. */
function isGoingOn({ section, seat }: At, before: Hand, after: Hand): boolean {
	if (before === after) return true;
	const isBroken = seat.isStartBroken && before === seat.hands[seat.start];
	return !isBroken && goesOn(before, after, section);
}

type Played = Pick<Choice, 'play' | 'after' | 'for' | 'isChosen' | 'isMissing' | 'why'>;

const UNASKED = { for: null, isChosen: false, isMissing: false, why: null } as const;

function playedOf(at: At, slot: Slot, { before, number }: Holding): Played {
	const { seat, place } = at;
	const { demand, primary, others } = slot;
	const hand = seat.hands[number] ?? null;
	if (demand.kind === 'none') return { ...UNASKED, play: null, after: null };
	if (demand.kind === 'keeps') return { ...UNASKED, play: hand, after: hand };
	if (number === primary) return { ...UNASKED, play: hand, after: hand };
	const isAsItIs = hand !== null && seat.soundsSo(place, number);
	const isAmong = others.includes(number);
	if (hand === null || !(isAmong || isAsItIs || slot.goesOnWithin)) {
		return {
			...UNASKED,
			play: null,
			after: hand === null ? null : before,
			isChosen: demand.kind === 'needs',
			isMissing: true,
			why: whyNot(at, demand),
		};
	}
	const isOther = demand.kind === 'named' && demand.instrument.id !== hand.instrument;
	const isStayed = isAsItIs && !slot.isNamed;
	const isJustKept = isStayed && before !== null && isGoingOn(at, before, hand);
	return {
		...UNASKED,
		play: hand,
		after: hand,
		for: isOther && !isJustKept ? demand.instrument.id : null,
		isChosen: !isStayed && isAmong,
		why: isOther && slot.isNamed ? whyNot(at, demand) : null,
	};
}

/** What a settled player should have is worked out for saying so: their hands do not change. */
function settled(
	{ seat, place }: At,
	{ demand, options, isNamed }: Slot,
	before: Hand | null,
): Played {
	const rest = { ...UNASKED, after: before };
	if (demand.kind === 'none') return { ...rest, play: null };
	if (demand.kind === 'keeps') return { ...rest, play: before };
	const number = before === null ? -1 : seat.hands.indexOf(before);
	const isRight = number >= 0 && seat.soundsSo(place, number);
	if (demand.kind === 'needs') {
		return { ...rest, play: isRight ? before : (options[0]?.hand ?? null) };
	}
	const { instrument, tuning, capo } = demand;
	if (!isRight) return { ...rest, play: { instrument: instrument.id, tuning, capo } };
	return {
		...rest,
		play: before,
		for: isNamed && before?.instrument !== instrument.id ? instrument.id : null,
	};
}

function whyNot({ outlook, taken, place, seat }: At, demand: Demand): Unplayable | null {
	if (demand.kind === 'named') {
		const { instrument, tuning } = demand;
		const state = outlook.instruments[instrument.id];
		const { id } = instrument;
		if (state === undefined) return { code: 'not-in-show', instrument: id };
		const why = whyUnplayable({ instrument, state, tuning });
		if (why !== null) return why;
		if (!isStrung(outlook, id, place)) return { code: 'string-down', instrument: id };
		const player = taken.get(id);
		return player === undefined || player === seat.player
			? null
			: { code: 'in-hands', instrument: id, player };
	}
	if (demand.kind !== 'needs') return null;
	const { instrumentKind, sounds } = demand.part;
	return { code: 'none-free', kind: instrumentKind, sounds: sounds.name };
}

function wantedOf(demand: Demand, play: Hand | null): Wanted | null {
	if (demand.kind === 'named') {
		return { instrument: demand.instrument.id, tuning: demand.tuning, capo: demand.capo };
	}
	if (demand.kind !== 'needs' || play !== null) return play;
	return { instrument: null, tuning: demand.part.sounds, capo: 0 };
}

/** What stands in is checked as it says itself, where the song's words are for the one named. */
function leaveOf(demand: Demand, played: Instrument | null): string | null {
	const own = played?.leave ?? null;
	if (demand.kind === 'needs') return demand.part.leave ?? own;
	if (demand.kind !== 'named') return own;
	return played === null || played.id === demand.instrument.id
		? demand.leave
		: (own ?? (demand.leave === demand.instrument.leave ? null : demand.leave));
}

/** The song's word counts for the one that it names; what stands in comes with its own. */
function packOf(demand: Demand, played: Instrument | null): string | null {
	const own = played?.pack ?? null;
	if (demand.kind === 'needs') return demand.part.pack ?? own;
	if (demand.kind !== 'named') return own;
	return played?.id === demand.instrument.id ? (demand.pack ?? own) : (own ?? demand.pack);
}
