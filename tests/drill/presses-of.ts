// Keys as a sentence names them: a key's name, or letters that are typed one after the other.

import { NAMED_KEYS } from '../../src/cli/rehearsal/parse-script.ts';

/**
 * The single presses of keys as they are named.
 *
 * @example
 * pressesOf(['j', 'old m', 'enter']) // => ['j', 'o', 'l', 'd', 'space', 'm', 'enter']
 */
export function pressesOf(keys: readonly string[]): readonly string[] {
	return keys.flatMap((key) =>
		NAMED_KEYS.includes(key)
			? [key]
			: [...key].map((letter) => (letter === ' ' ? 'space' : letter)),
	);
}
