// A trial night on the terminal: nothing of it reaches a disk, and what is set in it ends with it.

import type { LedNight } from '../../drill/led-night.ts';
import { type PreferenceStore, preferencesFrom } from '../../night/preference-store.ts';
import { nodeClock } from '../../terminal/clock.ts';
import type { TerminalAbilities } from '../../terminal/terminal-kind.ts';
import { styledScreen } from '../../ui/styled-screen.ts';
import { EXIT } from '../exit-code.ts';
import type { Io } from '../io.ts';
import { screenOptions, showLive } from '../live/live-screen.ts';
import { unkeptWayOut } from '../live/way-out.ts';

/** What is counted down is seen to. */
const TICK_MS = 250;

export type ShownTrial = {
	readonly night: LedNight;
	readonly abilities: TerminalAbilities;
	/** The clock that the hands live by. */
	readonly handMs: () => number;
	/** What is said on the plain terminal once it was left. */
	readonly farewell: () => string;
};

/** Shows it until it is left; the way out ends the process. */
export async function showTrial(shown: ShownTrial, io: Io): Promise<never> {
	const { night, abilities, handMs, farewell } = shown;
	const clock = nodeClock();
	const shutdown = unkeptWayOut({ clock, io, farewell });
	await showLive({
		...{ night, clock, shutdown, handMs },
		codeAtEnd: () => EXIT.fine,
		rowsAt: (size) => styledScreen(night.screen(), size, screenOptions(abilities)),
		tickMs: TICK_MS,
	});
	return new Promise(() => {});
}

/** Preferences as the user has them; a change holds for as long as the program runs. */
export function trialPreferences({ values }: PreferenceStore): PreferenceStore {
	return preferencesFrom(values());
}
