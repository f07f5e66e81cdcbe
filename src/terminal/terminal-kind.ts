// What the terminal can show, told from the environment alone: asking it would mean waiting for a
// reply that may never come.

import type { ColorDepth } from '../base/colours.ts';

/** A full screen, lines of plain text, or no terminal at all. */
export type TerminalKind = 'screen' | 'dumb' | 'none';

/** What is known before anything is drawn. */
export type TerminalFacts = {
	readonly env: Readonly<Record<string, string | undefined>>;
	readonly isInputTerminal: boolean;
	readonly isOutputTerminal: boolean;
	/** As Node names it: `win32` for Windows. */
	readonly platform: string;
	/** `--no-color` was given. */
	readonly isColorRefused: boolean;
};

/** What the terminal can show. */
export type TerminalAbilities = {
	readonly kind: TerminalKind;
	readonly colorDepth: ColorDepth;
	/** Whether more than ASCII can be drawn. */
	readonly isUnicode: boolean;
};

/** Gives back what the terminal can show; `CI` is no reason not to draw. */
export function terminalAbilities(facts: TerminalFacts): TerminalAbilities {
	return {
		kind: kindOf(facts),
		colorDepth: colorDepthOf(facts),
		isUnicode: isUnicode(facts),
	};
}

/** Windows' own consoles name no terminal, and take xterm's sequences since Windows 10 (its console documentation, from memory). */
function termOf({ env, platform }: TerminalFacts): string {
	return env.TERM ?? (platform === 'win32' ? 'xterm-256color' : '');
}

function kindOf(facts: TerminalFacts): TerminalKind {
	if (!facts.isInputTerminal || !facts.isOutputTerminal) {
		return 'none';
	}
	const term = termOf(facts);
	return term === '' || term === 'dumb' || term === 'unknown' ? 'dumb' : 'screen';
}

/** The user's refusal counts most: `--no-color`, then `NO_COLOR` (no-color.org), then the rest. */
function colorDepthOf(facts: TerminalFacts): ColorDepth {
	const { env, isColorRefused } = facts;
	if (isColorRefused || (env.NO_COLOR ?? '') !== '') {
		return 1;
	}
	return forcedDepth(env.FORCE_COLOR) ?? (facts.isOutputTerminal ? supportedDepth(facts) : 1);
}

/** `FORCE_COLOR` as Node's `tty` reads it: 0 to 3, or a word. */
function forcedDepth(value: string | undefined): ColorDepth | undefined {
	switch (value) {
		case undefined:
			return undefined;
		case '0':
		case 'false':
			return 1;
		case '2':
			return 8;
		case '3':
			return 24;
		default:
			return 4;
	}
}

function supportedDepth(facts: TerminalFacts): ColorDepth {
	const term = termOf(facts);
	if (term === '' || term === 'dumb' || term === 'unknown' || /^vt\d/.test(term)) {
		return 1;
	}
	if (/truecolor|24bit/.test(facts.env.COLORTERM ?? '') || /direct/.test(term)) {
		return 24;
	}
	return /256/.test(term) ? 8 : 4;
}

/** POSIX, "Environment Variables": the first of `LC_ALL`, `LC_CTYPE`, `LANG` that is not empty. */
function isUnicode(facts: TerminalFacts): boolean {
	const { env } = facts;
	const term = termOf(facts);
	if (/^(linux|vt\d|ansi|dumb|unknown)/.test(term)) {
		return false;
	}
	const locale = [env.LC_ALL, env.LC_CTYPE, env.LANG].find((value) => (value ?? '') !== '');
	// Links seldom pass the locale on, and a terminal of today without one draws Unicode.
	return locale === undefined || /utf-?8/i.test(locale);
}
