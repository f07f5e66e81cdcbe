// The state of a night as it is kept whole in its journal now and then, so that taking it up again
// does not take longer the longer it lasts.

import type { Entry } from '../journal/entry.ts';
import type { JournalRecord } from '../journal/record.ts';
import type { Session } from '../session/session.ts';
import type { Show } from '../showfile/show.ts';
import type { LastKnown } from './night-clock.ts';

/** A step of the log in words. */
export type KeptStep = {
	readonly s: number;
	/** When each of its entries was, in their order. */
	readonly atMs: readonly number[];
	/** Empty for an entry that nobody needs to read. */
	readonly words: readonly string[];
	readonly isTakenBack: boolean;
};

export type KeptNight = {
	/** Raised whenever the shape of anything below changes; another form is passed over. */
	readonly form: 7;
	readonly session: Omit<Session, 'show'>;
	/** The show in force when it is not the one that the night began with. */
	readonly show: Show | null;
	readonly step: number | null;
	readonly aside: readonly JournalRecord<Entry>[];
	/** The newest steps, newest first. */
	readonly log: readonly KeptStep[];
	readonly known: LastKnown | null;
};

/** Whether this is a kept night of the form in use here; `opening` shows what a session consists of. */
export function isKeptNight(state: unknown, opening: Session): state is KeptNight {
	if (!isRecord(state) || state.form !== 7 || !isRecord(state.session)) return false;
	const { session } = state;
	return (
		Array.isArray(state.log) &&
		Array.isArray(state.aside) &&
		Object.keys(opening).every((key) => key === 'show' || Object.hasOwn(session, key))
	);
}

function isRecord(value: unknown): value is Record<string, unknown> {
	return typeof value === 'object' && value !== null;
}
