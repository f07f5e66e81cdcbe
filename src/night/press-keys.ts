// From a key to its outcome: whether the press counts, and whether the lock, the dark, a prompt or an
// action takes it.

import { cleanText } from '../base/clean-text.ts';
import { graphemes } from '../base/display-width.ts';
import type { Action } from '../keys/action.ts';
import { actionOf } from '../keys/actions.ts';
import { faultSearchPrompt } from '../keys/fault-search-prompt.ts';
import type { KeyContext, Outcome, Prompt } from '../keys/key-context.ts';
import { judgePress, NO_PRESSES } from '../keys/repeats.ts';
import { standInPrompt } from '../keys/stand-in-prompt.ts';
import { isForLater } from '../rig/fault-now.ts';
import { openBreak, openFaults } from '../session/find.ts';
import {
	answeredLate,
	lockedSentence,
	NOW_ESC,
	noSuchKey,
	questionClosed,
} from '../words/actions.ts';
import type { Follow } from './follow-outcome.ts';
import { faultsPutOff, isOverdue } from './look.ts';
import type { NightContext } from './night-context.ts';
import type { NightSteps } from './night-steps.ts';
import type { NightUnderWay } from './night-under-way.ts';

/** Between l and esc when unlocking. */
const UNLOCK_MS = 2000;

/** After the last key of a question for which nobody waited: one who looks up from the stage presses what answered it. Common practice, no source. */
const LATE_ANSWER_MS = 15_000;
/** What these do is worth more than what the key was meant for. */
const NEVER_LATE: ReadonlySet<string> = new Set([
	'break',
	'step',
	'step-back',
	'live',
	'dark',
	'lock',
]);

/** A question that nobody answered. */
type ClosedQuestion = { readonly answers: readonly string[]; readonly lastKeyMs: number };

export type PressedKeys = {
	/** `atMs`: when it was pressed, on the hands' clock. */
	readonly press: (key: string, atMs?: number) => void;
	/** Puts text into the open text field; false where there is none. */
	readonly typeInto: (text: string) => boolean;
	/** Closes a prompt that nobody answers. */
	readonly closeIfOverdue: () => void;
};

export type PressParts = {
	readonly steps: NightSteps;
	readonly looked: NightContext;
	readonly follow: Follow;
	/** What an action comes to now; by default what it says itself. */
	readonly outcomeOf?: (action: Action, now: KeyContext) => Outcome;
};

/** What an action does now, or why it does nothing. */
export function outcomeOfAction(action: Action, now: KeyContext): Outcome {
	const why = action.whyNot?.(now) ?? null;
	return why === null ? action.act(now) : { kind: 'say', words: why };
}

/** The prompt in force: the one opened, else the stand-ins of a break that waits for its answer, else the search for a fault. */
export function promptNow({ session, look }: NightUnderWay): Prompt | null {
	const { open, deferred } = look();
	if (open) return open.prompt;
	const broken = openBreak(session());
	if (broken && !deferred.includes(broken.id)) return standInPrompt();
	const fault = openFaults(session()).find(
		(one) => !deferred.includes(one.id) && !isForLater(session(), one),
	);
	return fault === undefined ? null : faultSearchPrompt(fault.id);
}

/** The keys pressed in the night under way. */
export function pressedKeys(
	underWay: NightUnderWay,
	{ steps, looked, follow, outcomeOf = outcomeOfAction }: PressParts,
): PressedKeys {
	const { clock, session, look, setLook, handMs } = underWay;
	let presses = NO_PRESSES;
	/** The key that asked the question which is open, or was last. */
	let asker: string | null = null;
	let closed: ClosedQuestion | null = null;
	const actionAt = (key: string) => actionOf(key, underWay.preferences.values().keys);

	/** While locked, l then esc within two seconds is the only way out. */
	function pressLocked(key: string, nowMs: number): void {
		const { unlockFromMs } = look();
		const isUnlocking = unlockFromMs !== null && nowMs - unlockFromMs <= UNLOCK_MS;
		if (key === 'esc' && isUnlocking) {
			setLook({ isLocked: false, unlockFromMs: null, message: null });
			return;
		}
		const isFirst = actionAt(key)?.id === 'lock';
		setLook({
			unlockFromMs: isFirst ? nowMs : null,
			message: isFirst ? NOW_ESC : lockedSentence(underWay.keyOf('lock')),
		});
	}

	function pressAction(key: string): void {
		const action = actionAt(key);
		if (look().isDark && !action?.isForDark) return;
		if (action === null) {
			if (isLateAnswer(key, null)) return;
			setLook({ message: noSuchKey(key, underWay.keyOf('help')) });
			return;
		}
		// What was put off is taken up again by the key that began it.
		if (action.id === 'break' && openBreak(session())) {
			setLook({ deferred: faultsPutOff(underWay), open: null, message: null });
			return;
		}
		if (isLateAnswer(key, action)) return;
		asker = key;
		const putOff = action.id === 'seek-fault' ? faultsPutOff(underWay) : [];
		if (putOff.length > 0) {
			const deferred = look().deferred.filter((id) => !putOff.includes(id));
			setLook({ deferred, open: null, message: null });
			return;
		}
		follow(outcomeOf(action, looked.context()), clock.nowMs());
	}

	function pressCounted(key: string, atMs = handMs()): void {
		if (look().isLocked) {
			pressLocked(key, atMs);
			return;
		}
		const prompt = look().isDark ? null : promptNow(underWay);
		if (prompt === null) {
			pressAction(key);
			return;
		}
		const beganMs = look().open?.beganMs ?? clock.nowMs();
		const outcome = prompt.press(key, looked.context());
		if (outcome.kind !== 'pass') {
			follow(outcome, beganMs);
			return;
		}
		setLook({ open: null });
		pressAction(key);
	}

	function closeIfOverdue(): void {
		const { open } = look();
		if (open === null || !isOverdue(look(), handMs())) return;
		const { choices } = open.prompt.view(looked.context());
		closed = { answers: choices.map((one) => one.key), lastKeyMs: open.lastKeyMs };
		setLook({ open: null, message: questionClosed(asker) });
	}

	/**
	 * Whether a key was meant for a question that has just closed: then it does nothing else. The one that asked it asks
	 * again, a break is logged all the same, and what does nothing anyhow, as a slot, was an answer too.
	 */
	function isLateAnswer(key: string, action: Action | null): boolean {
		const was = closed;
		closed = null;
		if (was === null || handMs() - was.lastKeyMs > LATE_ANSWER_MS) return false;
		const asks = key === asker || NEVER_LATE.has(action?.id ?? '');
		const isAnswer = was.answers.includes(key) && !asks;
		if (action !== null && !isAnswer) return false;
		setLook({ message: answeredLate(key, asker) });
		return true;
	}

	function press(key: string, atMs = handMs()): void {
		closeIfOverdue();
		const { open, isLocked } = look();
		const isInList = open === null || open.prompt.isList === true;
		const isGoingOn = isInList && actionAt(key)?.isEachCounted === true;
		if (!isLocked && (open?.prompt.isText || isGoingOn)) {
			pressCounted(key);
			return;
		}
		const judged = judgePress(presses, key, atMs);
		presses = judged.presses;
		if (judged.verdict === 'count') {
			steps.begin();
			pressCounted(key, atMs);
		} else if (judged.verdict === 'take-back') steps.undoLast();
	}

	function typeInto(text: string): boolean {
		closeIfOverdue();
		const { open, isLocked } = look();
		if (!open?.prompt.isText || isLocked) return false;
		for (const letter of graphemes(cleanText(text)))
			pressCounted(letter === ' ' ? 'space' : letter);
		return true;
	}

	return { press, typeInto, closeIfOverdue };
}
