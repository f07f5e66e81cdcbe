// Presses from bytes: every named key in every form that terminals send, whole and cut at every
// place, and all that must never become a press.

import { describe, expect, test } from 'vitest';
import { bytesOf, playInput, readAtOnce, shortEvents } from './play-input.ts';

const ESC = '\u001B';

// xterm control sequences, "PC-Style Function Keys", "VT220-Style Function Keys", "Bracketed Paste
// Mode"; Linux console_codes(4) for ESC [ [ A; kitty keyboard protocol for `u`.
const KEY_SEQUENCES: readonly (readonly [string, string])[] = [
	[`${ESC}[A`, 'up'],
	[`${ESC}[B`, 'down'],
	[`${ESC}[C`, 'right'],
	[`${ESC}[D`, 'left'],
	[`${ESC}OA`, 'up'],
	[`${ESC}OB`, 'down'],
	[`${ESC}OC`, 'right'],
	[`${ESC}OD`, 'left'],
	[`${ESC}[H`, 'home'],
	[`${ESC}[F`, 'end'],
	[`${ESC}OH`, 'home'],
	[`${ESC}OF`, 'end'],
	[`${ESC}[1~`, 'home'],
	[`${ESC}[4~`, 'end'],
	[`${ESC}[7~`, 'home'],
	[`${ESC}[8~`, 'end'],
	[`${ESC}[3~`, 'delete'],
	[`${ESC}[5~`, 'pageup'],
	[`${ESC}[6~`, 'pagedown'],
	[`${ESC}[11~`, 'f1'],
	[`${ESC}[[A`, 'f1'],
	[`${ESC}OP`, 'f1'],
	[`${ESC}[P`, 'f1'],
	[`${ESC}[1;1A`, 'up'],
	[`${ESC}[1;65A`, 'up'],
	[`${ESC}[5;129~`, 'pageup'],
	[`${ESC}[1;1:2B`, 'down'],
	[`${ESC}OM`, 'enter'],
	[`${ESC}Op`, '0'],
	[`${ESC}Oy`, '9'],
	[`${ESC}[110u`, 'n'],
	[`${ESC}[110;1u`, 'n'],
	[`${ESC}[110;2u`, 'N'],
	[`${ESC}[49:33;2u`, '!'],
	[`${ESC}[47;2;63u`, '?'],
	[`${ESC}[233u`, 'é'],
	[`${ESC}[13u`, 'enter'],
	[`${ESC}[27u`, 'esc'],
	[`${ESC}[9u`, 'tab'],
	[`${ESC}[32u`, 'space'],
	[`${ESC}[127u`, 'backspace'],
	[`${ESC}[57399u`, '0'],
	[`${ESC}[57422u`, 'pagedown'],
	[`${ESC}[27;1;110~`, 'n'],
	[`${ESC}[99;5u`, 'interrupt'],
	[`${ESC}[27;5;99~`, 'interrupt'],
	[`${ESC}[200~n q${ESC}[201~`, 'paste:n q'],
];

// Nothing of ours: modified keys, function keys without a meaning, mouse, focus, status and colour
// replies, stray marks. Same sources; replies of DA, DSR, DECRPM, OSC 11, DECRQSS, XTVERSION.
const IGNORED_SEQUENCES: readonly string[] = [
	`${ESC}[1;5A`,
	`${ESC}[1;2D`,
	`${ESC}[1;3C`,
	`${ESC}[5;5~`,
	`${ESC}[Z`,
	`${ESC}[2~`,
	`${ESC}[12~`,
	`${ESC}[[B`,
	`${ESC}[15~`,
	`${ESC}OQ`,
	`${ESC}[1;2P`,
	`${ESC}[1;1:3A`,
	`${ESC}[110;5u`,
	`${ESC}[110;3u`,
	`${ESC}[110;1:3u`,
	`${ESC}[57441u`,
	`${ESC}[57358u`,
	`${ESC}[223;2u`,
	`${ESC}[27;5;110~`,
	`${ESC}[201~`,
	`${ESC}[M !!`,
	`${ESC}[<0;10;20M`,
	`${ESC}[<0;10;20m`,
	`${ESC}[<65;10;20M`,
	`${ESC}[32;10;20M`,
	`${ESC}[I`,
	`${ESC}[O`,
	`${ESC}[12;40R`,
	`${ESC}[?62;1;6;22c`,
	`${ESC}[>41;354;0c`,
	`${ESC}[0n`,
	`${ESC}[?2026;2$y`,
	`${ESC}[?1u`,
	`${ESC}[8;24;80t`,
	`${ESC}]11;rgb:1e1e/1e1e/1e1e${ESC}\\`,
	`${ESC}]11;rgb:1e1e/1e1e/1e1e\u0007`,
	`${ESC}]52;c;bnEK${ESC}\\`,
	`${ESC}P1$r0m${ESC}\\`,
	`${ESC}P>|a terminal(1.2)${ESC}\\`,
	`${ESC}_Gi=31;OK${ESC}\\`,
	`${ESC}^words${ESC}\\`,
	`${ESC}Xwords${ESC}\\`,
];

const GAPS_MS = [0, 1, 5, 14, 15, 16, 29, 30, 31, 60, 99, 100];

function cutAt(bytes: Uint8Array, place: number, gapMs: number): string[] {
	return shortEvents(
		playInput([
			{ atMs: 0, bytes: bytes.slice(0, place) },
			{ atMs: gapMs, bytes: bytes.slice(place) },
		]),
	);
}

/** GNU Readline, "Readline Init File", emacs mode. */
const EDITING = { 'ctrl-a': 0x01, 'ctrl-e': 0x05, 'ctrl-k': 0x0b, 'ctrl-u': 0x15, 'ctrl-w': 0x17 };

describe('keys that are one byte', () => {
	test.each([
		[' ', 'space'],
		['\r', 'enter'],
		['\n', 'enter'],
		['\t', 'tab'],
		['\u007F', 'backspace'],
		['\b', 'backspace'],
		['n', 'n'],
		['A', 'A'],
		['[', '['],
		['O', 'O'],
		['\u0003', 'interrupt'],
	])('%j', (bytes, key) => {
		expect(readAtOnce(bytes)).toEqual([key]);
	});

	test.each(Object.entries(EDITING))('%s edits a line of text', (key, code) => {
		expect(readAtOnce(Uint8Array.of(code))).toEqual([key]);
	});

	test('a return and a newline together are one enter', () => {
		expect(readAtOnce('\r\n')).toEqual(['enter']);
		expect(readAtOnce('\r\r')).toEqual(['enter', 'enter']);
	});

	test('Ctrl-Z, and every other control character without a meaning, is no key', () => {
		const named = new Set([0x03, 0x08, 0x09, 0x0a, 0x0d, 0x1b, ...Object.values(EDITING)]);
		const codes = Array.from({ length: 0x20 }, (_, code) => code).filter((c) => !named.has(c));
		expect(codes).toContain(0x1a);
		for (const code of codes) {
			expect(readAtOnce(Uint8Array.of(code)), `control character ${code}`).toEqual([]);
		}
	});
});

describe('keys that are sequences', () => {
	test.each(KEY_SEQUENCES)('%j in one read', (bytes, key) => {
		expect(readAtOnce(bytes)).toEqual([key]);
	});

	test.each(KEY_SEQUENCES)('%j cut in two at every place, up to 100 ms apart', (text, key) => {
		const bytes = bytesOf(text);
		for (let place = 1; place < bytes.length; place += 1) {
			for (const gapMs of GAPS_MS) {
				expect(cutAt(bytes, place, gapMs), `cut at ${place}, ${gapMs} ms`).toEqual([key]);
			}
		}
	});

	test.each(KEY_SEQUENCES)('%j byte by byte, 20 ms apart', (text, key) => {
		const reads = Array.from(bytesOf(text), (byte, index) => ({
			atMs: index * 20,
			bytes: Uint8Array.of(byte),
		}));
		expect(shortEvents(playInput(reads))).toEqual([key]);
	});

	test('several in one read are several keys', () => {
		expect(readAtOnce(`${ESC}[A${ESC}[A${ESC}OB${ESC}[6~n`)).toEqual([
			'up',
			'up',
			'down',
			'pagedown',
			'n',
		]);
	});

	test('five or more arrows at once are still arrows', () => {
		expect(readAtOnce(`${ESC}[B`.repeat(9))).toEqual(Array.from({ length: 9 }, () => 'down'));
	});
});

describe('sequences that are no keys', () => {
	test.each(IGNORED_SEQUENCES)('%j in one read, and the next key is live', (bytes) => {
		expect(readAtOnce(`${bytes}n`)).toEqual(['n']);
	});

	test.each(IGNORED_SEQUENCES)('%j cut in two at every place, up to 100 ms apart', (text) => {
		const bytes = bytesOf(text);
		for (let place = 1; place < bytes.length; place += 1) {
			for (const gapMs of GAPS_MS) {
				expect(cutAt(bytes, place, gapMs), `cut at ${place}, ${gapMs} ms`).toEqual([]);
			}
		}
	});

	test.each([...IGNORED_SEQUENCES, ...KEY_SEQUENCES.map(([bytes]) => bytes)])(
		'%j broken off: nothing is left of it, and a key 500 ms later is live',
		(text) => {
			const bytes = bytesOf(text);
			for (let length = 2; length < bytes.length; length += 1) {
				const events = shortEvents(
					playInput([
						{ atMs: 0, bytes: bytes.slice(0, length) },
						{ atMs: 500, bytes: 'n' },
					]),
				);
				const isPaste = text.includes('[200~') && length > 6;
				expect(events.at(-1), `the first ${length} bytes`).toBe('n');
				expect(events.length, `the first ${length} bytes`).toBe(isPaste ? 2 : 1);
			}
		},
	);

	test('mouse bytes beyond ASCII do not reach the keys', () => {
		expect(readAtOnce(Uint8Array.of(0x1b, 0x5b, 0x4d, 0x20, 0xc3, 0xa9, 0x6e))).toEqual(['n']);
	});

	test('held keys cannot keep an unfinished reply alive beyond half a second', () => {
		const reads = [{ atMs: 0, bytes: `${ESC}]11;` }];
		for (let atMs = 40; atMs <= 600; atMs += 40) {
			reads.push({ atMs, bytes: 'n' });
		}
		const events = playInput(reads).filter((event) => event.kind === 'key');
		expect(events[0]?.atMs).toBeLessThanOrEqual(520);
		expect(events.every((event) => event.kind === 'key' && event.key === 'n')).toBe(true);
	});
});

describe('Esc', () => {
	test('alone it is held a little over 100 ms, and carries the moment of its press', () => {
		const events = playInput([{ atMs: 1000, bytes: ESC }]);
		expect(events).toEqual([{ kind: 'key', key: 'esc', atMs: 1000 }]);
	});

	test('twice is twice', () => {
		expect(readAtOnce(`${ESC}${ESC}`)).toEqual(['esc', 'esc']);
		const apart = [50, 200].map((atMs) =>
			shortEvents(
				playInput([
					{ atMs: 0, bytes: ESC },
					{ atMs, bytes: ESC },
				]),
			),
		);
		expect(apart).toEqual([
			['esc', 'esc'],
			['esc', 'esc'],
		]);
	});

	test('then a key: both, when hands could have done it', () => {
		for (const gapMs of [31, 60, 100, 150, 400]) {
			const events = playInput([
				{ atMs: 0, bytes: ESC },
				{ atMs: gapMs, bytes: 'n' },
			]);
			expect(shortEvents(events), `${gapMs} ms`).toEqual(['esc', 'n']);
		}
	});

	test('with a character right behind it is Alt, and no command', () => {
		const typed = ['n', 'q', 'O\r', ' ', '\r', '\u007F', 'é', '🎸', '\t'];
		for (const text of typed) {
			expect(readAtOnce(`${ESC}${text}`), JSON.stringify(text)).toEqual([]);
			expect(readAtOnce(`${ESC}${text}n`).at(-1), JSON.stringify(text)).toBe('n');
			expect(cutAt(bytesOf(`${ESC}${text}`), 1, 30), JSON.stringify(text)).toEqual([]);
		}
		expect(cutAt(bytesOf(`${ESC}é`), 2, 5)).toEqual([]);
	});

	test('before an arrow in one read is Alt, and no command', () => {
		expect(readAtOnce(`${ESC}${ESC}[A`)).toEqual([]);
		expect(readAtOnce(`${ESC}${ESC}OA`)).toEqual([]);
	});

	test('then Ctrl-C is Ctrl-C', () => {
		expect(readAtOnce(`${ESC}\u0003`)).toEqual(['interrupt']);
		expect(readAtOnce(`${ESC}[1;\u0003`)).toEqual(['interrupt']);
		expect(readAtOnce(`${ESC}]0;\u0003`)).toEqual(['interrupt']);
	});

	test('held too short for a very slow link still lets no bracket or letter through', () => {
		const events = playInput([
			{ atMs: 0, bytes: ESC },
			{ atMs: 140, bytes: '[B' },
		]);
		expect(shortEvents(events)).toEqual(['esc', 'down']);
	});

	test('and long after it a bracket or an O is itself', () => {
		for (const key of ['[', 'O']) {
			const events = playInput([
				{ atMs: 0, bytes: ESC },
				{ atMs: 300, bytes: key },
			]);
			expect(shortEvents(events)).toEqual(['esc', key]);
		}
	});
});

describe('text', () => {
	test('is cut into what the eye sees as one character', () => {
		const graphemes = ['é', 'e\u0301', '日', '👩‍🎤'];
		for (const grapheme of graphemes) {
			expect(readAtOnce(grapheme)).toEqual([grapheme]);
		}
		expect(readAtOnce('🇫🇷é')).toEqual(['🇫🇷', 'é']);
		expect(readAtOnce(`a${'\u0301'.repeat(500)}`)).toEqual([`a${'\u0301'.repeat(500)}`]);
	});

	test('a character cut between two reads is put together', () => {
		for (const character of ['é', '日', '🎸']) {
			const bytes = bytesOf(character);
			for (let place = 1; place < bytes.length; place += 1) {
				for (const gapMs of [0, 20, 100, 1000]) {
					expect(cutAt(bytes, place, gapMs)).toEqual([character]);
				}
			}
		}
	});

	test('broken UTF-8 gives nothing, and leaves its neighbours alone', () => {
		const broken = [[0xff], [0xc3], [0xe2, 0x82], [0xed, 0xa0, 0x80], [0xc0, 0xaf], [0xf8, 0x88]];
		for (const bytes of broken) {
			expect(readAtOnce(Uint8Array.of(0x61, ...bytes, 0x6e)), String(bytes)).toEqual(['a', 'n']);
			expect(readAtOnce(Uint8Array.of(...bytes, 0x1b, 0x5b, 0x41)), String(bytes)).toEqual(['up']);
			expect(readAtOnce(Uint8Array.of(...bytes, 0x03)), String(bytes)).toEqual(['interrupt']);
		}
		expect(readAtOnce(Uint8Array.of(0xc2, 0x9b, 0x6e))).toEqual(['n']);
	});
});
