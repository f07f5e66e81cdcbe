// What entries about incidents do: noted, described later, answered.

import type { Entry } from '../journal/entry.ts';
import type { RecordId } from '../journal/record.ts';
import { moveInstrument } from './move-parts.ts';
import type { Incident, Session } from './session.ts';

/** The session with one more incident. */
export function noteIncident(session: Session, incident: Incident): Session {
	return { ...session, incidents: [...session.incidents, incident] };
}

/** An incident of which nothing is known but when it was. */
export function blankIncident(id: RecordId, atMs: number): Incident {
	return {
		id,
		atMs,
		kind: null,
		player: null,
		instrument: null,
		string: null,
		pedal: null,
		standIn: null,
		silenceSeconds: null,
		isOpen: false,
		words: [],
	};
}

/** The session with one incident changed. */
export function changeIncident(
	session: Session,
	id: RecordId,
	change: (incident: Incident) => Incident,
): Session {
	return {
		...session,
		incidents: session.incidents.map((one) => (one.id === id ? change(one) : one)),
	};
}

/** The session with what was said of an incident afterwards, a string that was named included. */
export function describeIncident(
	session: Session,
	entry: Extract<Entry, { k: 'incident-described' }>,
): Session {
	const described = changeIncident(session, entry.incident, (incident) => ({
		...incident,
		string: entry.string ?? incident.string,
		kind: entry.kind ?? incident.kind,
		words: entry.words ? [...incident.words, entry.words] : incident.words,
	}));
	const instrument = session.incidents.find((one) => one.id === entry.incident)?.instrument;
	return entry.string !== undefined && instrument
		? moveInstrument(described, instrument, { type: 'stringNamed', string: entry.string })
		: described;
}
