// Who holds something that does not sound as the song on, or the one they were given it for, wants.

import type { Session } from '../../session/session.ts';
import type { Instrument, Show } from '../../showfile/show.ts';
import { KINDS } from '../../tuning/kind.ts';
import { instrumentById } from '../demand/instrument-by-id.ts';
import {
	hasStringsOf,
	type OpenWithCapo,
	samePitches,
	soundsSame,
} from '../demand/same-pitches.ts';
import type { Warning } from '../plan.ts';
import type { Choice, Wanted } from '../schedule/choice.ts';

/**
 * One warning for each player whose hands are wrong in the song on, else in the coming one where what they hold was
 * given for it: wrong in both it is put right once. A stand-in that sounds right is not wrong.
 *
 * @example
 * wrongTunings({ session, choices }) // => []
 */
export function wrongTunings({
	session,
	choices,
}: {
	readonly session: Session;
	readonly choices: readonly Choice[];
}): readonly Warning[] {
	const said = new Set<string>();
	return choices.flatMap(({ section, player, before, wanted, isSettled }): readonly Warning[] => {
		if (said.has(player)) return [];
		if (wanted === null || !(section.hasBegun || isSettled)) return [];
		const about = { song: section.song, player };
		if (before === null) {
			// Hands were left empty on purpose or by mistake, where something is to be played.
			const of = wanted.instrument === null ? {} : { instrument: wanted.instrument };
			const tuning = wanted.tuning.name;
			if (!isSettled) return [];
			said.add(player);
			return [{ code: 'empty-hands', ...about, ...of, tuning }];
		}
		const instrument = instrumentById(session.show).get(before.instrument);
		const state = session.instruments[before.instrument];
		if (instrument === undefined || state === undefined) return [];
		const held = { instrument, is: state.context, wanted };
		if (isRight(held)) return [];
		said.add(player);
		const of = { ...about, instrument: instrument.id };
		return [{ code: 'wrong-tuning', ...of, ...wrongOf(session.show, held) }];
	});
}

type Held = {
	readonly instrument: Instrument;
	readonly is: OpenWithCapo;
	readonly wanted: Wanted;
};

function isRight({ instrument, is, wanted }: Held): boolean {
	if (soundsSame(is, wanted)) return true;
	return wanted.capo === 0 && hasStringsOf(instrument.kind, is.tuning, wanted.tuning);
}

function wrongOf(show: Show, { instrument, is: { tuning, capo }, wanted }: Held) {
	const other = wanted.instrument === instrument.id ? null : wanted.instrument;
	const wrong =
		other !== null && !isOfFamily(instrument, instrumentById(show).get(other))
			? ('instrument' as const)
			: other === null && samePitches(tuning, wanted.tuning)
				? ('capo' as const)
				: ('tuning' as const);
	return {
		wrong,
		is: { tuning: tuning.name, capo },
		wants: { instrument: other, tuning: wanted.tuning.name, capo: wanted.capo },
		isOpen: wanted.instrument === null,
	};
}

/** A bass in place of a guitar is the wrong instrument, whatever its tuning is called. */
function isOfFamily({ kind }: Instrument, other: Instrument | undefined): boolean {
	return other !== undefined && KINDS[kind].family === KINDS[other.kind].family;
}
