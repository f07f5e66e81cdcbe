// The first screen: what a start without a command offers.

export const START = {
	title: 'RACKSIDE',
	about: 'Who gets which instrument, in which tuning, ready when, and what happened.',
	resume: (title: string): string => `Go on with ${title}`,
	tonight: (title: string): string => `Tonight's show: ${title}`,
	lastShow: (title: string): string => `The last show again: ${title}`,
	newShow: 'New show',
	newAbout: 'asks for players, instruments and songs, and writes the show file',
	report: "Last night's report",
	reportSoFar: 'The report so far',
	tomorrow: 'What tomorrow needs',
	tomorrowAbout: 'restring, repair, buy, tell; nothing changes until you tick it off',
	example: 'Look around with the example',
	exampleAbout: 'an invented club night; nothing of yours is touched',
	isExample: 'the example',
	walk: 'First walk: eight moments of a night',
	walkAbout: 'one sentence and one key each, on the real screen',
	unread: 'cannot be opened yet; its key says why',
} as const;

/** Parts of a line, those that are there. */
export const startDetail = (...parts: readonly (string | null)[]): string =>
	parts.filter((part) => part !== null && part !== '').join('  ');

export const begunAt = (moment: string): string => `unfinished, begun ${moment}`;
export const startsAt = (time: string): string => `start ${time}`;
/** `today 20:31`, or the day. */
export const momentWords = (day: string, time: string, today: string): string =>
	`${day === today ? 'today' : day} ${time}`;

/** How far a night is. */
export const NOT_BEGUN = 'no song played yet';
export const atSong = (position: number, of: number, title: string): string =>
	position === 0 ? `in ${title}` : `song ${position} of ${of}: ${title}`;
export const afterSong = (position: number, of: number, title: string): string =>
	position === 0 ? `after ${title}` : `after song ${position} of ${of}: ${title}`;
export const ALL_PLAYED = 'all played; q there closes the show';
export const HOW_FAR_UNKNOWN = 'how far it is cannot be read';
export const moreUnfinished = (count: number): string =>
	`${count} more ${count === 1 ? 'night is' : 'nights are'} unfinished: rackside nights`;

/** The keys, in the footer. */
export const START_KEYS = {
	numbers: (last: number): string => (last === 1 ? '1' : `1-${last}`),
	open: 'open',
	pick: 'up/down enter',
	pickWords: 'pick and open',
	walk: 'first walk',
	quit: 'quit',
} as const;
