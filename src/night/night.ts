// A show under way: session, journal and plan together, driven by keys. The live screen and a
// rehearsal script use it alike; they differ only in the clock and the journal they bring.

import { cleanText } from '../base/clean-text.ts';
import { graphemes } from '../base/display-width.ts';
import type { MachineClock } from '../base/machine-clock.ts';
import type { Entry } from '../journal/entry.ts';
import type { GearEntry } from '../journal/gear-entry.ts';
import type { NightJournal, SaveStatus } from '../journal/night-journal.ts';
import type { JournalRecord } from '../journal/record.ts';
import { ACTIONS, actionOf, actionsIn } from '../keys/actions.ts';
import { costLines, jumpWords, passedOverWords } from '../keys/jump-words.ts';
import { keyOfAction } from '../keys/key-choices.ts';
import type { KeyContext, Outcome, Prompt, ViewName } from '../keys/key-context.ts';
import { isLookedFor } from '../keys/narrow-log.ts';
import type { Preferences } from '../keys/preferences.ts';
import type { KeyWords } from '../keys/prompt-view.ts';
import { judgePress, NO_PRESSES } from '../keys/repeats.ts';
import { openSetting, settingRows } from '../keys/settings.ts';
import { standInPrompt } from '../keys/stand-in-prompt.ts';
import { previewJump } from '../plan/change-preview.ts';
import { makePlan } from '../plan/make-plan.ts';
import type { Plan } from '../plan/plan.ts';
import { type CostsAsked, playOnCost, standInsWithCosts } from '../plan/stand-in-costs.ts';
import { changeCost, whatIf } from '../plan/what-if.ts';
import type { LogLine, ScreenState } from '../screen/screen-state.ts';
import type { Command } from '../session/command.ts';
import { decide } from '../session/decide.ts';
import { openBreak } from '../session/find.ts';
import { openSession } from '../session/open-session.ts';
import type { Session } from '../session/session.ts';
import { sharedPacks } from '../session/shared-packs.ts';
import { puttableBack, takeableBack } from '../session/timeline.ts';
import { warmthWords } from '../session/warmth-words.ts';
import type { Show } from '../showfile/show.ts';
import type { ShowReading } from '../showfile/show-from-files.ts';
import { exchangeWords } from './exchange-words.ts';
import { goOn } from './night-clock.ts';
import { openPast } from './night-past.ts';
import { nightState } from './night-state.ts';
import { movedZero } from './planned-zero.ts';
import { type PreferenceStore, unkeptPreferences } from './preference-store.ts';
import { changedWords, createShowWatch, type ShowFile } from './show-watch.ts';

/** A prompt closes by itself after this long without a key. */
const PROMPT_MS = 5000;
/** While a text is typed, a plan this old still does: each letter would make it anew. */
const TYPING_MS = 1000;
/** Between l and esc when unlocking. */
const UNLOCK_MS = 2000;

export type NightOptions = {
	readonly show: Show;
	readonly journal: NightJournal;
	readonly clock: MachineClock;
	/** When the first song is meant to start. */
	readonly plannedZeroMs: number;
	/** What to add to UTC for the time of day where the show is. */
	readonly dayOffsetMinutes: number;
	readonly isRehearsal: boolean;
	/** Milliseconds that the hand at the keys lives by, where the clock runs faster than it. */
	readonly handMs?: () => number;
	/** What the user prefers; by default what is usual, for as long as the program runs. */
	readonly preferences?: PreferenceStore;
	/** What was measured last on an instrument at the bench, whatever show; null for never. */
	readonly measuredOn?: (instrument: string) => GearEntry | null;
	/** Sentences about what was found on opening the journal, to be shown first. */
	readonly findings?: readonly string[];
};

export type Night = {
	readonly press: (key: string) => void;
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
	/** Marks everything on the rack ready as it stands, whatever the phase. */
	readonly makeAllReady: () => void;
	/** Looks after the show file from now on. */
	readonly watchShow: (file: ShowFile) => void;
	/** Calls back after every change; gives back how to stop. */
	readonly onChange: (listener: () => void) => () => void;
	readonly wantsToLeave: () => boolean;
	readonly close: () => Promise<SaveStatus>;
};

/** What the last press that counted did, so that it can be undone when it was the beginning of a repeat. */
type Effect = {
	readonly look: Look;
	readonly recorded: number | null;
	readonly tookBack: number | null;
	readonly putBack: number | null;
};

type OpenPrompt = { readonly prompt: Prompt; readonly beganMs: number; readonly lastKeyMs: number };

/** What ways out of a break come to. */
type Weigher<Answer> = (asked: CostsAsked) => Answer;

type Weighed<Answer> = {
	readonly made: Plan;
	readonly player: string;
	readonly of: Weigher<Answer>;
};

/** All that a night shows and does not record. */
type Look = {
	readonly view: ViewName;
	readonly picked: number;
	/** The words that the log view is narrowed to. */
	readonly narrowedTo: string;
	readonly open: OpenPrompt | null;
	readonly message: string | null;
	readonly isDark: boolean;
	readonly isLocked: boolean;
	readonly unlockFromMs: number | null;
	/** Breaks whose answer was put off. */
	readonly deferred: readonly number[];
	readonly isLeaving: boolean;
	/** What was typed into fields that were left before they were entered, by the prompt's own name. */
	readonly drafts: Readonly<Record<string, string>>;
};

/** A night going on from what its journal holds; a journal without records begins one. */
export function openNight(options: NightOptions): Night {
	const { show, journal } = options;
	const past = openPast(openSession(show), journal);
	const { session } = past;
	const known = past.lastKnown();
	const clock = goOn(options.clock, known);
	const handMs = options.handMs ?? clock.nowMs;
	let presses = NO_PRESSES;
	let effect: Effect | null = null;
	let planned: { session: Session; nowMs: number; plan: Plan } | null = null;
	let weighed: { plan: Plan; known: Map<Weigher<unknown>, Map<string, unknown>> } | null = null;
	const listeners = new Set<() => void>();
	const preferences = options.preferences ?? unkeptPreferences();
	let look: Look = {
		view: 'live',
		picked: 0,
		narrowedTo: '',
		open: null,
		message: options.findings?.[0] ?? null,
		isDark: false,
		isLocked: false,
		unlockFromMs: null,
		deferred: [],
		isLeaving: false,
		drafts: {},
	};

	const plannedZeroMs = () => movedZero(options.plannedZeroMs, show, session().show);
	const showWatch = createShowWatch(goesBy);
	/** The change of the show file that was said already. */
	let saidChangeMs: number | null = null;

	const keyNameOf = (id: string) => keyOfAction(id, preferences.values().keys);
	const changed = () => {
		for (const listener of listeners) listener();
	};
	const record = (entries: readonly Entry[]): number => {
		const kept = journal.append(entries, clock.moment()) as JournalRecord<Entry>;
		past.take(kept);
		return kept.s;
	};

	if (known) {
		const seconds = Math.max(0, (clock.nowMs() - known.atMs) / 1000);
		record([
			{ k: 'resumed', at: clock.nowMs(), seconds: Math.round(seconds), boot: options.clock.bootId },
		]);
	} else {
		record([{ k: 'night-opened', at: clock.nowMs(), boot: options.clock.bootId }]);
	}

	/** The plan as of now, or one of this session that is at most so much older. */
	function plan(olderMs = 0): Plan {
		const nowMs = clock.nowMs();
		if (planned?.session !== session() || nowMs - planned.nowMs > olderMs) {
			// Of the journal and the time alone: a plan kept only here would be another one after a restart.
			const moment = { session: session(), nowMs, plannedZeroMs: plannedZeroMs() };
			planned = { session: session(), nowMs, plan: makePlan(moment) };
		}
		return planned.plan;
	}

	/** Asked for by several rows and keys of one screen, and each answer takes a handful of plans. */
	function weigh<Answer>(asked: Weighed<Answer>): Answer {
		const { made, player, of } = asked;
		if (weighed?.plan !== made) weighed = { plan: made, known: new Map() };
		const byPlayer = weighed.known.get(of) ?? new Map<string, unknown>();
		weighed.known.set(of, byPlayer);
		if (byPlayer.has(player)) return byPlayer.get(player) as Answer;
		const nowMs = planned?.nowMs ?? clock.nowMs();
		const moment = { session: session(), nowMs, plannedZeroMs: plannedZeroMs() };
		const answer = of({ ...moment, plan: made, player });
		byPlayer.set(player, answer);
		return answer;
	}

	/** `olderMs`: how old the plan may be that keys and rows ask for. */
	function context(olderMs = look.open?.prompt.isText ? TYPING_MS : 0): KeyContext {
		let made: Plan | null = null;
		const planHere = () => {
			made ??= plan(olderMs);
			return made;
		};
		return {
			session: session(),
			// Planning is most of what a key takes, and few keys ask for the plan; but many rows and keys of
			// one screen do, between which the clock goes on.
			get plan() {
				return planHere();
			},
			nowMs: clock.nowMs(),
			plannedZeroMs: plannedZeroMs(),
			view: look.view,
			picked: look.picked,
			canTakeBack: takeableBack(past.timeline()) !== null,
			canPutBack: puttableBack(past.timeline()) !== null,
			standInsFor: (player) => weigh({ made: planHere(), player, of: standInsWithCosts }),
			playOnLater: (player) => weigh({ made: planHere(), player, of: playOnCost }),
			measuredOn: options.measuredOn ?? (() => null),
			readShow: showWatch.read && readShow,
			narrowedTo: look.narrowedTo,
			logWords: (row) => shownLog()[row]?.words ?? null,
			preferences: preferences.values(),
			keyOf: keyNameOf,
			draftOf: (id) => look.drafts[id] ?? '',
			previewOf,
		};
	}

	/** What changes if this song becomes the next, and what that costs the songs after it. */
	function previewOf(song: string): readonly string[] {
		const now = { session: session(), nowMs: clock.nowMs(), plannedZeroMs: plannedZeroMs() };
		const changed = whatIf(now, { do: 'choose-next', song });
		const preview = previewJump({ ...now, song });
		return [
			...passedOverWords(session(), preview),
			...jumpWords(preview, { session: session(), zeroMs: zeroMs() }),
			...(changed.ok ? costLines(changeCost({ ...now, plan: plan(TYPING_MS) }, changed)) : []),
		];
	}

	/** The show file as it is now; one that says what the night goes by is not news any more. */
	function readShow(): ShowReading {
		const reading = showWatch.read?.() ?? { show: null, problems: [] };
		if (reading.show !== null && goesBy(reading.show)) showWatch.goesByIt(session().show);
		return reading;
	}

	function goesBy(read: Show): boolean {
		return !decide(session(), { do: 'read-show-again', show: read }, clock.nowMs()).ok;
	}

	/** Looks after the show file, and says once that it has changed, as soon as there is room to say it. */
	function sayWhenChanged(): void {
		showWatch.look();
		const atMs = showWatch.changedAtMs(session().show);
		if (atMs === null || atMs === saidChangeMs || look.message !== null || look.open) return;
		saidChangeMs = atMs;
		const key = keyNameOf('read-show');
		look = { ...look, message: changedWords(atMs, options.dayOffsetMinutes, key) };
	}

	/** The prompt in force: the one opened, else the stand-ins of a break that waits for its answer. */
	function promptNow(): Prompt | null {
		if (look.open) return look.open.prompt;
		const open = openBreak(session());
		return open && !look.deferred.includes(open.id) ? standInPrompt() : null;
	}

	function run(command: Command, atMs: number): void {
		const decision = decide(session(), command, atMs);
		if (!decision.ok) {
			look = { ...look, message: decision.why };
			return;
		}
		const before = session();
		const sharedBefore = sharedPacks(before).map(({ words }) => words);
		const planBefore = command.do === 'exchange' ? plan() : null;
		const recorded = record(decision.entries);
		if (command.do === 'read-show-again') showWatch.goesByIt(session().show);
		effect = effect && { ...effect, recorded };
		const noticed =
			command.do === 'exchange' && planBefore !== null
				? exchangeWords({
						player: command.player,
						session: session(),
						zeroMs: zeroMs(),
						before: planBefore,
						after: plan(),
					})
				: command.do === 'doubt-all'
					? warmthWords(before, command.celsius)
					: null;
		const shared = sharedPacks(session()).find(({ words }) => !sharedBefore.includes(words));
		look = { ...look, message: noticed ?? (shared ? `${shared.words}.` : null) };
	}

	function takeBack(): void {
		const of = takeableBack(past.timeline());
		if (of === null) return;
		record([{ k: 'taken-back', at: clock.nowMs(), of }]);
		effect = effect && { ...effect, tookBack: of };
		look = { ...look, deferred: [], message: null };
	}

	function putBack(): void {
		const of = puttableBack(past.timeline());
		if (of === null) return;
		record([{ k: 'put-back', at: clock.nowMs(), of }]);
		effect = effect && { ...effect, putBack: of };
	}

	function follow(outcome: Outcome, beganMs: number): void {
		const nowMs = clock.nowMs();
		switch (outcome.kind) {
			case 'prompt':
				look = {
					...look,
					message: null,
					open: { prompt: outcome.prompt, beganMs, lastKeyMs: handMs() },
				};
				return;
			case 'say':
				look = {
					...look,
					message: outcome.words,
					open: look.open && { ...look.open, lastKeyMs: handMs() },
				};
				return;
			case 'pass':
				return;
			default:
				look = {
					...look,
					...leaving(outcome.kind),
					// A page stays open while one goes through what it is about.
					open: outcome.kind === 'pick' && look.open?.prompt.isLasting ? look.open : null,
					message: null,
				};
		}
		switch (outcome.kind) {
			case 'command':
				if (outcome.command.do === 'report-break') look = { ...look, deferred: [] };
				run(outcome.command, outcome.isStampedNow ? nowMs : beganMs);
				if (outcome.follows !== undefined) {
					look = { ...look, picked: rowInSet(outcome.follows) ?? look.picked };
				}
				return;
			case 'view': {
				const coming = outcome.view === 'set' ? rowInSet(session().next) : null;
				look = { ...look, view: outcome.view, picked: coming ?? 0, narrowedTo: '' };
				return;
			}
			case 'pick':
				look = { ...look, picked: pickedAfter(outcome.by) };
				return;
			case 'open-setting':
				follow(openSetting(context()), beganMs);
				return;
			case 'narrow':
				look = { ...look, narrowedTo: outcome.words, picked: 0 };
				return;
			case 'prefer':
				prefer(outcome.changes, outcome.words);
				return;
			case 'take-back':
				takeBack();
				return;
			case 'put-back':
				putBack();
				return;
			case 'dark':
				look = { ...look, isDark: !look.isDark };
				return;
			case 'lock':
				look = { ...look, isLocked: true, unlockFromMs: null };
				return;
			case 'leave':
				look = { ...look, isLeaving: true };
				return;
			case 'decide-later': {
				const open = openBreak(session());
				look = { ...look, deferred: open ? [...look.deferred, open.id] : look.deferred };
				return;
			}
		}
	}

	/** The lines of the log view, newest first. */
	function shownLog(): readonly LogLine[] {
		return [...past.log].filter(({ words }) => isLookedFor(words, look.narrowedTo));
	}

	function prefer(changes: Partial<Preferences>, words: string): void {
		const say = (message: string) => {
			look = { ...look, message };
			changed();
		};
		preferences.change(changes).then(
			(trouble) => trouble !== null && say(trouble),
			() => say(`${words} It could not be kept.`),
		);
		look = { ...look, message: words };
	}

	/** What is kept of a field that is left, and no longer once it was entered. */
	function leaving(by: Outcome['kind']): Pick<Look, 'drafts'> {
		const draft = look.open?.prompt.draft;
		if (draft === undefined) return { drafts: look.drafts };
		const { [draft.id]: _, ...others } = look.drafts;
		const isKept = by === 'close' && draft.text !== '';
		return { drafts: isKept ? { ...others, [draft.id]: draft.text } : others };
	}

	/** The row that an item has in the set view. */
	function rowInSet(key: string | null): number | null {
		const row = session().list.findIndex((item) => item.key === key);
		return row < 0 ? null : row;
	}

	/** The row picked after a move; it stays on the list that is shown. */
	function pickedAfter(by: number): number {
		return Math.min(Math.max(0, look.picked + by), Math.max(0, rowCount() - 1));
	}

	/** The rows of the list that is shown; only the log view reads the whole log for it. */
	function rowCount(): number {
		switch (look.view) {
			case 'rack':
				return session().show.instruments.length;
			case 'set':
				return session().list.length;
			case 'log':
				return shownLog().length;
			case 'help':
				return ACTIONS.length;
			case 'settings':
				return settingRows(preferences.values()).length;
			case 'live':
				return 1;
		}
	}

	/** While locked, l then esc within two seconds is the only way out. */
	function pressLocked(key: string): void {
		const nowMs = handMs();
		const isUnlocking = look.unlockFromMs !== null && nowMs - look.unlockFromMs <= UNLOCK_MS;
		if (key === 'esc' && isUnlocking)
			look = { ...look, isLocked: false, unlockFromMs: null, message: null };
		else {
			const isFirst = actionOf(key, preferences.values().keys)?.id === 'lock';
			look = {
				...look,
				unlockFromMs: isFirst ? nowMs : null,
				message: isFirst
					? 'Esc within 2 s unlocks.'
					: `Locked: ${keyNameOf('lock')}, then esc within 2 s unlocks.`,
			};
		}
	}

	function pressAction(key: string): void {
		const action = actionOf(key, preferences.values().keys);
		if (look.isDark && !action?.isForDark) return;
		if (action === null) {
			look = { ...look, message: `${key} does nothing here; ${keyNameOf('help')} shows all keys.` };
			return;
		}
		// A break that was put off is taken up again by the key that reported it.
		if (action.id === 'break' && openBreak(session())) {
			look = { ...look, deferred: [], open: null, message: null };
			return;
		}
		const now = context();
		const why = action.whyNot(now);
		follow(why === null ? action.act(now) : { kind: 'say', words: why }, clock.nowMs());
	}

	function closeIfOverdue(): void {
		const { open } = look;
		if (
			open &&
			!open.prompt.isText &&
			!open.prompt.isLasting &&
			handMs() - open.lastKeyMs >= PROMPT_MS
		) {
			look = { ...look, open: null, message: null };
		}
	}

	function pressCounted(key: string): void {
		if (look.isLocked) {
			pressLocked(key);
			return;
		}
		const prompt = look.isDark ? null : promptNow();
		if (prompt === null) {
			pressAction(key);
			return;
		}
		const beganMs = look.open?.beganMs ?? clock.nowMs();
		const outcome = prompt.press(key, context());
		if (outcome.kind !== 'pass') {
			follow(outcome, beganMs);
			return;
		}
		look = { ...look, open: null };
		pressAction(key);
	}

	function undoLastEffect(): void {
		if (!effect) return;
		const { look: lookBefore, recorded, tookBack, putBack: putBackSeq } = effect;
		const at = clock.nowMs();
		if (recorded !== null) record([{ k: 'taken-back', at, of: recorded }]);
		if (tookBack !== null) record([{ k: 'put-back', at, of: tookBack }]);
		if (putBackSeq !== null) record([{ k: 'taken-back', at, of: putBackSeq }]);
		look = lookBefore;
		effect = null;
	}

	function press(key: string): void {
		closeIfOverdue();
		const isInList = look.open === null || look.open.prompt.isList === true;
		const isGoingOn = isInList && actionOf(key, preferences.values().keys)?.isEachCounted === true;
		if (!look.isLocked && (look.open?.prompt.isText || isGoingOn)) {
			pressCounted(key);
			changed();
			return;
		}
		const judged = judgePress(presses, key, handMs());
		presses = judged.presses;
		if (judged.verdict === 'count') {
			effect = { look, recorded: null, tookBack: null, putBack: null };
			pressCounted(key);
		} else if (judged.verdict === 'take-back') undoLastEffect();
		changed();
	}

	/** Puts text into the open text field, if there is one. */
	function typeInto(text: string): boolean {
		closeIfOverdue();
		if (!look.open?.prompt.isText || look.isLocked) return false;
		for (const letter of graphemes(cleanText(text)))
			pressCounted(letter === ' ' ? 'space' : letter);
		return true;
	}

	const zeroMs = () => session().zeroAtMs ?? plannedZeroMs();

	return {
		press,
		paste: (text) => {
			if (!typeInto(text)) {
				look = { ...look, message: 'Pasted text goes only into text fields; nothing was done.' };
			}
			changed();
		},
		burst: (count, text) => {
			if (text === undefined || !typeInto(text)) {
				look = { ...look, message: `${count} keys came at once and were ignored.` };
			}
			changed();
		},
		tick: () => {
			closeIfOverdue();
			// A rehearsal's clock runs as fast as it likes; what it does is no news.
			const noticed = options.isRehearsal ? [] : clock.notice();
			if (noticed.length > 0) record(noticed);
			journal.tick(options.clock.upMs());
			sayWhenChanged();
			changed();
		},
		nowMs: clock.nowMs,
		session,
		plan,
		records: () => journal.records() as readonly JournalRecord<Entry>[],
		screen: () => {
			const now = context();
			const open = openBreak(session());
			return {
				session: session(),
				plan: now.plan,
				nowMs: now.nowMs,
				zeroMs: zeroMs(),
				dayOffsetMinutes: options.dayOffsetMinutes,
				view: look.view,
				picked: look.picked,
				prompt: promptNow()?.view(now) ?? null,
				message: look.message,
				standIns: open?.player ? { [open.player]: now.standInsFor(open.player) } : {},
				save: journal.status(),
				isDark: look.isDark,
				isLocked: look.isLocked,
				isRehearsal: options.isRehearsal,
				log: past.log,
				narrowedTo: look.narrowedTo,
				showChangedAtMs: showWatch.changedAtMs(session().show),
				takeableStep: takeableBack(past.timeline()),
				footer: look.isLocked ? unlockKeys() : footer(now),
				preferences: preferences.values(),
				help: ACTIONS.map((action) => ({ key: keyNameOf(action.id), words: action.words })),
			};
		},
		state: () => {
			// What scripts read is of this very moment, whatever was looked at before.
			const now = context(0);
			return nightState({
				session: session(),
				plan: now.plan,
				nowMs: now.nowMs,
				zeroMs: zeroMs(),
				isSaved: journal.status().isSaved || journal.status().state === 'memory',
				standInsFor: now.standInsFor,
			});
		},
		makeAllReady: () => {
			run({ do: 'make-all-ready' }, clock.nowMs());
			changed();
		},
		watchShow: (file) => {
			showWatch.watch(file);
			changed();
		},
		onChange: (listener) => {
			listeners.add(listener);
			return () => listeners.delete(listener);
		},
		wantsToLeave: () => look.isLeaving || session().phase.value === 'packed',
		close: () => journal.close(),
	};

	function footer(now: KeyContext): readonly KeyWords[] {
		return actionsIn(now.view).flatMap((action) => {
			const words = action.whyNot(now) === null ? action.footer(now) : null;
			return words === null ? [] : [{ key: keyNameOf(action.id), words }];
		});
	}

	/** The only keys that do anything while locked. */
	function unlockKeys(): readonly KeyWords[] {
		return [
			{ key: keyNameOf('lock'), words: 'then' },
			{ key: 'esc', words: 'within 2 s unlocks' },
		];
	}
}
