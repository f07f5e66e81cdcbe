// A trial night as the terminal shows it, with somebody who leads through it: every key does what it always does,
// but esc twice leaves, and enter goes on where a sentence waits to be read.

import type { Night } from '../night/night.ts';
import type { Band } from '../screen/screen-state.ts';
import { trialScreen } from './trial-night.ts';

/** Esc and esc again, where there is nothing to close, leave when no more than this lies between them. */
const LEAVE_MS = 2000;

/** What was done is on the screen for so long, or an enter meant for the night would take it away unread. */
const UNREAD_MS = 700;

/** Who leads. */
export type Lead = {
	/** The night that is shown now. */
	readonly night: () => Night;
	readonly band: () => Band;
	/** What was done is said, and enter goes on. */
	readonly isWaiting: () => boolean;
	readonly goOn: () => void;
	/** Looks at what a key or the time has come to. */
	readonly look: () => void;
	readonly isOver: () => boolean;
};

export type LedNight = Pick<
	Night,
	'press' | 'paste' | 'burst' | 'tick' | 'screen' | 'onChange' | 'wantsToLeave'
>;

/** The night that is led through; `handMs`: the clock that the hands live by. */
export function ledNight(lead: Lead, handMs: () => number): LedNight {
	const listeners = new Set<() => void>();
	let escAtMs: number | null = null;
	let isLeft = false;
	let waitsSinceMs: number | null = null;
	const after = (): void => {
		if (!isLeft) lead.look();
		waitsSinceMs = lead.isWaiting() ? (waitsSinceMs ?? handMs()) : null;
		for (const listener of listeners) listener();
	};

	function press(key: string, atMs: number): void {
		const { prompt, view, isDark, isLocked } = lead.night().screen();
		// An esc that closes something is no step on the way out.
		const isEsc = key === 'esc' && prompt === null && view === 'stage' && !isLocked;
		const isTwice = isEsc && escAtMs !== null && atMs - escAtMs <= LEAVE_MS;
		escAtMs = isEsc ? atMs : null;
		if (isTwice) {
			isLeft = true;
			return;
		}
		const isToGoOn = key === 'enter' && prompt === null && !isDark;
		if (!isToGoOn || waitsSinceMs === null) lead.night().press(key, atMs);
		else if (atMs - waitsSinceMs >= UNREAD_MS) lead.goOn();
	}

	return {
		press: (key, atMs = handMs()) => {
			press(key, atMs);
			after();
		},
		paste: (text) => {
			lead.night().paste(text);
			after();
		},
		burst: (count, text) => {
			lead.night().burst(count, text);
			after();
		},
		tick: () => {
			lead.night().tick();
			after();
		},
		screen: () => ({ ...trialScreen(lead.night()), band: lead.band() }),
		onChange: (listener) => {
			listeners.add(listener);
			return () => listeners.delete(listener);
		},
		wantsToLeave: () => isLeft || lead.isOver() || lead.night().wantsToLeave(),
	};
}
