// The choices as the plan shows them: one slot for each player with something to play.

import type { Choice } from './choices.ts';
import type { CapoMove, Slot } from './plan.ts';

/**
 * The slots in playing order; those with nothing playable among them, empty hands left out.
 *
 * @example
 * slotsOf(choices).map(({ player, instrument }) => [player, instrument]).length // => 5
 */
export function slotsOf(choices: readonly Choice[]): readonly Slot[] {
	return choices.flatMap((choice): readonly Slot[] => {
		const { section, player, demand, wanted, play, why } = choice;
		if (wanted === null) return [];
		return [
			{
				section,
				player,
				instrument: play?.instrument ?? null,
				named: demand === 'named' ? wanted.instrument : null,
				tuning: play?.tuning ?? wanted.tuning,
				capo: play?.capo ?? wanted.capo,
				isHandOver: choice.after !== null && !choice.goesOn && !choice.isSettled,
				isKept: demand === 'keeps',
				why,
				leave: choice.leave,
			},
		];
	});
}

/**
 * The capos that players move themselves as a section begins, because what they have goes on.
 *
 * @example
 * capoMovesOf(choices) // => []
 */
export function capoMovesOf(choices: readonly Choice[]): readonly CapoMove[] {
	return choices.flatMap(({ section, player, before, after, goesOn }): readonly CapoMove[] => {
		if (!goesOn || before === null || after === null || before.capo === after.capo) return [];
		return [{ section, player, ...after }];
	});
}
