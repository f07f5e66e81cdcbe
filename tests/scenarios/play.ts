// Plays a script of timed keys against a show of this folder, and gives back the states it asked for.

import { join } from 'node:path';
import { parseScript } from '../../src/cli/rehearsal/parse-script.ts';
import { playScript } from '../../src/cli/rehearsal/play-script.ts';
import { drawScreen } from '../../src/screen/draw-screen.ts';
import { screenText } from '../../src/screen/row.ts';
import type { Show } from '../../src/showfile/show.ts';
import { problemText } from '../../src/words/problem-text.ts';
import { loadShow } from './load-show.ts';

// biome-ignore lint/suspicious/noExplicitAny: a state is JSON that tests look into by name
export type State = any;

/** The states printed by `!state`, in order, then the last one; and the screens printed by `!screen`. */
export function play(showName: string, script: string): Played {
	return playShow(loadShow(join(import.meta.dirname, 'shows', `${showName}.yaml`)), script);
}

export type Played = { readonly states: State[]; readonly screen: string };

/** The same for any show. */
export function playShow(show: Show, script: string): Played {
	const reading = parseScript(script, 'script');
	if (!reading.ok) throw new Error(reading.problems.map(problemText).join('\n'));
	const printed: string[] = [];
	playScript({
		show,
		steps: reading.steps,
		isQuiet: false,
		draw: (state, size) => screenText(drawScreen(state, size, { isAscii: false })).split('\n'),
		print: (line) => printed.push(line),
	});
	return {
		states: printed.filter((line) => line.startsWith('{"at"')).map((line) => JSON.parse(line)),
		screen: printed.filter((line) => !line.startsWith('{"at"')).join('\n'),
	};
}
