// Why something cannot be had, in a few words without a full stop.

import type { Unplayable } from '../plan/plan.ts';
import type { Show } from '../showfile/show.ts';
import { playerName } from '../showfile/shown-names.ts';
import { type Call, onRack } from './call.ts';
import { kindWords } from './kinds.ts';

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
