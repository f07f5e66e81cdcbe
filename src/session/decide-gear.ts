// What commands about boards and packs come to.

import type { BatteryIn } from '../journal/entry.ts';
import type { Command } from './command.ts';
import { type Decision, no, yes } from './decision.ts';
import type { Session } from './session.ts';

type OnPedal = { readonly player: string; readonly pedal: string };

const NO_PEDAL = no({ code: 'unknown-pedal' });

/** A pedal that is found on is off from here on, and back. */
export function correctPedal(session: Session, { player, pedal }: OnPedal, atMs: number): Decision {
	const believed = session.boards[player]?.context.pedals[pedal];
	return believed
		? yes({ k: 'pedal-corrected', at: atMs, player, pedal, on: !believed.on })
		: NO_PEDAL;
}

export function markPedalStuck(
	session: Session,
	{ player, pedal }: OnPedal,
	atMs: number,
): Decision {
	const board = session.boards[player]?.context;
	if (!board?.pedals[pedal]) return NO_PEDAL;
	return board.stuck.includes(pedal)
		? no({ code: 'stuck-already', player, pedal })
		: yes({ k: 'pedal-stuck', at: atMs, player, pedal });
}

export function freePedal(session: Session, { player, pedal }: OnPedal, atMs: number): Decision {
	return session.boards[player]?.context.stuck.includes(pedal)
		? yes({ k: 'pedal-freed', at: atMs, player, pedal })
		: no({ code: 'not-stuck', player, pedal });
}

/** Who chooses a suspect pack trusts it again. */
export function changePack(
	session: Session,
	{ player, pack }: Extract<Command, { do: 'change-pack' }>,
	atMs: number,
): Decision {
	const isSuspect = session.suspectPacks.includes(pack);
	// Before the change, which stands until anything else is recorded.
	return yes(...(isSuspect ? [{ k: 'pack-cleared', at: atMs, pack } as const] : []), {
		k: 'pack-changed',
		at: atMs,
		player,
		pack,
	});
}

export function suspectPack(session: Session, player: string, atMs: number): Decision {
	const pack = session.players[player]?.pack ?? null;
	if (pack === null) return no({ code: 'no-pack-on', player });
	return session.suspectPacks.includes(pack)
		? no({ code: 'suspect-already', pack })
		: yes({ k: 'pack-suspected', at: atMs, player, pack });
}

export function clearPack(session: Session, pack: string, atMs: number): Decision {
	return session.suspectPacks.includes(pack)
		? yes({ k: 'pack-cleared', at: atMs, pack })
		: no({ code: 'not-suspect', pack });
}

/** A fresh battery in the same pack, pedal, part or instrument. */
export function changeBattery(
	{ show }: Session,
	{ what, player, id }: BatteryIn,
	atMs: number,
): Decision {
	const own = player ?? '';
	const all = {
		pack: show.packs,
		instrument: show.instruments,
		pedal: show.boards[own] ?? [],
		part: show.rigs?.[own] ?? [],
	}[what];
	return all.some((one) => one.id === id)
		? yes({ k: 'battery-changed', at: atMs, what, player, id })
		: no({ code: 'no-battery' });
}
