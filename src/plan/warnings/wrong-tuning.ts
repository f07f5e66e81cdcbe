// Who holds something that does not sound as the song on, or the one they were given it for, wants.

import type { InstrumentState } from '../../../machines/instrument.ts';
import type { Session } from '../../session/session.ts';
import type { Show } from '../../showfile/show.ts';
import { KINDS } from '../../tuning/kind.ts';
import { instrumentById } from '../demand/instrument-by-id.ts';
import { hasStringsOf, samePitches, soundsSame } from '../demand/same-pitches.ts';
import type { Warning } from '../plan.ts';
import type { Choice, Wanted } from '../schedule/choice.ts';

/**
 * One warning for each player whose hands are wrong in the song on, and for the coming one where what
 * they hold was given for it. A stand-in that sounds right is not wrong.
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
	return choices.flatMap((choice): readonly Warning[] => {
		const { section, player, before, wanted, isSettled } = choice;
		if (before === null && wanted !== null && isSettled) return [emptyHands(choice, wanted)];
		const state = before === null ? undefined : session.instruments[before.instrument];
		if (!(section.hasBegun || isSettled) || before === null || wanted === null || !state) return [];
		if (isRight(session, { before, state, wanted })) return [];
		return [
			{
				code: 'wrong-tuning',
				song: section.song,
				player,
				instrument: before.instrument,
				...wrongOf(session.show, { instrument: before.instrument, state, wanted }),
			},
		];
	});
}

/** Whose hands were left empty on purpose or by mistake, where something is to be played. */
function emptyHands({ section, player }: Choice, { instrument, tuning }: Wanted): Warning {
	return {
		code: 'empty-hands',
		song: section.song,
		player,
		...(instrument === null ? {} : { instrument }),
		tuning: tuning.name,
	};
}

function isRight(
	{ show }: Session,
	{
		before,
		state,
		wanted,
	}: { before: { instrument: string }; state: InstrumentState; wanted: Wanted },
): boolean {
	if (soundsSame(state.context, wanted)) return true;
	const instrument = instrumentById(show).get(before.instrument);
	return (
		instrument !== undefined &&
		wanted.capo === 0 &&
		hasStringsOf(instrument.kind, state.context.tuning, wanted.tuning)
	);
}

type Held = {
	readonly instrument: string;
	readonly state: InstrumentState;
	readonly wanted: Wanted;
};

function wrongOf(show: Show, { instrument, state, wanted }: Held) {
	const { tuning, capo } = state.context;
	const other = wanted.instrument === instrument ? null : wanted.instrument;
	const wrong =
		other !== null && !isSameFamily(show, instrument, other)
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
function isSameFamily(show: Show, one: string, other: string): boolean {
	const [mine, theirs] = [one, other].map((id) => {
		const instrument = instrumentById(show).get(id);
		return instrument && KINDS[instrument.kind].family;
	});
	return mine === theirs;
}
