// What the gear beside the instruments asks of people: packs that are not to be trusted, a channel that
// the desk does not know of yet, pedals that do not switch.

import type { Session } from '../../session/session.ts';
import { suspectPacksNow } from '../../session/suspect-packs.ts';
import { packName, pedalName, playerName } from '../../showfile/shown-names.ts';
import type { Warning } from '../plan.ts';
import { sentence } from './sentence.ts';

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
 * suspectWarnings({ ...session, suspectPacks: ['P1'], players: { ash: { holds: null, pack: 'P1' } } })[0].text // => 'Ash is on pack P1, which is suspect'
 */
export function suspectWarnings(session: Session): readonly Warning[] {
	const { show } = session;
	return suspectPacksNow(session).map(({ pack, player, instrument, worn }): Warning => {
		const name = playerName(show, player);
		const suspect = packName(show, pack);
		if (instrument === null)
			return {
				code: 'suspect-pack',
				player,
				text: `${name} is on pack ${suspect}, which is suspect`,
			};
		const stays =
			worn === null ? `${name} has no pack on` : `${name} stays on ${packName(show, worn)}`;
		return {
			code: 'suspect-pack',
			player,
			instrument,
			...sentence(show, (call) => `Pack ${suspect} of ${call(instrument)} is suspect; ${stays}`),
		};
	});
}

/**
 * What the desk is to be told of: a player was put on another channel, and nothing was recorded since.
 *
 * @example
 * channelWarnings({ show: { ...show, packs: [{ id: 'P1', channel: 'G1' }, { id: 'P5', channel: 'G5' }] }, packChange: { player: 'ash', from: 'P1', to: 'P5' } })[0].text // => 'Ash changed packs, tell the desk: G1 → G5'
 */
export function channelWarnings({ show, packChange }: Session): readonly Warning[] {
	if (packChange === null) return [];
	const { player, from, to } = packChange;
	const channelOf = (id: string | null) => show.packs.find((one) => one.id === id)?.channel ?? null;
	if (channelOf(from) === channelOf(to)) return [];
	// A pack without a channel in the file is known at the desk by its own name, if at all.
	const called = (id: string) => channelOf(id) ?? `pack ${packName(show, id)}`;
	const change = from === null ? called(to) : `${called(from)} → ${called(to)}`;
	return [
		{
			code: 'pack-channel',
			player,
			text: `${playerName(show, player)} changed packs, tell the desk: ${change}`,
		},
	];
}

function stuckWarnings({ show, boards }: Session): readonly Warning[] {
	return Object.entries(boards).flatMap(([player, { context }]) =>
		context.stuck.map((pedal): Warning => {
			const name = `${playerName(show, player)}'s ${pedalName(show, player, pedal)}`;
			const stays = context.pedals[pedal]?.on ? 'on' : 'off';
			return { code: 'stuck-pedal', player, text: `${name} does not switch, stays ${stays}` };
		}),
	);
}
