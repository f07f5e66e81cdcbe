// A question as it is shown: what is asked, what enter takes, the list to choose from, the keys that answer.

import { minutesSeconds } from '../base/duration.ts';
import type { KeyWords } from '../keys/prompt-view.ts';
import type { DraftCell, DraftItem, ShowDraft } from '../setlist/show-draft.ts';
import { INSTRUMENT_KINDS, type InstrumentKind } from '../tuning/kind.ts';
import { namedTunings } from '../tuning/tuning.ts';
import { kindWords } from '../words/kinds.ts';
import * as words from '../words/new-show.ts';
import { UP_DOWN } from '../words/questions.ts';
import { startOffered } from './answer.ts';
import { handsAt, PLAYS_NAMES, playersOfKind, usualTuning } from './guesses.ts';
import type { Making } from './making.ts';
import { keyAt, TAKE_BACK } from './numbered.ts';
import { DEFAULT_INTERVAL } from './order-answer.ts';

export type Question = {
	/** Where among the questions it stands. */
	readonly part: string;
	readonly title: string;
	/** Text is typed, and enter takes it; else one key answers. */
	readonly isText: boolean;
	/** What enter takes where nothing is typed; null where something must be. */
	readonly offered: string | null;
	/** A line each, one of them picked by up and down. */
	readonly rows: readonly string[];
	/** Short things to choose from or to know, in columns. */
	readonly list: readonly string[];
	readonly hint: string | null;
	readonly keys: readonly KeyWords[];
};

/** What a field inside a question asks. */
export type Field =
	| { readonly field: 'slot' }
	| { readonly field: 'interval'; readonly at: number }
	| { readonly field: 'tuned'; readonly player: string };

const { ASKED, ENTER, HINTS, KEYS_SAID, PARTS_ASKED } = words;

const PLAIN = { rows: [], list: [], hint: null, keys: [] } as const;
const text = (
	part: string,
	title: string,
	more: Partial<Question> & { readonly offered: string | null },
): Question => ({ ...PLAIN, part, title, isText: true, ...more });
const choice = (
	part: string,
	title: string,
	more: Partial<Question> & { readonly offered: string | null },
): Question => ({ ...PLAIN, part, title, isText: false, ...more });

const numbered = (all: readonly string[]): readonly string[] =>
	all.map((one, index) => `${keyAt(index)} ${one}`);

/** The question that stands now. */
export function questionOf(making: Making): Question {
	const { draft, place } = making;
	const player = draft.players.at(-1);
	const instrument = draft.instruments.at(-1);
	const song = draft.songs.at(-1);
	const onRack = instrument ? onSlot(instrument.slot, instrument.name) : '';
	switch (place.ask) {
		case 'add':
			return choice(PARTS_ASKED.show, ASKED.add, {
				offered: ENTER.add,
				list: [words.fileHolds(draft.instruments.length, draft.songs.length), words.STAYS_AS_IT_IS],
			});
		case 'title':
			return text(PARTS_ASKED.show, ASKED.title, { offered: draft.title });
		case 'venue':
			return text(PARTS_ASKED.show, ASKED.venue, {
				offered: draft.venue ?? ENTER.noVenue,
				hint: HINTS.venue,
			});
		case 'date':
			return text(PARTS_ASKED.show, ASKED.date, { offered: draft.date, hint: HINTS.date });
		case 'start':
			return text(PARTS_ASKED.show, ASKED.start, {
				offered: startOffered(making),
				hint: HINTS.time,
			});
		case 'curfew':
			return text(PARTS_ASKED.show, ASKED.curfew, {
				offered: draft.curfew ?? ENTER.noCurfew,
				hint: draft.curfew === null ? HINTS.time : HINTS.curfew,
			});
		case 'player':
			return draft.players.length === 0
				? text(PARTS_ASKED.players, ASKED.firstPlayer, { offered: null })
				: text(PARTS_ASKED.players, ASKED.player, { offered: ENTER.everybody });
		case 'plays':
			return choice(PARTS_ASKED.players, words.playsWhat(player?.name ?? ''), {
				offered: PLAYS_NAMES[0] ?? null,
				list: numbered(PLAYS_NAMES),
			});
		case 'instrument':
			return text(
				PARTS_ASKED.rack,
				making.slot === null ? words.nextWithoutSlot : words.nextInSlot(making.slot.toUpperCase()),
				{
					offered: ENTER.wholeRack,
					keys: [{ key: 'tab', words: KEYS_SAID.otherSlot }],
				},
			);
		case 'kind':
			return choice(PARTS_ASKED.rack, words.whichKind(onRack), {
				offered: kindName(instrument?.kind ?? 'electric-6'),
				list: numbered(INSTRUMENT_KINDS.map(kindName)),
			});
		case 'tuning': {
			const kind = instrument?.kind ?? 'electric-6';
			const named = namedTunings(kind).map(({ name }, index) => `${index + 1} ${name}`);
			return text(PARTS_ASKED.rack, words.whichTuning(onRack), {
				offered: usualTuning(kind),
				hint: named.length > 0 ? HINTS.tuning : HINTS.notes,
				list: named,
			});
		}
		case 'whose':
			return choice(PARTS_ASKED.rack, words.whose(onRack), {
				offered: ENTER.anybody,
				list: numbered(
					playersOfKind(draft, instrument?.kind ?? 'electric-6').map(({ name }) => name),
				),
			});
		case 'song':
			return draft.set.length === 0
				? text(PARTS_ASKED.songs, ASKED.firstSong, { offered: null, hint: HINTS.song })
				: text(PARTS_ASKED.songs, ASKED.song, { offered: ENTER.allSongs, hint: HINTS.song });
		case 'length':
			return text(PARTS_ASKED.songs, words.howLong(song?.title ?? ''), {
				offered: ENTER.notKnown,
				hint: HINTS.length,
			});
		case 'order':
			return choice(PARTS_ASKED.order, ASKED.order, {
				offered: ENTER.inOrder,
				rows: draft.set.map((item, index) => itemLine(draft, item, index)),
				keys: [
					{ key: UP_DOWN, words: KEYS_SAID.pick },
					{ key: 'g', words: KEYS_SAID.move },
					{ key: 'h', words: KEYS_SAID.encore },
					{ key: 'p', words: KEYS_SAID.interval },
					{ key: 'k', words: KEYS_SAID.dropSong },
				],
			});
		case 'hands':
			return handsQuestion(draft, place.song);
		case 'write':
			return choice(PARTS_ASKED.end, ASKED.write, {
				offered: ENTER.write,
				list: making.earlier
					? [words.carriedOver(making.earlier.carried), ...making.earlier.toDo.map(words.toDoFirst)]
					: [],
			});
	}
}

/** The question of a field inside one. */
export function fieldQuestion(making: Making, field: Field): Question {
	const asked = questionOf(making);
	if (field.field === 'slot') return choice(asked.part, words.whichSlot, { offered: null });
	if (field.field === 'interval')
		return text(asked.part, words.howLongInterval, {
			offered: DEFAULT_INTERVAL,
			hint: HINTS.interval,
			rows: asked.rows,
		});
	const { draft, place } = making;
	const player = draft.players.find(({ id }) => id === field.player);
	const cell = place.ask === 'hands' ? handsAt(draft, place.song)[field.player] : undefined;
	const held =
		cell?.kind === 'named' ? draft.instruments.find(({ id }) => id === cell.instrument) : undefined;
	return text(
		asked.part,
		words.howTuned(player?.name ?? '', held ? onSlot(held.slot, held.name) : ''),
		{
			offered: ENTER.ownTuning,
			hint: HINTS.tuned,
			list: held ? namedTunings(held.kind).map(({ name }) => name) : [],
		},
	);
}

const kindName = (kind: InstrumentKind): string =>
	kind === 'other' ? words.SOMETHING_ELSE : kindWords(kind);

const onSlot = (slot: string | null, name: string): string =>
	slot === null ? name : `${slot.toUpperCase()} ${name}`;

function itemLine(draft: ShowDraft, item: DraftItem, index: number): string {
	if (item.kind === 'interval') return `    ${words.interval(minutesSeconds(item.seconds))}`;
	const song = draft.songs.find(({ id }) => id === item.song);
	const songs = draft.set.slice(0, index + 1).filter(({ kind }) => kind === 'song').length;
	const length = song?.seconds == null ? '' : `  ${minutesSeconds(song.seconds)}`;
	const encore = item.isEncore ? `  ${words.ENCORE}` : '';
	return `${String(songs).padStart(3)} ${song?.title ?? item.song}${length}${encore}`;
}

function handsQuestion(draft: ShowDraft, at: number): Question {
	const song = draft.songs[at];
	const before = at === 0 ? {} : handsAt(draft, at - 1);
	return choice(PARTS_ASKED.hands, words.whoPlays(song?.title ?? '', at + 1, draft.songs.length), {
		offered: ENTER.soPlayed,
		rows: draft.players.map(({ id, name }) => {
			const own = song?.hands[id];
			const cell = cellText(draft, own ?? before[id]);
			return `${name}  ${own || !before[id] ? cell : `${words.KEEPS} ${cell}`}`;
		}),
		list: draft.instruments
			.filter(({ slot }) => slot !== null)
			.map((one) => `${onSlot(one.slot, one.name)}  ${one.tuning}`),
		hint: HINTS.allKeep,
		keys: [
			{ key: UP_DOWN, words: KEYS_SAID.pick },
			{ key: '=', words: KEYS_SAID.tuned },
			{ key: '-', words: KEYS_SAID.none },
			{ key: '0', words: KEYS_SAID.keep },
		],
	});
}

function cellText(draft: ShowDraft, cell: DraftCell | undefined): string {
	if (cell?.kind !== 'named') return words.NOTHING;
	const held = draft.instruments.find(({ id }) => id === cell.instrument);
	if (!held) return cell.instrument;
	return words.inTuning(onSlot(held.slot, held.name), cell.tuning ?? held.tuning, cell.capo);
}

/** The keys that every question takes besides its own. */
export function everyKey(isText: boolean): readonly KeyWords[] {
	return [
		{ key: isText ? 'backspace' : TAKE_BACK, words: KEYS_SAID.takeBack },
		{ key: 'esc', words: KEYS_SAID.leave },
	];
}
