// What is to be done before the next show, a line each with its reason.

/** Titles of the kinds, in the order of the page. */
export const TOMORROW_KINDS = {
	restring: 'Restring',
	repair: 'Repair',
	buy: 'Buy',
	tell: 'Tell',
	'carry-over': 'Carry over',
} as const;

export const TOMORROW = {
	title: (night: string): string => `Tomorrow, after ${night}`,
	nothing: 'Nothing is to be done.',
	left: (open: number, all: number): string => `${all - open} of ${all} done`,
	cells: ['kind', 'instrument', 'slot', 'name', 'text', 'why', 'done'],
} as const;

/** The keys, in the footer. */
export const TOMORROW_KEYS = {
	pick: 'up/down',
	pickWords: 'pick',
	tick: 'space',
	tickWords: 'done, or not',
	leave: 'esc',
	leaveWords: 'leave',
} as const;

/** `1 Amber: put on string 2 (string 2 broke 20:14 in Lantern)`. */
export const lineWithWhy = (line: string, why: string): string => `${line} (${why})`;

// Restring.

export const RESTRING = {
	set: (gauges: string): string => `new set ${gauges}`,
	setUnknown: 'new set (the show file gives no gauges)',
	strings: (strings: string): string => `put on ${strings}`,
	string: (string: number, gauge: string | null): string =>
		`string ${string}${gauge === null ? '' : ` (${gauge})`}`,
	unnamed: 'the broken string (nobody said which)',
	down: (strings: readonly (number | null)[], when: string | null): string =>
		`${strings.map((one) => (one === null ? 'a string' : `string ${one}`)).join(', ')} broke${when === null ? '' : ` ${when}`}`,
	among: (strings: readonly (number | null)[], hours: string): string =>
		`${strings.map((one) => (one === null ? 'a string' : `string ${one}`)).join(', ')} broke; the others have ${hours} in hands`,
	hours: (hours: string, due: number): string => `${hours} in hands, due at ${due} h`,
	tuning: (songs: string, tuning: string): string =>
		`${songs}: ${tuning} is too far from what it is strung for`,
	gauges: 'the next show file gives it other gauges',
} as const;

// Repair.

export const REPAIR = {
	fault: (fault: string): string => `repair: ${fault}`,
	out: 'find out why it was out',
	burr: (string: number | null): string =>
		`feel for a burr${string === null ? '' : ` where string ${string} breaks`}`,
	burrWhy: (breaks: number, nights: number): string =>
		nights === 1 ? `${breaks} breaks in one night` : `${breaks} breaks in ${nights} nights`,
	pedal: (pedal: string): string => `free the switch of ${pedal}`,
	pedalWhy: (isOn: boolean, when: string): string => `stuck ${isOn ? 'on' : 'off'} since ${when}`,
	pack: (pack: string): string => `check battery and channel of pack ${pack}`,
	battery: (what: string): string => `fresh battery in ${what}`,
	batteryWhy: (left: string, needed: string): string =>
		`${left} left, the next show takes ${needed}`,
	incident: (kind: string): string => `look into: ${kind}`,
	/** `21:04 in Lantern, Ash had it`. */
	found: (when: string, player: string | null): string =>
		player === null ? when : `${when}, ${player} had it`,
	suspect: (when: string, player: string | null): string =>
		`suspect since ${when}${player === null ? '' : `, ${player} wore it`}`,
	before: 'before the night was recorded',
} as const;

/** `21:04 in Lantern`. */
export const inSong = (clock: string, song: string): string => `${clock} in ${song}`;
export const between = (clock: string, where: string): string => `${clock} ${where}`;

// Buy.

export const BUY = {
	text: (count: number, gauge: string): string => `${count} x ${gauge}`,
	stock: (stock: number, used: number): string =>
		`${stock} in stock by the show file${used === 0 ? '' : `, ${used} used in the night`}`,
	restringing: (count: number): string => `restringing takes ${count}`,
	breaks: (rate: number, nights: number, enough: number): string =>
		`${rate.toFixed(1)} breaks a night: for ${nights} nights have ${enough} (enough 95 times in 100)`,
	/** Where there are too few nights to say how often. */
	asMany: (broken: number): string => `${broken} broke, so have as many again`,
	/** Those that nobody counts. */
	see: (gauges: string): string => `see that there are ${gauges}`,
	uncounted: 'the show file does not count them under stock',
} as const;

// Tell.

export const TELL = {
	player: (player: string, instrument: string): string =>
		`${player}: ${instrument} cannot be played as it is`,
	breaks: (player: string, count: number): string => `${player}: ${count} strings in one night`,
	breaksWhy: (strings: string): string => `broke ${strings}`,
	radio: (pack: string): string => `whoever has the radio list: pack ${pack} is suspect`,
	owner: (owner: string, instrument: string): string => `${owner}: ${instrument}`,
	ownerWhy: (what: string, serial: string | null): string =>
		serial === null ? what : `${what}; serial ${serial}`,
	production: (time: string): string => `production: ${time} over the curfew`,
	productionWhy: (clock: string): string => `curfew ${clock}`,
	brokeString: (strings: readonly (number | null)[]): string =>
		strings.map((one) => (one === null ? 'a string broke' : `string ${one} broke`)).join(', '),
	fault: (fault: string): string => `faulty: ${fault}`,
	out: 'put aside',
} as const;

// Carry over.

export const CARRY = {
	tuning: (tuning: string): string => `is in ${tuning}`,
	capo: (capo: number): string => `capo ${capo} is on`,
	file: (tuning: string): string => `the show file gives ${tuning}, no capo`,
	out: 'is out',
	bench: 'is on the bench',
	placeWhy: 'so it stood at the end of the night',
} as const;

/** The night that a list is after: its show and its day. */
export const nightWords = (title: string, day: string): string => `${title}, ${day}`;
