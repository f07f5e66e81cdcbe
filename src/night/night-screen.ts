// What the screen is drawn from, gathered for one frame.

import type { SaveStatus } from '../journal/night-journal.ts';
import { ACTIONS, actionsIn } from '../keys/actions.ts';
import type { KeyContext } from '../keys/key-context.ts';
import type { KeyWords } from '../keys/prompt-view.ts';
import type { ScreenState } from '../screen/screen-state.ts';
import { openBreak } from '../session/find.ts';
import { takeableBack } from '../session/timeline.ts';
import { FOOTER } from '../words/actions.ts';
import type { NightDesk } from './night-desk.ts';
import { promptNow } from './press-keys.ts';

export type Frame = {
	/** What keys and rows of this frame look at. */
	readonly now: KeyContext;
	readonly save: SaveStatus;
	readonly findings: readonly string[];
	readonly showChangedAtMs: number | null;
	readonly isRehearsal: boolean;
	/** What to add to UTC for the time of day where the show is. */
	readonly dayOffsetMinutes: number;
};

/** The state of the screen of the night at this desk. */
export function nightScreen(desk: NightDesk, { now, ...frame }: Frame): ScreenState {
	const { past, session } = desk;
	const { view, picked, message, noticesSeen, isDark, isLocked, narrowedTo } = desk.look();
	const open = openBreak(session());
	return {
		...frame,
		session: session(),
		plan: now.plan,
		nowMs: now.nowMs,
		zeroMs: desk.zeroMs(),
		view,
		picked,
		prompt: promptNow(desk)?.view(now) ?? null,
		message,
		noticesSeen,
		standIns: open?.player ? { [open.player]: now.standInsFor(open.player) } : {},
		isDark,
		isLocked,
		log: past.log,
		narrowedTo,
		takeableStep: takeableBack(past.timeline()),
		footer: isLocked ? unlockKeys(desk) : footer(desk, now),
		preferences: desk.preferences.values(),
		help: ACTIONS.map((action) => ({ key: desk.keyOf(action.id), words: action.words })),
	};
}

function footer({ keyOf }: NightDesk, now: KeyContext): readonly KeyWords[] {
	return actionsIn(now.view).flatMap((action) => {
		const words = (action.whyNot?.(now) ?? null) === null ? (action.footer?.(now) ?? null) : null;
		return words === null ? [] : [{ key: keyOf(action.id), words }];
	});
}

/** The only keys that do anything while locked. */
function unlockKeys({ keyOf }: NightDesk): readonly KeyWords[] {
	return [
		{ key: keyOf('lock'), words: FOOTER.lockThen },
		{ key: 'esc', words: FOOTER.unlocks },
	];
}
