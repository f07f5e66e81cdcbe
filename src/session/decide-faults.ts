// What commands about a search for a fault come to: what was tested, what that changed for good, what was found.

import type { Entry } from '../journal/entry.ts';
import type { Command, FaultCause, RigChange } from './command.ts';
import { changePack } from './decide-gear.ts';
import { spareInHands } from './decide-hands.ts';
import { type Decision, no, yes } from './decision.ts';
import { findFault, holderOf } from './find.ts';
import type { Fault, Incident, Session } from './session.ts';

type Asked<Name extends Command['do']> = Extract<Command, { do: Name }>;

/** An incident noted so long before is still the one whose cause is sought: common practice, no source. */
const SAME_INCIDENT_MS = 5 * 60_000;

/** Kinds of incident of which a cause can be sought in the sound path. */
export const SOUGHT_KINDS: ReadonlySet<string> = new Set([
	'no-sound',
	'battery',
	'wireless',
	'hum',
	'amp',
	'pedal',
	'cable',
	'other',
]);

/** The incident that a search begun now belongs to: the last one, where it is new and may be that; else null. */
export function incidentToSeek(
	{ incidents, faults }: Session,
	atMs: number,
	player?: string,
): Incident | null {
	const last = incidents.at(-1);
	if (last === undefined || atMs - last.atMs > SAME_INCIDENT_MS) return null;
	const isIt =
		(last.kind === null || SOUGHT_KINDS.has(last.kind)) &&
		(last.player === null || player === undefined || last.player === player);
	return isIt && !faults.some(({ incident }) => incident === last.id) ? last : null;
}

/** A player has one search at a time: another symptom begins anew. */
export function seekFault(
	session: Session,
	{ player, symptom, empty = [], found = {} }: Asked<'seek-fault'>,
	atMs: number,
): Decision {
	if (!session.players[player]) return no({ code: 'unknown-player' });
	const incident = incidentToSeek(session, atMs, player);
	const open = session.faults.filter((one) => one.isOpen && one.player === player);
	return yes(...open.map(({ id }): Entry => ({ k: 'fault-left', at: atMs, fault: id })), {
		k: 'fault-sought',
		at: atMs,
		player,
		symptom,
		...(incident === null ? {} : { incident: incident.id }),
		...(empty.length === 0 ? {} : { empty }),
		...(Object.keys(found).length === 0 ? {} : { found }),
	});
}

export function testFault(session: Session, command: Asked<'test-fault'>, atMs: number): Decision {
	const { test, answer, isHeard, change, cause } = command;
	const fault = openFault(session, command.fault);
	if (fault === null) return no({ code: 'no-fault-open' });
	const changed = change === null ? yes() : changeEntries(session, { fault, change }, atMs);
	if (!changed.ok) return changed;
	const tested: Entry = {
		k: 'fault-tested',
		at: atMs,
		fault: fault.id,
		test,
		answer,
		...(isHeard ? { isHeard } : {}),
	};
	// What is on before it is listened to comes first, what is off because of it afterwards.
	return yes(
		...(change?.kind === 'pedals' ? [tested, ...changed.entries] : [...changed.entries, tested]),
		...(cause === null ? [] : causeEntries(session, { fault, cause, change }, atMs)),
	);
}

export function takeSpare(
	session: Session,
	{ fault: id, ...spare }: Asked<'take-spare'>,
	atMs: number,
): Decision {
	const fault = openFault(session, id);
	if (fault === null) return no({ code: 'no-fault-open' });
	return spareInHands(session, { ...spare, player: fault.player }, atMs);
}

export function findCause(
	session: Session,
	{ fault: id, cause }: Asked<'find-cause'>,
	atMs: number,
): Decision {
	const fault = openFault(session, id);
	return fault === null
		? no({ code: 'no-fault-open' })
		: yes(...causeEntries(session, { fault, cause, change: null }, atMs));
}

export function leaveFault(session: Session, id: string, atMs: number): Decision {
	return openFault(session, id) === null
		? no({ code: 'no-fault-open' })
		: yes({ k: 'fault-left', at: atMs, fault: id });
}

function openFault(session: Session, id: string): Fault | null {
	const fault = findFault(session, id);
	return fault?.isOpen ? fault : null;
}

/** What a test did to the rig, as the facts that these are without a search too. */
function changeEntries(
	session: Session,
	{ fault: { player }, change }: { readonly fault: Fault; readonly change: RigChange },
	atMs: number,
): Decision {
	switch (change.kind) {
		case 'instrument':
			return spareInHands(session, { ...change, player }, atMs);
		case 'pack':
			return changePack(session, { do: 'change-pack', player, pack: change.pack }, atMs);
		case 'pedals': {
			const believed = session.boards[player]?.context.pedals ?? {};
			return yes(
				...change.pedals
					.filter((pedal) => believed[pedal]?.on)
					.map((pedal): Entry => ({ k: 'pedal-corrected', at: atMs, player, pedal, on: false })),
			);
		}
	}
}

/** The cause, a pack suspect from now on, an instrument put aside unless it is in hands. */
function causeEntries(
	session: Session,
	{
		fault,
		cause: { part, is },
		change,
	}: { readonly fault: Fault; readonly cause: FaultCause; readonly change: RigChange | null },
	atMs: number,
): readonly Entry[] {
	const { id, player, pack, instrument } = fault;
	const isNewlySuspect = is === 'pack' && pack !== null && !session.suspectPacks.includes(pack);
	const isAside =
		is === 'instrument' &&
		instrument !== null &&
		(change?.kind === 'instrument' || holderOf(session, instrument) === null);
	return [
		{ k: 'fault-found', at: atMs, fault: id, part },
		...(isNewlySuspect ? [{ k: 'pack-suspected', at: atMs, player, pack } as const] : []),
		...(isAside ? [{ k: 'put-aside', at: atMs, instrument, fault: 'electronics' } as const] : []),
	];
}
