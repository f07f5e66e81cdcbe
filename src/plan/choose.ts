// Who plays what from here to the end of the set: one section after the other, each with the hands and
// tunings that the one before leaves.

import type { InstrumentState } from '../../machines/instrument.ts';
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
	/** All that was in hands came back before this section. */
	readonly isAfterInterval: boolean;
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
	const { show, sections } = outlook;
	const instruments = instrumentById(show);
	const songs = new Map(show.songs.map((song) => [song.id, song]));
	const hands = new Map(outlook.hands);
	const heldBefore = new Map(outlook.heldBefore);
	const left = new Map<string, Left>();
	const choices: Choice[] = [];

	sections.forEach((section, place) => {
		const song = songs.get(section.song);
		if (song === undefined) return;
		// Hands are as they are when the interval is under way; one that is still ahead empties them.
		if (section.isAfterInterval && place > 0) {
			for (const [player, hand] of hands) if (hand !== null) heldBefore.set(player, hand);
			for (const { id } of show.players) hands.set(id, null);
		}
		const demands = new Map(
			show.players.map(({ id }) => [
				id,
				demandAt(show, { song, point: section.point, player: id }),
			]),
		);
		const settled = new Set(
			show.players
				.map(({ id }) => id)
				.filter((id) => (outlook.settledThrough.get(id) ?? -1) >= place),
		);
		const chosen = chooseSection({
			show,
			demands,
			before: hands,
			heldBefore,
			settled,
			standings: new Map(
				show.instruments.flatMap((instrument) => {
					const state = standingState(outlook, instrument.id, left);
					return state === null
						? []
						: [[instrument.id, { instrument, state, now: state.context }] as const];
				}),
			),
		});
		for (const { id } of show.players) {
			const demand = demands.get(id) ?? { kind: 'keeps' };
			const { play, why } = chosen.get(id) ?? { play: null, why: null };
			const before = hands.get(id) ?? null;
			const isSettled = settled.has(id);
			// Where nothing can be had in a song that is on, they go on with what is in their hands.
			const staysAsIs = isSettled || (section.hasBegun && why !== null);
			const after = staysAsIs ? before : play;
			const instrument = play && instruments.get(play.instrument);
			const choice: Choice = {
				section,
				player: id,
				demand: demand.kind,
				before,
				wanted: wantedOf(demand, play),
				play,
				after,
				why,
				goesOn: before !== null && after !== null && goesOn(before, after, section),
				isSettled,
				isAfterInterval: section.isAfterInterval,
				preference:
					demand.kind === 'needs' && play && instrument
						? preferenceCost(instrument, play.capo, demand.part)
						: 0,
				leave: leaveOf(demand, instrument?.leave ?? null),
			};
			choices.push(choice);
			hands.set(id, after);
			if (after !== null) {
				const isWhole = !choice.goesOn || left.get(after.instrument)?.isWhole === true;
				left.set(after.instrument, { hand: after, isWhole });
			}
		}
		heldBefore.clear();
	});
	return choices;
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
