// Who plays what from here to the end of the set: one section after the other, each with the hands and
// tunings that the one before leaves.

import type { InstrumentState } from '../../machines/instrument.ts';
import type { Standing as CandidateStanding } from './candidates.ts';
import { preferenceCost } from './candidates.ts';
import { chooseSection } from './choose-section.ts';
import type { Demand } from './demand.ts';
import { demandAt } from './demand.ts';
import type { Hand } from './hand.ts';
import { goesOn } from './hand.ts';
import { instrumentById } from './instrument-by-id.ts';
import type { Outlook } from './outlook.ts';
import type { Section } from './plan.ts';
import type { OpenWithCapo } from './same-pitches.ts';

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
 * chooseAll(outlook).filter(({ player }) => player === 'ash').map(({ play }) => play.instrument) // => ['A1', 'A4', 'A1']
 */
export function chooseAll(outlook: Outlook): readonly Choice[] {
	const standing: Standing = {
		hands: new Map(outlook.hands),
		heldBefore: new Map(outlook.heldBefore),
		left: new Map(),
	};
	return outlook.sections.flatMap((section, place) => {
		// Hands are as they are when the interval is under way; one that is still ahead empties them.
		if (section.isAfterInterval && place > 0) emptyHands(standing);
		const choices = choicesIn(outlook, standing, place);
		for (const choice of choices) follow(standing, choice);
		standing.heldBefore.clear();
		return choices;
	});
}

/** What the section before leaves. */
type Standing = {
	readonly hands: Map<string, Hand | null>;
	readonly heldBefore: Map<string, Hand>;
	readonly left: Map<string, Left>;
};

function emptyHands({ hands, heldBefore }: Standing): void {
	for (const [player, hand] of hands) {
		if (hand !== null) heldBefore.set(player, hand);
		hands.set(player, null);
	}
}

function follow({ hands, left }: Standing, { player, after, goesOn: isSame }: Choice): void {
	hands.set(player, after);
	if (after === null) return;
	const isWhole = !isSame || left.get(after.instrument)?.isWhole === true;
	left.set(after.instrument, { hand: after, isWhole });
}

function choicesIn(outlook: Outlook, standing: Standing, place: number): readonly Choice[] {
	const { show, sections } = outlook;
	const section = sections[place];
	const song = show.songs.find(({ id }) => id === section?.song);
	if (section === undefined || song === undefined) return [];
	const players = show.players.map(({ id }) => id);
	const demands = new Map(
		players.map((player) => [player, demandAt(show, { song, point: section.point, player })]),
	);
	const settled = new Set(
		players.filter((player) => (outlook.settledThrough.get(player) ?? -1) >= place),
	);
	const chosen = chooseSection({
		show,
		demands,
		before: standing.hands,
		heldBefore: standing.heldBefore,
		isOn: section.hasBegun,
		settled,
		standings: standingsOf(outlook, standing.left),
	});
	return players.map((player): Choice => {
		const demand = demands.get(player) ?? { kind: 'keeps' };
		const { play, why } = chosen.get(player) ?? { play: null, why: null };
		const before = standing.hands.get(player) ?? null;
		const isSettled = settled.has(player);
		const goesOnAsIs = isSettled || (section.hasBegun && why !== null);
		const isGivenAway = [...chosen].some(
			([other, { play: theirs }]) =>
				other !== player && !settled.has(other) && theirs?.instrument === before?.instrument,
		);
		const after = goesOnAsIs ? (isGivenAway ? null : before) : play;
		const instrument = play && instrumentById(show).get(play.instrument);
		return {
			section,
			player,
			demand: demand.kind,
			before,
			wanted: wantedOf(demand, play),
			play,
			after,
			why,
			goesOn: before !== null && after !== null && goesOn(before, after, section),
			isSettled,
			preference:
				demand.kind === 'needs' && play && instrument
					? preferenceCost(instrument, play.capo, demand.part)
					: 0,
			leave: leaveOf(demand, instrument?.leave ?? null),
		};
	});
}

function standingsOf(
	outlook: Outlook,
	left: ReadonlyMap<string, Left>,
): ReadonlyMap<string, Omit<CandidateStanding, 'isComingBack'>> {
	const standings = new Map<string, Omit<CandidateStanding, 'isComingBack'>>();
	for (const instrument of outlook.show.instruments) {
		const state = standingState(outlook, instrument.id, left);
		if (state !== null) standings.set(instrument.id, { instrument, state, now: state.context });
	}
	return standings;
}

/** What whoever has an instrument leaves it in; whole once it was handed anew, for it was restrung then. */
type Left = { readonly hand: Hand; readonly isWhole: boolean };

function standingState(
	{ instruments }: Outlook,
	id: string,
	left: ReadonlyMap<string, Left>,
): InstrumentState | null {
	const state = instruments[id];
	const by = left.get(id);
	if (state === undefined || by === undefined) return state ?? null;
	const { tuning, capo } = by.hand;
	const stringsDown = by.isWhole ? [] : state.context.stringsDown;
	return { value: state.value, context: { ...state.context, tuning, capo, stringsDown } };
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
