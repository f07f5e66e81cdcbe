// Marking ready: which instrument is offered first, and what marking it records as done.

import { workToDo } from '../plan/backups/break-work.ts';
import { samePitches } from '../plan/demand/same-pitches.ts';
import { goesOutFirst } from '../plan/out-first.ts';
import type { IdleWork, Work } from '../plan/plan.ts';
import type { Due } from '../session/command.ts';
import { findInstrument } from '../session/find.ts';
import { readiness, recheckSeconds } from '../session/readiness.ts';
import type { Session } from '../session/session.ts';
import { shownInstrument, songTitle } from '../showfile/shown-names.ts';
import { sideBySide } from '../words/line-columns.ts';
import {
	ANSWERS,
	DONE,
	NO_WORK_DUE,
	readyForNow,
	readyTitle,
	WHICH_SLOT,
} from '../words/questions.ts';
import { command } from './action.ts';
import type { KeyContext, Outcome } from './key-context.ts';
import { type OtherKeys, slotPrompt } from './prompts.ts';

/** More of them than these stand side by side; so many have a line each even at 80 by 24. */
const MOST_SINGLE = 4;

/** Asks for a slot; enter takes the first on the to-do list, long before the show the first that is worth doing then. */
export function readyPrompt(context: KeyContext): Outcome {
	const { show } = context.session;
	const first = offered(context)?.instrument;
	const name = first === undefined ? null : shownInstrument(show, first);
	const dues = dueLines(context);
	return {
		kind: 'prompt',
		prompt: slotPrompt(
			{
				title: readyTitle(name),
				lines: dues.length > MOST_SINGLE ? sideBySide(dues) : dues,
			},
			({ id }, now) => readyOutcome(now, id),
			{
				enter: {
					words: name ?? ANSWERS.nothingDue,
					outcome: (now) =>
						first === undefined ? { kind: 'say', words: NO_WORK_DUE } : readyOutcome(now, first),
				},
				'=': { words: ANSWERS.asItIs, outcome: asItStands },
				...allKey(context),
			},
		),
	};
}

function offered(context: KeyContext): Work | IdleWork | undefined {
	const { session, plan } = context;
	const work = workToDo(context).filter((one) => isWithin(session, one.instrument));
	const idle = plan.idle.find((one) => isWithin(session, one.instrument));
	// During a show it is always the list's first, which hands know by heart.
	if (session.phase.value !== 'before') return work[0] ?? idle;
	return work.find((one) => !isTooEarly(context, one)) ?? work[0] ?? idle;
}

/** Ready as it is wanted, with a touch-up due later all the same: done again now, it would be due as before. */
function isTooEarly({ session, nowMs }: KeyContext, work: Work): boolean {
	const { show } = session;
	const instrument = findInstrument(session, work.instrument);
	const state = session.instruments[work.instrument];
	if (instrument === null || state === undefined) return false;
	if (!readiness(show, { instrument, state }, nowMs).isReady) return false;
	const { tuning, capo } = state.context;
	return (
		capo === work.capo && samePitches(tuning, work.to) && isStaleBefore({ session, nowMs }, work)
	);
}

/** Within the technician's reach: it can be marked ready. */
function isWithin({ instruments }: Session, instrument: string): boolean {
	const value = instruments[instrument]?.value;
	return value === 'racked' || value === 'staged' || value === 'onBench';
}

/** `4 Anchor  drop D`: what marking each that has work due records, in the to-do list's order, then strings that nothing waits for. */
function dueLines(context: KeyContext): readonly string[] {
	const { session } = context;
	const { show } = session;
	const worked = workToDo(context)
		.filter((one) => !goesOutFirst(context.plan, one))
		.map(({ instrument }) => instrument);
	const broken = show.instruments.filter(({ id }) => isBroken(session, id)).map(({ id }) => id);
	return [...new Set([...worked, ...broken])]
		.filter((id) => isWithin(session, id))
		.map((id) => `${shownInstrument(show, id)}  ${doneWords(context, id)}`);
}

function isBroken({ instruments }: Session, instrument: string): boolean {
	return (instruments[instrument]?.context.stringsDown.length ?? 0) > 0;
}

function doneWords(context: KeyContext, instrument: string): string {
	const { session } = context;
	const state = session.instruments[instrument]?.context;
	const due = dueOn(context, instrument);
	const done = [
		...(isBroken(session, instrument) ? [DONE.restring] : []),
		...(due && state && !samePitches(due.tuning, state.tuning) ? [due.tuning.name] : []),
		...(due && due.capo !== state?.capo ? [DONE.capo(due.capo)] : []),
		...(due?.isEarly ? [DONE.noTouchUp] : []),
	];
	return done.length === 0 ? DONE.touchUp : done.join(', ');
}

/**
 * The work of its next use: the first piece alone while it is too early for the touch-up, else all of it. New
 * strings are due on a broken one even where nothing waits for it.
 */
function dueOn(context: KeyContext, instrument: string): Due | null {
	const { session, nowMs } = context;
	const state = session.instruments[instrument]?.context;
	const pieces = workToDo(context).filter((one) => one.instrument === instrument);
	const [first] = pieces;
	// What it is to be in after it was out is nothing that can have been done.
	if (first && state && !goesOutFirst(context.plan, first)) {
		const isUse = ({ section }: Work) => section === first.section;
		const last = pieces.findLast(isUse) ?? first;
		return first.isEarly && last.fromMs > nowMs
			? { tuning: first.to, capo: state.capo, isEarly: true }
			: { tuning: last.to, capo: last.capo };
	}
	return state && isBroken(session, instrument) ? { tuning: state.tuning, capo: state.capo } : null;
}

/** Ready, with the work that marking it records as done. */
function readyOutcome(context: KeyContext, instrument: string): Outcome {
	const due = dueOn(context, instrument);
	const marked = { do: 'make-ready', instrument, due } as const;
	const use = workToDo(context).find((one) => one.instrument === instrument);
	if (use === undefined || due?.isEarly || !isStaleBefore(context, use)) return command(marked);
	const { show } = context.session;
	const says = readyForNow(shownInstrument(show, instrument), songTitle(show, use.section.song));
	return { kind: 'command', command: marked, says };
}

/** The mark does not last until it is handed, so its touch-up stays on the list. */
function isStaleBefore(
	{ session, nowMs }: Pick<KeyContext, 'session' | 'nowMs'>,
	{ instrument: id, wantedMs }: Work,
): boolean {
	const instrument = findInstrument(session, id);
	const hours = session.instruments[id]?.context.stringHours ?? null;
	if (instrument === null) return false;
	return wantedMs - nowMs > recheckSeconds(session.show, instrument, hours) * 1000;
}

/** Asks for the slot of what was checked and is to stay as it is set. */
function asItStands(): Outcome {
	return {
		kind: 'prompt',
		prompt: slotPrompt(WHICH_SLOT.readyAsItIs, ({ id }) =>
			command({ do: 'make-ready', instrument: id, due: null }),
		),
	};
}

function allKey({ session }: KeyContext): OtherKeys {
	const { value } = session.phase;
	return value === 'before' || value === 'interval'
		? {
				'0': {
					words: ANSWERS.allAsTheyAre,
					outcome: () => command({ do: 'make-all-ready' }),
				},
			}
		: {};
}
