// Whatever comes, in whatever pieces: no throw, no wait without end, no command that nobody pressed.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Read } from './play-input.ts';
import { bytesOf, playInput, shortEvents } from './play-input.ts';

const RUNS = Number(process.env.PROPERTY_RUNS ?? 200);

const ANY_BYTE = fc.integer({ min: 0, max: 255 });
// Bytes that open, fill and close sequences come often, so that random input gets deep into them.
const TELLING_BYTE = fc.constantFrom(
	...bytesOf('\u001B\u001B\u001B[[OO]P;;?<12~MuABn q\u0003\u0007\u0018\\\r'),
);
const READ = fc.record({
	gapMs: fc.integer({ min: 0, max: 700 }),
	bytes: fc
		.uint8Array({ maxLength: 24 })
		.chain((bytes) =>
			fc
				.array(fc.oneof({ weight: 3, arbitrary: TELLING_BYTE }, ANY_BYTE), { maxLength: 24 })
				.map((telling) => Uint8Array.from([...telling, ...bytes.slice(0, 4)])),
		),
});

function timed(reads: readonly { gapMs: number; bytes: Uint8Array }[]): Read[] {
	let atMs = 0;
	return reads.map(({ gapMs, bytes }) => {
		atMs += gapMs;
		return { atMs, bytes };
	});
}

describe('random bytes in random pieces', () => {
	test('never throw, never keep the decoder waiting, and give well-formed keys', () => {
		fc.assert(
			fc.property(fc.array(READ, { maxLength: 20 }), (reads) => {
				for (const event of playInput(timed(reads))) {
					if (event.kind === 'key') {
						expect(event.key).toMatch(/^[^\p{Cc}\uFFFD]+$/u);
					}
				}
			}),
			{ numRuns: RUNS },
		);
	});

	test('never keep the next key from working half a second later', () => {
		fc.assert(
			fc.property(fc.array(READ, { maxLength: 20 }), (reads) => {
				const before = timed(reads);
				const atMs = (before.at(-1)?.atMs ?? 0) + 520;
				const last = playInput([...before, { atMs, bytes: 'n' }]).at(-1);
				expect(last).toEqual({ kind: 'key', key: 'n', atMs });
			}),
			{ numRuns: RUNS },
		);
	});

	test('never keep Ctrl-C from working at once', () => {
		fc.assert(
			fc.property(fc.array(READ, { maxLength: 20 }), (reads) => {
				const before = timed(
					reads.map(({ gapMs, bytes }) => ({ gapMs, bytes: bytes.filter((b) => b !== 3) })),
				);
				const atMs = (before.at(-1)?.atMs ?? 0) + 1;
				const events = playInput([...before, { atMs, bytes: '\u0003' }]);
				expect(events).toContainEqual({ kind: 'interrupt', atMs });
			}),
			{ numRuns: RUNS },
		);
	});
});

describe('whole sequences in random pieces', () => {
	const ARROWS: Readonly<Record<string, string>> = {
		'\u001B[A': 'up',
		'\u001B[B': 'down',
		'\u001BOC': 'right',
		'\u001BOD': 'left',
		'\u001B[5~': 'pageup',
		'\u001B[6~': 'pagedown',
		'\u001BOP': 'f1',
		'\u001B[I': '',
		'\u001B[O': '',
		'\u001B[<0;3;4M': '',
		'\u001B]11;rgb:0/0/0\u001B\\': '',
		'\u001B[200~O [ n\u001B[201~': 'paste:O [ n',
	};

	test('give those keys and no other, gaps up to 100 ms', () => {
		const sequences = fc.array(fc.constantFrom(...Object.keys(ARROWS)), {
			minLength: 1,
			maxLength: 8,
		});
		const cuts = fc.array(
			fc.record({ size: fc.integer({ min: 1, max: 4 }), gapMs: fc.integer({ min: 0, max: 100 }) }),
			{
				minLength: 1,
				maxLength: 12,
			},
		);
		fc.assert(
			fc.property(sequences, cuts, (texts, pattern) => {
				const reads: Read[] = [];
				let atMs = 0;
				for (const text of texts) {
					// A whole sequence is a few bytes of one write: it does not take half a second.
					const beganMs = atMs;
					let rest = bytesOf(text);
					while (rest.length > 0) {
						const cut = pattern[reads.length % pattern.length] ?? { size: 1, gapMs: 0 };
						reads.push({ atMs, bytes: rest.slice(0, cut.size) });
						rest = rest.slice(cut.size);
						atMs = Math.min(atMs + cut.gapMs, beganMs + 300);
					}
				}
				const expected = texts.map((text) => ARROWS[text] ?? '').filter((key) => key !== '');
				expect(shortEvents(playInput(reads))).toEqual(expected);
			}),
			{ numRuns: RUNS },
		);
	});
});
