// What the doctor says of a laptop: the terminal, the keyboard, the disk, the clock, and what could put the
// screen out in the middle of a song.

/** What each line is about, as it stands before it and in the JSON. */
export const WHAT = {
	size: 'size',
	colours: 'colours',
	letters: 'letters',
	folder: 'data folder',
	sync: 'synced writes',
	space: 'free space',
	clock: 'clock',
	clockKept: 'clock kept',
	zone: 'time zone',
	sleep: 'sleep',
	lid: 'lid',
	lock: 'screen lock',
	power: 'power',
	nights: 'nights',
	troubles: 'own troubles',
	versions: 'versions',
	repeat: 'key repeat',
	switch: 'foot switch',
} as const;

export const STATES = { fine: 'fine', look: 'LOOK', unknown: 'unknown' } as const;

/** `2 to look at, 1 unknown.` */
export function doctorSum(look: number, unknown: number): string {
	const parts = [
		...(look > 0 ? [`${look} to look at`] : []),
		...(unknown > 0 ? [`${unknown} unknown`] : []),
	];
	return parts.length === 0 ? 'All fine.' : `${parts.join(', ')}, the rest is fine.`;
}

const metres = (value: number): string => `${value.toFixed(1)} m`;

// The terminal.

export const NO_TERMINAL = 'unknown here: this is not a terminal';
export const NO_SIZE = 'unknown here: the terminal does not say its size';
export const ON_THE_TERMINAL = 'Run rackside doctor in the window that you use at the show.';
export const sizeFound = (
	size: { readonly columns: number; readonly rows: number },
	from: { readonly tall: number; readonly small: number },
): string =>
	`${size.columns}x${size.rows}; filling a 14-inch screen, tall rows are read up to ${metres(from.tall)} away, small letters up to ${metres(from.small)}`;
export const SIZE_TOO_SMALL =
	'Make the window 80x24 or larger: below that, parts of the screen are left out.';
export const LETTERS_TOO_SMALL =
	'Enlarge the letters of the terminal until there are fewer rows, or use the far view (tab).';

export const colourDepthFound = (bits: 1 | 4 | 8 | 24): string =>
	({ 1: 'none', 4: '16', 8: '256', 24: 'all' })[bits];
export const COLOURS_REFUSED = 'none, as you asked; every state is in words';
export const NO_COLOURS =
	'Every state is in words too. If the terminal has colours, set TERM to its type, such as xterm-256color.';
export const AMBER_NEEDS_MORE =
	'The colours amber need 256; here they are grey and yellow. If the terminal has more, set TERM to its type, such as xterm-256color.';
export const CANNOT_DRAW = 'TERM says that this terminal cannot move its cursor';
export const SET_TERM =
	'Set TERM to the type of the terminal: the live screen cannot be drawn until then.';
/** Signs of the screen that are one cell each. */
export const LETTERS_TRIED = '♭▀é';
export const LETTERS_DRAWN = 'UTF-8, tried here';
export const lettersWide = (cells: number): string =>
	`UTF-8 by the locale, but three signs were drawn ${cells} wide`;
export const LETTERS_BY_LOCALE = 'UTF-8 by the locale; the terminal does not say what it draws';
export const LETTERS_LOOK_AT =
	'Look at this: ♭ ▀ é. Where that is not a flat, a half block and an e with an accent, set LC_ALL=C.';
export const LETTERS_SET_C =
	'Set the terminal to UTF-8, or set LC_ALL=C: then all is drawn in ASCII.';
export const LETTERS_ASCII = 'plain ASCII, by the locale or the kind of terminal';
export const SET_LOCALE =
	'All is shown, without ♭ and é. If the terminal has UTF-8, set LC_ALL=C.UTF-8.';

// Disk.

export const folderFound = (path: string): string => `${path} is yours alone`;
export const FOLDER_FIX = 'Fix it, or name another folder with --data.';
export const FOLDER_WIPED =
	'A restart of the machine empties this folder. Name another with --data.';
export const NOT_TRIED = 'not tried';
export const syncFound = (medianMs: number, worstMs: number): string =>
	`a key is safe after ${milliseconds(medianMs)}, at worst ${milliseconds(worstMs)}; the next comes 300 ms later at the earliest`;
export const SYNC_SLOW =
	'A power cut within that time loses the last key. Name a folder on the internal disk with --data.';
export const SYNC_TOO_SLOW =
	'The screen will say that the disk is slow. Name a folder on another disk with --data.';
const milliseconds = (value: number): string => `${value.toFixed(value < 10 ? 1 : 0)} ms`;
const MB = 1_000_000;
export const spaceFound = (bytes: number): string =>
	bytes >= 1000 * MB ? `${(bytes / MB / 1000).toFixed(1)} GB` : `${Math.floor(bytes / MB)} MB`;
export const SPACE_LOW = 'Make room: below 100 MB everything on this disk is at risk, nights too.';
export const NOT_TOLD = 'unknown here: the system does not say';

// Clock.

export const clockFound = (day: string, time: string): string => `${day} ${time}`;
export const CLOCK_WRONG = 'That year cannot be. Set the clock.';
export const CLOCK_SYNCED = 'the system sets it by the network';
export const CLOCK_NOT_SYNCED = 'the system has not set it by the network';
export const COMPARE_CLOCK = 'Compare it with another clock: start and curfew go by it.';
export const clockUnkept = (adjusted: string | null): string =>
	adjusted === null
		? 'unknown here: the system does not say what sets it'
		: `unknown here; the machine's own clock runs in ${adjusted === 'LOCAL' ? 'local time' : adjusted}`;
export const zoneFound = (zone: string | null, offset: string): string =>
	zone === null ? `UTC${offset}, without a name` : `${zone} (UTC${offset})`;
export const ZONE_UTC = 'Set the time zone of where the show is: start and curfew go by it.';

// Sleep, lid and lock.

export const NEVER_BY_LOGIND = 'logind does not put it to sleep when nobody types';
export const HELD_AWAKE = 'something keeps logind from it now';
export const idleAction = (action: string, after: string): string =>
	`logind does this after ${after} without a key: ${action}`;
export const STOP_IDLE = 'Set IdleAction=ignore in /etc/systemd/logind.conf for the show.';
export const lidAction = (action: string): string => `closing it: ${action}`;
export const LID_IGNORED = 'closing it does nothing';
export const LID_OPEN = 'Leave it open, or set HandleLidSwitch=ignore in /etc/systemd/logind.conf.';
export const LID_BY_DESKTOP = 'unknown here: the desktop handles it';
export const LOOK_IN_POWER =
	'Look in the power settings of your desktop: no sleep for the length of the show.';
export const UNKNOWN = 'unknown here';
export const LOOK_IN_LOCK =
	'Look in the screen settings of your desktop: no lock and no dark screen for the length of the show.';
export const LOOK_IN_LOCK_MAC =
	'Look in System Settings, Lock Screen: no screen saver and no lock for the length of the show.';
export const LOOK_IN_SYSTEM =
	'Look in the power settings of the system: no sleep and no lock for the length of the show.';
export const LID_MAC = 'Leave it open: most laptops sleep when it is closed.';
export const CONSOLE_NEVER = 'this console does not go dark by itself';
export const consoleBlank = (seconds: number): string =>
	`this console goes dark after ${seconds} s without a key`;
export const STOP_BLANK = 'Type: setterm --blank 0';
export const SLEEP_NEVER = 'the system does not sleep by itself';
export const sleepAfter = (minutes: number): string =>
	`the system sleeps after ${minutes} min without a key`;
export const displayAfter = (minutes: number): string =>
	`the screen goes dark after ${minutes} min without a key`;
export const STOP_SLEEP_MAC = 'Type: caffeinate -di rackside run SHOW';

// Power.

export const ON_MAINS = 'on mains';
export const ON_BATTERY = 'on battery';
export const withCharge = (source: string, percent: number | null): string =>
	percent === null ? source : `${source}, battery at ${percent} %`;
export const PLUG_IN = 'Plug it in, and tape the plug.';

// The program itself.

export const NO_UNFINISHED = 'none is unfinished';
export const unfinishedFound = (titles: readonly string[]): string =>
	`${titles.length === 1 ? 'unfinished' : `${titles.length} unfinished`}: ${titles.join(', ')}`;
export const FINISH_NIGHTS = 'rackside resumes one; q there closes its show.';
export const NIGHTS_UNREAD = 'not all nights can be read';
export const SEE_NIGHTS = 'rackside nights says which.';
export const NO_OWN_TROUBLES = 'none noted';
export const troublesOld = (day: string): string => `none since ${day}`;
export const troublesFound = (count: number, words: string, when: string): string =>
	`${count} in the last 30 days; the last: ${words} (${when})`;
export const SEE_TROUBLES = 'rackside nights --verbose lists them.';
export const versionsFound = ({
	program,
	node,
	platform,
	system,
}: {
	readonly program: string | null;
	readonly node: string;
	readonly platform: string;
	readonly system: string;
}): string =>
	`rackside ${program ?? '(version unknown here)'}, Node ${node}, ${platform} ${system}`;

// Keys.

export const KEYS_LEFT_OUT = 'left out: no terminal';
export const KEYS_LEFT = 'left out, as you asked';
export const KEYS_NOT_FOR_JSON = 'left out: --json asks nothing';
export const HOLD_KEY =
	'Key repeat: hold the letter j for two seconds, then let go. esc leaves this out.';
export const PRESS_SWITCH =
	'Foot switch: press each pedal once. n: there is none. esc leaves this out.';
export const NO_KEY_CAME = 'unknown here: no key came';
export const ONE_PRESS =
	'unknown here: one press and no repeat in two seconds; repeat is off, or the key was let go';
export const HOLD_AGAIN = 'Run rackside doctor again and keep the key down.';
export const repeatFound = (delayMs: number, intervalMs: number | null, counts: number): string =>
	`begins after ${Math.round(delayMs)} ms${intervalMs === null ? '' : `, then every ${Math.round(intervalMs)} ms`}; a held key counts ${counts === 1 ? 'once' : `${counts} times`}`;
export const REPEAT_FIX =
	'Set the delay of key repeat below 700 ms and its rate to 12 a second or more, or switch it off.';
export const NO_SWITCH = 'none';
export const switchFound = (keys: readonly string[]): string => keys.join(', ');
export const keyTakenFor = (key: string, action: string): string => `${key} (${action})`;
export const keyForNothing = (key: string): string => `${key} (does nothing)`;
export const UNREADABLE_KEY = 'a key that rackside does not read';
export const SWITCH_FIX =
	'Set the switch to send page down and page up: these step the show in every view.';
export const TOO_SOON =
	'Set the switch to send one key a press: several keys came within 50 ms of each other.';
