// From a key to an instrument, and from an instrument to the key that names it.

import type { Session } from '../session/session.ts';
import type { Instrument } from '../showfile/show.ts';
import { KINDS } from '../tuning/kind.ts';

/** The instrument whose slot this key names; case does not matter. */
export function instrumentAtSlot(session: Session, key: string): Instrument | null {
	const slot = key.toLowerCase();
	return session.show.instruments.find((one) => one.slot?.toLowerCase() === slot) ?? null;
}

/** The slot of an instrument, as a key; its id when it has no place on the rack. */
export function slotOf(session: Session, instrument: string): string {
	return session.show.instruments.find((one) => one.id === instrument)?.slot ?? instrument;
}

const PLAYS: Readonly<Record<string, readonly string[]>> = {
	guitar: ['guitar', 'twelve', 'baritone'],
	bass: ['bass'],
	mandolin: ['mandolin'],
	ukulele: ['ukulele'],
	banjo: ['banjo'],
};

/** The players who could have it: those it is for, or anybody who plays its kind. */
export function playersFor(session: Session, instrument: Instrument): readonly string[] {
	const { players } = session.show;
	if (instrument.for !== null)
		return players.filter(({ id }) => instrument.for?.includes(id)).map(({ id }) => id);
	const able = players.filter(({ plays }) => {
		const families = plays === null ? undefined : PLAYS[plays];
		return families === undefined || families.includes(KINDS[instrument.kind].family);
	});
	return (able.length > 0 ? able : players).map(({ id }) => id);
}
