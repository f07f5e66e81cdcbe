// A night under way in another copy of the program, shown here and not touched: its records are read as they
// come, and no key here writes any.

import { dayTimeText } from '../base/show-clock.ts';
import type { FollowedLook, FollowedNight } from '../journal/followed-night.ts';
import type { SaveStatus } from '../journal/night-journal.ts';
import type { Action } from '../keys/action.ts';
import type { KeyContext, Outcome } from '../keys/key-context.ts';
import { openPicked } from '../keys/open-picked.ts';
import type { ScreenState } from '../screen/screen-state.ts';
import { openSession } from '../session/open-session.ts';
import { burstRefused, FOOTER, PASTE_REFUSED } from '../words/actions.ts';
import {
	FAR,
	goneInShort,
	goneWords,
	HIDES,
	LEAVES,
	movedWords,
	ONLY_FOLLOWS,
	SHOW_IS_CLOSED,
} from '../words/follow.ts';
import { nightFindingWords } from '../words/night-file.ts';
import { followAt } from './follow-outcome.ts';
import { firstLook } from './look.ts';
import type { Night } from './night.ts';
import { goOn, type LastKnown, type NightClock } from './night-clock.ts';
import { nightContext } from './night-context.ts';
import { openPast } from './night-past.ts';
import { nightPlan } from './night-plan.ts';
import { nightScreen } from './night-screen.ts';
import type { NightSteps } from './night-steps.ts';
import { type NightOptions, nightShown } from './night-under-way.ts';
import { outcomeOfAction, pressedKeys } from './press-keys.ts';

export type FollowOptions = Pick<
	NightOptions,
	| 'show'
	| 'clock'
	| 'plannedZeroMs'
	| 'dayOffsetMinutes'
	| 'isRehearsal'
	| 'handMs'
	| 'preferences'
	| 'measuredOn'
> & {
	readonly files: FollowedNight;
	/** What is there of it when the window opens. */
	readonly first: Extract<FollowedLook, { kind: 'read' }>;
	/** What was found on opening its files, a sentence each. */
	readonly findings: readonly string[];
};

export type FollowWindow = Pick<
	Night,
	'press' | 'paste' | 'burst' | 'tick' | 'session' | 'plan' | 'screen' | 'onChange' | 'wantsToLeave'
> & {
	/** Takes in what came since; to be called a few times a second. */
	readonly look: () => void;
};

/** Clocks of two machines that are no further apart are left so: a step takes some of it to be read. */
const APART_MS = 1000;

/** What changes nothing but what this window shows. */
const LOOKS: ReadonlySet<string> = new Set([
	'view',
	'live',
	'help',
	'warnings',
	'pick-up',
	'pick-down',
	'narrow',
	'dark',
]);

/** What follows a night from now on; it shows the view to be read from afar first. */
export function followedNight(options: FollowOptions): FollowWindow {
	const { files, first, isRehearsal, dayOffsetMinutes } = options;
	const opening = openSession(options.show);
	let past = openPast(opening, first.journal);
	let clock = goOn(options.clock, past.lastKnown());
	let lastUpMs = past.lastKnown()?.upMs ?? null;
	let { file, elsewhere, wipedHome } = first;
	let gone: { readonly words: string; readonly short: string } | null = null;
	const findings = [...options.findings];

	const shown = nightShown({
		...options,
		past: {
			timeline: () => past.timeline(),
			session: () => past.session(),
			isGapBefore: () => past.isGapBefore(),
			take: (record) => past.take(record),
			lastKnown: () => past.lastKnown(),
			log: { [Symbol.iterator]: () => past.log[Symbol.iterator]() },
		},
		clock: {
			nowMs: () => clock.nowMs(),
			reading: () => clock.reading(),
			notice: () => [],
		},
		first: { ...firstLook(options.findings[0] ?? null, {}), view: 'far' },
		noticeCount: () => findings.length,
		unsavedSteps: () => 0,
		record: () => {
			throw new TypeError('a night that is followed takes no records');
		},
		sendAgain: () => {},
	});
	const { session, setLook, changed } = shown;
	const steps = refusedSteps(() => setLook({ message: ONLY_FOLLOWS }));
	const planning = nightPlan(shown);
	const measuredOn = options.measuredOn ?? (() => []);
	const looked = nightContext(shown, {
		planning,
		nightShow: { read: () => null },
		measuredOn,
		foundBefore: () => ({}),
	});
	const follow = followAt(shown, steps, looked);
	const keys = pressedKeys(shown, { steps, looked, follow, outcomeOf });

	/** As a resume goes on; by the clock of another machine from the moment at which something new was read. */
	function clockAfter(known: LastKnown | null): NightClock {
		const { bootId, upMs } = options.clock;
		const isNews = known !== null && known.upMs !== lastUpMs;
		lastUpMs = known?.upMs ?? null;
		if (known?.started == null) return clock;
		const isOurs = known.started.boot === bootId && upMs() >= known.upMs;
		if (isOurs) return goOn(options.clock, known);
		const then = known.started.anchorMs + known.upMs;
		if (!isNews || Math.abs(clock.nowMs() - then) < APART_MS) return clock;
		const started = { boot: bootId, anchorMs: then - upMs() };
		return goOn(options.clock, { ...known, upMs: upMs(), started });
	}

	function take(found: FollowedLook): void {
		if (found.kind !== 'read') {
			const at = dayTimeText(past.lastKnown()?.atMs ?? clock.nowMs(), dayOffsetMinutes);
			gone = { words: goneWords(found, at), short: goneInShort(found, at) };
			return;
		}
		gone = null;
		past = openPast(opening, found.journal);
		clock = clockAfter(past.lastKnown());
		if (found.file !== file) findings.push(movedWords(found.file));
		({ file, elsewhere, wipedHome } = found);
		const said = found.findings.map(nightFindingWords);
		findings.push(...said.filter((one) => !findings.includes(one)));
	}

	function trouble(): NonNullable<ScreenState['follows']>['trouble'] {
		if (gone !== null) return { ...gone, isEnd: false };
		const isClosed = session().phase.value === 'packed';
		return isClosed ? { words: SHOW_IS_CLOSED, short: SHOW_IS_CLOSED, isEnd: true } : null;
	}

	function type(text: string | undefined, otherwise: string): void {
		if (text === undefined || !keys.typeInto(text)) setLook({ message: otherwise });
		changed();
	}

	return {
		press: (key, atMs) => {
			keys.press(key, atMs);
			changed();
		},
		paste: (text) => type(text, PASTE_REFUSED),
		burst: (count, text) => type(text, burstRefused(count)),
		tick: () => {
			keys.closeIfOverdue();
			changed();
		},
		look: () => {
			const found = files();
			if (found === null) return;
			take(found);
			changed();
		},
		session,
		plan: planning.plan,
		screen: () =>
			asFollowed(
				nightScreen(shown, {
					now: looked.context(),
					save: savedElsewhere({ elsewhere, wipedHome }),
					findings,
					showChangedAtMs: null,
					isRehearsal,
					follows: { trouble: trouble() },
					dayOffsetMinutes,
				}),
				shown.look().open !== null,
			),
		onChange: shown.onChange,
		wantsToLeave: () => shown.look().isLeaving,
	};
}

/** What looks does what it does, with the view from afar in place of the stage view; all else is refused. */
function outcomeOf(action: Action, now: KeyContext): Outcome {
	if (action.id === 'leave') return { kind: 'leave' };
	const isOpening = action.id === 'hand-over' && openPicked(now) !== null;
	if (!isOpening && !LOOKS.has(action.id)) return { kind: 'say', words: ONLY_FOLLOWS };
	const outcome = outcomeOfAction(action, now);
	const isHome = outcome.kind === 'view' && outcome.view === 'stage' && action.id !== 'view';
	return isHome ? { kind: 'view', view: 'far' } : outcome;
}

function refusedSteps(refuse: () => void): NightSteps {
	return {
		run: () => {
			refuse();
			return null;
		},
		takeBack: refuse,
		putBack: refuse,
		begin: () => {},
		undoLast: () => {},
	};
}

/** How saving stands in the other window only that one knows; where the files are is seen. */
function savedElsewhere(place: Pick<SaveStatus, 'elsewhere' | 'wipedHome'>): SaveStatus {
	return {
		state: 'saved',
		isSaved: true,
		savedSeq: 0,
		lastSeq: 0,
		problem: null,
		...place,
		sinceUpMs: null,
		warnings: [],
	};
}

/** The screen with the keys of this window alone. */
function asFollowed(shown: ScreenState, isOwnPrompt: boolean): ScreenState {
	// No step is taken back here.
	const state = { ...shown, takeableStep: null };
	const { prompt, view } = state;
	const footer = [
		{ key: 'tab', words: FOOTER.nextView },
		...(view === 'far' ? [] : [{ key: 'esc', words: FAR }]),
		{ key: 'z', words: FOOTER.dark },
		{ key: 'q', words: LEAVES },
		{ key: '?', words: FOOTER.all },
	];
	if (prompt === null || isOwnPrompt) return { ...state, footer };
	// Backups are answered in the other window. From afar the first of them has its card, as large as can be;
	// in the other views they can be put aside.
	const choices = [{ key: 'esc', words: HIDES }, ...footer.filter(({ key }) => key !== 'esc')];
	return { ...state, footer, prompt: view === 'far' ? null : { ...prompt, choices } };
}
