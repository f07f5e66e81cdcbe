// What a key's outcome does: a prompt opened, something said, a step recorded, another view.

import type { RecordId } from '../journal/record.ts';
import { NEW } from '../journal/record.ts';
import { ACTIONS } from '../keys/actions.ts';
import type { Outcome, Rang } from '../keys/key-context.ts';
import type { Preferences } from '../keys/preferences.ts';
import { openSetting, settingRows } from '../keys/settings.ts';
import { mostRigRows } from '../screen/rig-view.ts';
import { RING_NOT_KEPT } from '../words/feedback.ts';
import { notSaved } from '../words/settings.ts';
import { draftsAfter, faultsPutOff } from './look.ts';
import type { NightContext } from './night-context.ts';
import type { NightSteps } from './night-steps.ts';
import type { NightUnderWay } from './night-under-way.ts';

/** Does what an outcome says; `beganMs`: when the first of its keys was pressed. */
export type Follow = (outcome: Outcome, beganMs: number) => void;

/** How outcomes are followed in the night under way. */
export function followAt(underWay: NightUnderWay, steps: NightSteps, looked: NightContext): Follow {
	const { clock, session, look, setLook, preferences } = underWay;

	return function follow(outcome: Outcome, beganMs: number): void {
		const { open } = look();
		switch (outcome.kind) {
			case 'prompt':
				setLook({
					message: null,
					open: { prompt: outcome.prompt, beganMs, lastKeyMs: underWay.handMs() },
				});
				return;
			case 'say':
				setLook({
					message: outcome.words,
					open: open && { ...open, lastKeyMs: underWay.handMs() },
				});
				return;
			case 'pass':
				return;
			default:
				setLook({
					drafts: draftsAfter(look(), outcome.kind),
					// A page stays open while one goes through what it is about.
					open: outcome.kind === 'pick' && open?.prompt.isLasting ? open : null,
					message: null,
				});
		}
		switch (outcome.kind) {
			case 'command': {
				if (outcome.command.do === 'report-break') setLook({ deferred: faultsPutOff(underWay) });
				const recorded = steps.run(outcome.command, outcome.isStampedNow ? clock.nowMs() : beganMs);
				if (outcome.says !== undefined) setLook({ message: look().message ?? outcome.says });
				if (outcome.keeps && recorded !== null) keep(outcome.keeps, recorded);
				if (outcome.follows !== undefined) {
					const key = outcome.follows === NEW ? recorded : outcome.follows;
					setLook({ picked: rowInList(key) ?? look().picked });
				}
				return;
			}
			case 'view': {
				const coming = outcome.view === 'list' ? rowInList(session().next) : null;
				const isLookedAt = outcome.view === 'warnings' || look().view === 'warnings';
				setLook({
					view: outcome.view,
					picked: coming ?? 0,
					narrowedTo: '',
					...(isLookedAt && { noticesSeen: underWay.noticeCount() }),
				});
				return;
			}
			case 'pick':
				setLook({ picked: pickedAfter(outcome.by) });
				return;
			case 'open-setting':
				follow(openSetting(looked.context()), beganMs);
				return;
			case 'narrow':
				setLook({ narrowedTo: outcome.words, picked: 0 });
				return;
			case 'prefer':
				if (outcome.command) steps.run(outcome.command, clock.nowMs());
				prefer(outcome.changes, outcome.words);
				return;
			case 'take-back':
				steps.takeBack();
				return;
			case 'put-back':
				steps.putBack();
				return;
			case 'dark':
				setLook({ isDark: !look().isDark });
				return;
			case 'lock':
				setLook({ isLocked: true, unlockFromMs: null });
				return;
			case 'send-boards':
				underWay.sendAgain();
				return;
			case 'leave':
				setLook({ isLeaving: true });
				return;
			case 'decide-later':
				setLook({ deferred: [...look().deferred, outcome.of] });
				return;
		}
	};

	/** The night has it already; whether the gear journal does is said where it does not. */
	function keep(rang: Rang, of: RecordId): void {
		underWay.sayTrouble(underWay.keepRinging(rang, of), RING_NOT_KEPT);
	}

	function prefer(changes: Partial<Preferences>, words: string): void {
		underWay.sayTrouble(preferences.change(changes), notSaved(words));
		setLook({ message: words });
	}

	/** The row that an item has in the list view. */
	function rowInList(key: string | null): number | null {
		const row = session().list.findIndex((item) => item.key === key);
		return row < 0 ? null : row;
	}

	/** The row picked after a move; it stays on the list that is shown. */
	function pickedAfter(by: number): number {
		return Math.min(Math.max(0, look().picked + by), Math.max(0, rowCount() - 1));
	}

	/** The rows of the list that is shown; only the log view reads the whole log for it. */
	function rowCount(): number {
		switch (look().view) {
			case 'rack':
				return session().show.instruments.length;
			case 'list':
				return session().list.length;
			case 'log':
				return looked.shownLog().length;
			case 'warnings':
				// Three more: what is wrong with keeping the night, where it is, and what boards hang on.
				return underWay.noticeCount() + 3 + looked.context().plan.warnings.length;
			case 'help':
				return ACTIONS.length;
			case 'settings':
				return settingRows({ preferences: preferences.values(), show: session().show }).length;
			case 'rig':
				return mostRigRows(session().show);
			case 'stage':
			case 'far':
				return 1;
		}
	}
}
