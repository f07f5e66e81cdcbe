// What one answer comes to. Answers are texts, so that they can be kept, played again and taken back: what was
// typed into a field, the number of a list's entry, or a few words for what is done to the order and the hands.

import { cleanText } from '../base/clean-text.ts';
import { graphemes } from '../base/display-width.ts';
import { parseSeconds } from '../base/duration.ts';
import type {
	DraftCell,
	DraftInstrument,
	DraftItem,
	DraftSong,
	ShowDraft,
} from '../setlist/show-draft.ts';
import { parseDate } from '../showfile/calendar-date.ts';
import { INSTRUMENT_KINDS } from '../tuning/kind.ts';
import { namedTunings, readTuning } from '../tuning/tuning.ts';
import * as words from '../words/new-show.ts';
import {
	firstHands,
	freeId,
	handsAt,
	likelyKind,
	PLAYS_NAMES,
	playersFor,
	playersOfKind,
	usualTuning,
} from './guesses.ts';
import type { Making, Place } from './making.ts';
import { freeSlot, indexOfKey, readSlot } from './numbered.ts';
import { readTime, readTitle, readTuned, secondsOf } from './read-answer.ts';

/** The show after an answer, with what is to be said of it; or why the answer cannot be used. */
export type Answered =
	| { readonly making: Making; readonly says?: string }
	| { readonly refused: string };

const DEFAULT_START = '20:00';
/** Of a kind that is usually in nothing, until the next question is answered: any notes, so that the file can be read. */
const NOTES_UNTIL_ASKED = 'E2 A2 D3 G3 B3 E4';
export const DEFAULT_INTERVAL = '20m';
const LONGEST_NAME = 160;
const MOST_PLAYERS = 20;
const MOST_OTHERS = 400;
const LETTER_OR_FIGURE = /[\p{L}\p{N}]/u;

/** The show after this answer to its question. */
export function answered(making: Making, text: string): Answered {
	return TAKES[making.place.ask](making, text);
}

/** When a show starts that nobody says more of: common practice, no source. */
export function startOffered({ draft }: Making): string {
	return draft.start ?? DEFAULT_START;
}

type Take = (making: Making, text: string) => Answered;

const TAKES: Readonly<Record<Place['ask'], Take>> = {
	add: (making, text) =>
		text === ''
			? then(making, { ask: 'instrument' }, {})
			: { refused: words.keyDoesNothing(cleanText(text)) },
	title: (making, text) => {
		const title = nameOf(text);
		// A place that was last night's is not taken for tonight's unasked.
		const hasVenue = making.draft.venue !== null;
		return then(making, { ask: hasVenue ? 'venue' : 'date' }, title === null ? {} : { title });
	},
	venue: (making, text) => {
		const venue = text.trim() === '-' ? null : (nameOf(text) ?? making.draft.venue);
		return then(making, { ask: 'date' }, { venue });
	},
	date: (making, text) => {
		const date = text.trim() === '' ? making.draft.date : parseDate(text);
		return date === null
			? { refused: words.NO_SUCH_DAY }
			: then(making, { ask: 'start' }, { date });
	},
	start: (making, text) => {
		const start = readTime(text.trim() === '' ? startOffered(making) : text);
		return start === null
			? { refused: words.NO_SUCH_TIME }
			: then(making, { ask: 'curfew' }, { start });
	},
	curfew: (making, text) => {
		const isOffered = text.trim() === '';
		const curfew = isOffered ? making.draft.curfew : text.trim() === '-' ? null : readTime(text);
		if (curfew === null && !isOffered && text.trim() !== '-')
			return { refused: words.NO_SUCH_TIME };
		return then(making, { ask: making.earlier ? 'write' : 'player' }, { curfew });
	},
	player: takePlayer,
	plays: (making, text) => {
		const plays = text === '' ? PLAYS_NAMES[0] : PLAYS_NAMES[indexOfKey(text)];
		if (plays === undefined) return { refused: words.notInList(text) };
		const { players } = making.draft;
		const last = players.length - 1;
		return then(
			making,
			{ ask: 'player' },
			{ players: players.map((one, index) => (index === last ? { ...one, plays } : one)) },
		);
	},
	instrument: takeInstrument,
	kind: (making, text) => {
		const instrument = lastInstrument(making);
		const kind = text === '' ? instrument.kind : INSTRUMENT_KINDS[indexOfKey(text)];
		if (kind === undefined) return { refused: words.notInList(text) };
		const tuning = usualTuning(kind) ?? NOTES_UNTIL_ASKED;
		return changeLast(making, { ask: 'tuning' }, { kind, tuning });
	},
	tuning: takeTuning,
	whose: (making, text) => {
		if (text === '') return changeLast(making, { ask: 'instrument' }, { for: null });
		const able = playersOfKind(making.draft, lastInstrument(making).kind);
		const player = able[indexOfKey(text)];
		return player
			? changeLast(making, { ask: 'instrument' }, { for: [player.id] })
			: { refused: words.notInList(text) };
	},
	song: takeSong,
	length: (making, text) => {
		const seconds = text.trim() === '' ? null : secondsOf(text);
		if (seconds === null && text.trim() !== '') return { refused: words.NO_LENGTH };
		const { songs } = making.draft;
		const last = songs.length - 1;
		return then(
			making,
			{ ask: 'song' },
			{ songs: songs.map((one, index) => (index === last ? { ...one, seconds } : one)) },
		);
	},
	order: takeOrder,
	hands: takeHands,
	write: () => ({ refused: words.keyDoesNothing('enter') }),
};

function then(making: Making, place: Place, changed: Partial<ShowDraft>): Answered {
	const draft = { ...making.draft, ...changed };
	const rack = { slots: draft.instruments.map(({ slot }) => slot), players: draft.players.length };
	return { making: { ...making, draft, place, slot: freeSlot(rack) } };
}

/** The name as it is kept; null for nothing but blanks. */
function nameOf(text: string): string | null {
	let name = '';
	for (const letter of graphemes(cleanText(text.trim()))) {
		if (name.length + letter.length > LONGEST_NAME) break;
		name += letter;
	}
	return name.trim() === '' ? null : name.trim();
}

function takePlayer(making: Making, text: string): Answered {
	const { players } = making.draft;
	const name = nameOf(text);
	if (name === null)
		return players.length === 0
			? { refused: words.NO_PLAYER }
			: then(making, { ask: 'instrument' }, {});
	if (!LETTER_OR_FIGURE.test(name)) return { refused: words.NO_NAME };
	if (players.length >= MOST_PLAYERS) return { refused: words.TOO_MANY };
	const plays = PLAYS_NAMES[0] ?? null;
	return then(
		making,
		{ ask: 'plays' },
		{ players: [...players, { id: freeId(name, 'player', players), name, plays }] },
	);
}

const SLOT_GIVEN = /^slot (.+)$/u;

function takeInstrument(making: Making, text: string): Answered {
	const { instruments, players } = making.draft;
	const [, wanted] = SLOT_GIVEN.exec(text) ?? [];
	if (wanted !== undefined) return takeSlot(making, wanted);
	const name = nameOf(text);
	if (name === null) return then(making, { ask: 'song' }, {});
	if (instruments.length >= MOST_OTHERS) return { refused: words.TOO_MANY };
	const kind = likelyKind(making.draft);
	const instrument: DraftInstrument = {
		id: freeId(name, 'instrument', instruments),
		name,
		slot: making.slot,
		kind,
		for: null,
		tuning: usualTuning(kind) ?? NOTES_UNTIL_ASKED,
	};
	const next = then(making, { ask: 'kind' }, { instruments: [...instruments, instrument] });
	return players.length === 0 ? { refused: words.NO_PLAYER } : next;
}

function takeSlot(making: Making, wanted: string): Answered {
	const { instruments, players } = making.draft;
	const slots = instruments.map(({ slot }) => slot);
	const slot = readSlot(wanted, { slots, players: players.length });
	if (slot === 'bad') return { refused: words.noSlot(cleanText(wanted)) };
	if (slot !== 'taken') return { making: { ...making, slot } };
	const holder = instruments.find((one) => one.slot === wanted.toLowerCase());
	return { refused: words.slotTaken(wanted, holder?.name ?? '') };
}

function lastInstrument({ draft }: Making): DraftInstrument {
	const last = draft.instruments.at(-1);
	if (!last) throw new RangeError('there is no instrument to ask about');
	return last;
}

function changeLast(making: Making, place: Place, changed: Partial<DraftInstrument>): Answered {
	const { instruments } = making.draft;
	const last = { ...lastInstrument(making), ...changed };
	return then(making, place, { instruments: [...instruments.slice(0, -1), last] });
}

function takeTuning(making: Making, text: string): Answered {
	const { kind } = lastInstrument(making);
	const typed = text.trim();
	const named = namedTunings(kind);
	const numbered = /^\d{1,2}$/.test(typed) ? named[Number(typed) - 1]?.name : undefined;
	const reading = numbered === undefined ? readTuning(typed, kind, {}) : null;
	const read = reading?.ok ? reading.tuning.name : null;
	const tuning = typed === '' ? usualTuning(kind) : (numbered ?? read);
	if (tuning === null)
		return { refused: typed === '' ? words.NOTES_NEEDED : words.noTuning(cleanText(typed)) };
	const isAsked = playersOfKind(making.draft, kind).length > 1;
	return changeLast(making, { ask: isAsked ? 'whose' : 'instrument' }, { tuning });
}

function takeSong(making: Making, text: string): Answered {
	const { songs, set } = making.draft;
	const read = readTitle(text);
	const title = nameOf(read.title);
	if (title === null) return making.adding ? afterAdded(making) : afterSongs(making);
	if (set.length >= MOST_OTHERS) return { refused: words.TOO_MANY };
	const again = songs.find((one) => one.title.toLowerCase() === title.toLowerCase());
	const song: DraftSong = again ?? {
		id: freeId(title, 'song', songs),
		title,
		seconds: read.seconds,
		tempo: null,
		starts: null,
		ends: null,
		notes: null,
		hands: {},
	};
	return then(
		making,
		{ ask: again || read.seconds !== null ? 'song' : 'length' },
		{
			songs: again ? songs : [...songs, song],
			set: [...set, { kind: 'song', song: song.id, gapSeconds: null, isEncore: false }],
		},
	);
}

function afterSongs(making: Making): Answered {
	const { set } = making.draft;
	return set.length === 0 ? { refused: words.NO_SONG } : then(making, { ask: 'order' }, {});
}

/** The order of a file that is there is its owner's; who plays what is asked of what was added. */
function afterAdded(making: Making): Answered {
	const { draft, adding } = making;
	const first = adding?.draft.songs.length ?? 0;
	const isAsked = draft.songs.length > first && draft.instruments.length > 0;
	return isAsked ? toHands(making, first, draft.songs) : then(making, { ask: 'write' }, {});
}

function toHands(making: Making, song: number, songs: readonly DraftSong[]): Answered {
	const hands = song === 0 ? firstHands(making.draft) : {};
	const begun = songs.map((one, index) => (index === song ? { ...one, hands } : one));
	return then(making, { ask: 'hands', song }, { songs: begun });
}

const ORDER = /^(move|encore|interval|drop) (\d{1,3})(?: (\S+))?$/;

/** `move 3 1`, `encore 9`, `interval 5 20m`, `drop 4`, by indexes of the set; nothing: it is right. */
function takeOrder(making: Making, text: string): Answered {
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
	return then(making, making.place, {
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
	const next = then(making, making.place, { set: left });
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
	if (draft.instruments.length === 0) return then(making, { ask: 'write' }, { songs });
	return toHands(making, 0, songs);
}

const HANDS = /^(hand|none|keep|tuned) (\S+)(?: (.*))?$/u;

/** `hand ash A1`, `none ash`, `keep ash`, `tuned ash drop D c2`; nothing: so it is played. */
function takeHands(making: Making, text: string): Answered {
	const { draft, place } = making;
	if (place.ask !== 'hands') return { refused: words.notInList(cleanText(text)) };
	if (text === '') {
		const isLast = place.song >= draft.songs.length - 1;
		return then(making, isLast ? { ask: 'write' } : { ask: 'hands', song: place.song + 1 }, {});
	}
	const [, what, id = '', more = ''] = HANDS.exec(text) ?? [];
	const player = draft.players.find((one) => one.id === id);
	if (!player) return { refused: words.notInList(cleanText(text)) };
	if (what === 'none') return withHands(making, { [id]: { kind: 'none' } });
	if (what === 'keep') return withHands(making, { [id]: null });
	if (what === 'tuned') return tuned(making, id, more);
	const given = draft.instruments.find((one) => one.id === more);
	if (!given) return { refused: words.notInList(cleanText(text)) };
	const before = handsAt(draft, place.song);
	const other = draft.players.find((one) => one.id !== id && has(before[one.id], given.id));
	const next = withHands(making, {
		...(other ? { [other.id]: { kind: 'none' } } : {}),
		[id]: { kind: 'named', instrument: given.id, tuning: null, capo: 0 },
	});
	return other && 'making' in next ? { ...next, says: words.hadIt(other.name, given.name) } : next;
}

const has = (cell: DraftCell | undefined, instrument: string): boolean =>
	cell?.kind === 'named' && cell.instrument === instrument;

function tuned(making: Making, id: string, text: string): Answered {
	const { draft, place } = making;
	const cell = place.ask === 'hands' ? handsAt(draft, place.song)[id] : undefined;
	const held =
		cell?.kind === 'named'
			? draft.instruments.find((one) => one.id === cell.instrument)
			: undefined;
	if (!held) return { refused: words.notTuned(cleanText(text)) };
	const read = text.trim() === '' ? { tuning: null, capo: 0 } : readTuned(text, held.kind);
	if (read === null) return { refused: words.notTuned(cleanText(text)) };
	const tuning = read.tuning === held.tuning ? null : read.tuning;
	return withHands(making, {
		[id]: { kind: 'named', instrument: held.id, tuning, capo: read.capo },
	});
}

/** The song asked about with these cells; null takes one out. In the order of the players. */
function withHands(making: Making, changed: Readonly<Record<string, DraftCell | null>>): Answered {
	const { draft, place } = making;
	if (place.ask !== 'hands') return { refused: words.NO_SONG };
	const songs = draft.songs.map((song, index) => {
		if (index !== place.song) return song;
		const cells = { ...song.hands, ...changed };
		const hands = Object.fromEntries(
			draft.players.flatMap(({ id }) => {
				const cell = cells[id];
				return cell ? [[id, cell] as const] : [];
			}),
		);
		return { ...song, hands };
	});
	return then(making, place, { songs });
}

/** Who gets what is in a slot: the picked one if it can be theirs, else the first whose it can be. */
export function whoGets(draft: ShowDraft, instrument: DraftInstrument, picked: string): string {
	const able = playersFor(draft, instrument).map(({ id }) => id);
	return able.includes(picked) ? picked : (able[0] ?? picked);
}
