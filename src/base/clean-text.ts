// Text from outside (files, arguments, environment, error messages) made safe to draw. It stands
// apart and alone because everything that reaches the screen must have passed through it: nothing
// in a show file may move the cursor, reorder a line or hide what it says.

/** Combining marks kept on one character; no living script needs more (common practice, no source). */
const MARKS_KEPT = 8;

/** What stands for something invisible that has no control picture of its own. */
const MARKER = '·';

const PLAIN = /^[\x20-\x7e]*$/;

// The other patterns stand where they are used: those with properties of characters take a millisecond to be made,
// which a show in plain letters then never needs.
const isSpace = (point: string): boolean => /\p{Zs}/u.test(point);
const isMark = (point: string): boolean => /\p{M}/u.test(point);
// Bidi controls, joiners, selectors, fillers and tags are all default-ignorable in Unicode.
const isInvisible = (point: string): boolean =>
	/[\p{Cc}\p{Default_Ignorable_Code_Point}]/u.test(point);
// Format characters that Unicode does not call ignorable: annotation anchors, hieroglyph joiners.
const isFormat = (point: string): boolean => /[\ufff9-\ufffb\u{13430}-\u{1343f}]/u.test(point);
const isBroken = (point: string): boolean => /[\p{Cs}\p{Noncharacter_Code_Point}]/u.test(point);
const isPictograph = (point: string): boolean => /\p{Extended_Pictographic}/u.test(point);
const isSkinTone = (point: string): boolean => /\p{Emoji_Modifier}/u.test(point);
const isKeycapBase = (point: string): boolean => /[0-9#*]/u.test(point);

const JOINER = '\u200d';
const KEYCAP = '\u20e3';
const isSelector = (point: string | undefined): boolean => point === '\ufe0e' || point === '\ufe0f';

/**
 * The text on one line, in NFC, with every control, reordering or invisible character replaced by
 * a visible sign: control pictures (`␛`) for C0 and DEL, `·` for C1, bidi controls, zero-width and
 * tag characters, `�` for broken code units. Tabs, line ends and odd spaces become plain spaces.
 * Joiners and selectors stay inside an emoji; at most eight marks stay on one character, and a mark
 * with nothing under it gets `◌`. Cleaning twice changes nothing more.
 */
export function cleanText(text: string): string {
	if (PLAIN.test(text)) return text;
	// Unicode's stream-safe format (UAX #15, section 13) allows 30 in a row. Cut there before normalising, whose
	// reordering takes quadratic time over one endless run of marks.
	const streamSafe = text.replace(/(\p{M}{30})\p{M}+/gu, '$1');
	const normal = streamSafe.normalize('NFC').replace(/\r\n|[\n\t\u2028\u2029]/gu, ' ');
	const points = [...normal];
	let clean = '';
	let marks = 0;
	for (const [index, point] of points.entries()) {
		const isKept = isInsideEmoji(points, index);
		if (isKept) clean += point;
		else if (isHidden(point)) clean += signFor(point);
		else if (isMark(point)) {
			if (clean === '') clean = '◌';
			marks += 1;
			if (marks <= MARKS_KEPT) clean += point;
			continue;
		} else clean += isSpace(point) ? ' ' : point;
		if (!isKept) marks = 0;
	}
	return clean;
}

function isHidden(point: string): boolean {
	return isInvisible(point) || isFormat(point) || isBroken(point);
}

/** Whether the joiner or selector at this index is a working part of an emoji. */
function isInsideEmoji(points: readonly string[], index: number): boolean {
	const point = points[index];
	const before = points[index - 1] ?? '';
	const after = points[index + 1] ?? '';
	if (isSelector(point)) {
		return isPictograph(before) || (isKeycapBase(before) && after === KEYCAP);
	}
	if (point !== JOINER || !isPictograph(after)) return false;
	const isDressed = isSelector(before) || isSkinTone(before);
	return isPictograph(isDressed ? (points[index - 2] ?? '') : before);
}

function signFor(point: string): string {
	const code = point.codePointAt(0) ?? 0;
	if (code < 0x20) return String.fromCodePoint(0x2400 + code);
	if (code === 0x7f) return '␡';
	return isBroken(point) ? '\ufffd' : MARKER;
}
