// Marked pastes: they are text and never keys, and a paste that does not end gives the keys back.

import { describe, expect, test } from 'vitest';
import { playInput, readAtOnce, shortEvents } from './play-input.ts';

const BEGIN = '\u001B[200~';
const END = '\u001B[201~';

describe('a marked paste', () => {
	test('is its text, and keys around it are keys', () => {
		expect(readAtOnce(`m${BEGIN}two lines\nof q n${END}q`)).toEqual([
			'm',
			'paste:two lines\nof q n',
			'q',
		]);
	});

	test('has its lines ended by line feeds, however the terminal sends them', () => {
		expect(readAtOnce(`${BEGIN}one\rtwo\r\nthree\n${END}`)).toEqual(['paste:one\ntwo\nthree\n']);
	});

	test('keeps escapes and characters of every kind for the text field to clean', () => {
		expect(readAtOnce(`${BEGIN}é\u001B[A🎸${END}`)).toEqual(['paste:é\u001B[A🎸']);
	});

	test('cut at every place, in two reads up to 100 ms apart', () => {
		const bytes = new TextEncoder().encode(`${BEGIN}é \u001B[2q${END}n`);
		for (let place = 1; place < bytes.length; place += 1) {
			for (const gapMs of [0, 20, 60, 100]) {
				const events = playInput([
					{ atMs: 0, bytes: bytes.slice(0, place) },
					{ atMs: gapMs, bytes: bytes.slice(place) },
				]);
				expect(shortEvents(events), `${place}, ${gapMs}`).toEqual(['paste:é \u001B[2q', 'n']);
			}
		}
	});

	test('of nothing is nothing', () => {
		expect(readAtOnce(`${BEGIN}${END}`)).toEqual([]);
	});

	test('keeps 64 KB, and drops the rest up to its end', () => {
		const events = playInput([{ atMs: 0, bytes: `${BEGIN}${'q'.repeat(70_000)}${END}n` }]);
		expect(events.map((event) => event.kind)).toEqual(['paste', 'key']);
		expect(events[0]?.kind === 'paste' ? events[0].text.length : 0).toBe(65_536);
	});
});

describe('a paste without end', () => {
	test('gives the keys back within 500 ms, and its text is not lost', () => {
		const reads = [
			{ atMs: 0, bytes: `${BEGIN}x` },
			{ atMs: 200, bytes: 'n' },
			{ atMs: 490, bytes: 'q' },
			{ atMs: 700, bytes: ' ' },
		];
		expect(shortEvents(playInput(reads))).toEqual(['paste:xn', 'q', 'space']);
	});

	test('cannot be kept open by a held key', () => {
		const reads = [{ atMs: 0, bytes: `${BEGIN}x` }];
		for (let atMs = 33; atMs < 1000; atMs += 33) {
			reads.push({ atMs, bytes: 'n' });
		}
		const keys = playInput(reads).filter((event) => event.kind === 'key');
		expect(keys[0]?.atMs).toBeLessThanOrEqual(500);
	});

	test('lets Ctrl-C through at once', () => {
		const events = playInput([
			{ atMs: 0, bytes: `${BEGIN}x` },
			{ atMs: 10, bytes: '\u0003' },
		]);
		expect(events[0]).toEqual({ kind: 'interrupt', atMs: 10 });
		expect(shortEvents(events)).toEqual(['interrupt', 'paste:x']);
	});

	test('whose end comes late, or in pieces around the limit, leaves no key behind', () => {
		for (let place = 0; place <= END.length; place += 1) {
			const events = playInput([
				{ atMs: 0, bytes: `${BEGIN}x` },
				{ atMs: 440, bytes: END.slice(0, place) },
				{ atMs: 470, bytes: END.slice(place) },
			]);
			expect(shortEvents(events), `cut at ${place}`).toEqual(['paste:x']);
		}
	});

	test('that goes on pouring is ignored as a burst', () => {
		const reads = [{ atMs: 0, bytes: `${BEGIN}x` }];
		for (let atMs = 10; atMs < 800; atMs += 10) {
			reads.push({ atMs, bytes: 'n\nq\n \n' });
		}
		const kinds = playInput(reads).map((event) => event.kind);
		expect(kinds[0]).toBe('paste');
		expect(new Set(kinds.slice(1))).toEqual(new Set(['burst']));
	});
});
