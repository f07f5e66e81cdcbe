// A search for a fault in the live night: what it aims at now, what to do next with the real spares at hand, and
// what an answer comes to.

import type { FaultCause, RigChange } from '../session/command.ts';
import { songOnNow } from '../session/find.ts';
import { packHanded } from '../session/packs-handed.ts';
import type { Fault, Session } from '../session/session.ts';
import { packName, shownInstrument } from '../showfile/shown-names.ts';
import type { Tuning } from '../tuning/tuning.ts';
import { type FaultCase, type Suspect, SYMPTOMS, suspectsOf } from './fault-suspects.ts';
import type { FaultTest } from './fault-tests.ts';
import { type FaultAim, type FaultStep, faultStep } from './find-fault.ts';

/** What could be in the player's hands in place of what is. */
export type Spare = {
	readonly instrument: string;
	readonly tuning: Tuning | null;
	readonly capo: number | null;
	/** Until it is in hands. */
	readonly seconds: number;
};

export type FaultNow = {
	readonly aim: FaultAim;
	readonly step: FaultStep;
	/** What to do or to judge next; null where nothing more can be tried. */
	readonly next: FaultTest | null;
	/** The test that the backup is; null where there is none, or another instrument was tried. */
	readonly spareTest: FaultTest | null;
	/** It is done already, and only has to be listened to. */
	readonly isDone: boolean;
	/** What doing it changes for good. */
	readonly change: RigChange | null;
	/** The cause, as a fact to be written down, once it is known. */
	readonly cause: FaultCause | null;
};

/** Seconds to put another pack on: common practice, no source. */
const PACK_SECONDS = 20;

/**
 * Whether the song goes on with sound: the cause is sought after it.
 *
 * @example
 * isForLater(SOUGHT, SOUGHT.faults[0]) // => false
 */
export function isForLater(session: Session, { heardAtMs }: Fault): boolean {
	return heardAtMs !== null && songOnNow(session) !== null;
}

/**
 * Where a search stands and what comes next. `spare`: the backup that is in hands soonest; null for none.
 *
 * @example
 * faultNow(SOUGHT, SOUGHT.faults[0], null).next.id // => 'swap-lead'
 */
export function faultNow(session: Session, fault: Fault, spare: Spare | null): FaultNow {
	const isInSong = songOnNow(session) !== null;
	const isHeard = fault.heardAtMs !== null;
	const aim = isInSong && !isHeard ? 'sound' : 'cause';
	const packs = packParts(session, fault);
	const other = otherPack(session, fault);
	const about = faultCase(session, fault, {
		...(spare === null || fault.instrument === null
			? {}
			: {
					[fault.instrument]: {
						spare: shownInstrument(session.show, spare.instrument),
						seconds: spare.seconds,
					},
				}),
		...Object.fromEntries(
			other === null
				? []
				: packs.map((id) => [id, { spare: packName(session.show, other), seconds: PACK_SECONDS }]),
		),
	});
	const [single, both] = instrumentSwaps(fault, packs);
	const spareSwap = spare === null ? null : isOtherPackWith(session, fault, spare) ? both : single;
	const step = faultStep(session.show, about, {
		aim,
		answers: answersOf(fault),
		aside: [
			...fault.tests
				.filter((one) => one.answer === 'not-now' && one.isInSong === isInSong)
				.map(({ test }) => test),
			...[single, both].filter((id) => id !== spareSwap),
			...(other === null && fault.pack !== null ? packs.map((id) => `swap-${id}`) : []),
		],
	});
	const isTried = fault.tests.some(
		({ test, answer }) => [single, both].includes(test) && answer !== 'not-now',
	);
	const done = isHeard ? null : doneAlready(session, fault, { step, packs });
	const next = done ?? step.next ?? fixOf(step, fault);
	return {
		aim,
		step,
		next,
		spareTest: isTried ? null : (step.tests.find(({ id }) => id === spareSwap) ?? null),
		isDone: next !== null && next === done,
		change:
			next === null || next === done ? null : changeOf(session, { fault, next, spare, other }),
		cause: step.found === null ? null : causeOf(session, fault, step.found),
	};
}

/**
 * The search with one more answer: whether the player is heard with it, and the cause where that is known by it.
 *
 * @example
 * answered(SOUGHT, SOUGHT.faults[0], { test: { id: 'swap-lead', restores: true }, answer: 'sound' }) // => { isHeard: true, cause: { part: 'lead', is: 'other' } }
 */
export function answered(
	session: Session,
	fault: Fault,
	{
		test,
		answer,
	}: {
		readonly test: Pick<FaultTest, 'id' | 'restores'>;
		readonly answer: 'sound' | 'same' | 'not-now';
	},
): { readonly isHeard: boolean; readonly cause: FaultCause | null } {
	const isHeard = answer === 'sound' && test.restores;
	const isInSong = songOnNow(session) !== null;
	const after: Fault = {
		...fault,
		heardAtMs: isHeard ? (fault.heardAtMs ?? 0) : fault.heardAtMs,
		tests: [...fault.tests, { test: test.id, answer, isInSong }],
	};
	const { step, cause } = faultNow(session, after, null);
	// Known and not right yet: what sets it right comes next.
	const isOver = after.heardAtMs !== null && !step.isContradictory;
	return { isHeard, cause: isOver ? cause : null };
}

/**
 * The parts of a search as its chances were before any test, from the strings to the desk.
 *
 * @example
 * faultParts(SOUGHT, SOUGHT.faults[0]).map(({ id }) => id) // => ['instrument', 'lead', 'head']
 */
export function faultParts(session: Session, fault: Fault): readonly Suspect[] {
	return suspectsOf(session.show, faultCase(session, fault, {}));
}

/**
 * What somebody says it was, as the fact that it is.
 *
 * @example
 * causeOf(SOUGHT, SOUGHT.faults[0], { id: 'lead' }) // => { part: 'lead', is: 'other' }
 */
export function causeOf(session: Session, fault: Fault, { id }: Pick<Suspect, 'id'>): FaultCause {
	const isPack = fault.pack !== null && packParts(session, fault).includes(id);
	return {
		part: id,
		is: id === fault.instrument ? 'instrument' : isPack ? 'pack' : 'other',
	};
}

/** What the path is called that begins with empty hands. */
const NO_INSTRUMENT = 'instrument';

/** The tests by another instrument: with the pack that is on, and with one of its own. */
function instrumentSwaps(
	{ instrument }: Fault,
	packs: readonly string[],
): readonly [string, string] {
	const id = instrument ?? NO_INSTRUMENT;
	return [`swap-${id}`, `swap-${[id, ...packs].join('+')}`];
}

/**
 * Whether, with an instrument in hands, another pack is on than when the search began. Not where that is kept since
 * somebody else plays on the instrument's own, nor where the instrument brings just that one back.
 */
function isOtherPackWith(session: Session, fault: Fault, { instrument }: Spare): boolean {
	return isOtherPack(fault, packHanded(session, fault.player, instrument).worn);
}

function isOtherPack({ pack }: Fault, worn: string | null): boolean {
	return pack !== null && worn !== null && worn !== pack;
}

function faultCase(
	session: Session,
	fault: Fault,
	swaps: NonNullable<FaultCase['swaps']>,
): FaultCase {
	const { player, instrument, pack } = fault;
	const packs = packParts(session, fault);
	const withParts = (ids: readonly string[]) =>
		ids.flatMap((id) => (id === pack ? [id, ...packs] : [id]));
	return {
		player,
		instrument,
		symptom: SYMPTOMS.find((one) => one === fault.symptom) ?? 'silent',
		pack,
		changed: withParts(fault.changed),
		doubted: withParts(fault.doubted),
		found: foundBefore(session, fault),
		along: packs.length === 0 ? {} : { [instrument ?? NO_INSTRUMENT]: packs },
		swaps,
	};
}

/** How often each part of this player's rig was the cause before this search, tonight and on earlier nights. */
function foundBefore(
	{ faults }: Session,
	{ id, player, found }: Fault,
): Readonly<Record<string, number>> {
	const counts: Record<string, number> = { ...found };
	for (const one of faults) {
		if (one.id === id) break;
		if (one.player === player && one.part !== null) counts[one.part] = (counts[one.part] ?? 0) + 1;
	}
	return counts;
}

/** Ids of the parts of the path that are the player's pack. */
function packParts({ show }: Session, { player, pack }: Fault): readonly string[] {
	const rig = show.rigs?.[player];
	if (rig === undefined) return pack === null ? [] : [pack];
	return rig.filter(({ kind }) => kind === 'pack').map(({ id }) => id);
}

/** What the player wears by now, where that is another; else the first pack of the list that nobody wears and nobody doubts. */
function otherPack({ show, players, suspectPacks }: Session, fault: Fault): string | null {
	const { pack, player } = fault;
	const own = players[player]?.pack ?? null;
	if (own !== null && isOtherPack(fault, own) && !suspectPacks.includes(own)) return own;
	const worn = Object.values(players).map((one) => one.pack);
	const free = show.packs.find(
		({ id }) => id !== pack && !worn.includes(id) && !suspectPacks.includes(id),
	);
	return free?.id ?? null;
}

function answersOf({ tests }: Fault) {
	return tests.flatMap(({ test, answer }) => (answer === 'not-now' ? [] : [{ test, answer }]));
}

/** Another instrument or pack is on than when the search began: that only has to be listened to. */
function doneAlready(
	{ players }: Session,
	fault: Fault,
	{ step, packs }: { readonly step: FaultStep; readonly packs: readonly string[] },
): FaultTest | null {
	const { holds = null, pack = null } = players[fault.player] ?? {};
	const isTried = (id: string) =>
		fault.tests.some(({ test, answer }) => test === id && answer !== 'not-now');
	const [single, both] = instrumentSwaps(fault, packs);
	const isOther = holds !== null && fault.instrument !== null && holds !== fault.instrument;
	const packTests = packs.map((id) => `swap-${id}`);
	const isPackToHear = isOtherPack(fault, pack) && !packTests.some(isTried);
	const done =
		isOther && !isTried(single) && !isTried(both)
			? [isOtherPack(fault, pack) ? both : single]
			: isPackToHear && !isTried(both)
				? packTests
				: [];
	return step.tests.find(({ id }) => done.includes(id)) ?? null;
}

/** The cause is known and the sound is not right: the quickest way past it that was not tried. */
function fixOf({ found, tests }: FaultStep, fault: Fault): FaultTest | null {
	if (found === null) return null;
	return (
		tests
			.filter(
				({ id, clears, restores }) =>
					restores && clears.includes(found.id) && !fault.tests.some(({ test }) => test === id),
			)
			.toSorted((one, other) => one.seconds - other.seconds)[0] ?? null
	);
}

function changeOf(
	session: Session,
	{
		fault,
		next,
		spare,
		other,
	}: {
		readonly fault: Fault;
		readonly next: FaultTest;
		readonly spare: Spare | null;
		readonly other: string | null;
	},
): RigChange | null {
	const { show } = session;
	const [cleared = ''] = next.clears;
	if (next.does === 'bypass' || next.does === 'straight') {
		const pedals = (show.boards[fault.player] ?? []).map(({ id }) => id);
		const out = next.clears.filter((id) => pedals.includes(id));
		return out.length === 0 ? null : { kind: 'pedals', pedals: out };
	}
	if (next.does !== 'swap') return null;
	// Between songs an instrument is only plugged in to listen: what is handed then is the plan's.
	if (cleared === fault.instrument) {
		return spare === null || songOnNow(session) === null ? null : { kind: 'instrument', ...spare };
	}
	const isPack = show.rigs?.[fault.player]?.some(
		({ id, kind }) => id === cleared && kind === 'pack',
	);
	const isOn = other === session.players[fault.player]?.pack;
	return other !== null && !isOn && fault.pack !== null && (isPack || cleared === fault.pack)
		? { kind: 'pack', pack: other }
		: null;
}
