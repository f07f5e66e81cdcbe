// Where the show goes, from point to point and from song to song; and steps of the night taken back.

import { songOnNow } from '../session/find.ts';
import type { Action } from './action.ts';
import { command } from './action.ts';
import { jumpPrompt } from './jump-prompt.ts';
import { finishCommand, stepCommand, stepWords } from './step-commands.ts';
export const step: Action = {
	id: 'step',
	keys: ['space', 'pagedown'],
	words:
		'next: the cue point, the end of the song, the next song with its hand-overs; page down (a foot switch) does it in every view',
	footer: stepWords,
	act: (context) => command(stepCommand(context)),
	isForDark: true,
};

export const stepBack: Action = {
	id: 'step-back',
	keys: ['backspace', 'pageup'],
	words: 'one cue point back; page up (a foot switch) does it in every view',
	act: () => command({ do: 'step-back' }),
	isForDark: true,
};

export const finish: Action = {
	id: 'finish',
	keys: ['d'],
	words: 'the song is done, whatever cue points were left',
	footer: ({ session }) => (songOnNow(session) ? 'done' : null),
	whyNot: ({ session }) => (songOnNow(session) ? null : 'No song is on.'),
	act: (context) => command(finishCommand(context)),
};

export const nextSong: Action = {
	id: 'next-song',
	keys: ['right'],
	words: 'next song at once, no hand-over recorded',
	act: () => command({ do: 'go-to-next-song' }),
};

export const previousSong: Action = {
	id: 'previous-song',
	keys: ['left'],
	words: 'previous song at once, no hand-over recorded',
	act: () => command({ do: 'go-to-previous-song' }),
};

export const jump: Action = {
	id: 'jump',
	keys: ['j'],
	words:
		'jump: any song, on the list or not, becomes the next; one from off the list is put in before the next, or by tab in its place',
	footer: () => 'jump',
	whyNot: ({ session }) =>
		session.phase.value === 'packed' ? 'The show is over and packed.' : null,
	act: () => ({ kind: 'prompt', prompt: jumpPrompt() }),
};

export const takeBack: Action = {
	id: 'take-back',
	keys: ['u'],
	words: 'take back the last step, as far back as the start of the night',
	footer: ({ canTakeBack }) => (canTakeBack ? 'undo' : null),
	whyNot: ({ canTakeBack }) =>
		canTakeBack ? null : 'This is the start of the night; there is nothing to take back.',
	act: () => ({ kind: 'take-back' }),
};

export const putBack: Action = {
	id: 'put-back',
	keys: ['y'],
	words: 'put back what was taken back',
	footer: ({ canPutBack }) => (canPutBack ? 'put back' : null),
	whyNot: ({ canPutBack }) =>
		canPutBack ? null : 'Nothing was taken back that could be put back.',
	act: () => ({ kind: 'put-back' }),
};
