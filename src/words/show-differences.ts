// What a show read again changes, a line each.

import type { OtherPart, ShowDifference } from '../session/show-differences.ts';

/** More names than these say nothing to somebody in the dark. */
const MOST_NAMES = 4;

const PARTS: Readonly<Record<OtherPart, string>> = {
	title: 'title or place',
	hours: 'start or curfew',
	reference: 'reference pitch',
	recheck: 'how long ready lasts',
	boards: 'boards',
	packs: 'packs',
	'own-times': 'your own times',
	offsets: 'offsets',
	rest: 'other things',
};

const STAYS: Readonly<Record<Extract<ShowDifference, { code: 'stays' }>['what'], string>> = {
	song: 'it was played or is on',
	instrument: 'it is in hands or to be repaired',
	player: 'something is in hands',
};

/** `instruments gone: Alder`. */
export function differenceWords(difference: ShowDifference): string {
	switch (difference.code) {
		case 'added':
		case 'gone':
		case 'changed':
			return `${difference.what} ${difference.code}: ${namesWords(difference.names)}`;
		case 'list':
			return difference.next === null
				? 'the list: nothing to come'
				: `the list: ${difference.songs} to come, next ${difference.next}`;
		case 'others':
			return `changed: ${difference.parts.map((part) => PARTS[part]).join(', ')}`;
		case 'stays':
			return `${difference.name} stays for tonight: ${STAYS[difference.what]}`;
	}
}

function namesWords(all: readonly string[]): string {
	const more = all.length - MOST_NAMES;
	return more > 0 ? `${all.slice(0, MOST_NAMES).join(', ')} and ${more} more` : all.join(', ');
}
