// What is pressed on a board to bring it from one state to another, said alike on the screen and on paper.

import type { Pedal, PedalStates } from '../showfile/show.ts';
import { settingWords } from './rig.ts';
import { pressOff, pressOn } from './stage.ts';

/** Each pedal of the board that is pressed, or set to something else: `+DELAY dotted-eighth`, `−BOOST`. */
export function boardPresses(
	pedals: readonly Pedal[],
	{
		was,
		is,
		tempo,
	}: {
		readonly was: PedalStates;
		readonly is: PedalStates;
		/** Beats a minute of the song; null where it has none. */
		readonly tempo: number | null;
	},
	hasSettings: boolean,
): readonly string[] {
	return pedals.flatMap(({ id, name }) => {
		const [before, after] = [was[id], is[id]];
		const label = name.toUpperCase();
		const settings = Object.values(after?.settings ?? {})
			.map((value) => settingWords(value, tempo))
			.join(' ');
		const set = hasSettings && settings !== '' ? `${label} ${settings}` : label;
		if (after?.on !== true) return before?.on === true ? [pressOff(label)] : [];
		if (before?.on !== true) return [pressOn(set)];
		const isSame = JSON.stringify(before.settings ?? {}) === JSON.stringify(after.settings ?? {});
		return isSame ? [] : [set];
	});
}
