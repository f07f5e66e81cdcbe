// What a finished escape sequence means as a press: cursor and editing keys, the keypad, and the
// reports of extended keyboards. Sequences as in the xterm control sequences manual ("PC-Style
// Function Keys", "VT220-Style"), the Linux console's F1, and the kitty keyboard protocol.

/** The meaning of a sequence: a press, a paste's beginning, Ctrl-C, or nothing that concerns us. */
export type SequenceMeaning = { readonly key: string } | 'paste-begins' | 'interrupt' | 'nothing';

const KEY_OF_FINAL: Readonly<Record<string, string>> = {
	A: 'up',
	B: 'down',
	C: 'right',
	D: 'left',
	F: 'end',
	H: 'home',
	P: 'f1',
};

const KEY_OF_TILDE: Readonly<Record<string, string>> = {
	1: 'home',
	3: 'delete',
	4: 'end',
	5: 'pageup',
	6: 'pagedown',
	7: 'home',
	8: 'end',
	11: 'f1',
};

// Application keypad (xterm, "VT220-Style Function Keys", VT52 and application keypad table).
const KEY_OF_KEYPAD: Readonly<Record<string, string>> = {
	...KEY_OF_FINAL,
	I: 'tab',
	M: 'enter',
	' ': 'space',
	j: '*',
	k: '+',
	l: ',',
	m: '-',
	n: '.',
	o: '/',
	p: '0',
	q: '1',
	r: '2',
	s: '3',
	t: '4',
	u: '5',
	v: '6',
	w: '7',
	x: '8',
	y: '9',
	X: '=',
};

const KEY_OF_CODE: Readonly<Record<number, string>> = {
	9: 'tab',
	13: 'enter',
	27: 'esc',
	32: 'space',
	127: 'backspace',
	// Functional keys of the kitty keyboard protocol, "Functional key definitions".
	57409: '.',
	57410: '/',
	57411: '*',
	57412: '-',
	57413: '+',
	57414: 'enter',
	57415: '=',
	57416: ',',
	57417: 'left',
	57418: 'right',
	57419: 'up',
	57420: 'down',
	57421: 'pageup',
	57422: 'pagedown',
	57423: 'home',
	57424: 'end',
	57426: 'delete',
};

const SHIFT = 1;
const CTRL = 4;
/** Caps lock and num lock are states of the keyboard, not keys held with this one. */
const LOCKS = 64 + 128;
const RELEASED = '3';
const PRIVATE_USE = { first: 0xe000, last: 0xf8ff };

/**
 * Gives back what a control sequence means: `body` is all between `ESC [` and the final character.
 * A key pressed with Shift, Alt, Ctrl or Super is nothing, unless it only types a character.
 */
export function csiMeaning(body: string, final: string): SequenceMeaning {
	if (body.startsWith('[')) {
		return body === '[' && final === 'A' ? { key: 'f1' } : 'nothing';
	}
	if (!/^[\d;:]*$/.test(body)) {
		return 'nothing';
	}
	const fields = body.split(';');
	const first = fields[0] ?? '';
	if (final === 'u') {
		return codeMeaning(first, fields[1] ?? '', fields[2] ?? '');
	}
	if (final === '~') {
		if (first === '200') {
			return 'paste-begins';
		}
		if (first === '27' && fields.length === 3) {
			return codeMeaning(fields[2] ?? '', fields[1] ?? '', '');
		}
		return isPlain(fields[1] ?? '') ? meaningOf(KEY_OF_TILDE[first]) : 'nothing';
	}
	const isCountOne = first === '' || first === '1';
	return isCountOne && fields.length <= 2 && isPlain(fields[1] ?? '')
		? meaningOf(KEY_OF_FINAL[final])
		: 'nothing';
}

/** Gives back what `ESC O` and a final character mean; with parameters between, nothing. */
export function ss3Meaning(body: string, final: string): SequenceMeaning {
	return body === '' ? meaningOf(KEY_OF_KEYPAD[final]) : 'nothing';
}

/** An extended keyboard's report: code (`:shifted`), modifiers (`:event`), text as code points. */
function codeMeaning(codes: string, modifiers: string, text: string): SequenceMeaning {
	const [codeText, shiftedText] = codes.split(':');
	const code = Number(codeText);
	const { held, isReleased } = modifiersOf(modifiers);
	if (isReleased || !Number.isInteger(code) || code > 0x10ffff) {
		return 'nothing';
	}
	if (held === CTRL && (code === 99 || code === 67)) {
		return 'interrupt';
	}
	if (held === SHIFT) {
		return meaningOf(typedKey(text) ?? typedKey(shiftedText ?? '') ?? shifted(code));
	}
	if (held !== 0) {
		return 'nothing';
	}
	const named = KEY_OF_CODE[code] ?? keypadDigit(code);
	return meaningOf(named ?? typedKey(text) ?? typedKey(codeText ?? ''));
}

function modifiersOf(field: string): { held: number; isReleased: boolean } {
	const [mask, event] = field.split(':');
	const held = mask === undefined || mask === '' ? 0 : Number(mask) - 1;
	return { held: held & ~LOCKS, isReleased: event === RELEASED };
}

function isPlain(modifiers: string): boolean {
	const { held, isReleased } = modifiersOf(modifiers);
	return held === 0 && !isReleased;
}

function keypadDigit(code: number): string | undefined {
	return code >= 57399 && code <= 57408 ? String(code - 57399) : undefined;
}

/** Only a letter's capital can be told without the keyboard's layout. */
function shifted(code: number): string | undefined {
	const letter = typedKey(String(code));
	const capital = letter?.toUpperCase() ?? '';
	return /^\p{L}$/u.test(capital) ? capital : undefined;
}

/** The character of a decimal code point, if it is one that can be typed. */
function typedKey(code: string): string | undefined {
	if (!/^\d{2,7}$/.test(code)) {
		return undefined;
	}
	const point = Number(code);
	if (point > 0x10ffff || (point >= PRIVATE_USE.first && point <= PRIVATE_USE.last)) {
		return undefined;
	}
	const character = String.fromCodePoint(point);
	if (character === ' ') {
		return 'space';
	}
	return /^[^\p{C}\p{Z}]$/u.test(character) ? character : undefined;
}

function meaningOf(key: string | undefined): SequenceMeaning {
	return key === undefined ? 'nothing' : { key };
}
