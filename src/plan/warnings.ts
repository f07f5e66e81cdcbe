// What somebody has to be told about a plan, in words.

import { minutesSeconds } from '../base/duration.ts';
import type { NightMs } from '../journal/entry.ts';
import { missedHandOver } from '../session/missed-hand-over.ts';
import type { Session } from '../session/session.ts';
import { sharedPacks } from '../session/shared-packs.ts';
import type { Show } from '../showfile/show.ts';
import { playerName, songTitle } from '../showfile/shown-names.ts';
import type { Choice } from './choices.ts';
import { gapWarnings } from './gap-warnings.ts';
import type { Plan, Section, Warning } from './plan.ts';
import { readyWarnings } from './ready-warnings.ts';
import { calledIn, sentence } from './sentence.ts';
import { standInWarnings } from './stand-in-warnings.ts';
import { wrongTunings } from './wrong-tuning.ts';

/** A plan with all that its warnings are made from. */
export type Warned = {
	readonly session: Session;
	readonly nowMs: NightMs;
	readonly plannedZeroMs: NightMs;
	readonly plan: Plan;
	readonly choices: readonly Choice[];
};

/**
 * The warnings of a night under way, what is most pressing first: of the gaps only the coming one.
 *
 * @example
 * warningsNow({ session, nowMs: 0, plannedZeroMs: 0, plan, choices }) // => []
 */
export function warningsNow(warned: Warned): readonly Warning[] {
	const { session, plan } = warned;
	const coming = plan.handOvers.find(({ section }) => !section.hasBegun)?.section;
	return [
		...wrongTunings(warned),
		...missedWarnings(session),
		...missingWarnings(session.show, plan),
		...packWarnings(session),
		...readyWarnings(warned),
		...standInWarnings(warned),
		...gapWarnings(session.show, plan, coming === undefined ? [] : [coming]),
		...curfewWarnings(session.show, plan.sections, warned.plannedZeroMs),
	];
}

/**
 * What cannot be had, once for each player and reason.
 *
 * @example
 * missingWarnings(show, plan) // => []
 */
export function missingWarnings(show: Show, { slots }: Plan): readonly Warning[] {
	const said = new Set<string>();
	return slots.flatMap(({ section, player, named, why }): readonly Warning[] => {
		if (why === null || said.has(`${player} ${why}`)) return [];
		said.add(`${player} ${why}`);
		const who = playerName(show, player);
		const title = songTitle(show, section.song);
		return [
			{
				code: 'missing',
				song: section.song,
				player,
				...(named === null ? {} : { instrument: named }),
				...sentence(
					show,
					(call) => `Nothing for ${who} in ${title}: ${calledIn(why, named, call)}`,
				),
			},
		];
	});
}

/**
 * Whether the set runs past the curfew, counted from the start that the file gives.
 *
 * @example
 * curfewWarnings({ ...show, startMinutes: 1230, curfewMinutes: 1235 }, plan.sections, 0)[0].text // => 'The set ends 7:00 after the curfew'
 */
export function curfewWarnings(
	{ startMinutes, curfewMinutes }: Show,
	sections: readonly Section[],
	plannedZeroMs: NightMs,
): readonly Warning[] {
	const last = sections.at(-1);
	if (startMinutes === null || curfewMinutes === null || last === undefined) return [];
	const curfewMs = plannedZeroMs + (curfewMinutes - startMinutes) * 60_000;
	const overSeconds = (last.endMs - curfewMs) / 1000;
	if (overSeconds <= 0) return [];
	return [
		{ code: 'short-curfew', text: `The set ends ${minutesSeconds(overSeconds)} after the curfew` },
	];
}

/** What players were to have been given and what nothing was recorded of since. */
function missedWarnings(session: Session): readonly Warning[] {
	const { show } = session;
	return show.players.flatMap(({ id, name }): readonly Warning[] => {
		const missed = missedHandOver(session, id);
		if (missed === null) return [];
		const { song, instrument } = missed;
		const title = songTitle(show, song);
		return [
			{
				code: 'missed-hand-over',
				song,
				player: id,
				...(instrument === null ? {} : { instrument }),
				...sentence(show, (call) => {
					const what = instrument === null ? 'something else' : call(instrument);
					return `${name} was to get ${what} for ${title}, and it is not recorded`;
				}),
			},
		];
	});
}

/** The packs that two players wear at once. */
function packWarnings(session: Session): readonly Warning[] {
	return sharedPacks(session).map(({ words }) => ({ code: 'shared-pack', text: words }));
}
