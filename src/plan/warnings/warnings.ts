// What somebody has to be told about a plan, in words.

import type { NightMs } from '../../journal/entry.ts';
import { missedHandOver } from '../../session/missed-hand-over.ts';
import type { Session } from '../../session/session.ts';
import { sharedPacks } from '../../session/shared-packs.ts';
import type { Show } from '../../showfile/show.ts';
import { playerName, songTitle } from '../../showfile/shown-names.ts';
import { standIns } from '../backups/stand-ins.ts';
import { firstSong } from '../demand/first-song.ts';
import { instrumentById } from '../demand/instrument-by-id.ts';
import type { Plan, Slot, Warning } from '../plan.ts';
import type { Choice } from '../schedule/choice.ts';
import { curfewWarnings } from '../what-if/curfew-warnings.ts';
import { gapWarnings } from './gap-warnings.ts';
import { channelWarnings, gearWarnings } from './gear-warnings.ts';
import { readyWarnings } from './ready-warnings.ts';
import { type Call, calledIn, sentence } from './sentence.ts';
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
		...channelWarnings(session),
		...missedWarnings(session),
		...missingWarnings(session.show, plan, (slot) => otherKind(warned, slot)),
		...unsaidWarnings(warned),
		...packWarnings(session),
		...readyWarnings(warned),
		...standInWarnings(warned),
		...gearWarnings(session),
		...gapWarnings(session.show, plan, coming === undefined ? [] : [coming]),
		...curfewWarnings(session.show, plan.sections, warned.plannedZeroMs),
	];
}

/** What of another kind could be played where a slot has nothing. */
function otherKind(
	{ session, nowMs, plan }: Warned,
	{ player, named, section }: Slot,
): string | undefined {
	const instrument = named ?? undefined;
	// The file may let nothing be played in its place.
	const { instead } = instrumentById(session.show).get(named ?? '') ?? {};
	if (instead?.length === 0) return undefined;
	const [best] = standIns({
		session,
		plan,
		nowMs,
		player,
		section,
		...(instrument && { instrument }),
	});
	return best?.instrument;
}

/**
 * What cannot be had, once for each player and reason: nothing to play, or something that stands in.
 * `backup`: what of another kind could be played there instead, where that is to be said.
 *
 * @example
 * missingWarnings(show, plan) // => []
 */
export function missingWarnings(
	show: Show,
	{ slots }: Pick<Plan, 'slots'>,
	backup: (slot: Slot) => string | undefined = () => undefined,
): readonly Warning[] {
	const said = new Set<string>();
	return slots.flatMap((slot): readonly Warning[] => {
		const { section, player, instrument, asked, why, isMissing } = slot;
		const key = `${player} ${instrument} ${why}`;
		if (why === null || said.has(key)) return [];
		said.add(key);
		const who = playerName(show, player);
		const title = songTitle(show, section.song);
		const about = { song: section.song, player };
		const reason = (call: Call) => calledIn(why, asked, call);
		if (isMissing || instrument === null) {
			const other = backup(slot);
			const words = (call: Call) =>
				`Nothing for ${who} in ${title}: ${reason(call)}${other === undefined ? '' : `; ${call(other)} can stand in`}`;
			const of = asked === null ? {} : { instrument: asked };
			return [{ ...about, ...of, code: 'missing', ...sentence(show, words) }];
		}
		const words = (call: Call) =>
			instrument === asked
				? `${who} plays ${call(instrument)} otherwise in ${title}: ${reason(call)}`
				: `${who} plays ${call(instrument)} for ${call(asked ?? '')} in ${title}: ${reason(call)}`;
		return [{ ...about, instrument, code: 'substituted', ...sentence(show, words) }];
	});
}

/** Who keeps, in what is on or comes next, what no line of the file says. */
function unsaidWarnings({ session, plan, choices }: Warned): readonly Warning[] {
	const { show } = session;
	const first = firstSong(plan.sections);
	const next = plan.sections.find((section) => !first.includes(section));
	const near = plan.sections[0]?.hasBegun ? [...first, next] : first;
	const said = new Set<string>();
	return choices.flatMap(({ section, player, demand, after }): readonly Warning[] => {
		const isUnsaid = demand.kind === 'keeps' && after !== null && near.includes(section);
		if (!isUnsaid || said.has(player)) return [];
		said.add(player);
		const words = (call: Call) =>
			`${songTitle(show, section.song)} does not say what ${playerName(show, player)} plays: ${call(after.instrument)} stays`;
		const about = { song: section.song, player, instrument: after.instrument };
		return [{ ...about, code: 'kept-unsaid', ...sentence(show, words) }];
	});
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
