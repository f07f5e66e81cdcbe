// What somebody has to be told about a plan.

import type { NightMs } from '../../journal/entry.ts';
import { missedHandOver } from '../../session/missed-hand-over.ts';
import type { Session } from '../../session/session.ts';
import { sharedPacks, withoutPack } from '../../session/shared-packs.ts';
import { backupOfSlot } from '../backups/stand-ins.ts';
import { firstSong } from '../demand/first-song.ts';
import type { Plan, Slot, Warning } from '../plan.ts';
import type { Choice } from '../schedule/choice.ts';
import { curfewWarnings } from '../what-if/curfew-warnings.ts';
import { gapWarnings } from './gap-warnings.ts';
import { channelWarnings, gearWarnings } from './gear-warnings.ts';
import { readyWarnings } from './ready-warnings.ts';
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
		...missingWarnings(plan, (slot) => backupOfSlot(warned, slot)?.instrument),
		...unsaidWarnings(warned),
		...packWarnings(session),
		...readyWarnings(warned),
		...gearWarnings(session),
		...gapWarnings(plan, coming === undefined ? [] : [coming]),
		...curfewWarnings(session.show, plan.sections, warned.plannedZeroMs),
	];
}

/**
 * What cannot be had, once for each player and reason: nothing to play, or something that stands in.
 * `backup`: what of another kind could be played there instead, where that is to be said.
 *
 * @example
 * missingWarnings(plan) // => []
 */
export function missingWarnings(
	{ slots }: Pick<Plan, 'slots'>,
	backup: (slot: Slot) => string | undefined = () => undefined,
): readonly Warning[] {
	const said = new Set<string>();
	return slots.flatMap((slot): readonly Warning[] => {
		const { section, player, instrument, asked, why, isMissing } = slot;
		const key = JSON.stringify([player, instrument, why]);
		if (why === null || said.has(key)) return [];
		said.add(key);
		const about = { song: section.song, player };
		if (isMissing || instrument === null) {
			const standIn = backup(slot);
			const of = asked === null ? {} : { instrument: asked };
			const other = standIn === undefined ? {} : { standIn };
			return [{ code: 'missing', ...about, ...of, why, ...other }];
		}
		return [{ code: 'substituted', ...about, instrument, for: asked ?? instrument, why }];
	});
}

/** Who keeps, in what is on or comes next, what no line of the file says. */
function unsaidWarnings({ plan, choices }: Warned): readonly Warning[] {
	const first = firstSong(plan.sections);
	const next = plan.sections.find((section) => !first.includes(section));
	const near = plan.sections[0]?.hasBegun ? [...first, next] : first;
	const said = new Set<string>();
	return choices.flatMap(({ section, player, demand, after }): readonly Warning[] => {
		const isUnsaid = demand.kind === 'keeps' && after !== null && near.includes(section);
		if (!isUnsaid || said.has(player)) return [];
		said.add(player);
		const about = { song: section.song, player, instrument: after.instrument };
		return [{ code: 'kept-unsaid', ...about }];
	});
}

/** What players were to have been given and what nothing was recorded of since. */
function missedWarnings(session: Session): readonly Warning[] {
	return session.show.players.flatMap(({ id }): readonly Warning[] => {
		const missed = missedHandOver(session, id);
		if (missed === null) return [];
		const { song, instrument } = missed;
		const of = instrument === null ? {} : { instrument };
		return [{ code: 'missed-hand-over', song, player: id, ...of }];
	});
}

/**
 * The packs that several players wear at once, and who wears none.
 *
 * @example
 * packWarnings(session) // => []
 */
export function packWarnings(session: Session): readonly Warning[] {
	return [
		...withoutPack(session).map((one): Warning => ({ code: 'no-pack', ...one })),
		...sharedPacks(session).map((one): Warning => ({ code: 'shared-pack', ...one })),
	];
}
