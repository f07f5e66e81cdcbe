// What a show read again has that the night's does not, in words: for the question before it is taken
// over, and for the log.

import { withOwnTimes } from '../showfile/own-times.ts';
import type { Show } from '../showfile/show.ts';
import { instrumentName, playerName, songTitle } from '../showfile/shown-names.ts';
import { nextSongItem } from './find.ts';
import { readAgain, stillInUse } from './read-again.ts';
import type { Session } from './session.ts';
import { comingItems } from './set-places.ts';

/** More names than these say nothing to somebody in the dark. */
const MOST_NAMES = 4;

type Thing = { readonly id: string };

/** What differs, a line each; none where the file says what the night has. */
export function showDifferences(session: Session, read: Show): readonly string[] {
	const { show } = session;
	const after = readAgain(session, read);
	const kept = stillInUse(session, read);
	// One's own times stand in every instrument; a line of their own says that they are others.
	const timedAlike = withOwnTimes(show, after.show.ownTimes ?? {});
	const differs = (key: keyof Show): boolean => !isSame(show[key], after.show[key]);
	const others = OTHERS.filter(({ keys }) => keys.some(differs)).map(({ words }) => words);
	return [
		...thingLines('songs', [show.songs, after.show.songs], (id, of) => songTitle(of, id)),
		...thingLines('instruments', [timedAlike.instruments, after.show.instruments], (id, of) =>
			instrumentName(of, id),
		),
		...thingLines('players', [show.players, after.show.players], (id, of) => playerName(of, id)),
		...(differs('set') ? [listLine(after)] : []),
		...(others.length === 0 ? [] : [`changed: ${others.join(', ')}`]),
		...kept.songs.map(({ title }) => `${title} stays for tonight: it was played or is on`),
		...kept.instruments.map(
			({ name }) => `${name} stays for tonight: it is in hands or to be repaired`,
		),
		...kept.players.map(({ name }) => `${name} stays for tonight with something in hands`),
	];

	function thingLines(
		what: string,
		[before, now]: readonly [readonly Thing[], readonly Thing[]],
		nameIn: (id: string, of: Show) => string,
	): readonly string[] {
		const without = (some: readonly Thing[], others: readonly Thing[]): readonly Thing[] =>
			some.filter(({ id }) => !others.some((one) => one.id === id));
		const altered = now.filter((one) => {
			const old = before.find(({ id }) => id === one.id);
			return old !== undefined && !isSame(old, one);
		});
		const line = (words: string, things: readonly Thing[], of: Show): readonly string[] =>
			things.length === 0
				? []
				: [`${what} ${words}: ${names(things.map(({ id }) => nameIn(id, of)))}`];
		return [
			...line('put in', without(now, before), after.show),
			...line('gone', without(before, now), show),
			...line('changed', altered, after.show),
		];
	}
}

const OTHERS: readonly { readonly keys: readonly (keyof Show)[]; readonly words: string }[] = [
	{ keys: ['title', 'venue', 'date'], words: 'title or place' },
	{ keys: ['startMinutes', 'curfewMinutes'], words: 'start or curfew' },
	{ keys: ['referenceHertz'], words: 'reference pitch' },
	{ keys: ['staleAfterSeconds', 'staleNewSeconds'], words: 'how long ready lasts' },
	{ keys: ['boards'], words: 'boards' },
	{ keys: ['packs'], words: 'packs' },
	{ keys: ['ownTimes'], words: 'your own times' },
	{ keys: ['sweeten'], words: 'offsets of tunings' },
	{
		keys: ['techs', 'stock', 'abbreviations', 'times', 'gauges', 'unitMass', 'stage'],
		words: 'other things',
	},
];

function listLine(after: Session): string {
	const songs = comingItems(after).filter(({ kind }) => kind === 'song').length;
	const next = nextSongItem(after);
	return next === null
		? 'the list: nothing is to come'
		: `the list: ${songs} to come, next ${songTitle(after.show, next.song)}`;
}

function names(all: readonly string[]): string {
	const more = all.length - MOST_NAMES;
	return more > 0 ? `${all.slice(0, MOST_NAMES).join(', ')} and ${more} more` : all.join(', ');
}

function isSame(one: unknown, other: unknown): boolean {
	return JSON.stringify(one) === JSON.stringify(other);
}
