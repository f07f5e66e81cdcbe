// A show under way: session, journal and plan together, driven by keys. The live screen and a
// rehearsal script use it alike; they differ only in the clock and the journal they bring.

import type { Entry } from '../journal/entry.ts';
import type { SaveStatus } from '../journal/night-journal.ts';
import type { JournalRecord } from '../journal/record.ts';
import type { Plan } from '../plan/plan.ts';
import type { ScreenState } from '../screen/screen-state.ts';
import type { Session } from '../session/session.ts';
import { burstRefused, PASTE_REFUSED } from '../words/actions.ts';
import { draftKeeper, unkeptDrafts } from './draft-store.ts';
import { followAt } from './follow-outcome.ts';
import { nightContext } from './night-context.ts';
import { nightPlan } from './night-plan.ts';
import { nightScreen } from './night-screen.ts';
import { nightShow } from './night-show.ts';
import { nightState } from './night-state.ts';
import { nightSteps } from './night-steps.ts';
import { type NightOptions, nightUnderWay } from './night-under-way.ts';
import { pressedKeys } from './press-keys.ts';
import type { ShowFile } from './show-watch.ts';
import { type Submit, submitAt } from './submit.ts';

export type Night = {
	/** `atMs`: when it was pressed, on the hands' clock (`handMs`); now if left out. */
	readonly press: (key: string, atMs?: number) => void;
	readonly paste: (text: string) => void;
	/** So many keys at once, which no hand presses: they go into an open text field or nowhere. */
	readonly burst: (count: number, text?: string) => void;
	/** To be called at least once a second. */
	readonly tick: () => void;
	readonly nowMs: () => number;
	readonly session: () => Session;
	readonly plan: () => Plan;
	readonly records: () => readonly JournalRecord<Entry>[];
	readonly screen: () => ScreenState;
	/** What scripts read; see night-state.ts. */
	readonly state: () => Record<string, unknown>;
	/** Carries out a command that came from elsewhere than the keys; see submit.ts. */
	readonly submit: Submit;
	/** Tells what is switched outside how it is to be, after a resume. */
	readonly sendAgain: () => void;
	/** Looks after the show file from now on. */
	readonly watchShow: (file: ShowFile) => void;
	/** Calls back after every change; gives back how to stop. */
	readonly onChange: (listener: () => void) => () => void;
	readonly wantsToLeave: () => boolean;
	/** How saving stands; once closed, as it stood then. */
	readonly saveStatus: () => SaveStatus;
	readonly close: (limitMs?: number) => Promise<SaveStatus>;
};

/** A night going on from what its journal holds; a journal without records begins one. */
export function openNight(options: NightOptions): Night {
	const { journal, isRehearsal, dayOffsetMinutes } = options;
	const underWay = nightUnderWay(options);
	const planning = nightPlan(underWay);
	const file = nightShow(underWay, dayOffsetMinutes);
	const steps = nightSteps(underWay, planning, file);
	const measuredOn = options.measuredOn ?? (() => []);
	const foundBefore = options.foundBefore ?? (() => ({}));
	const looked = nightContext(underWay, { planning, nightShow: file, measuredOn, foundBefore });
	const follow = followAt(underWay, steps, looked);
	const keys = pressedKeys(underWay, { steps, looked, follow });
	const { clock, session, look, setLook, changed } = underWay;
	const keepDrafts = draftKeeper(options.drafts ?? unkeptDrafts(), look);

	/** Text for an open field; `otherwise` is said where there is none. */
	function type(text: string | undefined, otherwise: string): void {
		if (text === undefined || !keys.typeInto(text)) setLook({ message: otherwise });
		changed();
	}

	return {
		press: (key, atMs) => {
			const isTyping = look().open?.prompt.draft !== undefined;
			keys.press(key, atMs);
			// Entered or left: at once, so that what was entered does not come up again.
			if (isTyping && look().open === null) keepDrafts();
			changed();
		},
		paste: (text) => type(text, PASTE_REFUSED),
		burst: (count, text) => type(text, burstRefused(count)),
		tick: () => {
			keys.closeIfOverdue();
			// A rehearsal's clock runs as fast as it likes; what it does is no news.
			const noticed = isRehearsal ? [] : clock.notice();
			if (noticed.length > 0) underWay.record(noticed);
			journal.tick(options.clock.upMs());
			keepDrafts();
			file.sayWhenChanged();
			changed();
		},
		nowMs: clock.nowMs,
		session,
		plan: planning.plan,
		records: () => journal.records() as readonly JournalRecord<Entry>[],
		screen: () =>
			nightScreen(underWay, {
				now: looked.context(),
				save: journal.status(),
				findings: options.findings ?? [],
				showChangedAtMs: file.changedAtMs(),
				isRehearsal,
				follows: null,
				outsideTrouble: options.outsideTrouble?.() ?? null,
				dayOffsetMinutes,
			}),
		state: () => {
			// What scripts read is of this very moment, whatever was looked at before.
			const now = looked.context(0);
			const save = journal.status();
			return nightState({
				session: session(),
				plan: now.plan,
				nowMs: now.nowMs,
				zeroMs: underWay.zeroMs(),
				isSaved: save.isSaved || save.state === 'memory',
				standInsFor: now.standInsFor,
			});
		},
		submit: submitAt(underWay, { steps, looked }),
		sendAgain: underWay.sendAgain,
		watchShow: (one) => {
			file.watch(one);
			changed();
		},
		onChange: underWay.onChange,
		wantsToLeave: () => look().isLeaving || session().phase.value === 'packed',
		saveStatus: () => journal.status(),
		close: (limitMs) =>
			journal.close(limitMs, session().phase.value === 'packed' ? 'over' : 'left'),
	};
}
