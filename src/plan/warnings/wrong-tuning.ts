// Who holds something that does not sound as the song on, or the one they were given it for, wants.

import type { InstrumentState } from '../../../machines/instrument.ts';
import type { Session } from '../../session/session.ts';
import type { Show } from '../../showfile/show.ts';
import { playerName, songTitle } from '../../showfile/shown-names.ts';
import { capoSaid } from '../../tuning/capo-words.ts';
import { KINDS } from '../../tuning/kind.ts';
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
		if (before === null && wanted !== null && isSettled)
			return [emptyHands(session, choice, wanted)];
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
					wrongWords(session.show, { instrument: before.instrument, state, wanted, title }, call),
				),
			},
		];
	});
}

/** Whose hands were left empty on purpose or by mistake, where something is to be played. */
function emptyHands(
	{ show }: Session,
	{ section, player }: Choice,
	{ instrument, tuning }: Wanted,
): Warning {
	const title = songTitle(show, section.song);
	const what = (call: Call) => (instrument === null ? tuning.name : call(instrument));
	return {
		code: 'empty-hands',
		song: section.song,
		player,
		...(instrument === null ? {} : { instrument }),
		...sentence(
			show,
			(call) => `${playerName(show, player)} has nothing in hands; ${title} wants ${what(call)}`,
		),
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

type Wrong = {
	readonly instrument: string;
	readonly state: InstrumentState;
	readonly wanted: Wanted;
	readonly title: string;
};

function wrongWords(show: Show, { instrument, state, wanted, title }: Wrong, call: Call): string {
	const { tuning, capo } = state.context;
	const other = wanted.instrument === instrument ? null : wanted.instrument;
	const isOther = other !== null;
	if (isOther && !isSameFamily(show, instrument, other))
		return `${call(instrument)} is in hands; ${title} wants ${call(other)}`;
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

/** A bass in place of a guitar is the wrong instrument, whatever its tuning is called. */
function isSameFamily(show: Show, one: string, other: string): boolean {
	const [mine, theirs] = [one, other].map((id) => {
		const instrument = instrumentById(show).get(id);
		return instrument && KINDS[instrument.kind].family;
	});
	return mine === theirs;
}

function withCapo(capo: number): string {
	return capo === 0 ? '' : ` with capo ${capo}`;
}
