// What keys and prompts may look at tonight, gathered when they look.

import type { KeyContext } from '../keys/key-context.ts';
import { isLookedFor } from '../keys/narrow-log.ts';
import { playOnCost, standInsWithCosts } from '../plan/backups/stand-in-costs.ts';
import { showSeconds } from '../plan/demand/sections-ahead.ts';
import type { Plan } from '../plan/plan.ts';
import type { WithoutClock } from '../plan/timed-choice/choose-without-clock.ts';
import { previewSong } from '../plan/what-if/change-preview.ts';
import { changeCost, plannedAt, type WhatIf, whatIf } from '../plan/what-if/what-if.ts';
import type { LogLine } from '../screen/screen-state.ts';
import type { JumpPlace } from '../session/command.ts';
import { nextSongItem } from '../session/find.ts';
import type { Session } from '../session/session.ts';
import { puttableBack, takeableBack } from '../session/timeline.ts';
import { costLines, jumpWords, skippedWords } from '../words/jump-words.ts';
import { refusalWords } from '../words/refusals.ts';
import { type NightPlan, SHOWN_MS } from './night-plan.ts';
import type { NightShow } from './night-show.ts';
import type { NightOptions, NightUnderWay } from './night-under-way.ts';

export type NightContext = {
	/** `olderMs`: how old the plan may be that keys and rows ask for; by default not quite a tick. */
	readonly context: (olderMs?: number) => KeyContext;
	/** The lines of the log view, newest first. */
	readonly shownLog: () => readonly LogLine[];
};

export type ContextParts = {
	readonly planning: NightPlan;
	readonly nightShow: Pick<NightShow, 'read'>;
	/** What was measured last on an instrument at the bench; null for never. */
	readonly measuredOn: KeyContext['measuredOn'];
	readonly foundBefore: NonNullable<NightOptions['foundBefore']>;
};

type Previewed = {
	readonly of: Session;
	readonly plan: Plan;
	readonly song: string;
	readonly place: JumpPlace;
	readonly changed: WhatIf;
	readonly known: WithoutClock;
};

/** The context of keys in the night under way. */
export function nightContext(underWay: NightUnderWay, parts: ContextParts): NightContext {
	const { past, clock, session, look, preferences } = underWay;
	const { planning, nightShow, measuredOn, foundBefore } = parts;

	function context(olderMs = SHOWN_MS): KeyContext {
		let made: Plan | null = null;
		const planHere = () => {
			made ??= planning.plan(olderMs);
			return made;
		};
		const { view, picked, narrowedTo, drafts } = look();
		return {
			session: session(),
			// Planning is most of what a key takes, and few keys ask for the plan; but many rows and keys of
			// one screen do, between which the clock goes on.
			get plan() {
				return planHere();
			},
			nowMs: clock.nowMs(),
			plannedZeroMs: underWay.plannedZeroMs(),
			view,
			unsavedSteps: underWay.unsavedSteps(),
			picked,
			canTakeBack: takeableBack(past.timeline()) !== null,
			canPutBack: puttableBack(past.timeline()) !== null,
			standInsFor: (player) => planning.weigh({ made: planHere(), player, of: standInsWithCosts }),
			playOnLater: (player) => planning.weigh({ made: planHere(), player, of: playOnCost }),
			measuredOn,
			foundBefore: (player) => foundBefore(session().show, player),
			readShow: nightShow.read(),
			narrowedTo,
			logWords: (row) => shownLog()[row]?.words ?? null,
			preferences: preferences.values(),
			keyOf: underWay.keyOf,
			draftOf: (id) => drafts[id] ?? '',
			previewOf,
		};
	}

	/** The night with this song as the next; the same as long as the plan on the screen is. */
	let previewed: Previewed | null = null;
	function nextChanged(song: string, place: JumpPlace): WhatIf {
		const plan = planning.plan(SHOWN_MS);
		const now = planning.moment();
		const isIt =
			previewed?.of === now.session && previewed.song === song && previewed.place === place;
		const before = isIt ? previewed : null;
		if (before?.plan === plan) return before.changed;
		const known = before?.known ?? new Map();
		// While it is looked at only the clock goes on: it leads to the same night.
		const changed = before?.changed.ok
			? { ok: true as const, ...plannedAt(now, before.changed.session, known) }
			: whatIf(now, { do: 'choose-next', song, place }, known);
		previewed = { of: now.session, plan, song, place, changed, known };
		return changed;
	}

	/** What changes if this song becomes the next, and what that costs the songs after it. */
	function previewOf(song: string, place: JumpPlace): readonly string[] {
		const now = planning.moment();
		const changed = nextChanged(song, place);
		if (!changed.ok) return [refusalWords(now.session.show, changed.why)];
		const called = nextSongItem(changed.session);
		const preview = called && previewSong(now, changed, called.key);
		return [
			...skippedWords(session(), changed.session),
			...jumpWords(preview, { session: changed.session, nowMs: now.nowMs }),
			...costLines(
				session().show,
				changeCost({ ...now, plan: planning.plan(SHOWN_MS) }, changed, called?.key),
				showSeconds(now),
			),
		];
	}

	function shownLog(): readonly LogLine[] {
		return [...past.log].filter(({ words }) => isLookedFor(words, look().narrowedTo));
	}

	return { context, shownLog };
}
