// The screen that a rehearsal script asks to see last: the same at every run, since a script has a
// clock of its own.

import { readFileSync } from 'node:fs';
import { parseScript, type ScreenSize } from '../../src/cli/rehearsal/parse-script.ts';
import { playScript } from '../../src/cli/rehearsal/play-script.ts';
import type { ScreenState } from '../../src/screen/screen-state.ts';
import { loadShow } from '../scenarios/load-show.ts';

/** What is on the screen at the script's last `!screen`, and the size that this names. */
export function scriptedScreen(
	showFile: string,
	scriptFile: string,
): { readonly state: ScreenState; readonly size: ScreenSize } {
	const script = parseScript(readFileSync(scriptFile, 'utf8'), scriptFile);
	if (!script.ok) throw new Error(`${scriptFile} cannot be read`);
	let asked: { readonly state: ScreenState; readonly size: ScreenSize } | undefined;
	playScript({
		show: loadShow(showFile),
		steps: script.steps,
		isQuiet: true,
		draw: (state, size) => {
			// A rehearsal says that it is one; what is shown is a night.
			asked = { state: { ...state, isRehearsal: false }, size };
			return [];
		},
		print: () => {},
	});
	if (asked === undefined) throw new Error(`${scriptFile} asks for no screen`);
	return asked;
}
