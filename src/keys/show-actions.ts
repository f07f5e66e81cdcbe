// Where the show goes, from point to point and from song to song; and steps of the night taken back.

import { songOnNow } from '../session/find.ts';
import {
	ACTION_WORDS,
	FOOTER,
	NO_SONG_ON,
	NOTHING_TO_REDO,
	NOTHING_TO_UNDO,
	SHOW_CLOSED,
} from '../words/actions.ts';
import type { Action } from './action.ts';
import { command } from './action.ts';
import { jumpPrompt } from './jump-prompt.ts';
import { finishCommand, stepOutcome, stepWords } from './step-commands.ts';

export const step: Action = {
	id: 'step',
	// A foot under the rack comes first: hands hold a neck.
	keys: ['pagedown', 'space'],
	words: ACTION_WORDS.step.help,
	footer: stepWords,
	act: stepOutcome,
	isForDark: true,
};

export const stepBack: Action = {
	id: 'step-back',
	keys: ['pageup', 'backspace'],
	words: ACTION_WORDS['step-back'].help,
	act: () => command({ do: 'step-back' }),
	isForDark: true,
};

export const finish: Action = {
	id: 'finish',
	keys: ['d'],
	words: ACTION_WORDS.finish.help,
	footer: ({ session }) => (songOnNow(session) ? FOOTER.done : null),
	whyNot: ({ session }) => (songOnNow(session) ? null : NO_SONG_ON),
	act: (context) => command(finishCommand(context)),
};

export const nextSong: Action = {
	id: 'next-song',
	keys: ['right'],
	words: ACTION_WORDS['next-song'].help,
	act: () => command({ do: 'go-to-next-song' }),
};

export const previousSong: Action = {
	id: 'previous-song',
	keys: ['left'],
	words: ACTION_WORDS['previous-song'].help,
	act: () => command({ do: 'go-to-previous-song' }),
};

export const jump: Action = {
	id: 'jump',
	keys: ['j'],
	words: ACTION_WORDS.jump.help,
	footer: () => FOOTER.jump,
	whyNot: ({ session }) => (session.phase.value === 'packed' ? SHOW_CLOSED : null),
	act: () => ({ kind: 'prompt', prompt: jumpPrompt() }),
};

export const takeBack: Action = {
	id: 'take-back',
	keys: ['u'],
	words: ACTION_WORDS['take-back'].help,
	footer: ({ canTakeBack }) => (canTakeBack ? FOOTER.undo : null),
	whyNot: ({ canTakeBack }) => (canTakeBack ? null : NOTHING_TO_UNDO),
	act: () => ({ kind: 'take-back' }),
};

export const putBack: Action = {
	id: 'put-back',
	keys: ['y'],
	words: ACTION_WORDS['put-back'].help,
	footer: ({ canPutBack }) => (canPutBack ? FOOTER.redo : null),
	whyNot: ({ canPutBack }) => (canPutBack ? null : NOTHING_TO_REDO),
	act: () => ({ kind: 'put-back' }),
};
