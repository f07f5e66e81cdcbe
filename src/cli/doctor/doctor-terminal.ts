// What the terminal can show, as far as it says so.

import type { ColourSet } from '../../base/colours.ts';
import { displayWidth } from '../../base/display-width.ts';
import { readFromMetres } from '../../screen/legibility.ts';
import type { Area } from '../../screen/row.ts';
import type { TerminalAbilities } from '../../terminal/terminal-kind.ts';
import {
	AMBER_NEEDS_MORE,
	CANNOT_DRAW,
	COLOURS_REFUSED,
	colourDepthFound,
	LETTERS_ASCII,
	LETTERS_BY_LOCALE,
	LETTERS_DRAWN,
	LETTERS_LOOK_AT,
	LETTERS_SET_C,
	LETTERS_TOO_SMALL,
	LETTERS_TRIED,
	lettersWide,
	NO_COLOURS,
	NO_SIZE,
	NO_TERMINAL,
	ON_THE_TERMINAL,
	SET_LOCALE,
	SET_TERM,
	SIZE_TOO_SMALL,
	sizeFound,
	WHAT,
} from '../../words/doctor.ts';
import { type DoctorLine, fine, look, unknown } from './doctor-line.ts';

export type TerminalFound = {
	readonly size: Area | null;
	readonly abilities: TerminalAbilities;
	/** By `--no-color` or `NO_COLOR`. */
	readonly isColourRefused: boolean;
	readonly colours: ColourSet;
	/** Cells that LETTERS_TRIED was drawn in; null where the terminal does not say. */
	readonly drawnCells: number | null;
};

/** From here on the screen is complete. */
const COMPLETE: Area = { columns: 80, rows: 24 };
/** Where the laptop stands is so far from where hands work (common practice). */
const RACK_METRES = 2;

/** Size, colours and letters. */
export function terminalLines(found: TerminalFound): readonly DoctorLine[] {
	return [sizeLine(found), coloursLine(found), lettersLine(found)];
}

function sizeLine({ size, abilities }: TerminalFound): DoctorLine {
	const why = abilities.kind === 'none' ? NO_TERMINAL : NO_SIZE;
	if (size === null) return unknown(WHAT.size, why, ON_THE_TERMINAL);
	const from = readFromMetres(size);
	const words = sizeFound(size, from);
	if (size.columns < COMPLETE.columns || size.rows < COMPLETE.rows)
		return look(WHAT.size, words, SIZE_TOO_SMALL);
	return from.tall < RACK_METRES
		? look(WHAT.size, words, LETTERS_TOO_SMALL)
		: fine(WHAT.size, words);
}

function coloursLine({ abilities, isColourRefused, colours }: TerminalFound): DoctorLine {
	if (isColourRefused) return fine(WHAT.colours, COLOURS_REFUSED);
	const { kind, colorDepth } = abilities;
	if (kind === 'none') return unknown(WHAT.colours, NO_TERMINAL, ON_THE_TERMINAL);
	if (kind === 'dumb') return look(WHAT.colours, CANNOT_DRAW, SET_TERM);
	const words = colourDepthFound(colorDepth);
	if (colorDepth === 1) return look(WHAT.colours, words, NO_COLOURS);
	if (colorDepth === 4 && colours === 'amber') return look(WHAT.colours, words, AMBER_NEEDS_MORE);
	return fine(WHAT.colours, words);
}

function lettersLine({ abilities, drawnCells }: TerminalFound): DoctorLine {
	if (!abilities.isUnicode) return look(WHAT.letters, LETTERS_ASCII, SET_LOCALE);
	if (drawnCells === null) return unknown(WHAT.letters, LETTERS_BY_LOCALE, LETTERS_LOOK_AT);
	return drawnCells === displayWidth(LETTERS_TRIED)
		? fine(WHAT.letters, LETTERS_DRAWN)
		: look(WHAT.letters, lettersWide(drawnCells), LETTERS_SET_C);
}
