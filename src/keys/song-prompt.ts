// A song asked for by letters that narrow the list: what is called next, and what the list view puts in.

import { songsOf } from '../session/find.ts';
import type { Session } from '../session/session.ts';
import { comingItems } from '../session/set-places.ts';
import type { Song } from '../showfile/show.ts';
import { NO_SONG } from '../words/questions.ts';
import { moreWords } from '../words/stage.ts';
import type { KeyContext, Outcome, Prompt } from './key-context.ts';
import type { PromptView } from './prompt-view.ts';
import { type TextField, textPrompt } from './text-field.ts';
import { lineOf } from './text-line.ts';

/** The song of that number in tonight's list, then those whose title or id begins with, has a word that begins with, or contains what was typed; in that order. */
export function matchingSongs(session: Session, typed: string): readonly Song[] {
	const wanted = typed.trim().toLowerCase();
	const numbered = songsOf(session.list)[Number(wanted || Number.NaN) - 1]?.song;
	const rank = (song: Song): number => {
		if (song.id === numbered) return -1;
		const title = song.title.toLowerCase();
		if (title.startsWith(wanted) || song.id.toLowerCase().startsWith(wanted)) return 0;
		if (title.split(/\s+/).some((word) => word.startsWith(wanted))) return 1;
		return title.includes(wanted) || song.id.toLowerCase().includes(wanted) ? 2 : 3;
	};
	return session.show.songs
		.map((song) => ({ song, rank: rank(song) }))
		.filter((one) => one.rank < 3)
		.sort((a, b) => a.rank - b.rank)
		.map(({ song }) => song);
}

/** The whole catalogue from the next song on: those to come in their order, then all others. */
export function songsFromNext(session: Session): readonly Song[] {
	const toCome = comingItems(session).flatMap((item) => (item.kind === 'song' ? [item.song] : []));
	const placeOf = (id: string) => (toCome.includes(id) ? toCome.indexOf(id) : toCome.length);
	return session.show.songs.toSorted((one, other) => placeOf(one.id) - placeOf(other.id));
}

const SHOWN_SONGS = 5;
type SongAbout = Pick<PromptView, 'lines' | 'tonight'> & Partial<Pick<PromptView, 'choices'>>;

const NOTHING_SAID: SongAbout = { lines: [] };

/** What choosing a song is for. */
type SongAsk = {
	readonly title: (context: KeyContext) => string;
	/** What is offered while nothing is typed; the whole catalogue unless said. */
	readonly untyped?: (session: Session) => readonly Song[];
	/** What the song would mean; asked once something was typed or picked. */
	readonly about: (song: Song, context: KeyContext) => SongAbout;
	readonly chosen: (song: Song, context: KeyContext) => Outcome;
	/** Keys of this question's own; gets what was typed and picked so far, and the song that this chooses. */
	readonly also?: (
		key: string,
		at: SongField,
		chosen: { readonly song: Song | null; readonly context: KeyContext },
	) => Outcome | null;
};

export type SongField = { readonly picked: number; readonly text: string };

/** A song by letters that narrow the list; up and down pick. */
export function songPrompt(
	ask: SongAsk,
	{ picked, text }: SongField = { picked: 0, text: '' },
): Prompt {
	const offered = (typed: string, session: Session) =>
		typed.trim() === '' && ask.untyped ? ask.untyped(session) : matchingSongs(session, typed);
	const chosenOf = (songs: readonly Song[]) => songs[Math.min(picked, songs.length - 1)];
	const pick = (by: number, typed: string): Outcome => ({
		kind: 'prompt',
		prompt: songPrompt(ask, { picked: Math.max(0, picked + by), text: typed }),
	});
	const field: TextField = {
		view: (typed, context) => {
			const songs = offered(typed, context.session);
			const chosen = chosenOf(songs);
			const first = Math.max(0, Math.min(picked, songs.length - 1) - SHOWN_SONGS + 1);
			const isSaid = typed.trim() !== '' || picked > 0;
			const about = chosen && isSaid ? ask.about(chosen, context) : NOTHING_SAID;
			return {
				...about,
				title: ask.title(context),
				lines: [
					...songs.slice(first, first + SHOWN_SONGS).map((song, place) => {
						const more = songs.length - first - SHOWN_SONGS;
						const rest = place === SHOWN_SONGS - 1 && more > 0 ? `   ${moreWords(more)}` : '';
						return `${song === chosen ? '>' : ' '} ${song.title}${rest}`;
					}),
					...about.lines,
					...(songs.length === 0 ? [NO_SONG] : []),
				],
			};
		},
		also: (key, typed, context) => {
			if (key === 'up') return pick(-1, typed);
			if (key === 'down') return pick(1, typed);
			const song = chosenOf(offered(typed, context.session)) ?? null;
			return ask.also?.(key, { picked, text: typed }, { song, context }) ?? null;
		},
		enter: (typed, context) => {
			const song = chosenOf(offered(typed, context.session));
			return song ? ask.chosen(song, context) : { kind: 'say', words: NO_SONG };
		},
	};
	return textPrompt(field, lineOf(text));
}
