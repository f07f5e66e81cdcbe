// What a person reads out of each of the twenty set lists, counted by hand before any reader was run on them:
// rows that say something below the headings (of a pasted list all lines that do), songs of the catalogue,
// places in the order, songs of the encore, intervals, cells that are clear and those that can only be asked.

export type Expected = {
	readonly rows: number;
	readonly songs: number;
	readonly listed: number;
	readonly encore: number;
	readonly intervals: number;
	readonly understood: number;
	/** Row and column of each cell that a person would have to ask about. */
	readonly asked: readonly (readonly [number, string])[];
	readonly players: readonly string[];
};

const counts = (
	[rows, songs, listed, encore, intervals, understood]: readonly [
		number,
		number,
		number,
		number,
		number,
		number,
	],
	players: readonly string[],
	asked: Expected['asked'] = [],
): Expected => ({ rows, songs, listed, encore, intervals, understood, asked, players });

export const EXPECTED: Readonly<Record<string, Expected>> = {
	'01-plain.csv': counts([10, 8, 8, 1, 1, 32], ['ash', 'bo', 'cleo']),
	'02-semicolons.csv': counts([6, 6, 6, 0, 0, 16], ['gtr-1', 'gtr-2', 'bass']),
	'03-pasted-cells.tsv': counts([7, 6, 6, 0, 1, 16], ['wren', 'morrow'], [[3, 'Morrow']]),
	'04-merged.csv': counts([9, 7, 7, 0, 1, 18], ['ines', 'rafe']),
	'05-careless.csv': counts(
		[9, 8, 8, 0, 0, 16],
		['gtr-nell', 'bass'],
		[
			[3, 'min'],
			[9, 'SONG'],
		],
	),
	'06-two-words.txt': counts([11, 8, 9, 2, 0, 8], ['guitar']),
	'07-message.txt': counts([12, 10, 10, 1, 1, 4], ['guitar']),
	'08-bare.txt': counts([7, 7, 7, 1, 0, 0], []),
	'09-two-columns.csv': counts([7, 7, 7, 0, 0, 7], ['guitar']),
	'10-quotes-bom.csv': counts([5, 5, 5, 0, 0, 26], ['lead', 'rhythm', 'low-end']),
	'11-windows.csv': counts([4, 4, 4, 0, 0, 10], ['zoë', 'søren']),
	'12-utf16.tsv': counts([5, 4, 4, 1, 0, 14], ['dana', 'eli']),
	'13-act-abbreviations.csv': counts(
		[6, 6, 6, 0, 0, 16],
		['tess', 'uri'],
		[
			[3, 'Tess'],
			[6, 'Uri'],
		],
	),
	'14-sets.txt': counts([11, 8, 8, 1, 1, 5], ['guitar']),
	'15-missing-lengths.csv': counts([6, 6, 6, 0, 0, 12], ['vic']),
	'16-careless-tabs.tsv': counts(
		[6, 6, 6, 0, 0, 14],
		['gtr-kit', 'gtr-mo'],
		[
			[8, 'length'],
			[8, 'gtr kit'],
		],
	),
	'17-repeats.csv': counts([7, 5, 7, 0, 0, 14], ['hal']),
	'18-numbers-only.txt': counts([8, 7, 7, 1, 0, 5], ['guitar'], [[4, 'length']]),
	'19-careless-semicolon.csv': counts(
		[8, 5, 6, 1, 1, 9],
		['jo'],
		[
			[6, 'jo'],
			[10, 'jo'],
		],
	),
	'20-long-words.csv': counts(
		[5, 5, 5, 0, 0, 27],
		['electric-guitar', 'acoustic-guitar', 'bass-guitar'],
		[[6, 'How it ends']],
	),
};
