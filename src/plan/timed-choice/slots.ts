// The choices as the plan shows them: one slot for each player with something to play, the capos that players
// move themselves, and who stays on what for the next song.

import type { InstrumentKind } from '../../tuning/kind.ts';
import type { Demand } from '../demand/demand.ts';
import { firstSong } from '../demand/first-song.ts';
import { samePitches } from '../demand/same-pitches.ts';
import type { CapoMove, Section, Slot, Stay } from '../plan.ts';
import type { Choice } from '../schedule/choice.ts';

/**
 * The slots in playing order; those with nothing playable among them, empty hands left out.
 *
 * @example
 * slotsOf(choices).map(({ player, instrument }) => [player, instrument]).length // => 5
 */
export function slotsOf(choices: readonly Choice[]): readonly Slot[] {
	return choices.flatMap((choice): readonly Slot[] => {
		const { section, player, demand, wanted, play, why, isMissing, isChosen } = choice;
		if (wanted === null) return [];
		return [
			{
				section,
				player,
				instrument: play?.instrument ?? null,
				named: demand.kind === 'named' && choice.isNamed ? wanted.instrument : null,
				asked: demand.kind === 'named' ? wanted.instrument : null,
				kind: kindOf(demand),
				tuning: play?.tuning ?? wanted.tuning,
				capo: play?.capo ?? wanted.capo,
				isHandOver: choice.after !== null && !choice.goesOn && !choice.isSettled,
				isKept: demand.kind === 'keeps' || (!choice.isNamed && choice.goesOn),
				for: choice.for,
				isChosen,
				isMissing,
				why,
				leave: choice.leave,
				pack: choice.pack,
			},
		];
	});
}

function kindOf(demand: Demand): InstrumentKind | null {
	if (demand.kind === 'named') return demand.instrument.kind;
	return demand.kind === 'needs' ? demand.part.instrumentKind : null;
}

/**
 * The capos that players move themselves as a section begins, because what they have goes on.
 *
 * @example
 * capoMovesOf(choices) // => []
 */
export function capoMovesOf(choices: readonly Choice[]): readonly CapoMove[] {
	return choices.flatMap((choice): readonly CapoMove[] => {
		const { section, player, before, after, goesOn } = choice;
		if (!goesOn || before === null || after === null || before.capo === after.capo) return [];
		return [{ section, player, ...after, for: choice.for }];
	});
}

/**
 * Who keeps, for the next song that is not on yet, what the song does not name as it is: another instrument
 * stands in, or the capo moves.
 *
 * @example
 * staysOf(choices, plan.sections) // => []
 */
export function staysOf(choices: readonly Choice[], sections: readonly Section[]): readonly Stay[] {
	const on = sections[0]?.hasBegun ? firstSong(sections) : [];
	const next = sections.find((section) => !on.includes(section));
	return choices.flatMap((choice): readonly Stay[] => {
		const { section, player, before, after, play, wanted, goesOn, isSettled } = choice;
		if (section !== next || before === null || after === null || wanted === null) return [];
		if (!goesOn && !isSettled) return [];
		if (choice.for === null && before.capo === after.capo) return [];
		const isRight = play !== null && samePitches(after.tuning, play.tuning);
		if (!isRight) return [];
		return [{ section, player, ...after, for: choice.for }];
	});
}
