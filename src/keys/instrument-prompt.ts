// What enter opens on the rack: the page of the picked instrument, while up and down go on to the next. It
// stays open until it is left.

import { instrumentPage } from '../bench/instrument-page.ts';
import { RACK_EMPTY } from '../words/instrument-page.ts';
import { ANSWERS } from '../words/questions.ts';
import type { KeyContext, Prompt } from './key-context.ts';
import type { PromptView } from './prompt-view.ts';

/** The page of whatever is picked on the rack. */
export function instrumentPrompt(): Prompt {
	return {
		isText: false,
		isList: true,
		isLasting: true,
		view: (context) => {
			const page = pageOf(context);
			const choices = [
				{ key: 'up', words: ANSWERS.above },
				{ key: 'down', words: ANSWERS.below },
				{ key: 'esc', words: ANSWERS.close },
			];
			return { ...page, field: null, choices };
		},
		press: (key) => {
			if (key === 'up' || key === 'down') return { kind: 'pick', by: key === 'up' ? -1 : 1 };
			return key === 'esc' || key === 'enter' ? { kind: 'close' } : { kind: 'pass' };
		},
	};
}

/** The page of whatever is picked. */
function pageOf(context: KeyContext): Pick<PromptView, 'title' | 'lines' | 'more'> {
	const { session, plan, picked, nowMs } = context;
	const { instruments } = session.show;
	const instrument = instruments[Math.min(picked, instruments.length - 1)];
	return (
		(instrument &&
			instrumentPage(
				{ session, plan, nowMs, past: context.measuredOn(instrument) },
				instrument,
			)) ?? { title: RACK_EMPTY, lines: [] }
	);
}
