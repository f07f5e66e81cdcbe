// A bass with more strings does for one with fewer.

import type { InstrumentKind } from '../../tuning/kind.ts';
import { KINDS } from '../../tuning/kind.ts';
import type { Tuning } from '../../tuning/tuning.ts';
import { openMidis } from './same-pitches.ts';

/**
 * Whether the wanted strings are among those of a bass that has more, side by side.
 *
 * @example
 * hasStringsOf('bass-5', instruments.C2.tuning, instruments.C1.tuning) // => true
 * hasStringsOf('electric-12', instruments.B2.tuning, eStandard) // => false
 */
export function hasStringsOf(kind: InstrumentKind, tuning: Tuning, wanted: Tuning): boolean {
	if (KINDS[kind].family !== 'bass' || tuning.notes.length <= wanted.notes.length) return false;
	return ` ${openMidis(tuning).join(' ')} `.includes(` ${openMidis(wanted).join(' ')} `);
}
