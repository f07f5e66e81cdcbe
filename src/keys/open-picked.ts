// What enter opens in the views that are lists: the picked row in full.

import { findSong } from '../session/find.ts';
import { instrumentPage } from './instrument-page.ts';
import type { KeyContext, Outcome } from './key-context.ts';

/** The picked row opened: an instrument's page, a setting, or words; null in the views where nothing is picked. */
export function openPicked(context: KeyContext): Outcome | null {
	switch (context.view) {
		case 'rack':
			return { kind: 'prompt', prompt: instrumentPage() };
		case 'set':
			return { kind: 'say', words: songWords(context) };
		case 'log': {
			const words = context.logWords(context.picked) ?? 'Nothing has happened yet.';
			return { kind: 'say', words };
		}
		case 'settings':
			return { kind: 'open-setting' };
		default:
			return null;
	}
}

function songWords({ session, picked }: KeyContext): string {
	const item = session.list[Math.min(picked, session.list.length - 1)];
	if (!item) return 'The set is empty.';
	if (item.kind === 'interval') return `Interval of ${Math.round(item.seconds / 60)} minutes.`;
	const song = findSong(session, item.song);
	if (!song) return item.song;
	return [
		song.title,
		...(song.tempo === null ? [] : [`${song.tempo} beats a minute`]),
		`ends: ${song.ends}`,
		`cue points: ${song.cues.map(({ at }) => at).join(', ') || 'none'}`,
		...(song.notes ? [song.notes] : []),
	].join('; ');
}
