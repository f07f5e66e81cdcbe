// What is said at the bench: why strings are turned in that order, and what to do with a truss rod.

import type { CapoSound } from '../tuning/capo-shapes.ts';
import type { RetuneStep } from '../tuning/retune-steps.ts';
import { reliefOver } from '../tuning/set-up-drift.ts';

/** Why in this order, one or two sentences; empty when nothing is to be done. */
export function retuneWhyWords(steps: readonly RetuneStep[]): string {
	if (steps.length === 0) return '';
	if (steps.some(({ round }) => round === 2)) {
		return 'On a floating bridge every string that moves moves all others, so tune them all, twice round. End every string on its way up.';
	}
	const hasDown = steps.some(({ how }) => how === 'down');
	const hasUp = steps.some(({ how }) => how === 'up');
	const first = hasDown && hasUp ? 'Down before up, so that the neck is relieved first. ' : '';
	const how = hasDown ? ': go past a lower pitch and come back to it' : '';
	return `${first}End every string on its way up${how}.`;
}

/** What one quarter turn does varies; beyond this a rod is not to be trusted to hands in a hurry (common practice, no source). */
const MOST_QUARTERS = 2;

/**
 * What to do with the truss rod, as sentences; none when the relief is on target. Quarter turns only, at
 * pitch, with a wait: common practice, no source.
 */
export function trussRodWords(wanted: number, measured: number): readonly string[] {
	const over = reliefOver(wanted, measured);
	if (over === null) return [];
	const turn =
		over > 0
			? "tighten a quarter turn (on most clockwise; check the maker's word)"
			: "loosen a quarter turn (on most counter-clockwise; check the maker's word)";
	const much = over > 0 ? 'too much' : 'too little';
	return [
		`Relief is ${Math.abs(over).toFixed(2)} mm ${much}: ${turn}, at pitch.`,
		'Wait ten minutes, tune, measure again: wood follows slowly.',
		`Leave it to a luthier when the nut is stiff or creaks, after ${MOST_QUARTERS} quarter turns without effect, or when the neck is twisted. Nut and fret work are the luthier's too.`,
	];
}

/** `capo 2 in E shapes = capo 4 in D shapes = capo 0 in F#`; null for none. */
export function sameSoundWords(sounds: readonly CapoSound[]): string | null {
	if (sounds.length === 0) return null;
	return sounds
		.map(({ capo, shape, key }) => `capo ${capo} in ${shape === null ? key : `${shape} shapes`}`)
		.join(' = ');
}
