// Keys or a paste: two to four at once, or repeats of one key, are keys; more are no command.

import { describe, expect, test } from 'vitest';
import { judgePress, NO_PRESSES } from '../../src/keys/repeats.ts';
import type { InputEvent } from '../../src/terminal/key.ts';
import type { Read } from './play-input.ts';
import { playInput, readAtOnce, shortEvents } from './play-input.ts';

function everyMs(text: string, gapMs: number): Read[] {
	return Array.from(text, (bytes, index) => ({ atMs: index * gapMs, bytes }));
}

describe('keys that come together', () => {
	test('two to four are keys', () => {
		expect(readAtOnce('nq')).toEqual(['n', 'q']);
		expect(readAtOnce('b1\r')).toEqual(['b', '1', 'enter']);
		expect(readAtOnce('t1 d')).toEqual(['t', '1', 'space', 'd']);
	});

	test('a held key that piled up on the way is its repeats', () => {
		expect(readAtOnce('nnnnn')).toEqual(['n', 'n', 'n', 'n', 'n']);
		expect(readAtOnce(' '.repeat(40))).toEqual(Array.from({ length: 40 }, () => 'space'));
	});

	test('hundreds of one key at once are no key held', () => {
		expect(readAtOnce(' '.repeat(249))).toHaveLength(249);
		expect(readAtOnce(' '.repeat(4095))).toEqual(['burst:4095']);
		expect(readAtOnce('\u001B[B'.repeat(1365))).toEqual(['burst:1365']);
		const reads = Array.from({ length: 250 }, (_, index) => ({
			atMs: index * 5,
			bytes: ' '.repeat(4000),
		}));
		// Reported every half a second, and none of the million answered by itself.
		expect(playInput(reads).length).toBeLessThan(5);
	});

	test('nor are hundreds of Esc, though it is certain only later what they are', () => {
		const esc = '\u001B';
		const later = { atMs: 1000, bytes: '?' };
		expect(readAtOnce(esc.repeat(249))).toHaveLength(249);
		expect(shortEvents(playInput([{ atMs: 0, bytes: esc.repeat(500) }, later]))).toEqual([
			'burst:500',
			'?',
		]);
		// In as many reads as a line of 4,095 bytes makes of them.
		const reads = Array.from({ length: 74 }, (_, index) => ({
			atMs: index * 2,
			bytes: esc.repeat(4095),
		}));
		expect(shortEvents(playInput([...reads, later]))).toEqual([`burst:${74 * 4095}`, '?']);
		// The last of them made the letter one typed with Alt, which is ignored.
		expect(readAtOnce(`${esc.repeat(500)}n`)).toEqual(['burst:499']);
	});

	test('one key alone is passed on in the same read', () => {
		const events = playInput(everyMs('bnmqd', 33));
		expect(shortEvents(events)).toEqual(['b', 'n', 'm', 'q', 'd']);
		expect(events.map((event) => event.atMs)).toEqual([0, 33, 66, 99, 132]);
	});

	test('keys 5 ms apart are keys, in their order', () => {
		expect(shortEvents(playInput(everyMs('bnmqdertz', 5)))).toEqual([...'bnmqdertz']);
	});

	test('an arrow among keys keeps its place', () => {
		expect(readAtOnce('j\u001B[Bq')).toEqual(['j', 'down', 'q']);
	});
});

describe('a paste without marks', () => {
	test('is one burst, and no key', () => {
		expect(readAtOnce('n\nq\nn\n')).toEqual(['burst:6']);
		expect(readAtOnce('n\r\nq\r\nn\r\n')).toEqual(['burst:6']);
		expect(readAtOnce(' \n \n ')).toEqual(['burst:5']);
	});

	test('gives its text for a text field, with its moment', () => {
		expect(playInput([{ atMs: 70, bytes: 'Für\tdich\r' }])).toEqual([
			{ kind: 'burst', count: 9, text: 'Für\tdich\n', atMs: 70 },
		]);
	});

	test('in pieces is still one burst, whatever the size of its last piece', () => {
		const reads = [
			{ atMs: 0, bytes: 'n\nq\nn\nq\n' },
			{ atMs: 6, bytes: 'n\nq\nn\nq\n' },
			{ atMs: 12, bytes: 'n\n' },
			{ atMs: 26, bytes: ' ' },
		];
		expect(shortEvents(playInput(reads))).toEqual(['burst:19']);
	});

	test('that begins with a small piece loses none of it to the keys', () => {
		const reads = [
			{ atMs: 0, bytes: 'n\n' },
			{ atMs: 2, bytes: 'q\nn\nq\n' },
		];
		expect(shortEvents(playInput(reads))).toEqual(['burst:8']);
	});

	test('byte by byte, as a slow line sends it, lets one key through at most', () => {
		const events = shortEvents(playInput(everyMs('n\nq\n \nq\nn\nq\n', 2)));
		expect(events).toEqual(['n', 'burst:11']);
	});

	test('that has escapes in it is ignored with them', () => {
		expect(readAtOnce('some words \u001B[A and more')).toEqual(['burst:21']);
	});

	test('ends after 15 ms without a key, and the next key is live', () => {
		const reads = [
			{ atMs: 0, bytes: 'n\nq\nn\n' },
			{ atMs: 16, bytes: 'n' },
		];
		expect(shortEvents(playInput(reads))).toEqual(['burst:6', 'n']);
	});

	test('that is long may pause between its pieces, and its last piece is no key either', () => {
		const reads = [
			{ atMs: 0, bytes: 'n\nq\n'.repeat(1000) },
			{ atMs: 100, bytes: ' \n' },
			{ atMs: 260, bytes: 'n' },
		];
		expect(shortEvents(playInput(reads))).toEqual(['burst:4002', 'n']);
	});

	test('without end is reported twice a second, and never becomes keys', () => {
		const events = playInput(everyMs('nq\n'.repeat(400), 1));
		expect(events.slice(1).every((event) => event.kind === 'burst')).toBe(true);
		expect(events.length).toBeGreaterThanOrEqual(3);
		expect(events.length).toBeLessThanOrEqual(5);
	});

	test('never stops Ctrl-C', () => {
		expect(readAtOnce('n\nq\nn\n\u0003')).toEqual(['burst:6', 'interrupt']);
		expect(readAtOnce('ab\u0003')).toEqual(['a', 'b', 'interrupt']);
	});

	test('keeps 64 KB of its text', () => {
		const [event] = playInput([{ atMs: 0, bytes: 'word '.repeat(40_000) }]);
		expect(event).toMatchObject({ kind: 'burst', count: 200_000 });
		expect(event?.kind === 'burst' ? event.text.length : 0).toBe(65_536);
	});
});

describe('keys that waited while nothing could be read', () => {
	const read = (bytes: string, blockedMs: number): InputEvent[] =>
		playInput([{ atMs: 10_000, bytes, blockedMs }]);
	/** How many of these presses count, as the night judges them. */
	function counted(events: readonly InputEvent[]): string[] {
		let presses = NO_PRESSES;
		return events.flatMap((event) => {
			if (event.kind !== 'key') return [`${event.kind}`];
			const judged = judgePress(presses, event.key, event.atMs);
			presses = judged.presses;
			return judged.verdict === 'count' ? [event.key] : [];
		});
	}

	test('five in two seconds are five, at the moments at which they may have come', () => {
		const events = read('bnmde', 2000);
		expect(shortEvents(events)).toEqual([...'bnmde']);
		expect(events.map(({ atMs }) => atMs)).toEqual([8400, 8800, 9200, 9600, 10_000]);
		expect(counted(read('     ', 2000))).toEqual(Array(5).fill('space'));
		expect(counted(read('b1\rb2\r', 2400))).toEqual(['b', '1', 'enter', 'b', '2', 'enter']);
	});

	test('no more than hands can have pressed in that time', () => {
		// Twelve a second.
		expect(shortEvents(read('bnmde', 417))).toEqual([...'bnmde']);
		expect(shortEvents(read('bnmde', 416))).toEqual(['burst:5']);
		expect(shortEvents(read('bnmdertzuioq', 1000))).toEqual([...'bnmdertzuioq']);
		expect(shortEvents(read('bnmdertzuioq', 999))).toEqual(['burst:12']);
		const line = 'm Ember strap is torn\r';
		expect(read(line, 2200)).toHaveLength(22);
		expect(shortEvents(read(line, 1800))).toEqual(['burst:22']);
	});

	test('a memo typed at ten keys a second in less than a second is a memo', () => {
		expect(shortEvents(read('mabcdefg\r', 900))).toEqual([...'mabcdefg', 'enter']);
	});

	test('a paste meanwhile is a burst, however long it took', () => {
		expect(shortEvents(read('n\nq\n \n'.repeat(5), 600_000))).toEqual(['burst:30']);
		expect(shortEvents(read('some words of a long paste', 600_000))).toEqual(['burst:26']);
	});

	test.each([1000, 2000, 10_000, 600_000])('a held key is one press: 30 in %d ms', (blockedMs) => {
		expect(counted(read(' '.repeat(30), blockedMs))).toEqual(['space']);
		expect(counted(read(' '.repeat(7), blockedMs))).toEqual(['space']);
	});

	test('a key held since before is no second press', () => {
		const held = playInput([
			{ atMs: 8000, bytes: ' ' },
			{ atMs: 10_000, bytes: ' '.repeat(60), blockedMs: 2000 },
			{ atMs: 10_033, bytes: ' ' },
		]);
		expect(held).toHaveLength(62);
		expect(counted(held)).toEqual(['space']);
	});

	test('a key right after them is a key', () => {
		const reads = [
			{ atMs: 10_000, bytes: 'bnmde', blockedMs: 2000 },
			{ atMs: 10_005, bytes: 'r' },
		];
		expect(shortEvents(playInput(reads))).toEqual([...'bnmder']);
	});

	test('Esc and a key are both, and not one with Alt', () => {
		expect(shortEvents(read('l\u001Bn', 2000))).toEqual(['l', 'esc', 'n']);
		expect(shortEvents(read('l\u001B[Bn', 2000))).toEqual(['l', 'down', 'n']);
	});
});
