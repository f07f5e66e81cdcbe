// What is pressed on a board to bring it from one state to another, said alike on the screen and on paper.

import { isSetAgain } from '../rig/tempo-times.ts';
import type { Pedal } from '../showfile/show.ts';
import { type BoardMove, settingWords } from './rig.ts';
import { pressOff, pressOn } from './stage.ts';

/** Each pedal of the board that is pressed, or set to something else: `+DELAY dotted-eighth`, `−BOOST`. */
export function boardPresses(
	pedals: readonly Pedal[],
	{ was, is, stuck, tempo }: BoardMove,
	hasSettings: boolean,
): readonly string[] {
	return pedals.flatMap((pedal) => {
		const { id, name } = pedal;
		const [before, after] = [was[id], is[id]];
		const label = name.toUpperCase();
		const values = Object.values(after?.settings ?? {});
		const settings = values.map((value) => settingWords(value, tempo.to)).join(' ');
		const set = hasSettings && settings !== '' ? `${label} ${settings}` : label;
		if (after?.on !== true) return before?.on === true ? [pressOff(label)] : [];
		if (before?.on !== true) return [pressOn(set)];
		const isSame = JSON.stringify(before.settings ?? {}) === JSON.stringify(after.settings ?? {});
		const isAgain = !stuck.includes(id) && values.some((value) => isSetAgain(pedal, value, tempo));
		return isSame && !isAgain ? [] : [set];
	});
}
