// What a user may choose of the screen's colours, and what a terminal can show of them. At the bottom
// because settings, the terminal and the screen each know one side of it.

/** The sets of colours there are; the first is the usual one. */
export const COLOUR_SETS = ['dark', 'amber', 'grey', 'none'] as const;

export type ColourSet = (typeof COLOUR_SETS)[number];

/** Bits of colour: 1 is none, 4 the sixteen, 8 the 256, 24 all. */
export type ColorDepth = 1 | 4 | 8 | 24;
