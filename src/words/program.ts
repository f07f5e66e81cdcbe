// What the program says on the plain terminal: before the live screen opens, after it was left, where it
// cannot go on.

import { dayText } from './paper.ts';

export const NEEDS_TERMINAL =
	'The live screen needs a terminal for its keys and its drawing. rackside plan SHOW --sheet prints the run sheet instead.';
export const CANNOT_PLACE =
	"This terminal cannot move its cursor (its TERM says so), so the live screen cannot be drawn. Set TERM to your terminal's type, or print the run sheet with rackside plan SHOW --sheet.";
export const outputLost = (code: string | undefined): string =>
	`The output could not be written (${code}). Send it elsewhere.`;

/** A fault of the program's own; `kept` says that the night is safe all the same. */
export const faultWords = (trace: string, isNightKept: boolean): string =>
	`rackside has a fault of its own and stopped. ${isNightKept ? 'The night is saved up to its last key. ' : ''}The trace is ${trace}. Please send it to whoever maintains rackside.`;
/** A question was left with Ctrl-C. */
export const LEFT_UNCHANGED = 'Left. Nothing was written.';
export const traceIn = (path: string): string => `in ${path}`;
export const traceText = (text: string): string => `this: ${text}`;
/** `steps`: how many the disk did not take; `cause`: why, as part of a sentence. */
export function notAllKept(steps: number, cause: string): string {
	const what = steps === 1 ? 'The last step' : `The last ${steps} steps`;
	return `${what} could not be saved and ${steps === 1 ? 'is' : 'are'} lost: ${cause}.`;
}

/** What was written in time and not confirmed. */
export function notConfirmed(records: number): string {
	const [what, them] =
		records === 1 ? ['The last step is', 'it'] : [`The last ${records} steps are`, 'them'];
	return `${what} written, but the disk has not confirmed ${them}: a power cut now could lose ${them}.`;
}

export const NOT_ALL_SAVED = 'not everything was saved';

// A night that cannot be read.

export const ANEW_KEY = 'n';
export const ANEW_ASKED =
	'n begins a new night and leaves that as it is (so does --anew); any other key ends.';
export const ANEW_NOT = 'Nothing was begun.';

// After the live screen.

export const SHOW_OVER = 'The show is closed. rackside report prints the report.';
export const rehearsalOpen = (show: string): string =>
	`The rehearsal stays open. rackside rehearse ${show} resumes it.`;
export const nightOpen = (show: string): string =>
	`The night stays open. rackside or rackside run ${show} resumes it.`;

// A start without a command.

export const EXAMPLE_SHEET =
	'This is the run sheet of an example. On a terminal, rackside opens it live.';

// Commands.

/** What is said once as a night is opened whose day or hour is past. */
export function oddStartWords(
	show: { readonly date: string | null; readonly startMinutes: number | null },
	odd: { readonly isOtherDay: boolean; readonly isPast: boolean },
): string {
	const start = dayText(show.startMinutes ?? 0);
	const day = odd.isOtherDay ? [`The show file's date, ${show.date}, is past.`] : [];
	const hour = odd.isPast
		? [`The start, ${start}, has gone by: the first song begins when you press space.`]
		: show.startMinutes === null
			? []
			: [`Counting to ${start} today.`];
	return [...day, ...hour].join(' ');
}
export const PLANNING = 'Planning the night,';
export const NOTHING_TO_LOOK_AT = 'Nothing to look at.';
export const toLookAt = (count: number): string => `${count} to look at.`;
export const restToLookAt = (count: number, shown: number, file: string): string =>
	`${count} to look at, the first ${shown} above. rackside check ${file} lists all.`;
export const tooLongToCheck = (places: number, file: string): string =>
	`Not checked: ${places} places in the list are more than one night. If these are all the act's songs, cut set in ${file} down to tonight's and run rackside check ${file}. Checking all of it takes a minute or more.`;
export const noNights = (folder: string): string => `No night was recorded yet in ${folder}.`;
export const NIGHT_STATES = {
	finished: 'finished',
	unfinished: 'unfinished',
	unreadable: 'unreadable',
	rehearsal: 'rehearsal',
} as const;
export const written = (path: string): string => `Written: ${path}`;
export const NIGHTS_IN = 'nights in';
export const SETTINGS_IN = 'settings in';

/** Who plays by themselves in a rehearsal like an earlier night. */
export const THE_BAND = 'the band';
