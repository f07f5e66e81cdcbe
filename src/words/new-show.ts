// What `new` asks when it asks by questions: the questions, what enter takes, what is said to an answer that
// cannot be used.

/** Where the questions stand, above them. */
export const PARTS_ASKED = {
	show: 'THE SHOW',
	players: 'PLAYERS',
	rack: 'THE RACK',
	songs: 'SONGS',
	order: 'ORDER',
	hands: 'WHO PLAYS WHAT',
	end: 'DONE',
} as const;

export const NEW_SHOW = 'NEW SHOW';
export const fileSoFar = (file: string): string => `${file}, not written yet`;
export const fileAddedTo = (file: string): string => `${file} with what is added, not written yet`;
export const DEFAULT_TITLE = 'Untitled show';

// Questions. In capitals or after a colon what it is about.

export const ASKED = {
	add: 'This file is there already. Add to it?',
	title: 'What is the show called?',
	venue: 'Where is it?',
	date: 'Which day?',
	start: 'When does it start?',
	curfew: 'When must it be over?',
	firstPlayer: 'Who plays? One name at a time:',
	player: 'Who else plays?',
	firstSong: 'The first song, its length behind it if you know it:',
	song: 'The next song:',
	order: 'Is the order right?',
	write: 'That is all. Write the file?',
} as const;

export const playsWhat = (player: string): string => `What does ${player} play?`;
export const nextInSlot = (slot: string): string => `Slot ${slot}: what is the instrument called?`;
export const nextWithoutSlot = 'The next instrument, without a slot:';
export const whichKind = (instrument: string): string => `What is ${instrument}?`;
export const whichTuning = (instrument: string): string => `What is ${instrument} tuned to?`;
export const whose = (instrument: string): string => `Who plays ${instrument}?`;
export const howLong = (song: string): string => `How long is ${song}?`;
export const whoPlays = (song: string, number: number, of: number): string =>
	`${number} of ${of}, ${song}: who plays what?`;
export const whichSlot = 'Which slot? One key, as it is marked on the rack:';
export const howTuned = (player: string, instrument: string): string =>
	`${player}, ${instrument}: tuning and capo in this song?`;
export const howLongInterval = 'How long is the interval?';
export const goOnWith = (title: string): string => `Go on with ${title}?`;
export const draftHolds = (players: number, instruments: number, songs: number): string =>
	`A show begun earlier: players ${players}, instruments ${instruments}, songs ${songs}.`;
export const DRAFT_GOES = 'A new one takes its place with the first answer.';

export const fileHolds = (instruments: number, songs: number): string =>
	`It holds: instruments ${instruments}, songs ${songs}.`;
export const STAYS_AS_IT_IS = 'Everything in it stays exactly as it is.';

// What to know before answering.

export const HINTS = {
	venue: 'A - for nowhere in particular.',
	date: 'Such as 2026-06-12.',
	time: 'Such as 20:30.',
	curfew: 'Such as 22:45, or - for none.',
	player: 'One name at a time. Enter alone: that is everybody.',
	song: 'The same title again: it is played twice.',
	length: 'Such as 3:30.',
	tuning: 'A name, its number, or its notes, lowest string first.',
	notes: 'Its notes, lowest string first: D2 A2 D3.',
	tuned: 'Such as drop D, drop D c2 or c2.',
	interval: 'Such as 20m.',
	order: 'Encore: from the picked song to the end.',
	allKeep: 'A slot gives that instrument.',
} as const;

/** What enter takes. */
export const enterTakes = (what: string): string => `enter: ${what}`;
export const ENTER = {
	add: 'add instruments and songs',
	noVenue: 'not said',
	noCurfew: 'no curfew',
	everybody: 'that is everybody',
	wholeRack: 'that is the whole rack',
	allSongs: 'that is all songs',
	notKnown: 'not known',
	anybody: 'anybody who plays its kind',
	inOrder: 'as it stands',
	soPlayed: 'as it stands',
	write: 'write it',
	goOn: 'go on with it',
	ownTuning: 'what it is in',
	next: 'next',
} as const;

export const KEYS_SAID = {
	takeBack: 'undo',
	leave: 'leave, all is kept',
	anew: 'begin a new one',
	otherSlot: 'another slot',
	pick: 'pick',
	move: 'move',
	put: 'put it here',
	encore: 'encore from here',
	interval: 'interval after it',
	dropSong: 'drop it',
	none: 'nothing',
	keep: 'keeps',
	tuned: 'tuning, capo',
	slot: 'give it',
	cancel: 'cancel',
	choose: 'choose',
} as const;

export const SOMETHING_ELSE = 'something else';
export const KEEPS = 'keeps';
export const NOTHING = 'nothing';
export const ENCORE = 'encore';
export const interval = (length: string): string => `interval ${length}`;
export const inTuning = (instrument: string, tuning: string, capo: number): string =>
	`${instrument}  ${tuning}${capo > 0 ? `  capo ${capo}` : ''}`;

// Refusals.

export const NO_SUCH_DAY = 'There is no such day. Write it as 2026-06-12.';
export const NO_SUCH_TIME = 'That is not a time of day. Write it as 20:30.';
export const NO_LENGTH = 'That is not a length. Write it as 3:30, or press enter alone.';
export const NO_PLAYER = 'A show has at least one player: type a name.';
export const NO_SONG = 'A list has at least one song: type a title.';
export const NO_INTERVAL_HERE = 'An interval stands between two songs, and not before an encore.';
export const NO_ENCORE_HERE = 'An encore begins with a song.';
export const INTERVAL_GONE =
	'The interval is gone: it stands between two songs, and not before an encore.';
export const TOO_MANY = 'There is no room for another one.';
export const NO_NAME = 'A name needs a letter or a figure.';
export const noSlot = (typed: string): string =>
	`${typed} can't be a slot: one unshifted key, but not space, 0, -, = or u.`;
export const slotTaken = (slot: string, instrument: string): string =>
	`Slot ${slot} has ${instrument}.`;
export const notInList = (typed: string): string => `${typed} is not in the list.`;
export const NOTES_NEEDED = 'No tuning is usual for it: type its notes, lowest string first.';
export const noTuning = (typed: string): string =>
	`${typed} is not a tuning of its kind. Type a name from the list, or its notes.`;
export const notTuned = (typed: string): string =>
	`${typed} is not a tuning or a capo here. Write it as drop D c2.`;
export const emptySlotHere = (key: string): string => `Nothing on the rack has the slot ${key}.`;
export const hadIt = (player: string, instrument: string): string =>
	`${player} had ${instrument}, and has nothing in this song now.`;
export const keyDoesNothing = (key: string): string => `${key} does nothing here.`;
export const NOTHING_TO_TAKE_BACK = 'Nothing to undo: this is the first question.';
export const TAKEN_BACK = 'Undone.';
export const PASTED_LINES =
	'Several lines were pasted into one title. A whole list goes in with rackside new --list.';
export const PASTE_NOWHERE = 'Text can only be pasted where text is typed. Nothing was done.';

// From an earlier night.

export const carriedOver = (count: number): string =>
	count === 0
		? 'Nothing had changed in that night.'
		: `Carried over from that night: ${count}. You see each when the file is written.`;

/** Of what is carried over and a file cannot say. */
export const toDoFirst = (work: string): string => `Before the doors: ${work}.`;

// After the screen.

/** `file`: the one that is added to, with which alone its draft is offered. */
export const draftKept = (file: string | null): string =>
	`Kept as a draft. rackside new${file === null ? '' : ` ${file}`} goes on with it.`;
export const draftNotKept =
	'The draft could not be kept: nothing can be written in the data folder.';
export const NOTHING_BEGUN = 'Nothing was begun.';
export const WRITTEN_CHECKING = 'Written. Checking it.';
export const CHANGED_MEANWHILE =
	'The file was changed meanwhile, so nothing was written. Leave with esc and start again: all is kept.';
export const madeFile = (file: string): string => `Written: ${file}`;
export const whatNext = (file: string): string =>
	`Next: rackside plan ${file} --sheet prints the run sheet, rackside run ${file} opens the show.`;
