// Where the show goes, from point to point and from song to song; and steps of the night taken back.

import { isAfterInterval, nextSongItem, songOnNow } from '../session/find.ts';
import { songTitle } from '../showfile/shown-names.ts';
import {
	ACTION_WORDS,
	FOOTER,
	NO_SONG_ON,
	NOTHING_TO_REDO,
	NOTHING_TO_UNDO,
	SHOW_CLOSED,
} from '../words/actions.ts';
import { pastInterval } from '../words/questions.ts';
import type { Action } from './action.ts';
import { command } from './action.ts';
import { jumpPrompt } from './jump-prompt.ts';
import type { KeyContext } from './key-context.ts';
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

/** An interval between the song on and the next is passed over, and all stays in hands: nothing else would say so. */
function saysInterval({ session, keyOf }: KeyContext): { readonly says?: string } {
	const next = songOnNow(session) === null ? null : nextSongItem(session);
	if (next === null || !isAfterInterval(session, next.key)) return {};
	const title = songTitle(session.show, next.song);
	return { says: pastInterval(title, keyOf('take-back')) };
}

export const nextSong: Action = {
	id: 'next-song',
	keys: ['right'],
	words: ACTION_WORDS['next-song'].help,
	act: (context) => ({ ...command({ do: 'go-to-next-song' }), ...saysInterval(context) }),
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
