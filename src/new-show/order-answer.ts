// Answers to the question whether the order is right: moved, dropped, an encore, an interval.

import { cleanText } from '../base/clean-text.ts';
import { parseSeconds } from '../base/duration.ts';
import type { DraftItem } from '../setlist/show-draft.ts';
import * as words from '../words/new-show.ts';
import { type Answered, toPlace } from './answered.ts';
import { toHands } from './hands-answer.ts';
import type { Making } from './making.ts';

export const DEFAULT_INTERVAL = '20m';
const ORDER = /^(move|encore|interval|drop) (\d{1,3})(?: (\S+))?$/;

/** `move 3 1`, `encore 9`, `interval 5 20m`, `drop 4`, by indexes of the set; nothing: it is right. */
export function takeOrder(making: Making, text: string): Answered {
	const { draft } = making;
	const { set } = draft;
	if (text === '') return beginHands(making);
	const [, what, first, more] = ORDER.exec(text) ?? [];
	const at = Number(first);
	const item = set[at];
	if (item === undefined) return { refused: words.notInList(cleanText(text)) };
	if (what === 'move') {
		const next = moved(set, at, Number(more));
		// An interval that is carried stays where it can be; one that a song leaves alone goes.
		return item.kind === 'interval' && withoutStray(next).length < next.length
			? { refused: words.NO_INTERVAL_HERE }
			: ordered(making, next);
	}
	if (what === 'drop') {
		const left = set.filter((_, index) => index !== at);
		if (!left.some(({ kind }) => kind === 'song')) return { refused: words.NO_SONG };
		const songs = draft.songs.filter(({ id }) => left.some((one) => isSong(one, id)));
		return ordered({ ...making, draft: { ...draft, songs } }, left);
	}
	if (what === 'encore') return encoreFrom(making, at);
	const seconds = parseSeconds(more ?? DEFAULT_INTERVAL);
	if (seconds === null || seconds < 60) return { refused: words.NO_LENGTH };
	const interval: DraftItem = { kind: 'interval', seconds };
	const after = set[at + 1];
	if (item.kind === 'interval' || after?.kind !== 'song' || after.isEncore)
		return { refused: words.NO_INTERVAL_HERE };
	return toPlace(making, making.place, {
		set: [...set.slice(0, at + 1), interval, ...set.slice(at + 1)],
	});
}

/** The encore begins here; where it does already, there is none. */
function encoreFrom(making: Making, at: number): Answered {
	const { set } = making.draft;
	const first = set.findIndex((one) => one.kind === 'song' && one.isEncore);
	if (set[at]?.kind !== 'song') return { refused: words.NO_ENCORE_HERE };
	const marked = set.map((one, index) =>
		one.kind === 'song' ? { ...one, isEncore: first !== at && index >= at } : one,
	);
	return ordered(making, marked);
}

/** The set in this order, without the intervals that are left where none can be, which is said. */
function ordered(making: Making, set: readonly DraftItem[]): Answered {
	const left = withoutStray(set);
	const next = toPlace(making, making.place, { set: left });
	return left.length < set.length && 'making' in next
		? { ...next, says: words.INTERVAL_GONE }
		: next;
}

/** An interval stands between two songs, and not before an encore. */
function withoutStray(set: readonly DraftItem[]): readonly DraftItem[] {
	return set.filter((item, index) => {
		if (item.kind === 'song') return true;
		const after = set[index + 1];
		return set[index - 1]?.kind === 'song' && after?.kind === 'song' && !after.isEncore;
	});
}

const isSong = (item: DraftItem, id: string): boolean => item.kind === 'song' && item.song === id;

/** The item at another place; what comes to stand in the encore is of it. */
function moved(set: readonly DraftItem[], from: number, to: number): readonly DraftItem[] {
	const item = set[from];
	if (item === undefined) return set;
	const rest = set.filter((_, index) => index !== from);
	const at = Math.min(Math.max(0, to), rest.length);
	const before = rest[at - 1];
	const isEncore = before?.kind === 'song' && before.isEncore;
	const placed = item.kind === 'song' ? { ...item, isEncore } : item;
	return [...rest.slice(0, at), placed, ...rest.slice(at)];
}

/** The catalogue in the order of the list; the first song with what is likely. */
function beginHands(making: Making): Answered {
	const { draft } = making;
	const order = draft.set.flatMap((item) => (item.kind === 'song' ? [item.song] : []));
	const songs = [...new Set(order)].flatMap((id) => draft.songs.filter((one) => one.id === id));
	if (draft.instruments.length === 0) return toPlace(making, { ask: 'write' }, { songs });
	return toHands(making, 0, songs);
}
