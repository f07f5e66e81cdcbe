// What one answer comes to. Answers are texts, so that they can be kept, played again and taken back: what was
// typed into a field, the number of a list's entry, or a few words for what is done to the order and the hands.

import { cleanText } from '../base/clean-text.ts';
import { graphemes } from '../base/display-width.ts';
import { readTime } from '../setlist/read-time.ts';
import type { DraftInstrument, DraftSong } from '../setlist/show-draft.ts';
import { parseDate } from '../showfile/calendar-date.ts';
import { INSTRUMENT_KINDS } from '../tuning/kind.ts';
import { namedTunings, readTuning } from '../tuning/tuning.ts';
import * as words from '../words/new-show.ts';
import { type Answered, toPlace } from './answered.ts';
import { freeId, likelyKind, PLAYS_NAMES, playersOfKind, usualTuning } from './guesses.ts';
import { takeHands, toHands } from './hands-answer.ts';
import type { Making, Place } from './making.ts';
import { indexOfKey, readSlot } from './numbered.ts';
import { takeOrder } from './order-answer.ts';
import { readTitle, secondsOf } from './read-answer.ts';

const DEFAULT_START = '20:00';
/** Of a kind that is usually in nothing, until the next question is answered: any notes, so that the file can be read. */
const NOTES_UNTIL_ASKED = 'E2 A2 D3 G3 B3 E4';
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
			? toPlace(making, { ask: 'instrument' }, {})
			: { refused: words.keyDoesNothing(cleanText(text)) },
	title: (making, text) => {
		const title = nameOf(text);
		// A place that was last night's is not taken for tonight's unasked.
		const hasVenue = making.draft.venue !== null;
		return toPlace(making, { ask: hasVenue ? 'venue' : 'date' }, title === null ? {} : { title });
	},
	venue: (making, text) => {
		const venue = text.trim() === '-' ? null : (nameOf(text) ?? making.draft.venue);
		return toPlace(making, { ask: 'date' }, { venue });
	},
	date: (making, text) => {
		const date = text.trim() === '' ? making.draft.date : parseDate(text);
		return date === null
			? { refused: words.NO_SUCH_DAY }
			: toPlace(making, { ask: 'start' }, { date });
	},
	start: (making, text) => {
		const start = readTime(text.trim() === '' ? startOffered(making) : text);
		return start === null
			? { refused: words.NO_SUCH_TIME }
			: toPlace(making, { ask: 'curfew' }, { start });
	},
	curfew: (making, text) => {
		const isOffered = text.trim() === '';
		const curfew = isOffered ? making.draft.curfew : text.trim() === '-' ? null : readTime(text);
		if (curfew === null && !isOffered && text.trim() !== '-')
			return { refused: words.NO_SUCH_TIME };
		return toPlace(making, { ask: making.earlier ? 'write' : 'player' }, { curfew });
	},
	player: takePlayer,
	plays: (making, text) => {
		const plays = text === '' ? PLAYS_NAMES[0] : PLAYS_NAMES[indexOfKey(text)];
		if (plays === undefined) return { refused: words.notInList(text) };
		const { players } = making.draft;
		const last = players.length - 1;
		return toPlace(
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
		return toPlace(
			making,
			{ ask: 'song' },
			{ songs: songs.map((one, index) => (index === last ? { ...one, seconds } : one)) },
		);
	},
	order: takeOrder,
	hands: takeHands,
	write: () => ({ refused: words.keyDoesNothing('enter') }),
};

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
			: toPlace(making, { ask: 'instrument' }, {});
	if (!LETTER_OR_FIGURE.test(name)) return { refused: words.NO_NAME };
	if (players.length >= MOST_PLAYERS) return { refused: words.TOO_MANY };
	const plays = PLAYS_NAMES[0] ?? null;
	return toPlace(
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
	if (name === null) return toPlace(making, { ask: 'song' }, {});
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
	const next = toPlace(making, { ask: 'kind' }, { instruments: [...instruments, instrument] });
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
	return toPlace(making, place, { instruments: [...instruments.slice(0, -1), last] });
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
	return toPlace(
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
	return set.length === 0 ? { refused: words.NO_SONG } : toPlace(making, { ask: 'order' }, {});
}

/** The order of a file that is there is its owner's; who plays what is asked of what was added. */
function afterAdded(making: Making): Answered {
	const { draft, adding } = making;
	const first = adding?.draft.songs.length ?? 0;
	const isAsked = draft.songs.length > first && draft.instruments.length > 0;
	return isAsked ? toHands(making, first, draft.songs) : toPlace(making, { ask: 'write' }, {});
}
