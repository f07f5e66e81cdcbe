// What the screen is drawn from, gathered for one frame.

import type { SaveStatus } from '../journal/night-journal.ts';
import { ACTIONS, actionsIn } from '../keys/actions.ts';
import { shownKeys } from '../keys/key-choices.ts';
import type { KeyContext } from '../keys/key-context.ts';
import type { KeyWords } from '../keys/prompt-view.ts';
import { showSeconds } from '../plan/demand/sections-ahead.ts';
import type { ScreenState } from '../screen/screen-state.ts';
import { openBreakOf } from '../session/find.ts';
import { takeableBack } from '../session/timeline.ts';
import { FOOTER } from '../words/actions.ts';
import { saidAt } from './look.ts';
import type { NightUnderWay } from './night-under-way.ts';
import { promptNow } from './press-keys.ts';

export type Frame = {
	/** What keys and rows of this frame look at. */
	readonly now: KeyContext;
	readonly save: SaveStatus;
	readonly findings: readonly string[];
	readonly showChangedAtMs: number | null;
	readonly isRehearsal: boolean;
	readonly follows: ScreenState['follows'];
	readonly outsideTrouble?: string | null;
	/** What to add to UTC for the time of day where the show is. */
	readonly dayOffsetMinutes: number;
};

/** The state of the screen of the night under way. */
export function nightScreen(underWay: NightUnderWay, { now, ...frame }: Frame): ScreenState {
	const { past, session } = underWay;
	const { view, picked, message, noticesSeen, isDark, isLocked, narrowedTo } = underWay.look();
	return {
		...frame,
		session: session(),
		plan: now.plan,
		nowMs: now.nowMs,
		zeroMs: underWay.zeroMs(),
		view,
		picked,
		prompt: promptNow(underWay)?.view(now) ?? null,
		message: saidAt(message, showSeconds(now)),
		noticesSeen,
		standIns: Object.fromEntries(
			session()
				.show.players.filter(({ id }) => openBreakOf(session(), id) !== null)
				.map(({ id }) => [id, now.standInsFor(id)]),
		),
		isDark,
		isLocked,
		log: past.log,
		narrowedTo,
		takeableStep: takeableBack(past.timeline()),
		footer: isLocked ? unlockKeys(underWay) : footer(underWay, now),
		preferences: underWay.preferences.values(),
		help: ACTIONS.map(({ id, words }) => ({ key: keysOf(underWay, id), words })),
	};
}

function keysOf({ preferences }: NightUnderWay, action: string): string {
	return shownKeys(action, preferences.values().keys);
}

function footer(underWay: NightUnderWay, now: KeyContext): readonly KeyWords[] {
	return actionsIn(now.view).flatMap((action) => {
		const words = (action.whyNot?.(now) ?? null) === null ? (action.footer?.(now) ?? null) : null;
		return words === null ? [] : [{ key: keysOf(underWay, action.id), words }];
	});
}

/** The only keys that do anything while locked. */
function unlockKeys({ keyOf }: NightUnderWay): readonly KeyWords[] {
	return [
		{ key: keyOf('lock'), words: FOOTER.lockThen },
		{ key: 'esc', words: FOOTER.unlocks },
	];
}
