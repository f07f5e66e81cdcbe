// Commands from elsewhere than the keys: a foot switch, a script, later sound or another laptop. They go the
// way that a key's goes; what a step reaches is put in here, since only the night has the plan.

import type { RecordId } from '../journal/record.ts';
import { finishCommand, stepCommand } from '../keys/step-commands.ts';
import { showSeconds } from '../plan/demand/sections-ahead.ts';
import type { Command } from '../session/command.ts';
import { saidAt } from './look.ts';
import type { NightContext } from './night-context.ts';
import type { NightSteps } from './night-steps.ts';
import type { NightUnderWay } from './night-under-way.ts';

/** Who asks, in a word or two as people call it: `foot switch`. */
export type Source = string;

export type Submission =
	| Exclude<Command, { do: 'step' | 'finish-song' }>
	/** As the keys for it do, with what the plan has for what is reached. */
	| { readonly do: 'step' }
	| { readonly do: 'finish-song' };

/** What came of it: the record, or a sentence that says why not. */
export type Submitted =
	| { readonly ok: true; readonly record: RecordId }
	| { readonly ok: false; readonly why: string };

export type Submit = (asked: Submission, source: Source) => Submitted;

type Parts = { readonly steps: NightSteps; readonly looked: NightContext };

/** What is submitted to the night under way. */
export function submitAt(underWay: NightUnderWay, { steps, looked }: Parts): Submit {
	return (asked, source) => {
		const context = looked.context();
		const command =
			asked.do === 'step'
				? stepCommand(context)
				: asked.do === 'finish-song'
					? finishCommand(context)
					: asked;
		const record = steps.run(command, underWay.clock.nowMs());
		const { message } = underWay.look();
		// Whoever is at the keys did not press any: what is said is said to be of another's doing.
		if (message !== null)
			underWay.setLook({ message: (nowSeconds) => `${source}: ${saidAt(message, nowSeconds)}` });
		underWay.changed();
		const why = saidAt(message, showSeconds(context)) ?? '';
		return record === null ? { ok: false, why } : { ok: true, record };
	};
}
