// What happens and is to be kept: a string that breaks, an incident, a memo.

import { incidentToSeek } from '../session/decide-faults.ts';
import { openBreak, openFaults } from '../session/find.ts';
import type { Session } from '../session/session.ts';
import { shownInstrument } from '../showfile/shown-names.ts';
import { ACTION_WORDS, FOOTER, noIncident } from '../words/actions.ts';
import { sideBySide } from '../words/line-columns.ts';
import { WHICH_SLOT } from '../words/questions.ts';
import type { Action } from './action.ts';
import { command } from './action.ts';
import { seekFaultAsked } from './fault-search-prompt.ts';
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
		prompt: slotPrompt({ title: WHICH_SLOT.break, lines: sideBySide(heldBy(session)) }, (one) =>
			command({ do: 'report-break', instrument: one.id }),
		),
	};
}

/** Who has what in hands: whose string it was is seen sooner than from which slot. */
function heldBy({ show, players }: Session): readonly string[] {
	return show.players.flatMap(({ id, name }) => {
		const holds = players[id]?.holds ?? null;
		return holds === null ? [] : [`${name} ${shownInstrument(show, holds)}`];
	});
}

export const stringBreak: Action = {
	id: 'break',
	keys: ['b'],
	words: ACTION_WORDS.break.help,
	footer: (context) => (openBreak(context.session) ? FOOTER.backups : FOOTER.break),
	act: breakOutcome,
};

export const incident: Action = {
	id: 'incident',
	keys: ['i'],
	words: ACTION_WORDS.incident.help,
	act: () => command({ do: 'note-incident' }),
};

export const describe: Action = {
	id: 'describe',
	keys: ['e'],
	words: ACTION_WORDS.describe.help,
	footer: ({ session }) => (openBreak(session) ? FOOTER.whichString : null),
	whyNot: ({ session, keyOf }) =>
		session.incidents.length > 0 ? null : noIncident(keyOf('incident')),
	act: (context) => ({ kind: 'prompt', prompt: describePrompt(context) }),
};

export const seekFault: Action = {
	id: 'seek-fault',
	keys: ['n'],
	words: ACTION_WORDS['seek-fault'].help,
	footer: ({ session, nowMs }) =>
		openFaults(session).length > 0 || incidentToSeek(session, nowMs) !== null
			? FOOTER.findFault
			: null,
	act: seekFaultAsked,
};

export const memo: Action = {
	id: 'memo',
	keys: ['m'],
	words: ACTION_WORDS.memo.help,
	act: (context) => ({ kind: 'prompt', prompt: memoPrompt(context) }),
};
