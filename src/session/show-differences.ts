// What a show read again has that the night's does not, as data: for the question before it is taken over,
// and for the log.

import { withOwnTimes } from '../showfile/own-times.ts';
import type { Show } from '../showfile/show.ts';
import { playerName, shownInstrument, songTitle } from '../showfile/shown-names.ts';
import { nextSongItem } from './find.ts';
import { readAgain, stillInUse } from './read-again.ts';
import type { Session } from './session.ts';
import { comingItems } from './set-places.ts';

type Thing = { readonly id: string };

/** What else of a show may be another. */
export type OtherPart =
	| 'title'
	| 'hours'
	| 'reference'
	| 'recheck'
	| 'boards'
	| 'packs'
	| 'own-times'
	| 'offsets'
	| 'rest';

/** Things by the names that the show that has them gives them. */
export type ShowDifference =
	| {
			readonly code: 'added' | 'gone' | 'changed';
			readonly what: 'songs' | 'instruments' | 'players';
			readonly names: readonly string[];
	  }
	/** Songs to come, and the title of the next. */
	| { readonly code: 'list'; readonly songs: number; readonly next: string | null }
	| { readonly code: 'others'; readonly parts: readonly OtherPart[] }
	/** The file has it no more, and tonight still needs it. */
	| {
			readonly code: 'stays';
			readonly what: 'song' | 'instrument' | 'player';
			readonly name: string;
	  };

/** What differs; nothing where the file says what the night has. */
export function showDifferences(session: Session, read: Show): readonly ShowDifference[] {
	const { show } = session;
	const after = readAgain(session, read);
	const kept = stillInUse(session, read);
	// One's own times stand in every instrument; a difference of their own says that they are others.
	const timedAlike = withOwnTimes(show, after.show.ownTimes ?? {});
	const differs = (key: keyof Show): boolean => !isSame(show[key], after.show[key]);
	const parts = OTHERS.filter(({ keys }) => keys.some(differs)).map(({ part }) => part);
	return [
		...ofThings('songs', [show.songs, after.show.songs], (id, of) => songTitle(of, id)),
		...ofThings('instruments', [timedAlike.instruments, after.show.instruments], (id, of) =>
			shownInstrument(of, id),
		),
		...ofThings('players', [show.players, after.show.players], (id, of) => playerName(of, id)),
		...(differs('set') ? [listOf(after)] : []),
		...(parts.length === 0 ? [] : [{ code: 'others', parts } as const]),
		...kept.songs.map(({ title }) => ({ code: 'stays', what: 'song', name: title }) as const),
		...kept.instruments.map(
			({ id }) => ({ code: 'stays', what: 'instrument', name: shownInstrument(show, id) }) as const,
		),
		...kept.players.map(({ name }) => ({ code: 'stays', what: 'player', name }) as const),
	];

	function ofThings(
		what: 'songs' | 'instruments' | 'players',
		[before, now]: readonly [readonly Thing[], readonly Thing[]],
		nameIn: (id: string, of: Show) => string,
	): readonly ShowDifference[] {
		const without = (some: readonly Thing[], others: readonly Thing[]): readonly Thing[] =>
			some.filter(({ id }) => !others.some((one) => one.id === id));
		const altered = now.filter((one) => {
			const old = before.find(({ id }) => id === one.id);
			return old !== undefined && !isSame(old, one);
		});
		const of = (code: 'added' | 'gone' | 'changed', things: readonly Thing[], named: Show) =>
			things.length === 0
				? []
				: [{ code, what, names: things.map(({ id }) => nameIn(id, named)) } as const];
		return [
			...of('added', without(now, before), after.show),
			...of('gone', without(before, now), show),
			...of('changed', altered, after.show),
		];
	}
}

const OTHERS: readonly { readonly keys: readonly (keyof Show)[]; readonly part: OtherPart }[] = [
	{ keys: ['title', 'venue', 'date'], part: 'title' },
	{ keys: ['startMinutes', 'curfewMinutes'], part: 'hours' },
	{ keys: ['referenceHertz'], part: 'reference' },
	{ keys: ['staleAfterSeconds', 'staleNewSeconds'], part: 'recheck' },
	{ keys: ['boards'], part: 'boards' },
	{ keys: ['packs'], part: 'packs' },
	{ keys: ['ownTimes'], part: 'own-times' },
	{ keys: ['offsets'], part: 'offsets' },
	{
		keys: ['techs', 'stock', 'abbreviations', 'times', 'gauges', 'unitMass', 'stage', 'notes'],
		part: 'rest',
	},
];

function listOf(after: Session): ShowDifference {
	const songs = comingItems(after).filter(({ kind }) => kind === 'song').length;
	const next = nextSongItem(after);
	return {
		code: 'list',
		songs,
		next: next === null ? null : songTitle(after.show, next.song),
	};
}

function isSame(one: unknown, other: unknown): boolean {
	return JSON.stringify(one) === JSON.stringify(other);
}
