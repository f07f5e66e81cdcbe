// What happens and is to be kept: a string that breaks, an incident, a memo.

import { openBreak } from '../session/find.ts';
import type { Action } from './action.ts';
import { command } from './action.ts';
import type { KeyContext, Outcome } from './key-context.ts';
import { slotPrompt } from './prompts.ts';
import { describePrompt, memoPrompt } from './text-prompts.ts';

function breakOutcome({ session }: KeyContext): Outcome {
	const held = Object.values(session.players).flatMap(({ holds }) =>
		holds === null ? [] : [holds],
	);
	const [only, ...more] = held;
	if (only !== undefined && more.length === 0)
		return command({ do: 'report-break', instrument: only });
	return {
		kind: 'prompt',
		prompt: slotPrompt('String break: which slot?', (one) =>
			command({ do: 'report-break', instrument: one.id }),
		),
	};
}

export const stringBreak: Action = {
	id: 'break',
	keys: ['b'],
	words: 'string break: backups at once, best first',
	footer: (context) => (openBreak(context.session) ? 'backups' : 'break'),
	act: breakOutcome,
};

export const incident: Action = {
	id: 'incident',
	keys: ['i'],
	words: 'incident: stamped now, nothing asked',
	act: () => command({ do: 'note-incident' }),
};

export const describe: Action = {
	id: 'describe',
	keys: ['e'],
	words: 'add to the last incident: string by digit, kind by letter, words',
	footer: ({ session }) => (openBreak(session) ? 'which string' : null),
	whyNot: ({ session, keyOf }) =>
		session.incidents.length > 0
			? null
			: `There is no incident to add to; ${keyOf('incident')} marks one.`,
	act: (context) => ({ kind: 'prompt', prompt: describePrompt(context) }),
};

export const memo: Action = {
	id: 'memo',
	keys: ['m'],
	words: 'memo',
	act: (context) => ({ kind: 'prompt', prompt: memoPrompt(context) }),
};
