// The shortest way from a row that is on the terminal to the one that shall be: only cells that differ
// are sent. Terminals disagree on how wide some signs are, so from the first of them on a row that
// differs is sent whole.

import { plainStart } from '../base/display-width.ts';

const ESCAPE = '\u001B';

// ECMA-48: 8.3.117 SGR, no style at all, and how each kind ends alone; 8.3.41 EL, up to the end of the
// row; 8.3.21 CUP.
const NO_STYLE = `${ESCAPE}[m`;
const ENDS = { weight: `${ESCAPE}[22m`, color: `${ESCAPE}[39m`, field: `${ESCAPE}[49m` } as const;
const ERASE = `${ESCAPE}[K`;
const moveTo = (line: number, column: number): string => `${ESCAPE}[${line};${column}H`;

/** So many equal cells between two that differ cost less than coming back to the second. */
const MOST_EQUAL_SENT = 16;

type Kind = keyof typeof ENDS;
const KINDS = Object.keys(ENDS) as Kind[];

/** What begins each kind of style; empty for none. */
type Pen = Readonly<Record<Kind, string>>;

const NO_PEN: Pen = { weight: '', color: '', field: '' };

/** The letters of a row without its styles, and the pen of each. */
type Written = { readonly letters: string; readonly pens: readonly Pen[] };

/** Letters from one place on up to before another. */
type Piece = { readonly from: number; until: number };

/**
 * What to send where `line`, counted from 1, shows `before` and shall show `after`, both as `styledRow`
 * gives them; empty where nothing differs. No style is in force before it and after it.
 */
export function rowUpdate(before: string, after: string, line: number): string {
	if (before === after) return '';
	const now = readRow(after);
	return differences(readRow(before), now)
		.map(({ from, until }) => {
			const erased = until > now.letters.length ? ERASE : '';
			return moveTo(line, from + 1) + erased + styled(now, { from, until });
		})
		.join('');
}

/** Where the rows differ; the last piece is endless where all from there on is to be sent. */
function differences(old: Written, now: Written): readonly Piece[] {
	const pieces: Piece[] = [];
	const add = (from: number, until: number): void => {
		const last = pieces.at(-1);
		if (last && from - last.until <= MOST_EQUAL_SENT) last.until = until;
		else pieces.push({ from, until });
	};
	// As far as this, letters and cells are counted alike.
	const countable = Math.min(plainStart(old.letters), plainStart(now.letters));
	for (let at = 0; at < countable; at++) if (!isSame(old, now, at)) add(at, at + 1);
	const isRestSame =
		old.letters.length === now.letters.length &&
		old.letters.endsWith(now.letters.slice(countable)) &&
		now.pens.every((_, at) => at < countable || isSame(old, now, at));
	if (!isRestSame) add(countable, Number.POSITIVE_INFINITY);
	return pieces;
}

/** Whether a letter looks the same in both; a blank shows its field alone. */
function isSame(old: Written, now: Written, at: number): boolean {
	const [before, after] = [old.pens[at] ?? NO_PEN, now.pens[at] ?? NO_PEN];
	return (
		old.letters[at] === now.letters[at] &&
		before.field === after.field &&
		(now.letters[at] === ' ' || (before.color === after.color && before.weight === after.weight))
	);
}

function readRow(row: string): Written {
	const [plain = '', ...pieces] = row.split(ESCAPE);
	const pens: Pen[] = new Array(plain.length).fill(NO_PEN);
	let letters = plain;
	let pen = NO_PEN;
	for (const piece of pieces) {
		const end = piece.indexOf('m') + 1;
		pen = penAfter(pen, piece.slice(0, end));
		for (let at = end; at < piece.length; at++) pens.push(pen);
		letters += piece.slice(end);
	}
	return { letters, pens };
}

/** The pen once `style`, of one parameter or one colour, was read. */
function penAfter(pen: Pen, style: string): Pen {
	const number = Number.parseInt(style.slice(1), 10);
	const isField = (number >= 40 && number < 50) || number >= 100;
	const kind = number === 1 || number === 22 ? 'weight' : isField ? 'field' : 'color';
	const written = ESCAPE + style;
	return { ...pen, [kind]: written === ENDS[kind] ? '' : written };
}

function styled({ letters, pens }: Written, { from, until }: Piece): string {
	let text = '';
	let pen = NO_PEN;
	for (let at = from; at < Math.min(until, letters.length); at++) {
		const next = pens[at] ?? NO_PEN;
		if (next !== pen) {
			text += changeOf(pen, next);
			pen = next;
		}
		text += letters[at];
	}
	return pen === NO_PEN ? text : text + NO_STYLE;
}

function changeOf(pen: Pen, next: Pen): string {
	return KINDS.map((kind) => (next[kind] === pen[kind] ? '' : next[kind] || ENDS[kind])).join('');
}
