// The few strings that switch the terminal's modes. Mouse, focus reports, extended keyboard, title, clipboard and passthrough are never
// switched on: a program that dies cannot switch them off again.

/**
 * Asks the terminal to mark pasted text (xterm control sequences, DECSET 2004), and not to go on in
 * the next row where a row is full (DECAWM, 7): terminals differ in how wide a sign is, and one that
 * takes it for wider than we do would shift all rows below.
 */
export const ENTER_MODES = '\u001B[?2004h\u001B[?7l';

/** To the first cell (ECMA-48, 8.3.21 CUP). */
export const FIRST_CELL = '\u001B[H';

/**
 * Shows nothing until the frame is whole, on terminals that can (synchronised output, DECSET 2026); the
 * renderer ends each of its frames so.
 */
export const BEGIN_FRAME = '\u001B[?2026h';

/** Shows what was held back since BEGIN_FRAME. */
export const END_FRAME = '\u001B[?2026l';

/**
 * Goes over to an empty alternate screen without a cursor, its first cell to be written next (xterm
 * control sequences, DECSET 1049 and 25, ED 2, CUP).
 */
export const ENTER_SCREEN = `\u001B[?1049h\u001B[?25l\u001B[2J${FIRST_CELL}`;

/** Goes back from the alternate screen; done twice, it moves the cursor. */
export const LEAVE_SCREEN = '\u001B[?1049l';

/**
 * Takes back ENTER_MODES, ends a half-sent frame, and shows the cursor in plain colours; safe on
 * the normal screen.
 */
export const LEAVE_MODES = '\u001B[?2026l\u001B[?2004l\u001B[?7h\u001B[0m\u001B[?25h';

const RESET_MODES =
	'\u001B[?2026l\u001B[?2004l\u001B[?7h\u001B[?1000l\u001B[?1002l\u001B[?1003l\u001B[?1006l\u001B[?1004l' +
	'\u001B[0m\u001B[?25h';

/**
 * Puts right every mode that this or an earlier program may have left on (xterm control sequences,
 * DECRST). Only after an abnormal end: leaving the alternate screen twice moves the cursor. No full
 * reset, which would clear the user's history.
 */
export const RESET = `${RESET_MODES}${LEAVE_SCREEN}`;

/**
 * The same from a process that does not know whether the screen was left: saving the cursor first (DECSC) keeps
 * it where it is should that be so; not so in tmux, where the next line would be over the last.
 */
export const RESET_FROM_OUTSIDE = `${RESET_MODES}\u001B7${LEAVE_SCREEN}`;
