// The show file read again on the way: what differs is shown before anything changes.

import { decide } from '../session/decide.ts';
import { showDifferences } from '../session/show-differences.ts';
import { problemText } from '../words/problem-text.ts';
import { problemOf } from '../words/problems.ts';
import { refusalWords } from '../words/refusals.ts';
import { differenceWords } from '../words/show-differences.ts';
import type { KeyContext, Outcome } from './key-context.ts';
import { choicePrompt } from './prompts.ts';

/** Reads the file; its first problem as a sentence, or what differs and the question whether it counts. */
export function readShowOutcome(context: KeyContext): Outcome {
	const reading = context.readShow?.();
	if (!reading) return { kind: 'say', words: 'There is no show file to read here.' };
	const { show, problems } = reading;
	if (show === null) {
		const [first] = problems;
		const more =
			problems.length > 1 ? ` ${problems.length - 1} more; rackside check lists them.` : '';
		return {
			kind: 'say',
			words: `Nothing changes: ${first ? problemText(problemOf(first)) : 'the file cannot be read.'}${more}`,
		};
	}
	const command = { do: 'read-show-again', show } as const;
	const trial = decide(context.session, command, context.nowMs);
	if (!trial.ok) return { kind: 'say', words: refusalWords(context.session.show, trial.why) };
	return {
		kind: 'prompt',
		prompt: choicePrompt(
			({ session }) => ({
				title: 'The show file as it is now:',
				lines: showDifferences(session, show).map(differenceWords),
				choices: [
					{ key: 'enter', words: 'go on by it' },
					{ key: 'esc', words: 'leave it' },
				],
			}),
			(key) => (key === 'enter' ? { kind: 'command', command } : { kind: 'pass' }),
		),
	};
}
