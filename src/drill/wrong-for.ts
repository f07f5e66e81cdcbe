// What somebody might take by mistake.

import { playersFor } from '../keys/rack-slots.ts';
import type { Session } from '../session/session.ts';
import type { Instrument } from '../showfile/show.ts';

type Hand = { readonly player: string; readonly holds: Instrument };

/** Something of theirs on the rack in another tuning than what they hold, of the same kind if there is one. */
export function wrongFor(session: Session, { player, holds }: Hand): Instrument | null {
	const tuningOf = (id: string) => session.instruments[id]?.context.tuning.notes.join(' ');
	const others = session.show.instruments.filter(
		(one) =>
			session.instruments[one.id]?.value === 'racked' &&
			tuningOf(one.id) !== tuningOf(holds.id) &&
			one.slot !== null &&
			playersFor(session, one).includes(player),
	);
	return others.find(({ kind }) => kind === holds.kind) ?? others[0] ?? null;
}
