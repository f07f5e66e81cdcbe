// The ways in which spreadsheets and editors save text. The bytes of each are made by Node's own encoders, those of
// Windows-1252 by hand: é is E9 there, ½ is BD (its code page, from memory).

import { describe, expect, it } from 'vitest';
import { decodeText } from '../../src/setlist/decode-text.ts';

const TEXT = 'Café,4:05\nTide ½,3:00\n';
const little = Buffer.from(TEXT, 'utf16le');
const big = Buffer.from(little).swap16();

describe('the text of a list', () => {
	it.each([
		['UTF-8', Buffer.from(TEXT)],
		['UTF-8 with its mark', Buffer.from(`\ufeff${TEXT}`)],
		['UTF-16, little end first', Buffer.concat([Buffer.from([0xff, 0xfe]), little])],
		['UTF-16, big end first', Buffer.concat([Buffer.from([0xfe, 0xff]), big])],
		['UTF-16 without its mark', little],
		['UTF-16, big end first, without its mark', big],
		['Windows-1252', Buffer.from('Caf\xe9,4:05\r\nTide \xbd,3:00\r\n', 'latin1')],
		['carriage returns alone', Buffer.from(TEXT.replaceAll('\n', '\r'))],
		['both line ends', Buffer.from(TEXT.replaceAll('\n', '\r\n'))],
	])('is the same from %s', (_, bytes) => {
		expect(decodeText(bytes)).toEqual({ ok: true, text: TEXT });
	});

	it('is none where there are bytes that no text has', () => {
		expect(decodeText(Buffer.from([1, 0, 0, 0, 7, 0, 65, 66]))).toEqual({ ok: false, is: null });
		expect(decodeText(Buffer.from('%PDF-1.7'))).toEqual({ ok: false, is: 'pdf' });
	});
});
