// What entries about a search for a fault do: begun, a test done, the cause found, given up.

import type { Entry } from '../journal/entry.ts';
import type { RecordId } from '../journal/record.ts';
import { isOnPathOf } from './apply-batteries.ts';
import { blankIncident, changeIncident, noteIncident } from './apply-incidents.ts';
import { findFault, songOnNow } from './find.ts';
import type { Fault, Incident, Session } from './session.ts';

type Of<Kind extends Entry['k']> = Extract<Entry, { k: Kind }>;

/** What was changed less than this before is likelier the cause: common practice, no source. */
const JUST_CHANGED_MS = 5 * 60_000;

const WITHOUT_SOUND: ReadonlySet<string> = new Set(['silent', 'cuts-out', 'wireless']);

/** Whether what is heard takes the sound away, and does not only spoil it. */
export function takesSoundAway(symptom: string): boolean {
	return WITHOUT_SOUND.has(symptom);
}

/** The session with a search begun, by what the player has then. */
export function seekFault(session: Session, entry: Of<'fault-sought'>, of: RecordId): Session {
	const { at, player, symptom, incident = of, empty = [], found = {} } = entry;
	const { holds = null, pack = null } = session.players[player] ?? {};
	const fault: Fault = {
		id: of,
		atMs: at,
		player,
		symptom,
		incident,
		instrument: holds,
		pack,
		changed: changedBefore(session, player, at),
		doubted: [...doubtedNow(session, player), ...empty],
		found,
		tests: [],
		heardAtMs: null,
		part: null,
		isOpen: true,
	};
	const noted =
		entry.incident === undefined ? noteIncident(session, blankIncident(of, at)) : session;
	const told = changeIncident(noted, incident, (one) => ({
		...one,
		kind: one.kind ?? (symptom === 'silent' ? 'no-sound' : symptom),
		player: one.player ?? player,
		instrument: one.instrument ?? holds,
	}));
	return { ...told, faults: [...session.faults, fault] };
}

function changedBefore(session: Session, player: string, at: number): readonly string[] {
	const { holds, sinceMs, pack, packSinceMs } = session.players[player] ?? {};
	const isRecent = (ms: number | null | undefined) => ms != null && at - ms <= JUST_CHANGED_MS;
	const opened = session.freshBatteries
		.filter((one) => isOnPathOf(session, player, one))
		.flatMap(({ atMs, id }) => (isRecent(atMs) ? [id] : []));
	const changed = [...(isRecent(sinceMs) ? [holds] : []), ...(isRecent(packSinceMs) ? [pack] : [])];
	return [...new Set([...changed.filter((id) => id != null), ...opened])];
}

function doubtedNow(
	{ players, boards, instruments, suspectPacks }: Session,
	player: string,
): readonly string[] {
	const { holds = null } = players[player] ?? {};
	const isFaulty = holds !== null && (instruments[holds]?.context.faults.length ?? 0) > 0;
	return [
		...suspectPacks,
		...(boards[player]?.context.stuck ?? []),
		...(isFaulty && holds !== null ? [holds] : []),
	];
}

/** The session with a test done, and the time without sound over where that brought it back. */
export function testFault(session: Session, entry: Of<'fault-tested'>): Session {
	const { at, test, answer, isHeard = false } = entry;
	const tested = changeFault(session, entry.fault, (fault) => ({
		...fault,
		tests: [...fault.tests, { test, answer, isInSong: songOnNow(session) !== null }],
	}));
	return isHeard ? hearAgain(tested, entry.fault, at) : tested;
}

/** The session with the cause known, which sets the sound right. */
export function findCause(session: Session, { at, fault, part }: Of<'fault-found'>): Session {
	return changeFault(hearAgain(session, fault, at), fault, (one) => ({
		...one,
		part,
		isOpen: false,
	}));
}

/** The session with a search given up. */
export function leaveFault(session: Session, id: RecordId): Session {
	return changeFault(session, id, (one) => ({ ...one, isOpen: false }));
}

/** The session with every search over: nobody seeks on once the show is closed. */
export function leaveAllFaults(session: Session): Session {
	return session.faults.reduce((now, { id }) => leaveFault(now, id), session);
}

function changeFault(session: Session, id: RecordId, change: (fault: Fault) => Fault): Session {
	return {
		...session,
		faults: session.faults.map((one) => (one.id === id ? change(one) : one)),
	};
}

/** The first time that the sound is right again ends the time without it, in the song in which that began. */
function hearAgain(session: Session, id: RecordId, at: number): Session {
	const fault = findFault(session, id);
	if (fault === null || fault.heardAtMs !== null) return session;
	const heard = changeFault(session, id, (one) => ({ ...one, heardAtMs: at }));
	const { player, instrument, symptom } = fault;
	const holds = session.players[player]?.holds ?? null;
	const backup = holds === instrument ? {} : { standIn: holds };
	return changeIncident(heard, fault.incident, (one) => ({
		...one,
		...backup,
		silenceSeconds:
			one.silenceSeconds ??
			(takesSoundAway(symptom) && isInThisSong(session, one)
				? Math.max(0, at - one.atMs) / 1000
				: null),
	}));
}

/** The session with the time without sound over for who had none when the song ended. */
export function endSilence(session: Session, at: number): Session {
	return session.faults.reduce((now, fault) => {
		if (!fault.isOpen || fault.heardAtMs !== null || !takesSoundAway(fault.symptom)) return now;
		return changeIncident(now, fault.incident, (one) => ({
			...one,
			silenceSeconds:
				one.silenceSeconds ??
				(isInThisSong(session, one) ? Math.max(0, at - one.atMs) / 1000 : null),
		}));
	}, session);
}

function isInThisSong(session: Session, { atMs }: Incident): boolean {
	const beganMs = songOnNow(session)?.item.runs.at(-1)?.beganAtMs;
	return beganMs !== undefined && beganMs <= atMs;
}
