// What is drawn on which terminal, from its environment.

import { describe, expect, test } from 'vitest';
import { terminalAbilities } from '../../src/terminal/terminal-kind.ts';

function abilities(env: Record<string, string>, more: object = {}) {
	return terminalAbilities({
		env: { TERM: 'xterm-256color', ...env },
		isInputTerminal: true,
		isOutputTerminal: true,
		platform: 'linux',
		isColorRefused: false,
		...more,
	});
}

describe('kind', () => {
	test('a terminal is a screen, also where CI is set', () => {
		expect(abilities({ CI: '1' }).kind).toBe('screen');
	});

	test('a dumb or unnamed one has lines', () => {
		for (const term of ['dumb', '', 'unknown']) {
			expect(abilities({ TERM: term }).kind).toBe('dumb');
		}
	});

	// A Windows console sets no TERM; it takes xterm's sequences (Console Virtual Terminal Sequences, from memory).
	test('on Windows one without a name is a screen with colours and signs', () => {
		const { TERM: _, ...env } = { TERM: '' };
		const facts = { env, isInputTerminal: true, isOutputTerminal: true, isColorRefused: false };
		const found = terminalAbilities({ ...facts, platform: 'win32' });
		expect(found).toEqual({ kind: 'screen', colorDepth: 8, isUnicode: true });
		expect(terminalAbilities({ ...facts, platform: 'linux' }).kind).toBe('dumb');
	});

	test('without a terminal at both ends there is none', () => {
		expect(abilities({}, { isInputTerminal: false }).kind).toBe('none');
		expect(abilities({}, { isOutputTerminal: false }).kind).toBe('none');
	});
});

describe('colour', () => {
	// no-color.org: "when present and not an empty string".
	test.each([
		[{ NO_COLOR: '1' }, 1],
		[{ NO_COLOR: '0' }, 1],
		[{ NO_COLOR: '' }, 8],
		[{ NO_COLOR: '1', FORCE_COLOR: '3' }, 1],
		[{ FORCE_COLOR: '0' }, 1],
		[{ FORCE_COLOR: 'false' }, 1],
		[{ FORCE_COLOR: '' }, 4],
		[{ FORCE_COLOR: '1' }, 4],
		[{ FORCE_COLOR: 'true' }, 4],
		[{ FORCE_COLOR: '2' }, 8],
		[{ FORCE_COLOR: '3' }, 24],
		[{ TERM: 'xterm' }, 4],
		[{ TERM: 'linux' }, 4],
		[{ TERM: 'tmux-256color' }, 8],
		[{ COLORTERM: 'truecolor' }, 24],
		[{ TERM: 'vt100' }, 1],
		[{ TERM: 'dumb' }, 1],
	] as const)('%j has %d bits', (env, depth) => {
		expect(abilities(env).colorDepth).toBe(depth);
	});

	test('is refused by the flag, and off where there is no terminal', () => {
		expect(abilities({ FORCE_COLOR: '3' }, { isColorRefused: true }).colorDepth).toBe(1);
		expect(abilities({}, { isOutputTerminal: false }).colorDepth).toBe(1);
		expect(abilities({ FORCE_COLOR: '1' }, { isOutputTerminal: false }).colorDepth).toBe(4);
	});
});

// POSIX, "Environment Variables", 8.2: LC_ALL before LC_CTYPE before LANG, empty as unset.
test.each([
	[{ LANG: 'en_GB.UTF-8' }, true],
	[{ LANG: 'de_DE.utf8' }, true],
	[{ LANG: 'C' }, false],
	[{ LC_ALL: 'POSIX', LANG: 'en_GB.UTF-8' }, false],
	[{ LC_ALL: '', LC_CTYPE: 'C.UTF-8', LANG: 'C' }, true],
	[{ LANG: 'fr_FR.ISO-8859-1' }, false],
	[{ TERM: 'linux', LANG: 'en_GB.UTF-8' }, false],
	[{}, true],
] as const)('%j draws more than ASCII: %s', (env, isUnicode) => {
	expect(abilities(env).isUnicode).toBe(isUnicode);
});
