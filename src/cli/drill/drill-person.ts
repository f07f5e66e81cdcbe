// Whose results a drill's are: named on the command line, else whoever said so once, else asked.

import { userInfo } from 'node:os';
import { cleanText } from '../../base/clean-text.ts';
import { graphemes } from '../../base/display-width.ts';
import { DRILL } from '../../words/drill.ts';
import type { Ask } from '../ask-on-terminal.ts';

/** In the table a longer one would leave no room. */
export const LONGEST_NAME = 30;

/** The name as it is kept; null for one that cannot be. */
export function personName(typed: string): string | null {
	const name = cleanText(typed).trim();
	const { length } = graphemes(name);
	return length >= 1 && length <= LONGEST_NAME ? name : null;
}

/** Asks until there is a name; null where nobody can be asked. */
export async function askPerson(ask: Ask): Promise<string | null> {
	const user = systemUser();
	for (;;) {
		const answer = await ask(DRILL.who(user));
		if (answer === null) return null;
		const name = personName(answer.trim() === '' ? user : answer);
		if (name !== null) return name;
	}
}

/** The name under which the system knows the user. */
function systemUser(): string {
	try {
		return personName(userInfo().username) ?? DRILL.somebody;
	} catch {
		// A user whom the system has no name for.
		return DRILL.somebody;
	}
}
