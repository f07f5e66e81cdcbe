// Whether what was measured under another identity was this very instrument: the question, and what stands in
// its place where nobody answers.

/** Whose bench work is in doubt: `The A1 of the show files in /shows was measured on 2026-06-12`. */
export const measuredElsewhere = (id: string, folder: string | null, day: string): string =>
	`${folder === null ? `An ${id} of some show file` : `The ${id} of the show files in ${folder}`} was measured on ${day}`;

export const isItThis = (measured: string, name: string): string =>
	`${measured}. Is it this ${name}? (y or n, enter: ask again later) `;

export const sayWhether = (measured: string, name: string): string =>
	`${measured}. If it is this ${name}, say --same yes, else --same no.`;

export const measuredAsAnother = (name: string, body: string): string =>
	`${name} was measured as another instrument (${body}). Give one of the two a name of its own with gear: in its show file.`;

export const bodyWords = (kind: string, strings: number, scaleMillimetres: number | null): string =>
	`${kind}, ${strings} strings${scaleMillimetres === null ? '' : `, scale ${scaleMillimetres} mm`}`;

export const BAD_SAME = '--same is neither yes nor no';
export const YES_OR_NO = 'yes or no';
