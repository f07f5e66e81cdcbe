// A show from the text of a show file.

import { readShow } from '../../../src/showfile/read-show.ts';
import type { Show } from '../../../src/showfile/show.ts';

/** The show in this text; throws with its problems where it has any. */
export function showOf(text: string): Show {
	const bytes = new TextEncoder().encode(text);
	const { show, problems } = readShow((path) => (path === 'show.yaml' ? bytes : null), 'show.yaml');
	if (show === null) throw new Error(`${JSON.stringify(problems)}\n${text}`);
	return show;
}
