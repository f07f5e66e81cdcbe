import fc from 'fast-check';
import { expect, test } from 'vitest';

import { slug } from '../../src/base/slug.ts';

const anyText = fc
	.array(fc.oneof(fc.integer({ min: 0, max: 0x7f }), fc.integer({ min: 0, max: 0x10ffff })), {
		maxLength: 100,
	})
	.map((points) => String.fromCodePoint(...points));

const RUNS = { numRuns: Number(process.env.PROPERTY_RUNS ?? 200) };

test.each([
	['Quay Street, second night', 'quay-street-second-night'],
	['Café Müller', 'cafe-muller'],
	['../../etc/passwd', 'etc-passwd'],
	['--force', 'force'],
	['C:\\nul.txt', 'c-nul-txt'],
	['CON', 'con-x'],
	['lpt1', 'lpt1-x'],
	['console', 'console'],
	['夜', 'unnamed'],
	['', 'unnamed'],
	['...', 'unnamed'],
	[`${'a'.repeat(59)} b`, 'a'.repeat(59)],
	[`-${'a'.repeat(80)}`, 'a'.repeat(60)],
])('%j becomes %s', (title, name) => {
	expect(slug(title)).toBe(name);
});

test('any title gives a name that every file system takes', () => {
	fc.assert(
		fc.property(anyText, (title) => {
			const name = slug(title);
			expect(name).toMatch(/^[a-z0-9](?:[a-z0-9-]{0,58}[a-z0-9])?$/);
			expect(name).not.toMatch(/^(?:con|prn|aux|nul|com\d|lpt\d)$/);
			expect(slug(name)).toBe(name);
		}),
		RUNS,
	);
});
