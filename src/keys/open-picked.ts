// What enter opens in the views that are lists: the picked row in full.

import { findSong } from '../session/find.ts';
import { LIST_EMPTY } from '../words/actions.ts';
import { cuesWords, intervalSentence, NOTHING_HAPPENED } from '../words/questions.ts';
import { endsWords, tempoWords } from '../words/stage.ts';
import { instrumentPrompt } from './instrument-prompt.ts';
import type { KeyContext, Outcome } from './key-context.ts';
import { ringsAsked } from './ringing-prompt.ts';

/** The picked row opened: an instrument's page, a setting, or words; in the rig view the question of what rings; null in the views where nothing is picked. */
export function openPicked(context: KeyContext): Outcome | null {
	switch (context.view) {
		case 'rack':
			return { kind: 'prompt', prompt: instrumentPrompt() };
		case 'list':
			return { kind: 'say', words: songWords(context) };
		case 'log': {
			const words = context.logWords(context.picked) ?? NOTHING_HAPPENED;
			return { kind: 'say', words };
		}
		case 'rig':
			return ringsAsked(context);
		case 'settings':
			return { kind: 'open-setting' };
		default:
			return null;
	}
}

function songWords({ session, picked }: KeyContext): string {
	const item = session.list[Math.min(picked, session.list.length - 1)];
	if (!item) return LIST_EMPTY;
	if (item.kind === 'interval') return intervalSentence(Math.round(item.seconds / 60));
	const song = findSong(session, item.song);
	if (!song) return item.song;
	return [
		song.title,
		...(song.tempo === null ? [] : [tempoWords(song.tempo)]),
		endsWords(song.ends),
		cuesWords(song.cues.map(({ at }) => at)),
		...(song.notes ? [song.notes] : []),
	].join('; ');
}
