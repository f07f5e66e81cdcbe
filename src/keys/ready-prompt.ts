// Marking ready: which instrument is offered first, and what marking it records as done.

import type { Work } from '../plan/plan.ts';
import { samePitches } from '../plan/same-pitches.ts';
import { readiness, staleAfterSeconds } from '../session/readiness.ts';
import { instrumentName } from '../showfile/shown-names.ts';
import { command } from './action.ts';
import type { KeyContext, Outcome } from './key-context.ts';
import { slotPrompt } from './prompts.ts';
import { slotOf } from './rack-slots.ts';

/** Asks for a slot; enter takes the first in the do-next list, long before the show the first that is worth doing then. */
export function readyPrompt(context: KeyContext): Outcome {
	const first = offered(context);
	const slot = first ? `slot ${slotOf(context.session, first.instrument)}` : null;
	const title = first
		? `Ready: enter for ${slot} ${instrumentName(context.session.show, first.instrument)}, or another slot`
		: 'Ready: which slot?';
	return {
		kind: 'prompt',
		prompt: slotPrompt(title, (instrument, now) => readyOutcome(now, instrument.id), {
			enter: {
				words: slot ?? 'nothing is due',
				outcome: (now) =>
					first
						? readyOutcome(now, first.instrument)
						: { kind: 'say', words: 'No work is due; press a slot.' },
			},
			...(canMarkAll(context)
				? { '0': { words: 'all on the rack', outcome: () => command({ do: 'make-all-ready' }) } }
				: {}),
		}),
	};
}

function offered(context: KeyContext): Work | undefined {
	const work = context.plan.work.filter(
		(one) => context.session.instruments[one.instrument]?.value !== 'inHands',
	);
	// During a show it is always the list's first, which hands know by heart.
	if (context.session.phase.value !== 'before') return work[0];
	return work.find((one) => !isTooEarly(context, one)) ?? work[0];
}

/** Ready as it is wanted, with a touch-up due later all the same: done again now, it would be due as before. */
function isTooEarly({ session, nowMs }: KeyContext, work: Work): boolean {
	const { show } = session;
	const state = session.instruments[work.instrument];
	if (state === undefined || !readiness(show, state, nowMs).isReady) return false;
	const { tuning, capo } = state.context;
	return (
		capo === work.capo &&
		samePitches(tuning, work.to) &&
		work.wantedMs - nowMs > staleAfterSeconds(show, state) * 1000
	);
}

/** The work that marking this instrument ready records as done. */
function readyOutcome({ plan }: KeyContext, instrument: string): Outcome {
	const work = plan.work.find((one) => one.instrument === instrument);
	return command({
		do: 'make-ready',
		instrument,
		due: work ? { tuning: work.to, capo: work.capo } : null,
	});
}

function canMarkAll({ session }: KeyContext): boolean {
	return session.phase.value === 'before' || session.phase.value === 'interval';
}
