// Colours of the picture of a night, for light and for dark. Those of the marks are a published set that readers with any
// kind of colour vision tell apart (M. Okabe and K. Ito, "Color Universal Design", 2008); shape, pattern or a word says
// the same, and every mark has an outline in the colour of the text.

const OKABE_ITO = {
	orange: '#E69F00',
	skyBlue: '#56B4E9',
	green: '#009E73',
	yellow: '#F0E442',
	blue: '#0072B2',
	vermilion: '#D55E00',
	purple: '#CC79A7',
} as const;

/** A fill, and the text that may stand on it. */
export type Fill = { readonly fill: string; readonly text: string };

export type FilledMark =
	| 'song'
	| 'hands'
	| 'ready'
	| 'recheck'
	| 'work'
	| 'break'
	| 'incident'
	| 'cue'
	| 'steps';

const BLACK = '#000000';

const BOTH = {
	ready: { fill: OKABE_ITO.green, text: BLACK },
	recheck: { fill: OKABE_ITO.orange, text: BLACK },
	work: { fill: OKABE_ITO.purple, text: BLACK },
	break: { fill: OKABE_ITO.vermilion, text: BLACK },
	incident: { fill: OKABE_ITO.yellow, text: BLACK },
	steps: { fill: OKABE_ITO.purple, text: BLACK },
} as const;

/** By the reader's own setting; paper is always light. */
export const TIMELINE_COLOURS: Readonly<
	Record<'light' | 'dark', Readonly<Record<FilledMark, Fill>>>
> = {
	light: {
		...BOTH,
		song: { fill: '#ececec', text: BLACK },
		hands: { fill: OKABE_ITO.blue, text: '#ffffff' },
		cue: { fill: OKABE_ITO.skyBlue, text: BLACK },
	},
	dark: {
		...BOTH,
		song: { fill: '#33312c', text: '#ffffff' },
		hands: { fill: OKABE_ITO.skyBlue, text: BLACK },
		cue: { fill: OKABE_ITO.blue, text: '#ffffff' },
	},
};
