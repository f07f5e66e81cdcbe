// What a person reads out of each of the set lists, counted by hand, of the first twenty before any reader was run on them:
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
	// From here on lists that the reader took wrongly at first: a song lost or made up, or a cell guessed in silence.
	'21-kinds-above.csv': counts([7, 5, 5, 1, 0, 24], ['ivo', 'pim', 'lena', 'oto'], []),
	'22-chat.txt': counts([13, 9, 9, 2, 0, 2], ['guitar'], [[4, 'list']]),
	'23-german.csv': counts([7, 5, 5, 1, 1, 22], ['gitarre-1', 'gitarre-2', 'bass'], []),
	'24-halves.tsv': counts([5, 5, 5, 0, 0, 19], ['asher', 'birgit', 'cole'], [[6, 'Birgit']]),
	'25-medley.txt': counts([12, 6, 6, 1, 0, 6], ['guitar'], []),
	'26-legend-below.csv': counts([13, 6, 6, 0, 0, 22], ['gtr-l', 'gtr-r', 'bs'], []),
	'27-side-by-side.csv': counts([6, 12, 12, 0, 1, 12], ['guitar'], []),
	'28-hours.txt': counts([15, 9, 9, 0, 1, 1], ['guitar'], []),
	'29-keys-and-tempos.txt': counts([8, 7, 7, 0, 0, 8], ['guitar'], []),
	'30-gear-below.txt': counts([14, 6, 6, 0, 0, 0], [], []),
	'31-festival.csv': counts([8, 5, 5, 0, 0, 13], ['ivo', 'oto'], [[10, 'Song']]),
	'32-brackets.txt': counts([9, 9, 9, 0, 0, 2], ['guitar'], []),
	'33-french.csv': counts([7, 5, 5, 1, 1, 23], ['guitare-luc', 'guitare-zoé', 'basse-max'], []),
	'34-spanish.csv': counts([7, 5, 5, 1, 1, 14], ['guitarra', 'bajo'], []),
	'35-no-headings.tsv': counts([5, 5, 5, 0, 0, 13], ['player-4', 'player-5'], []),
	'36-drawn-table.txt': counts([6, 5, 5, 1, 0, 14], ['ivo', 'pim'], []),
	'37-mail.txt': counts([21, 9, 9, 2, 0, 2], ['guitar'], []),
	'38-pages-and-sums.csv': counts(
		[18, 8, 8, 2, 1, 37],
		['ivo', 'pim', 'oto'],
		[
			[14, 'Pim'],
			[15, 'Title'],
		],
	),
};

/** What a person would say is played, in order, where that was read wrongly once. */
export const TITLES: Readonly<Record<string, readonly string[]>> = {
	'21-kinds-above.csv': ['Slow Tide', 'Copper Wire', 'Hollow', 'Salt Road', 'Last Boat'],
	'22-chat.txt': [
		'Slow Tide',
		'Copper Wire',
		'Hollow - acoustic, capo 3',
		'Salt Road',
		'Winter Coat',
		'NEW ONE (no title yet)',
		'Ash & Ember',
		'Last Boat',
		'maybe Hurricane Lamp if time',
	],
	'23-german.csv': ['Über den Fluss', 'Grüne Tür', 'Straßenlicht', 'Kalter Kaffee', 'Heimweg'],
	'24-halves.tsv': ['Paper Moon Hotel', 'Tin Roof', 'Glasswork', 'Nine Lives', 'Undertow'],
	'25-medley.txt': [
		'Slow Tide',
		'Medley: Copper Wire / Tin Roof / Hollow',
		'Salt Road',
		'Old Songs Medley',
		'Winter Coat/Summer Coat',
		'Last Boat',
	],
	'26-legend-below.csv': [
		'Slow Tide',
		'Copper Wire',
		'Hollow',
		'Salt Road',
		'Winter Coat',
		'Last Boat',
	],
	'27-side-by-side.csv': [
		'Slow Tide',
		'Copper Wire',
		'Hollow',
		'Salt Road',
		'Winter Coat',
		'Brick',
		'Barn',
		'Barley',
		'Bone',
		'Tin Roof',
		'Glasswork',
		'Last Boat',
	],
	'28-hours.txt': [
		'Slow Tide',
		'Copper Wire',
		'Hollow',
		'Salt Road',
		'Winter Coat',
		'Barn',
		'Barley',
		'Bone (acoustic)',
		'Last Boat',
	],
	'29-keys-and-tempos.txt': [
		'Slow Tide',
		'Copper Wire',
		'Hollow',
		'Salt Road',
		'Winter Coat',
		'A Minor Thing',
		'Last Boat',
	],
	'30-gear-below.txt': [
		'Slow Tide',
		'Copper Wire',
		'Hollow',
		'Salt Road',
		'Winter Coat',
		'Last Boat',
	],
	'31-festival.csv': ['Slow Tide', 'Copper Wire', 'Hollow', 'Salt Road', 'Barn'],
	'32-brackets.txt': [
		'Slow Tide (Ivo starts, long intro)',
		'Copper Wire (click)',
		'Hollow',
		'Salt Road (Pim on mandolin!)',
		'Winter Coat (no drums)',
		'(I Was) Only Joking',
		'Tin Roof (live version)',
		'Glasswork {tbc}',
		'Last Boat (ring out… then off)',
	],
	'33-french.csv': [
		'Marée lente',
		'Fil de cuivre',
		"L'été dernier",
		'Café froid',
		'Dernier bateau',
	],
	'34-spanish.csv': ['Marea lenta', 'Hilo de cobre', 'Año nuevo', 'Café frío', 'Último barco'],
	'35-no-headings.tsv': ['Slow Tide', 'Copper Wire', 'Hollow', 'Salt Road', 'Last Boat'],
	'36-drawn-table.txt': ['Slow Tide', 'Copper Wire', 'Hollow', 'Salt Road', 'Last Boat'],
	'37-mail.txt': [
		'Slow Tide',
		'Copper Wire',
		'Hollow',
		'Salt Road',
		'Winter Coat',
		'Barn',
		'Barley',
		'Last Boat',
		'Tin Roof',
	],
	'38-pages-and-sums.csv': [
		'Slow Tide',
		'Copper Wire',
		'Hollow',
		'Salt Road',
		'Winter Coat',
		'Brick (if time)',
		'Last Boat',
		'Tin Roof',
	],
};
