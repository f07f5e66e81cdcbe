// Who holds something that does not sound as the song on, or the one they were given it for, wants.

import type { InstrumentState } from '../../../machines/instrument.ts';
import type { Session } from '../../session/session.ts';
import { songTitle } from '../../showfile/shown-names.ts';
import { capoSaid } from '../../tuning/capo-words.ts';
import { hasStringsOf } from '../demand/has-strings-of.ts';
import { instrumentById } from '../demand/instrument-by-id.ts';
import { samePitches, soundsSame } from '../demand/same-pitches.ts';
import type { Warning } from '../plan.ts';
import type { Choice, Wanted } from '../schedule/choice.ts';
import { type Call, sentence } from './sentence.ts';

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
		const state = before === null ? undefined : session.instruments[before.instrument];
		if (!(section.hasBegun || isSettled) || before === null || wanted === null || !state) return [];
		if (isRight(session, { before, state, wanted })) return [];
		const title = songTitle(session.show, section.song);
		return [
			{
				code: 'wrong-tuning',
				song: section.song,
				player,
				instrument: before.instrument,
				...sentence(session.show, (call) =>
					wrongWords({ instrument: before.instrument, state, wanted, title }, call),
				),
			},
		];
	});
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

type Wrong = {
	readonly instrument: string;
	readonly state: InstrumentState;
	readonly wanted: Wanted;
	readonly title: string;
};

function wrongWords({ instrument, state, wanted, title }: Wrong, call: Call): string {
	const { tuning, capo } = state.context;
	const other = wanted.instrument === instrument ? null : wanted.instrument;
	const isOther = other !== null;
	const what = isOther ? `${call(other)} in` : wanted.instrument === null ? '' : 'it in';
	if (!isOther && samePitches(tuning, wanted.tuning)) {
		return `${call(instrument)} has ${capoSaid(capo)}; ${title} wants ${capoSaid(wanted.capo)}`;
	}
	const is = `${call(instrument)} is in ${tuning.name}${withCapo(capo)}`;
	return `${is}; ${title} wants ${what} ${wanted.tuning.name}${withCapo(wanted.capo)}`.replace(
		'  ',
		' ',
	);
}

function withCapo(capo: number): string {
	return capo === 0 ? '' : ` with capo ${capo}`;
}
