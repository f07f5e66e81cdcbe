// What somebody has to be told about a plan.

import type { NightMs } from '../../journal/entry.ts';
import { missedHandOver } from '../../session/missed-hand-over.ts';
import type { Session } from '../../session/session.ts';
import { crossedPacks, sharedPacks, withoutPack } from '../../session/shared-packs.ts';
import { suspectPacksNow } from '../../session/suspect-packs.ts';
import { backupOfSlot } from '../backups/stand-ins.ts';
import { firstSong } from '../demand/first-song.ts';
import type { Plan, Slot, Warning } from '../plan.ts';
import type { Choice } from '../schedule/choice.ts';
import { curfewWarnings } from '../what-if/curfew-warnings.ts';
import { gapWarnings } from './gap-warnings.ts';
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
		...unmarkedWarnings(session),
		...missedWarnings(session),
		...missingWarnings(plan, (slot) => backupOfSlot(warned, slot)?.instrument),
		...unsaidWarnings(warned),
		...packWarnings(session),
		...readyWarnings(warned),
		...suspectWarnings(session),
		...stuckWarnings(session),
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

/** What the desk is to be told of: a player was put on another channel, and nothing was recorded since. */
function channelWarnings({ show, packChange }: Session): readonly Warning[] {
	if (packChange === null) return [];
	const { player, from, to } = packChange;
	const channelOf = (id: string | null) => show.packs.find((one) => one.id === id)?.channel ?? null;
	return channelOf(from) === channelOf(to) ? [] : [{ code: 'pack-channel', player, from, to }];
}

/** What may not be as it was logged with its hand-over, as long as nothing else was recorded. */
function unmarkedWarnings({ unmarked }: Session): readonly Warning[] {
	return (unmarked?.instruments ?? []).map((one): Warning => ({ code: 'unmarked', ...one }));
}

/**
 * The suspect packs that somebody wears, or keeps off with what they have in hands.
 *
 * @example
 * suspectWarnings({ ...session, suspectPacks: ['P1'], players: { ash: { holds: null, pack: 'P1' } } })[0] // => { code: 'suspect-pack', player: 'ash', pack: 'P1', worn: 'P1' }
 */
export function suspectWarnings(session: Session): readonly Warning[] {
	return suspectPacksNow(session).map(({ pack, player, instrument, worn }): Warning => {
		const of = instrument === null ? {} : { instrument };
		return { code: 'suspect-pack', player, ...of, pack, worn };
	});
}

function stuckWarnings({ boards }: Session): readonly Warning[] {
	return Object.entries(boards).flatMap(([player, { context }]) =>
		context.stuck.map((pedal): Warning => {
			const isOn = context.pedals[pedal]?.on === true;
			return { code: 'stuck-pedal', player, pedal, isOn };
		}),
	);
}

/**
 * The packs that several players wear at once, who wears another's, and who wears none.
 *
 * @example
 * packWarnings(session) // => []
 */
export function packWarnings(session: Session): readonly Warning[] {
	return [
		...withoutPack(session).map((one): Warning => ({ code: 'no-pack', ...one })),
		...sharedPacks(session).map((one): Warning => ({ code: 'shared-pack', ...one })),
		...crossedPacks(session).map((one): Warning => ({ code: 'crossed-packs', ...one })),
	];
}
