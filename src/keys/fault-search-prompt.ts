// The search for a fault: whose sound, what is heard, and then the panel that says what to do with the hands now.
// The panel stays through space and time until the cause is found, the search is left, or it is put off.

import { displayWidth, fitWidth } from '../base/display-width.ts';
import { minutesSeconds } from '../base/duration.ts';
import type { NightMs } from '../journal/entry.ts';
import type { RecordId } from '../journal/record.ts';
import type { StandIn } from '../plan/plan.ts';
import { emptyOn } from '../rig/battery-now.ts';
import { answered, causeOf, type FaultNow, faultNow, type Spare } from '../rig/fault-now.ts';
import type { Symptom } from '../rig/fault-suspects.ts';
import { takesSoundAway } from '../session/apply-faults.ts';
import type { Command } from '../session/command.ts';
import { incidentToSeek } from '../session/decide-faults.ts';
import { findFault } from '../session/find.ts';
import type { Fault } from '../session/session.ts';
import type { Instrument, Show } from '../showfile/show.ts';
import { packName, playerName, shownInstrument } from '../showfile/shown-names.ts';
import { TUBE_LOAD } from '../words/cautions.ts';
import {
	AFTER_SONG,
	causeLogged,
	causeWords,
	downNow,
	expectedWords,
	FAULT_KEYS,
	FAULT_LINES,
	FAULT_PAGE,
	FIND_CAUSE,
	faultCautions,
	faultTitle,
	foundWords,
	handSpare,
	helpsWords,
	isItRight,
	NO_SUCH_CAUSE,
	NO_TEST_OPEN,
	NOT_ONE_FAULT,
	NOTHING_LEFT,
	noSuchSymptom,
	onInstrument,
	percent,
	SOONER,
	SYMPTOM_KEYS,
	SYMPTOM_WORDS,
	suspectWords,
	testWords,
	WHOSE_FAULT,
	whatIsHeard,
	whyWords,
} from '../words/fault.ts';
import { LINE_COLUMNS, sideBySide } from '../words/line-columns.ts';
import type { KeyContext, Outcome, Prompt } from './key-context.ts';
import type { KeyWords, OfferedBackup, PromptView } from './prompt-view.ts';
import { choicePrompt, type OtherKeys, withPlayer, withWayOut } from './prompts.ts';
import { slotOf } from './rack-slots.ts';

/** What is heard, where the incident that the search belongs to says it already. */
const HEARD: Readonly<Record<string, Symptom>> = { 'no-sound': 'silent', wireless: 'wireless' };

/** Whose sound, where several could be meant, and then what is heard. */
export function seekFaultAsked(context: KeyContext): Outcome {
	const { session, nowMs } = context;
	const all = session.show.players.map(({ id }) => id);
	const incident = incidentToSeek(session, nowMs);
	const known = incident?.player ?? null;
	const holding = all.filter((id) => (session.players[id]?.holds ?? null) !== null);
	return withPlayer(context, WHOSE_FAULT, {
		among: known !== null ? [known] : holding.length > 0 ? holding : all,
		goOn: (player) => {
			const symptom = HEARD[incident?.kind ?? ''];
			return symptom === undefined
				? { kind: 'prompt', prompt: symptomPrompt(player) }
				: seek(context, player, symptom);
		},
	});
}

function seek(context: KeyContext, player: string, symptom: Symptom): Outcome {
	const { session, nowMs } = context;
	const empty = emptyOn(session, player, { nowMs, zeroMs: session.zeroAtMs ?? nowMs });
	const found = context.foundBefore(player);
	return { kind: 'command', command: { do: 'seek-fault', player, symptom, empty, found } };
}

function symptomPrompt(player: string): Prompt {
	return choicePrompt(
		({ session }) => ({
			title: whatIsHeard(playerName(session.show, player)),
			lines: sideBySide(SYMPTOM_KEYS.map(({ key, symptom }) => `${key} ${SYMPTOM_WORDS[symptom]}`)),
		}),
		(key, context) => {
			const heard = SYMPTOM_KEYS.find((one) => one.key === key.toLowerCase());
			return heard === undefined
				? { kind: 'say', words: noSuchSymptom(key) }
				: seek(context, player, heard.symptom);
		},
	);
}

/** `0` where something is wrong with what a player has in hands: the way behind it may be at fault. */
export function seekKey({ session }: KeyContext, { id }: Instrument): OtherKeys {
	const holder = session.show.players.find((one) => session.players[one.id]?.holds === id);
	if (holder === undefined) return {};
	const outcome = (): Outcome => ({ kind: 'prompt', prompt: symptomPrompt(holder.id) });
	return { '0': { words: FAULT_KEYS.find, outcome } };
}

/** Keys of the likeliest causes, in their order. */
const CAUSE_KEYS = ['4', '5', '6'];

type Sought = {
	readonly fault: Fault;
	readonly now: FaultNow;
	/** What could be handed, and whether that was not tried yet. */
	readonly spare: Spare | null;
	/** The same with all that is known of it as a backup. */
	readonly backup: StandIn | null;
	readonly causes: FaultNow['step']['causes'];
};

/** The panel of a search. */
export function faultSearchPrompt(id: RecordId): Prompt {
	return {
		isText: false,
		isLasting: true,
		view: (context) => {
			const sought = soughtNow(context, id);
			return sought === null ? EMPTY : panel(context, sought);
		},
		press: (key, context) => {
			const sought = soughtNow(context, id);
			return sought === null ? { kind: 'pass' } : pressed(key, context, sought);
		},
	};
}

const EMPTY: PromptView = { title: '', lines: [], field: null, choices: [] };

function soughtNow(context: KeyContext, id: RecordId): Sought | null {
	const { session } = context;
	const fault = findFault(session, id);
	if (fault === null) return null;
	const [first] = fault.instrument === null ? [] : context.standInsFor(fault.player);
	const offered: Spare | null =
		first === undefined || first.instrument === fault.instrument
			? null
			: {
					instrument: first.instrument,
					tuning: first.tuning,
					capo: first.capo,
					seconds: first.readyInSeconds,
				};
	const now = faultNow(session, fault, offered);
	const causes = now.step.causes
		.filter(({ chance }) => chance > 0)
		.toSorted((one, other) => other.chance - one.chance)
		.slice(0, CAUSE_KEYS.length);
	const isOffered = now.aim === 'sound' && !now.isDone && now.spareTest !== null;
	const isSpare = isOffered && offered !== null;
	return {
		...{ fault, now, causes },
		spare: isSpare ? offered : null,
		backup: (isSpare && first) || null,
	};
}

function pressed(key: string, context: KeyContext, sought: Sought): Outcome {
	const { fault, spare, causes } = sought;
	switch (key) {
		case 'esc':
			return { kind: 'decide-later', of: fault.id };
		case '0':
			return does({ do: 'leave-fault', fault: fault.id });
		case '1':
			return answer('sound', context, sought);
		case '2':
			return answer('same', context, sought);
		case '3':
			return answer('not-now', context, sought);
		case 'enter':
			return spare === null
				? { kind: 'pass' }
				: does({ do: 'take-spare', fault: fault.id, ...spare });
	}
	if (!CAUSE_KEYS.includes(key)) return { kind: 'pass' };
	const named = causes[CAUSE_KEYS.indexOf(key)];
	if (named === undefined) return { kind: 'say', words: NO_SUCH_CAUSE };
	const cause = causeOf(context.session, fault, named.suspect);
	return {
		...does({ do: 'find-cause', fault: fault.id, cause }),
		says: loggedWords(context, fault, cause.part),
	};
}

function answer(
	said: 'sound' | 'same' | 'not-now',
	context: KeyContext,
	{ fault, now }: Sought,
): Outcome {
	const { next: test, change } = now;
	if (test === null) return { kind: 'say', words: NO_TEST_OPEN };
	const { isHeard, cause } = answered(context.session, fault, { test, answer: said });
	// A pedal goes back in where stepping it out changed nothing.
	const isKept = said === 'sound' || (said === 'same' && change?.kind !== 'pedals');
	const outcome = does({
		do: 'test-fault',
		fault: fault.id,
		test: test.id,
		answer: said,
		isHeard,
		change: isKept ? change : null,
		cause,
	});
	if (cause !== null) return { ...outcome, says: loggedWords(context, fault, cause.part) };
	return isHeard && now.aim === 'sound' ? { ...outcome, says: AFTER_SONG } : outcome;
}

function does(command: Command): Extract<Outcome, { kind: 'command' }> {
	return { kind: 'command', command, isStampedNow: true };
}

function loggedWords({ session }: KeyContext, fault: Fault, part: string): string {
	return causeLogged(causeWords(session, fault, part), playerName(session.show, fault.player));
}

function panel(context: KeyContext, sought: Sought): PromptView {
	const { session } = context;
	const { fault, now, spare } = sought;
	const title = faultTitle(session, fault, stateWords(context, sought));
	const { step, next } = now;
	const expected =
		next === null || step.found !== null
			? []
			: [expectedWords(minutesSeconds(step.expectedSeconds), now.aim)];
	const inSight: readonly string[] = [FAULT_PAGE.noEarth, ...(isAtAmp(now) ? [TUBE_LOAD] : [])];
	const answers: readonly KeyWords[] =
		next === null
			? []
			: [
					{ key: '1', words: FAULT_KEYS.right },
					{ key: '2', words: FAULT_KEYS.same },
					{ key: '3', words: FAULT_KEYS.notNow },
				];
	const isSpareNext = next !== null && next === now.spareTest;
	const slot = spare === null ? '' : slotOf(session, spare.instrument).toUpperCase();
	return {
		title,
		lines: [
			nowLine(context, sought),
			...(spare === null || isSpareNext ? [] : [spareLine(context, { ...sought, spare })]),
			causeLine(context, sought),
			...(step.isContradictory ? [NOT_ONE_FAULT] : []),
			...inSight.slice(1),
			[...expected, ...inSight.slice(0, 1)].join('  '),
		],
		more: faultCautions(symptomOf(fault), step.causes)
			.filter((words) => !inSight.includes(words))
			.map((words) => [words]),
		field: null,
		// On the card stands what is to be done: a backup that is no more than a way out does not.
		...(sought.backup !== null &&
			spare !== null &&
			(isSpareNext || spareWorth({ now, spare }).isWorth) && {
				backup: backupOf(context, sought, sought.backup),
			}),
		choices: withWayOut([
			...answers,
			...(spare === null ? [] : [{ key: 'enter', words: handSpare(slot) }]),
			{ key: CAUSE_KEYS.slice(0, sought.causes.length).join(' '), words: FAULT_KEYS.thatOne },
			{ key: '0', words: FAULT_KEYS.leave },
			{ key: 'esc', words: FAULT_KEYS.later },
		]),
	};
}

/** What stands on the card while the search offers it. */
function backupOf(context: KeyContext, { fault }: Sought, standIn: StandIn): OfferedBackup {
	const symptom = symptomOf(fault);
	return {
		...{ player: fault.player, standIn, atMs: sinceMs(context, fault) },
		forWhat: SYMPTOM_WORDS[symptom].toUpperCase(),
		isSilent: takesSoundAway(symptom),
	};
}

/** Whether an amplifier is unplugged or one goes without its cabinet while the test is done. */
function isAtAmp({ next, step }: FaultNow): boolean {
	const at = step.causes.find(({ suspect }) => suspect.id === next?.at)?.suspect;
	return next?.does !== 'straight' && (at?.kind === 'amp' || at?.kind === 'cab');
}

const symptomOf = ({ symptom }: Fault): Symptom =>
	SYMPTOM_KEYS.find((one) => one.symptom === symptom)?.symptom ?? 'silent';

function sinceMs({ session }: KeyContext, { atMs, incident }: Fault): NightMs {
	return session.incidents.find(({ id }) => id === incident)?.atMs ?? atMs;
}

/** How long without sound, or that only the cause is wanted. */
function stateWords(context: KeyContext, { fault, now }: Sought): string {
	const since = minutesSeconds(Math.max(0, context.nowMs - sinceMs(context, fault)) / 1000);
	if (now.aim === 'cause') return FIND_CAUSE;
	return takesSoundAway(fault.symptom) ? downNow(since) : since;
}

function nowLine({ session }: KeyContext, { fault, now }: Sought): string {
	const { show } = session;
	const { step, next, isDone } = now;
	if (next === null) return NOTHING_LEFT;
	const { holds = null, pack = null } = session.players[fault.player] ?? {};
	const isOther = holds !== null && next.clears.includes(fault.instrument ?? '');
	if (isDone) {
		const what = isOther ? shownInstrument(show, holds) : packName(show, pack ?? '');
		return `${FAULT_LINES.listen}  ${isItRight(what)}`;
	}
	const words = doWords({ show, fault, step, next, holds });
	if (step.found !== null) {
		const chance = step.causes.find(({ suspect }) => suspect.id === step.found?.id)?.chance ?? 0;
		return `${FAULT_LINES.now}  ${words}  ${foundWords(show, step.found, chance)}`;
	}
	return `${FAULT_LINES.now}  ${words}  ${whyWords(next, step)}`;
}

/** What to do; after a swap that changed nothing it is the backup that comes off, not what it stands in for. */
function doWords({
	show,
	fault,
	step: { causes },
	next,
	holds,
}: {
	readonly show: Show;
	readonly fault: Fault;
	readonly step: FaultNow['step'];
	readonly next: NonNullable<FaultNow['next']>;
	readonly holds: string | null;
}): string {
	if (holds === null || next.does !== 'swap' || next.at !== fault.instrument) {
		const words = testWords(show, next, causes);
		const isPack = causes.some(({ suspect }) => suspect.id === next.at && suspect.kind === 'pack');
		return isPack && fault.instrument !== null && holds !== fault.instrument
			? onInstrument(words, shownInstrument(show, fault.instrument))
			: words;
	}
	const held = causes.map((one) =>
		one.suspect.id === next.at ? { ...one, suspect: { ...one.suspect, id: holds } } : one,
	);
	return testWords(show, { ...next, at: holds }, held);
}

/** With less than this chance that it helps a backup is only named: common practice, no source. */
const WORTH_TAKING = 0.25;

/** How likely a backup is to help, and whether it is to be taken before anything else is tried. */
function spareWorth({
	now: { step, spareTest },
	spare,
}: {
	readonly now: FaultNow;
	readonly spare: Spare;
}): { readonly isWorth: boolean; readonly chance: number } {
	const chance = step.causes
		.filter(({ suspect }) => spareTest?.clears.includes(suspect.id))
		.reduce((sum, one) => sum + one.chance, 0);
	return { isWorth: spare.seconds < step.expectedSeconds && chance >= WORTH_TAKING, chance };
}

/** The backup: to be taken where that is sooner than the search and may well help. */
function spareLine(
	{ session }: KeyContext,
	{ now, spare }: Sought & { readonly spare: Spare },
): string {
	const { isWorth, chance } = spareWorth({ now, spare });
	return [
		`${isWorth ? FAULT_LINES.take : FAULT_LINES.or}  ${shownInstrument(session.show, spare.instrument)}`,
		minutesSeconds(Math.round(spare.seconds)),
		...(isWorth ? [SOONER] : []),
		helpsWords(chance),
	].join(', ');
}

/** The likeliest causes with the keys that name them. */
function causeLine({ session }: KeyContext, { causes }: Sought): string {
	const gap = '   ';
	const words = (columns: number) =>
		causes
			.map(({ suspect, chance }, place) => {
				const name = suspectWords(session.show, suspect);
				const cut = displayWidth(name) > columns ? fitWidth(name, columns) : name;
				return `${CAUSE_KEYS[place]}: ${cut} ${percent(chance)}`;
			})
			.join(gap);
	let columns = LINE_COLUMNS;
	while (displayWidth(words(columns)) > LINE_COLUMNS && columns > 4) columns -= 1;
	return words(columns);
}
