// The pages of the bench: an instrument between two tunings, its strings, its set-up.

/** A string with too little of its strength left, or none. */
export const breaksOrNear = (string: number, strengthLeft: number | null): string =>
	(strengthLeft ?? 1) < 0
		? `String ${string} breaks before this pitch. Do not tune up to it.`
		: `String ${string} is near breaking. Wear eye protection, or choose another.`;

const offBy = (uncertainty: number): string =>
	uncertainty > 0 ? ` ± ${(uncertainty * 100).toFixed(0)} %` : '';

// A tuning.

export const TUNING = {
	head: (name: string, from: string, to: string): string =>
		`${name}: ${from === to ? to : `${from} to ${to}`}`,
	capo: (capo: number): string => (capo > 0 ? `, capo ${capo}` : ''),
	reference: (hertz: number): string => `, A4 = ${hertz} Hz`,
	/** Where a tuning comes from; nothing of what everybody knows. */
	origin: (tuning: string, origin: string | null): readonly string[] =>
		origin === null || origin === 'common practice' ? [] : [`${tuning}: ${origin}`],
	columns: ['string', 'tune to', 'Hz', 'offset', 'move', '', 'tension'],
	pairedColumns: ['course', 'tune to', 'Hz', 'offset', 'move', '', 'tension'],
	included: (cents: string): string => `${cents} c in it`,
	sounds: (note: string): string => `sounds ${note}`,
	newtons: (newtons: number): string => `${newtons.toFixed(1)} N`,
	check: (note: string): string => `check ${note}, up to pitch`,
	step: (how: string, from: string, to: string): string => `${how} from ${from} to ${to}`,
	string: (label: string): string => `string ${label}`,
	course: (label: string): string => `course ${label}`,
	stepLine: (which: string, words: string, isSecond: boolean): string =>
		`  ${which}: ${words}${isSecond ? ' (second round)' : ''}`,
	none: (long: string): string => `Nothing to retune. Touch up, about ${long}.`,
	steps: (long: string): string => `Steps, about ${long}:`,
	onNeck: (newtons: number, uncertainty: number, change: string): string =>
		`On the neck: ${newtons.toFixed(0)} N${offBy(uncertainty)}, ${change} N from its own tuning.`,
	noTension: 'No tension: give its strings and scale in the show file.',
	openStrings: 'By ear, open strings:',
	shape: 'By ear, the shape:',
	songShape: (
		shape: string,
		{ capo, player, song }: { capo: number; player: string; song: string },
	): string => `By ear, ${shape}${capo === 0 ? '' : ` at capo ${capo}`}, ${player} in ${song}:`,
	pureChain: (string: number, cents: number): string =>
		`Tuned pure from string to string, string ${string} would end ${Math.abs(cents).toFixed(1)} c ${cents < 0 ? 'flat' : 'sharp'}: tune each to its own target.`,
	pair: (strings: readonly number[]): string => `  ${strings.join(' and ')}`,
	beats: (hertz: number): string => `${hertz.toFixed(2)} beats per second`,
	pairColumns: ['  strings', 'interval', 'from pure', ''],
} as const;

// A set of strings.

export const STRINGS = {
	head: (name: string, tuning: string): string => `${name} in ${tuning}`,
	columns: ['string', 'gauge', 'tension', '', '', 'of mean', 'semitones', 'at most', 'same feel'],
	newtons: (newtons: number, uncertainty: number): string =>
		`${newtons.toFixed(1)} N${uncertainty > 0 ? ` ± ${uncertainty * 100} %` : ''}`,
	toBreaking: (semitones: number): string => `${semitones.toFixed(1)} to breaking`,
	perDegree: (cents: number): string => `${cents.toFixed(1)} c/°C`,
	onNeck: (
		total: { readonly newtons: number; readonly pounds: number; readonly kilograms: number },
		uncertainty: number,
		change: string,
	): string =>
		`On the neck: ${total.newtons.toFixed(0)} N, ${total.pounds.toFixed(0)} lbf, ${total.kilograms.toFixed(1)} kgf${uncertainty > 0 ? `,${offBy(uncertainty)}` : ''}; ${change} N from its own tuning.`,
	stiff: (strings: readonly number[]): string =>
		`Stiff: string ${strings.join(', ')}. Partials run sharp: tune by the low ones.`,
	estimated: 'Wound strings are estimated. unit-mass in the show file makes them exact.',
	sameFeel: (newtons: number, off: string): string =>
		`With the gauges of the same feel: ${newtons.toFixed(0)} N, ${off} % of what it bears now.`,
	thicker:
		'Thicker strings: look at relief and intonation, and that none sticks in the nut. Cutting its slots is a luthier’s work.',
	noneInStock: 'none in stock',
	stockUnknown: 'List stock or gauges in the show file to see which string feels the same.',
	noneNear: 'none near',
} as const;

// A set-up.

export const SETUP = {
	/** Null where it never was. */
	head: (name: string, date: string | null): string =>
		`${name}: ${date === null ? 'never measured' : `last measured ${date}`}`,
	never: 'never',
	noTarget: (usual: string): string => (usual === '' ? 'no target' : `no target (usual ${usual})`),
	measure: (label: string, target: string, found: string): string =>
		`${label}: target ${target}, measured ${found}`,
	off: (found: string, off: string): string => `${found} (${off})`,
	right: (string: number): string => `string ${string}: OK`,
	saddle: (string: number, cents: string, move: string): string =>
		`string ${string}: ${cents} c, saddle ${move}`,
	/** Towards the bridge's end the string gets longer. */
	towards: (length: string, end: 'bridge' | 'nut'): string =>
		`${length} ${end === 'bridge' ? 'back, longer' : 'forward, shorter'}`,
	reliefFirst: 'Relief is off: set it first, then action; intonation moves with both.',
	turns: (turns: number): string => `, ${turns.toFixed(2)} turns`,
	noIntonation: 'No intonation: give --at12 what the 12th fret of each string reads.',
	slacken:
		'Slacken a string before its saddle moves, then tune and read it again. Wear eye protection at strings.',
	fretPlace: (fret: number, length: string): string => `fret ${fret}: ${length} from the nut`,
	at12: '12th fret',
	sameDay: 'since earlier that day',
	days: (days: number): string => `in ${days} ${days === 1 ? 'day' : 'days'}`,
	went: (name: string, by: string, since: string): string => `${name}: moved ${by} ${since}`,
	fretRight: 'in its place',
	fretOff: (cents: string): string => `${cents} c from its place`,
	laid: (fret: number, out: string, scale: string): string =>
		`fret ${fret}: ${out}; right for a scale of ${scale}`,
	luthier: 'Fret, nut and bridge places are a luthier’s work.',
	feedback: (hertz: number, band: string, q: number): string =>
		`Feedback at ${hertz} Hz: pull the ${band} Hz band, or a notch at ${hertz} Hz, Q ${q}. Deaden the strings, raise the level slowly until it rings, then stop: ears protected, warn the stage.`,
	nearest: 'nearest',
} as const;
