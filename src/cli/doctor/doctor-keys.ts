// What the keyboard and the foot switch send, and what the live screen would take it for.

import { actionOf } from '../../keys/actions.ts';
import { heldKey } from '../../keys/held-key.ts';
import type { KeyChoices } from '../../keys/preferences.ts';
import type { KeyAnswer, PressedKey } from '../../terminal/key-trial.ts';
import { actionName, KEY_LABELS } from '../../words/actions.ts';
import {
	HOLD_AGAIN,
	KEYS_LEFT,
	keyForNothing,
	keyTakenFor,
	NO_KEY_CAME,
	NO_SWITCH,
	ON_THE_TERMINAL,
	ONE_PRESS,
	REPEAT_FIX,
	repeatFound,
	SWITCH_FIX,
	switchFound,
	TOO_SOON,
	UNREADABLE_KEY,
	WHAT,
} from '../../words/doctor.ts';
import { type DoctorLine, fine, look, unknown } from './doctor-line.ts';

/** A terminal that can be asked, and somebody before it. */
export type Asked = {
	/** Cells that a text fills; null where the terminal does not say. */
	readonly drawnCells: (text: string) => Promise<number | null>;
	readonly holdKey: () => Promise<KeyAnswer>;
	readonly pressSwitch: () => Promise<KeyAnswer>;
};

/** Both lines where nothing can be asked. */
export function keysLeftOut(why: string): readonly DoctorLine[] {
	return [WHAT.repeat, WHAT.switch].map((what) => unknown(what, why, ON_THE_TERMINAL));
}

/** What a key that was held for two seconds came to. */
export function repeatLine(answer: KeyAnswer): DoctorLine {
	if (answer.kind !== 'pressed') return unknown(WHAT.repeat, KEYS_LEFT, null);
	const held = answer.presses[0]?.key ?? null;
	if (held === null) return unknown(WHAT.repeat, NO_KEY_CAME, HOLD_AGAIN);
	const { delayMs, intervalMs, counts } = heldKey(
		answer.presses.filter(({ key }) => key === held).map(({ atMs }) => atMs),
	);
	if (delayMs === null) return unknown(WHAT.repeat, ONE_PRESS, HOLD_AGAIN);
	const found = repeatFound(delayMs, intervalMs, counts);
	return counts === 1 ? fine(WHAT.repeat, found) : look(WHAT.repeat, found, REPEAT_FIX);
}

/** Presses nearer to each other come from one push of a foot (common practice). */
const ONE_PUSH_MS = 50;

/** What each pedal of a foot switch sends. */
export function switchLine(answer: KeyAnswer, chosen: KeyChoices): DoctorLine {
	if (answer.kind === 'none') return fine(WHAT.switch, NO_SWITCH);
	if (answer.kind !== 'pressed') return unknown(WHAT.switch, KEYS_LEFT, null);
	const { presses } = answer;
	if (presses.length === 0) return unknown(WHAT.switch, NO_KEY_CAME, null);
	const keys = [...new Set(presses.map(({ key }) => key))];
	const found = switchFound(keys.map((key) => takenFor(key, chosen)));
	if (keys.some((key) => key !== 'pagedown' && key !== 'pageup'))
		return look(WHAT.switch, found, SWITCH_FIX);
	return isDoubled(presses) ? look(WHAT.switch, found, TOO_SOON) : fine(WHAT.switch, found);
}

function takenFor(key: string | null, chosen: KeyChoices): string {
	if (key === null) return UNREADABLE_KEY;
	const label = KEY_LABELS[key] ?? key;
	const action = actionOf(key, chosen);
	if (action === null) return keyForNothing(label);
	return keyTakenFor(label, actionName(action.id));
}

function isDoubled(presses: readonly PressedKey[]): boolean {
	return presses.some(({ key, atMs }, index) => {
		const before = presses[index - 1];
		// The same one again so soon counts once.
		return before !== undefined && before.key !== key && atMs - before.atMs < ONE_PUSH_MS;
	});
}
