// What a question asks, what the keys that answer it do, and what is said to a key that does not. Titles and
// answers are labels; refusals are sentences.

import { displayWidth, fitWidth } from '../base/display-width.ts';
import { allWords } from './later-costs.ts';

/** In a question a long name goes before what is asked does. */
const NAME_COLUMNS = 24;
const short = (name: string): string =>
	displayWidth(name) <= NAME_COLUMNS ? name : fitWidth(name, NAME_COLUMNS);

/** Two keys that do the same thing. */
export const UP_DOWN = 'up down';

/** What a key that answers does. */
export const ANSWERS = {
	cancel: 'cancel',
	close: 'close',
	none: 'none',
	default: 'the default',
	keepForLater: 'keep it for later',
	sinceBegin: 'since the song began',
	above: 'the one above',
	below: 'the one below',
	inHands: 'in hands',
	all: 'all of them',
	move: 'move it',
	putHere: 'put it here',
	keep: 'keep it',
	tonight: 'so tonight',
	asSongSays: 'as the song says',
	useIt: 'use it',
	asItIs: 'as it is',
	allAsTheyAre: 'all on the rack, as they are',
	nothingDue: 'nothing is due',
	pedal: 'a pedal',
	clearSuspect: 'clear suspect',
	suspect: 'current pack is suspect',
	freshBattery: 'fresh battery',
	firstInHands: (slot: string) => `${slot} in hands`,
	/** Where something else is best. */
	firstAnyway: (slot: string) => `${slot} anyway`,
	nextBreak: 'next break',
	outTonight: 'out tonight',
	another: 'another',
	playOn: 'play on',
	decideLater: 'decide later',
	quit: 'quit, resume later',
	quitUnsaved: (steps: number) => `quit, ${steps === 1 ? '1 step' : `${steps} steps`} not saved`,
	closeShow: 'close the show',
	stay: 'stay',
	send: 'send',
	leaveBoards: 'leave them',
} as const;

// Slots, players, text.

export const notASlot = (key: string): string => `${key} is not a slot. Esc closes this question.`;
export const emptySlot = (key: string): string => `Nothing on the rack has the slot ${key}.`;
export const noSuchPlayer = (key: string): string => `No player has the key ${key}.`;
export const TYPE_THEN_ENTER = 'Type, then enter. Esc cancels.';
export const notTypedHere = (typed: string): string => `${typed} can't be typed here.`;

// Swaps.

const since = (isSinceBegin: boolean): string => (isSinceBegin ? 'since the song began' : 'now');
export const swapTitle = (isSinceBegin: boolean): string =>
	`${isSinceBegin ? 'In hands since the song began' : 'What is in hands now'}? A slot; or a player, then a slot, or - for none`;
export const whoHas = (instrument: string): string => `Who has ${short(instrument)}?`;
export const swapSlotTitle = (player: string, isSinceBegin: boolean): string =>
	`${short(player)} has ${since(isSinceBegin)}: slot, or - for none`;
/** Before the answer that is no swap: whose key says only that they stay on it. */
export const keepsIfChosen = (player: string, key: string): string =>
	`${player} has it: ${key} logs that ${player} keeps it`;
/** The player followed from the slot, and had it already: what was logged, and how somebody else is named. */
export function keptWords(kept: {
	readonly player: string;
	readonly instrument: string;
	/** For which they keep it; null where that is not said. */
	readonly song: string | null;
	readonly slot: string;
	readonly undoKey: string;
	readonly swapKey: string;
}): string {
	const { player, instrument, song, slot, undoKey, swapKey } = kept;
	const keeps = `${player} keeps ${instrument}${song === null ? '' : ` for ${song}`}`;
	return `Logged: ${keeps}. Somebody else has it? ${undoKey}, then ${swapKey}, the player, ${slot}.`;
}
export const noneMissed = (player: string): string =>
	`No hand-over to ${player} was missed in this song.`;

// Hand-overs.

/** What a hand-over is for that is not for now: the next song, or a cue far off in the song on. */
export type Later = { readonly title: string; readonly isCue: boolean };
const laterFor = ({ title, isCue }: Later): string =>
	`for ${short(title)} (${isCue ? 'later' : 'next'})`;

/** What enter logs, asked before it does: of the song on, or of what comes later. */
export function handOverTitle(later: Later | null, count: number): string {
	const all = count < 2 ? 'enter again if it is in hands now' : `enter again for all ${count}`;
	const slots = count < 2 ? '' : ', or the slot of one';
	const what = later === null ? 'in hands now' : laterFor(later);
	return `${what.charAt(0).toUpperCase()}${what.slice(1)}: ${all}${slots}`;
}
export const handOverLine = (player: string, what: string, more: string): string =>
	`${player}: ${what}${more}`;
export const stayLine = (player: string, what: string): string => `${player} keeps ${what}`;
export const HANDS_EMPTY = 'hands empty';
export const checkFirst = (what: string): string => `, check ${what}`;
/** What enter logs as done, though nobody has said that it is. */
export const NOT_DONE = {
	'touch-up': [],
	retune: ['NOT RETUNED'],
	capo: ['CAPO NOT MOVED'],
	restring: ['NOT RESTRUNG'],
} as const;
export const notInHandOver = (instrument: string, swapKey: string): string =>
	`${instrument} isn't part of this hand-over. ${swapKey} hands anything.`;

/** What was logged for later: `Logged: Ash has 4 Anchor for Lantern (next). u undo, x correct.` */
export function loggedWords(logged: {
	readonly players: readonly string[];
	/** What the only one has; null for empty hands. */
	readonly instrument: string | null;
	readonly later: Later;
	readonly undoKey: string;
	readonly swapKey: string;
}): string {
	const { players, instrument, later, undoKey, swapKey } = logged;
	const what = players.length > 1 ? 'have theirs' : `has ${instrument ?? 'hands empty'}`;
	return `Logged: ${allWords(players)} ${what} ${laterFor(later)}. ${undoKey} undo, ${swapKey} correct.`;
}

// The rack.

export const WHICH_SLOT = {
	break: 'String break: which slot?',
	secondBreak: 'One more string break: which slot?',
	actual: 'Actual capo or tuning: which slot?',
	aside: 'Faulty or out: which slot?',
	back: 'Back on the rack: which slot?',
	staged: "Staged at the player's place: which slot?",
	ready: 'Ready: which slot?',
	readyAsItIs: 'Ready as it is: which slot?',
} as const;
export const readyTitle = (first: string | null): string =>
	first === null ? WHICH_SLOT.ready : `Ready: enter for ${short(first)}, or a slot`;
export const NO_WORK_DUE = 'No work is due. Press a slot.';
/** Its touch-up stays on the list: by then the mark is too old. */
export const readyForNow = (instrument: string, song: string): string =>
	`${short(instrument)} is ready now; touch it up again before ${short(song)}.`;
/** What marking ready logs as done. */
export const DONE = {
	restring: 'restring',
	touchUp: 'touch-up',
	noTouchUp: 'no touch-up yet',
	capo: (capo: number): string => (capo === 0 ? 'capo off' : `capo ${capo}`),
} as const;
export const faultTitle = (instrument: string): string => `${short(instrument)}: what is wrong?`;
export const noSuchFault = (key: string): string => `No fault has the key ${key}.`;
export const actualTitle = (instrument: string, tuning: string, capo: string): string =>
	`Actual fret or tuning, then enter; ${short(instrument)} is in ${tuning}, ${capo}`;
export const takesNoCapo = (instrument: string): string => `${instrument} takes no capo.`;
export const CAPO_TOO_HIGH = 'A capo goes no higher than fret 12.';
export const noSuchTuning = (typed: string, instrument: string, expected: string): string =>
	`${typed === '' ? 'Nothing' : typed} is not a tuning of ${instrument}. It can be in ${expected}.`;
export const CHECK_RACK_TITLE =
	'Check the whole rack again: enter (stage temperature in °C first, if known)';
export const CELSIUS_RANGE = 'Type a temperature in °C, from -40 to 60.';

// Pedals and packs.

const onOff = (isOn: boolean): string => (isOn ? 'on' : 'off');
export const WHOSE_BOARD = 'Whose board?';
export const WHICH_PEDAL = {
	otherwise: 'press what is wrong',
	stuck: 'which pedal is stuck?',
	freed: 'which pedal works again?',
} as const;
export const boardTitle = (player: string, asked: string): string =>
	`${short(player)}'s board: ${asked}`;
export const noSuchPedal = (key: string): string => `The board has no pedal ${key}.`;
/** A pedal as the screen shows it; its key says that it is the other way. */
export const pedalShown = (pedal: string, isOn: boolean): string =>
	`${pedal}, shown ${onOff(isOn)}`;
export const pedalStuck = (pedal: string, isOn: boolean, isStuck: boolean): string =>
	`${pedal} ${isStuck ? 'STUCK' : 'stuck'} ${onOff(isOn)}`;
export const pedalOf = (pedal: string, isOn: boolean): string => `${pedal}, ${onOff(isOn)}`;
export const NO_PEDAL_STUCK = 'No pedal is marked stuck.';
export const WHOSE_PACK = 'Whose pack?';
export const packTitle = (player: string, worn: string | null): string =>
	`${short(player)} has ${worn === null ? 'no pack on' : `pack ${short(worn)}`}. Which one now?`;
export const CLEAR_WHICH_PACK = 'Clear which suspect pack?';
export const NO_PACK_SUSPECT = 'No pack is suspect.';
export const noSuchPack = (key: string): string => `There is no pack ${key} in the list.`;
export const SUSPECT = 'SUSPECT';
export const stillSuspect = (pack: string, key: string): string =>
	`Fresh battery in ${pack}. It is still suspect: ${key} - clears it.`;
export const FRESH_WHERE = 'A fresh battery in what?';
export const noSuchBattery = (key: string): string => `There is no battery ${key} in the list.`;

// Log, memo, incident.

export const MEMO_TITLE = 'Memo, then enter';
export const SEARCH_TITLE = 'Only lines with these words, then enter';
export const SEARCH_HINT = 'A title, a name, a slot, break, ready, memo. Empty shows all.';
export const incidentTitle = (number: number): string =>
	`Incident ${number}: digit for the string, letter for the kind, space, words`;
export const NOTHING_HAPPENED = 'Nothing has happened yet.';

// A song asked for, moved, added, dropped.

/** Why `tab` does nothing for a song that is on the list. */
export const onListAlready = (title: string): string =>
	`${short(title)} is on the list: enter moves it up to be next, and nothing gives way to it.`;
export const JUMP_TITLE = 'Next song: letters, up and down, enter';
export const NO_SONG = 'No song has that in its title.';
export const beforeSong = (title: string): string => `before ${title}`;
export const inPlaceOf = (title: string): string => `in place of ${title}`;
/** `Lantern is next, skipping Gravel. u undo.` */
export const jumpedWords = (title: string, skipped: readonly string[], undoKey: string): string =>
	`${title} is next, skipping ${allWords(skipped)}. ${undoKey} undo.`;
/** What went by unasked with a key that goes on at once. */
export const pastInterval = (title: string, undoKey: string): string =>
	`${title} is on, skipping the interval: nothing comes back to the rack. ${undoKey} undo.`;
export const AS_IT_STANDS_NOW = 'Where it stands now.';
export const songAtPlace = (title: string, place: string): string => `${title}: ${place}`;
export const addTitle = (side: 'before' | 'after', beside: string, other: string): string =>
	`Add ${side} ${short(beside)}: letters, up and down, enter; tab: ${other}`;
export const dropTitle = (title: string, follows: string): string => `Drop ${title}?  ${follows}`;
export const dropSong = (title: string): string => `drop ${title}`;
export const NOBODY_IN_INTERVAL = 'Nobody plays in an interval.';
export const anotherFor = (title: string): string =>
	`Another instrument in ${short(title)}: for whom?`;
export const tonightSlotTitle = (title: string, player: string): string =>
	`${short(title)} tonight: which slot for ${short(player)}?`;
export const tonightTitle = (title: string, player: string, part: string): string =>
	`${title} tonight: ${player} ${part}`;
/** What is named for somebody in one song, as a predicate. */
export const TONIGHT = {
	asSongSays: 'as the song says',
	empty: 'with hands empty',
	on: (instrument: string, tuning: string, capo: string): string =>
		`on ${instrument}, ${tuning}, ${capo}`,
} as const;
export const intervalSentence = (minutes: number): string => `Interval of ${minutes} minutes.`;
export const cuesWords = (cues: readonly string[]): string => `cues: ${cues.join(', ') || 'none'}`;

// A broken string.

export const breakTitle = (player: string, instrument: string, down: string): string =>
	`STRING BREAK  ${short(player)}  ${short(instrument)}  DOWN ${down}`;
/** With why not, of each that seems to. */
export const noBackupFits = (leftOut: string): string =>
	leftOut === '' ? 'No backup fits.' : `No backup fits: ${leftOut}.`;
export const NO_BACKUP_KEYS = 'No backup fits. 0: play on. A slot: hand it anyway.';
export const isBrokenOne = (instrument: string): string => `${instrument} is the broken one.`;
export const TAKE = 'TAKE';
export const OR = '  or';
export const BEST = 'BEST';
/** How many more there are comes first: of a long line the end is cut. */
export const moreLater = (first: string, more: number): string =>
	`later${more === 0 ? '' : ` +${more}`}: ${first}`;
/** Playing on while a song is on: `play on 5 strings, 0:40 left`. */
export const playOnLeft = (strings: number, left: string): string =>
	`play on ${strings} strings, ${left} left`;

// The show file, and the way out.

export const NO_SHOW_FILE = 'There is no show file to reload here.';
export const unreadable = (problem: string | null, more: number): string =>
	`Nothing changes: ${problem ?? 'the file cannot be read.'}${more > 0 ? ` ${more} more; rackside check lists them.` : ''}`;
export const SHOW_FILE_TITLE = 'The show file now:';
export const showFileChanged = (clock: string, key: string): string =>
	`The show file changed at ${clock}. ${key} in the list view reloads it.`;
export const SEND_BOARDS_TITLE = 'Send boards as they should be now?';
export const QUIT_TITLE = 'Quit?';
