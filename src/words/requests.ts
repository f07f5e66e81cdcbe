// What is wrong with a request on the command line, and what to type instead. `what` and `expected` go into
// one sentence (see `problemText`), so they begin small; hints are sentences.

import { withArticle } from './kinds.ts';

export const didYouMean = (near: string): string => `Did you mean ${near}?`;

export const NO_COMMAND = 'there is no such command';
export const toOpenShow = (file: string): string => `To open a show: rackside run ${file}`;
export const HELP_LISTS_COMMANDS = 'rackside --help lists the commands.';

// Options and words.

export const takesNoValue = (option: string): string => `${option} takes no value`;
export const needsValue = (option: string): string => `${option} needs a value`;
/** How a value is given that looks like an option. */
export const writtenTogether = (text: string): string => `If that is meant, write ${text}.`;
export const UNKNOWN_OPTION = 'unknown option';
export const HELP_LISTS_OPTIONS = '--help lists the options.';
export const BAD_SHELL = 'there is no completion for this shell';
export const MISSING_WORD = 'something is missing';
export const forExample = (line: string): string => `For example: ${line}`;
export const EXTRA_WORD = 'unexpected word';

// An instrument, a tuning, a number.

export const NO_PLAYER = 'there is no such player in this show';
export const NO_TECH = 'there is no such technician in this show';
export const BAD_SYMPTOM = '--symptom names no known symptom';
export const BAD_ANSWER = '--answers cannot be read';
export const NO_TEST = 'there is no such test on this sound path';
export const NO_INSTRUMENT = 'there is no such instrument in this show';
export const AN_INSTRUMENT = 'an instrument in the show file';
export const notATuning = (option: string, kind: string): string =>
	`--${option} is not a tuning of this kind of instrument (${kind})`;
export const HERTZ_OR_NOTE = '25 to 20000, or a note with its octave';
export const badNumber = (option: string, isWhole: boolean): string =>
	`--${option} needs a ${isWhole ? 'whole ' : ''}number`;
export const BAD_RINGING = '--feedback needs hertz or a note';

// The bench.

export const BAD_CENTS = '--at12 is not one reading per string';
export const centsExpected = (count: number, most: number): string =>
	`${count} numbers from -${most} to ${most}, string ${count} first`;
export const BAD_FRET = '--fret cannot be read';
export const fretExpected = (most: number): string =>
	`a fret from 1 to ${most} and its distance from the nut, such as "12 323.85"`;
export const BAD_MEASURE = '--record cannot be read';
export const measuresExpected = (names: string): string =>
	`${names} with lengths, such as "action 1.9 1.6, relief 0.2 mm"`;
export const BAD_UNIT = '--unit is unknown';
export const noScale = (id: string): string => `${id} has no scale in the show file`;
export const ADD_SCALE = 'Add scale: 25.5 in.';
export const BAD_SCALE = '--scale is not a scale length';
export const SCALE_EXPECTED = 'inches or millimetres with their unit, such as 25.5 in or 648 mm';
export const noStrings = (id: string, lacks: 'strings' | 'scale'): string =>
	`${id} has no ${lacks} in the show file, so nothing can be worked out`;
export const ADD_STRINGS =
	'Add strings: [10, 13, 17, 26w, 36w, 46w] and scale: 25.5 in, as they are.';
export const takesNoCapo = (kind: string): string => `${withArticle(kind)} takes no capo`;
export const LEAVE_CAPO_OUT = 'Leave --capo out.';
export const BAD_SHAPE = '--shape is not a chord shape';
export const shapeExpected = (count: number, isCourse: boolean): string =>
	`${count} frets, one per ${isCourse ? 'course' : 'string'}, from the highest-numbered, such as 022100 or x32010`;
export const BAD_STRINGS = '--covers names no strings';
export const stringsExpected = (most: number): string =>
	`string numbers from 1 to ${most}, such as "3 4 5"`;

// A name that is not UTF-8.

export const NOT_UTF8 = 'this name is not UTF-8, so nothing can be found or kept under it';
export const ANOTHER_DATA =
	'Choose another folder with --data DIR, or a link to it whose name is plain.';
export const ANOTHER_NAME = 'Rename it, or make a link to it whose name is plain.';

// Songs, nights, reports, settings.

export const NO_SUCH_SONG = 'the show has no such song';
export const SONG_BY = "Give the song's id or its title.";
export const noNightUnderWay = (file: string): string => `no night of ${file} is under way`;
export const WITHOUT_TONIGHT = 'Without --tonight you get the sheet of the file.';
export const NO_NIGHT_YET = 'no night was recorded yet';
export const noneWasPlayed = (since: string | null): string =>
	since === null
		? 'no song was played in any night'
		: `no night since ${since} has a song that was played`;
export const ONLY_REHEARSALS =
	'only rehearsals are recorded here, and they do not count unless named';
export const RUN_RECORDS_ONE = 'rackside run SHOW records one.';
export const NO_SUCH_NIGHT = 'there is no such night';
export const NIGHTS_LISTS = 'rackside nights lists all nights.';
export const NO_SHOW_IN_NIGHT =
	"this night's copy of the show cannot be read, so there is no report of it";
export const nameItsShow = (night: string): string =>
	`Name the show file that it was begun with: rackside report ${night} --show FILE`;
export const OWN_COPY =
	'This night has its own copy of the show, and the report goes by that; --show is not needed.';
export const UNKNOWN_SHEET_FORM = 'a run sheet cannot be written as this';
export const UNKNOWN_PAPER = 'there is no such paper here';
export const NO_SUCH_PAGE = 'there is no such page of a run sheet';
export const PAGES = ['run', 'rack', 'radio', 'cues=PLAYER', 'floor=PLAYER'];
export const NO_BROWSER =
	'no browser was found that can print to a PDF by itself (chromium in PATH)';
export const NOT_PRINTED = 'this browser did not print the sheet';
export const PRINT_BY_HAND =
	'Write the page with --as html --out sheet.html, open it in any browser and print it there.';
export const UNKNOWN_FORM = 'a report cannot be written as this';
export const NO_SUCH_READER = 'a report is not written for this reader';
export const NO_SUCH_FIRM = 'nothing of this show is hired from this firm';
export const NO_SETTING = 'there is no such setting';
export const SETTINGS_LISTS = 'rackside settings lists all.';
export const settingValue = (name: string): string => `${name} cannot be this`;
export const oneOf = (names: readonly string[]): string => `one of ${names.join(', ')}`;

// Rehearsals and their scripts.

export const CAREFUL_ALONE = '--careful changes nothing by itself';
export const CAREFUL_WITH = 'With --use: rackside times --use --careful';
export const ONE_OR_MANY = '--nights and --since take the last nights and no named one';
export const NOT_WITH_ONE = 'one night by its name, or --nights N or --since DATE';
export const BAD_SINCE = '--since needs a day';
export const SINCE_EXPECTED = 'a day such as 2026-06-12';
export const range = (from: number, to: number): string => `${from} to ${to}`;
export const SIZE_NEEDS = '--size needs columns and rows';
export const SIZE_EXPECTED = 'a size such as 120x40, each 1 to 1000';
export const MIDI_OF_SCRIPT =
	'rehearse --midi writes what a script would send, and there is no --script';
export const MIDI_LIVE =
	'Add --script FILE. To send to the pedals from the live screen: rackside run SHOW --midi PORT.';
export const NO_SCRIPT = 'there is no such script';
export const scriptUnreadable = (why: string): string => `this script cannot be read: ${why}`;
export const CHECK_NAME = 'Check the name and the folder.';
export const SCRIPT = {
	time: 'a line begins with a time of the show clock',
	timeExpected: 'mm:ss or h:mm:ss, with .mmm after it or - before it where wanted',
	sizeExpected: 'a size such as 120x40',
	nothing: 'nothing',
	count: 'a key cannot be pressed that often',
	countExpected: (most: number): string => `1 to ${most} times`,
	quotes: 'text in quotes does not end, or goes on after its end',
	quotesExpected: 'a quote, the text, a quote, then a space',
	word: 'this is not a key, and not anything else a script can do',
	wordExpected: (words: readonly string[]): string =>
		`one character, ${words.join(', ')} or "text"`,
	overlap: 'this line begins before the keys of the line before it have ended',
	orLater: (mark: string): string => `${mark} or later`,
	apart: 'Keys on one line are 400 ms apart.',
	empty: 'a time with nothing to do',
	emptyExpected: 'keys after it',
	long: 'the script presses more keys than a night has',
	longExpected: (most: number): string => `at most ${most}`,
} as const;

/** Two options that ask for different answers. */
export const notBoth = (one: string, other: string): string =>
	`--${one} and --${other} ask for two things`;
export const LEAVE_ONE_OUT = 'Leave one of them out.';
