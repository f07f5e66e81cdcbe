// What the gear beside the instruments asks of people: packs that are not to be trusted, a channel that
// the desk does not know of yet, pedals that do not switch.

import type { Session } from '../../session/session.ts';
import { suspectPacksNow } from '../../session/suspect-packs.ts';
import type { Warning } from '../plan.ts';

/**
 * Suspect packs that somebody wears or would wear, then pedals that do not switch.
 *
 * @example
 * gearWarnings({ ...session, boards: { bo: { context: { pedals: { drive: { on: true } }, stuck: ['drive'] } } } })[0].code // => 'stuck-pedal'
 */
export function gearWarnings(session: Session): readonly Warning[] {
	return [...suspectWarnings(session), ...stuckWarnings(session)];
}

/**
 * The suspect packs that somebody wears, or keeps off with what they have in hands.
 *
 * @example
 * suspectWarnings({ ...session, suspectPacks: ['P1'], players: { ash: { holds: null, pack: 'P1' } } })[0] // => { code: 'suspect-pack', player: 'ash', pack: 'P1', worn: 'P1' }
 */
export function suspectWarnings(session: Session): readonly Warning[] {
	return suspectPacksNow(session).map(
		({ pack, player, instrument, worn }): Warning => ({
			code: 'suspect-pack',
			player,
			...(instrument === null ? {} : { instrument }),
			pack,
			worn,
		}),
	);
}

/**
 * What the desk is to be told of: a player was put on another channel, and nothing was recorded since.
 *
 * @example
 * channelWarnings({ show: { ...show, packs: [{ id: 'P1', channel: '11' }, { id: 'P5', channel: '15' }] }, packChange: { player: 'ash', from: 'P1', to: 'P5' } })[0] // => { code: 'pack-channel', player: 'ash', from: 'P1', to: 'P5' }
 */
export function channelWarnings({ show, packChange }: Session): readonly Warning[] {
	if (packChange === null) return [];
	const { player, from, to } = packChange;
	const channelOf = (id: string | null) => show.packs.find((one) => one.id === id)?.channel ?? null;
	return channelOf(from) === channelOf(to) ? [] : [{ code: 'pack-channel', player, from, to }];
}

function stuckWarnings({ boards }: Session): readonly Warning[] {
	return Object.entries(boards).flatMap(([player, { context }]) =>
		context.stuck.map((pedal): Warning => {
			const isOn = context.pedals[pedal]?.on === true;
			return { code: 'stuck-pedal', player, pedal, isOn };
		}),
	);
}
