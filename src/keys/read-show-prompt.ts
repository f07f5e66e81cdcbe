// The show file read again on the way: what differs is shown before anything changes.

import { decide } from '../session/decide.ts';
import { showDifferences } from '../session/show-differences.ts';
import { problemText } from '../words/problem-text.ts';
import { problemOf } from '../words/problems.ts';
import { ANSWERS, NO_SHOW_FILE, SHOW_FILE_TITLE, unreadable } from '../words/questions.ts';
import { refusalWords } from '../words/refusals.ts';
import { differenceWords } from '../words/show-differences.ts';
import type { KeyContext, Outcome } from './key-context.ts';
import { choicePrompt } from './prompts.ts';

/** Reads the file; its first problem as a sentence, or what differs and the question whether it counts. */
export function readShowOutcome(context: KeyContext): Outcome {
	const reading = context.readShow?.();
	if (!reading) return { kind: 'say', words: NO_SHOW_FILE };
	const { show, problems } = reading;
	if (show === null) {
		const [first] = problems;
		return {
			kind: 'say',
			words: unreadable(first ? problemText(problemOf(first)) : null, problems.length - 1),
		};
	}
	const command = { do: 'read-show-again', show } as const;
	const trial = decide(context.session, command, context.nowMs);
	if (!trial.ok) return { kind: 'say', words: refusalWords(context.session.show, trial.why) };
	return {
		kind: 'prompt',
		prompt: choicePrompt(
			({ session }) => ({
				title: SHOW_FILE_TITLE,
				lines: showDifferences(session, show).map(differenceWords),
				choices: [
					{ key: 'enter', words: ANSWERS.useIt },
					{ key: 'esc', words: ANSWERS.cancel },
				],
			}),
			(key) => (key === 'enter' ? { kind: 'command', command } : { kind: 'pass' }),
		),
	};
}
