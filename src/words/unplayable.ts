// Why something cannot be had, in a few words without a full stop.

import type { LeftOut, Unplayable } from '../plan/plan.ts';
import type { Show } from '../showfile/show.ts';
import { playerName } from '../showfile/shown-names.ts';
import { type Call, onRack } from './call.ts';
import { familyWords, kindWords } from './kinds.ts';

/** `4 Anchor is out tonight`. */
export function unplayableWords(show: Show, why: Unplayable, call: Call = onRack(show)): string {
	switch (why.code) {
		case 'out':
			return `${call(why.instrument)} is out tonight`;
		case 'faulty':
			return `${call(why.instrument)} is faulty: ${why.fault}`;
		case 'string-down':
			return `${call(why.instrument)} has a string down`;
		case 'not-in-show':
			return `${call(why.instrument)} is not in this show`;
		case 'floating-bridge':
			return `${call(why.instrument)} has a floating bridge and is in ${why.tuning}`;
		case 'in-hands':
			return `${playerName(show, why.player)} has ${call(why.instrument)}`;
		case 'none-free':
			return `no ${kindWords(why.kind)} is free for ${why.sounds}`;
	}
}

/** More of them are counted instead. */
const MOST_LEFT_OUT = 3;

/** Why no backup fits: `Bo has 5 Birch, 4 Anchor is strung too heavily (for drop C)`. */
export function leftOutWords(
	show: Show,
	leftOut: readonly LeftOut[],
	call: Call = onRack(show),
): string {
	const said = leftOut.slice(0, MOST_LEFT_OUT).map((one) => leftOutReason(show, one, call));
	const more = leftOut.length - said.length;
	return [...said, ...(more > 0 ? [`${more} more`] : [])].join(', ');
}

function leftOutReason(show: Show, why: LeftOut, call: Call): string {
	switch (why.code) {
		case 'too-heavy':
			return `${call(why.instrument)} is strung too heavily (for ${why.tuning})`;
		case 'too-light':
			return `${call(why.instrument)} is strung too lightly (for ${why.tuning})`;
		case 'other-strings':
			return `${call(why.instrument)} has other strings (${why.tuning})`;
		case 'no-other':
			return `there is no other ${familyWords(why.kind)}`;
		default:
			return unplayableWords(show, why, call);
	}
}
