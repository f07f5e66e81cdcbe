// What is said where the editable parts of a report are written.

import { incidentKindWords } from './entry-words.ts';
import { songLabel } from './report.ts';

export const REMARKS = {
	head: [
		'What is written here goes out with every form of the report.',
		'Write under a heading; leave it empty for nothing. Lines with # are left out.',
	],
	night: 'A line on the night.',
	signed: 'Who signs.',
	incident: (one: {
		readonly id: number;
		readonly at: { readonly clock: string };
		readonly position: number | null;
		readonly song: string | null;
		readonly kind: string;
		readonly player: string | null;
		readonly instrument: string | null;
		readonly words: readonly string[];
	}): string =>
		[
			one.at.clock,
			one.song === null ? null : songLabel(one.position, one.song),
			incidentKindWords(one.kind),
			one.player,
			one.instrument,
			...one.words,
		]
			.filter((part) => part !== null)
			.join(', '),
	/** On the terminal, a line for each; what stands there already in brackets. */
	ask: (about: string, text: string): string => `${about}${text === '' ? '' : ` [${text}]`} `,
	howToAsk: 'Enter keeps what is there, - empties it.',
	kept: (path: string): string => `Kept in ${path}; every form of the report has it.`,
	unchanged: 'Nothing was changed.',
} as const;

/** What is wrong with an edited text. */
export const REMARKS_FAULTS = {
	heading: 'there is no such heading',
	outside: 'text before the first heading',
	twice: 'this heading stands here twice',
	long: 'a remark is longer than this',
} as const;

export const NO_EDITOR =
	'nothing to edit with: EDITOR names no program, and this is not a terminal';
export const SET_EDITOR = 'Set EDITOR to an editor, or start it in a terminal.';
export const editorFailed = (editor: string): string =>
	`the editor ended with an error (${editor})`;
export const editStays = (path: string): string =>
	`What was written stays in ${path}; --edit opens it again.`;
