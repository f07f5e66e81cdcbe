// What every key does: its name, its line in help and README, what the footer says, and why it cannot act
// now. Keys that can be changed are passed in.

export type ActionWords = {
	/** Two or three words, for settings and sentences about its key. */
	readonly name: string;
	/** One line, for help and README. */
	readonly help: string;
};

/** Keys that are called otherwise on a keyboard than in scripts. */
export const KEY_LABELS: Readonly<Record<string, string>> = { pagedown: 'PgDn', pageup: 'PgUp' };

const inList = (name: string, help = name): ActionWords => ({
	name,
	help: `in the list view: ${help}`,
});

/** By the action's id. */
export const ACTION_WORDS = {
	step: {
		name: 'next',
		help: 'next: the cue, the end of the song, or the next song with its hand-overs. Page down (a foot switch) does it in every view',
	},
	'hand-over': {
		name: 'hand-over',
		help: 'the planned hand-overs are in hands now. During a song, for the next one or a cue far off: enter again. In the lists: open the picked row. In the rig view: what rings',
	},
	ready: {
		name: 'ready',
		help: 'ready, its due work done: enter for the first on the to-do list, or a slot. = and a slot: ready as it is. Before the show and in an interval, 0: all on the rack, as they are',
	},
	break: {
		name: 'string break',
		help: 'string break: backups at once, best first. Again while they are shown: one more break',
	},
	finish: { name: 'end the song', help: 'end the song, skip its remaining cues' },
	jump: {
		name: 'jump',
		help: 'jump: any song is next. One that is not on the list is added before the next song; tab: in its place',
	},
	'take-back': { name: 'undo', help: 'undo the last step, as far back as the start of the night' },
	dark: { name: 'dark', help: 'dark screen, and back' },
	help: { name: 'all keys', help: 'all keys' },
	'step-back': {
		name: 'one cue back',
		help: 'one cue back. Page up (a foot switch) does it in every view',
	},
	'next-song': { name: 'next song', help: 'next song at once, no hand-over logged' },
	'previous-song': { name: 'previous song', help: 'previous song at once, no hand-over logged' },
	exchange: {
		name: 'swap',
		help: 'swap: the slot that is in hands now. Or x, a player, then a slot, or - for none. In the list view: another instrument for a player in the picked song, tonight',
	},
	incident: { name: 'incident', help: 'incident: logs the time, asks nothing' },
	describe: {
		name: 'add to the last incident',
		help: 'add to the last incident: a digit for the string, a letter for the kind, words',
	},
	'seek-fault': {
		name: 'find a fault',
		help: "find a fault: the player's letter, what is heard, then the best test each time. 0 leaves it, esc decides later",
	},
	memo: { name: 'memo', help: 'memo' },
	'as-it-is': {
		name: 'actual capo or tuning',
		help: 'actual capo or tuning: slot, then a fret or a tuning',
	},
	'put-aside': {
		name: 'faulty or out tonight',
		help: 'faulty or out tonight: slot, then what is wrong, or enter. 0 and its number: a pedal is stuck',
	},
	'bring-back': {
		name: 'back on the rack',
		help: 'back on the rack, from the bench or from outside: slot. 0 and its number: a pedal works again',
	},
	stage: { name: "staged at the player's place", help: "staged at the player's place: slot" },
	'doubt-all': {
		name: 'check the whole rack again',
		help: 'check the whole rack again (light, heat, rain): enter',
	},
	'correct-pedal': {
		name: "a pedal isn't as shown",
		help: "a pedal isn't as shown: the player's letter where several have boards, then its number",
	},
	pack: {
		name: 'pack',
		help: "pack: the player's letter, then the pack's number; - the current one is suspect, 0 it has a fresh battery. - and a number: clear a suspect one. 0 and a number: a fresh battery in whatever runs on one",
	},
	'put-back': { name: 'redo', help: 'redo what was undone' },
	lock: { name: 'lock', help: 'lock. l then esc within 2 s unlocks' },
	view: {
		name: 'next view',
		help: 'next view: stage, rack, list, log, far, rig (of a show with boards or a rig). Esc returns to the stage',
	},
	warnings: {
		name: 'all warnings',
		help: 'every warning in full, disk warnings first',
	},
	live: { name: 'back to the stage view', help: 'back to the stage view' },
	'pick-up': { name: 'pick the one above', help: 'in a list: pick the one above' },
	'pick-down': { name: 'pick the one below', help: 'in a list: pick the one below' },
	narrow: { name: 'search the log', help: 'in the log view: only lines with the words typed' },
	settings: { name: 'settings', help: 'settings: colours, your own times for work, keys' },
	leave: { name: 'quit', help: 'quit (the night can be resumed) or close the show' },
	'move-song': inList(
		'move the picked song',
		'move the picked song: up and down. Enter puts it there',
	),
	'insert-song': inList('add a song', 'add a song after the picked one'),
	'drop-song': inList('drop the picked song', 'drop the picked song, or add it again'),
	encore: inList('the picked song to the end of the encore'),
	'read-show': inList('reload the show file'),
} as const satisfies Readonly<Record<string, ActionWords>>;

/** An action in two or three words; its id where it has none. */
export function actionName(id: string): string {
	return id in ACTION_WORDS ? ACTION_WORDS[id as keyof typeof ACTION_WORDS].name : id;
}

/** What a key would do now, for the footer. */
export const FOOTER = {
	rings: 'feedback',
	ready: 'ready',
	handed: 'handed',
	open: 'open',
	change: 'change',
	done: 'done',
	jump: 'jump',
	undo: 'undo',
	redo: 'redo',
	dark: 'dark',
	all: 'all',
	stage: 'stage',
	nextView: 'next view',
	search: 'search',
	break: 'break',
	backups: 'backups',
	whichString: 'which string',
	findFault: 'find the fault',
	move: 'move',
	add: 'add',
	addAgain: 'add again',
	drop: 'drop',
	encore: 'encore',
	reload: 'reload',
	segue: 'segue',
	songEnds: 'song ends',
	closeShow: 'close the show',
	lockThen: 'then',
	unlocks: 'within 2 s unlocks',
} as const;

export const startSong = (title: string): string => `start ${title}`;

/** What enter logs of who keeps what: `keeps S, capo on 2`. */
export function keepsFooter(slot: string, movedCapo: number | null): string {
	if (movedCapo === null) return `keeps ${slot}`;
	return `keeps ${slot}, ${movedCapo === 0 ? 'capo off' : `capo on ${movedCapo}`}`;
}

// Why a key cannot act now.

export const NO_BOARDS = 'No player has a board in this show.';
export const NO_PACKS = 'This show lists no packs and no batteries.';
export const NO_SONG_ON = 'No song is on.';
export const SHOW_CLOSED = 'The show is closed. Nothing more is logged.';
export const UNDONE_WITH_GAP = "Undone, but without what can't be read of the night.";
/** A question that nobody answered went by itself, and what a key that came after did. */
export const questionClosed = (asker: string | null): string =>
	`The question closed: 5 s without a key.${asksAgain(asker)}`;
export const answeredLate = (key: string, asker: string | null): string =>
	`Too late for ${key}: the question had closed. Nothing was logged.${asksAgain(asker)}`;
const asksAgain = (asker: string | null): string => (asker === null ? '' : ` ${asker} asks again.`);
/** What u took back: `Taken back: Gravel ended. y redo.` */
export const undoneWords = (lines: readonly string[], redoKey: string): string | null => {
	const said = lines.filter((words) => words !== '');
	const [first] = said;
	if (first === undefined) return null;
	const more = said.length > 1 ? ` and ${said.length - 1} more` : '';
	return `Taken back: ${first}${more}. ${redoKey} redo.`;
};
export const NOTHING_TO_UNDO = 'This is the start of the night: nothing to undo.';
export const NOTHING_TO_REDO = 'Nothing to redo.';
export const ONLY_IN_LIST = 'Only in the list view. tab goes there.';
export const ONLY_IN_LOG = 'Only in the log view. tab goes there.';
export const LIST_EMPTY = 'The list is empty.';
export const noHandOver = (swapKey: string): string =>
	`No hand-over before the next song. ${swapKey} logs a swap.`;
export const noIncident = (incidentKey: string): string =>
	`No incident to add to. ${incidentKey} logs one.`;
export const noSuchKey = (key: string, helpKey: string): string =>
	`${key} does nothing here. ${helpKey} shows all keys.`;

// Locked, pasted, too fast.

export const NOW_ESC = 'Esc within 2 s unlocks.';
export const lockedSentence = (lockKey: string): string =>
	`Locked. ${lockKey}, then esc within 2 s, unlocks.`;
export const PASTE_REFUSED = 'Text can only be pasted into a text field. Nothing was done.';
export const burstRefused = (count: number): string =>
	`${count} keys came at once and were ignored.`;

// Keys that a user sets.

export const keyFixed = (id: string): string =>
	`The key for ${actionName(id)} always stays the same.`;
export const keyNotChoosable = (key: string): string =>
	`Choose a letter or one of , . ; ' [ ] = / \\ \`, not ${key}.`;
export const keyTaken = (key: string, byId: string): string =>
	`${key} is the key for ${actionName(byId)}. Choose another, or change that one first.`;
export const keptKeyUnusable = (id: string, why: string): string =>
	`The key saved for ${actionName(id)} can't be used. ${why} It has its default again.`;
export const keyNow = (key: string, id: string): string =>
	`${key} is the key for ${actionName(id)} now.`;
export const newKeyTitle = (id: string, key: string): string =>
	`New key for ${actionName(id)}, now ${key}: press it`;
