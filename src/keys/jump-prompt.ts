// The question which song comes next, with what that changes and leaves out.

import { sessionAfter } from '../plan/what-if/what-if.ts';
import type { Command, JumpPlace } from '../session/command.ts';
import { nextSongItem } from '../session/find.ts';
import { songTitle } from '../showfile/shown-names.ts';
import { skippedTitles } from '../words/jump-words.ts';
import {
	beforeSong,
	inPlaceOf,
	JUMP_TITLE,
	jumpedWords,
	onListAlready,
} from '../words/questions.ts';
import type { KeyContext, Prompt } from './key-context.ts';
import type { KeyWords } from './prompt-view.ts';
import { type SongField, songPrompt, songsFromNext } from './song-prompt.ts';

/** Jump: any song becomes the next, and what would change is shown while typing. */
export function jumpPrompt(place: JumpPlace = 'before-next', field?: SongField): Prompt {
	const other = place === 'before-next' ? 'instead-of-next' : 'before-next';
	return songPrompt(
		{
			title: () => JUMP_TITLE,
			untyped: songsFromNext,
			about: (song, context) => ({
				lines: context.previewOf(song.id, place),
				choices: placeChoices(context, { do: 'choose-next', song: song.id, place: other }),
			}),
			chosen: (song, context) => {
				const command: Command = { do: 'choose-next', song: song.id, place };
				const after = sessionAfter(context, [command]);
				const skipped = after === null ? [] : skippedTitles(context.session, after);
				const says = jumpedWords(song.title, skipped, context.keyOf('take-back'));
				return { kind: 'command', command, ...(skipped.length === 0 ? {} : { says }) };
			},
			also: (key, at, { song, context }) => {
				if (key !== 'tab') return null;
				const isTyped = at.text.trim() !== '' || at.picked > 0;
				const asked = song && ({ do: 'choose-next', song: song.id, place: other } as const);
				if (song && asked && isTyped && placeChoices(context, asked).length === 0) {
					return { kind: 'say', words: onListAlready(song.title) };
				}
				return { kind: 'prompt', prompt: jumpPrompt(other, at) };
			},
		},
		field,
	);
}

/** What tab would do with a song that is put in; nothing for one that stands where it stands. */
function placeChoices(
	context: KeyContext,
	asked: Extract<Command, { do: 'choose-next' }>,
): readonly KeyWords[] {
	const { session } = context;
	const next = nextSongItem(session);
	const after = next && sessionAfter(context, [asked]);
	// What is put in, in whichever place, has a key that the list did not have.
	const isPutIn = after?.list.some(({ key }) => !session.list.some((one) => one.key === key));
	if (!next || !isPutIn) return [];
	const title = songTitle(session.show, next.song);
	return [
		{
			key: 'tab',
			words: asked.place === 'before-next' ? beforeSong(title) : inPlaceOf(title),
		},
	];
}
