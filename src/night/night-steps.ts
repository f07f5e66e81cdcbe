// What is recorded at the keys: commands carried out, steps taken back and put back, and the last press
// undone when it turns out to have been the beginning of a key held down.

import type { RecordId } from '../journal/record.ts';
import { packWarnings, suspectWarnings } from '../plan/warnings/warnings.ts';
import type { LogLine } from '../screen/screen-state.ts';
import type { Command } from '../session/command.ts';
import { decide } from '../session/decide.ts';
import { holderOf } from '../session/find.ts';
import type { Session } from '../session/session.ts';
import { puttableBack, takeableBack } from '../session/timeline.ts';
import { warmedRack } from '../session/warmth.ts';
import { UNDONE_WITH_GAP, undoneWords } from '../words/actions.ts';
import { asSentence } from '../words/as-sentence.ts';
import { exchangeWords } from '../words/exchange-words.ts';
import { RING_NOT_KEPT } from '../words/feedback.ts';
import { refusalWords } from '../words/refusals.ts';
import { driftWords } from '../words/warmth.ts';
import { warningWords } from '../words/warnings.ts';
import { faultsPutOff, type Look } from './look.ts';
import { FRAME_MS, type NightPlan, SHOWN_MS } from './night-plan.ts';
import type { NightShow } from './night-show.ts';
import type { NightUnderWay } from './night-under-way.ts';

export type NightSteps = {
	/** Carries out a command, stamped with this moment, and says what is to be noticed; or says why it cannot be. Gives its record; null where there is none. */
	readonly run: (command: Command, atMs: number) => RecordId | null;
	readonly takeBack: () => void;
	readonly putBack: () => void;
	/** A press that counts begins: what it does from here on is what `undoLast` undoes. */
	readonly begin: () => void;
	readonly undoLast: () => void;
};

/** What the last press that counted did. */
type Effect = {
	readonly look: Look;
	readonly recorded: RecordId | null;
	readonly tookBack: RecordId | null;
	readonly putBack: RecordId | null;
};

/** Two players on one pack, and packs that are suspect, a sentence each. */
function packSentences(session: Session): readonly string[] {
	return [...packWarnings(session), ...suspectWarnings(session)].map((one) =>
		asSentence(warningWords(session.show, one)),
	);
}

/** The steps recorded in the night under way. */
export function nightSteps(
	underWay: NightUnderWay,
	planning: NightPlan,
	nightShow: NightShow,
): NightSteps {
	const { past, clock, session, record, look, setLook } = underWay;
	let effect: Effect | null = null;

	function run(command: Command, atMs: number): RecordId | null {
		const decision = decide(session(), command, atMs);
		if (!decision.ok) {
			setLook({ message: refusalWords(session().show, decision.why) });
			return null;
		}
		const before = session();
		const packsBefore = packSentences(before);
		// What an exchange costs is held against no older one: work late only by waiting is not put down to it.
		const planBefore = command.do === 'exchange' ? planning.plan(SHOWN_MS) : null;
		const recorded = planning.recordStep(decision.entries);
		if (command.do === 'read-show-again') nightShow.goesByIt();
		effect = effect && { ...effect, recorded };
		const noticed =
			command.do === 'exchange' && planBefore !== null
				? exchangeWords({
						player: command.player,
						takenFrom: command.instrument === null ? null : holderOf(before, command.instrument),
						session: session(),
						zeroMs: underWay.zeroMs(),
						before: planBefore,
						after: planning.plan(FRAME_MS),
					})
				: command.do === 'doubt-all'
					? driftWords(before.show, warmedRack(before, command.celsius))
					: null;
		const ofPacks = packSentences(session()).find((words) => !packsBefore.includes(words));
		setLook({ message: noticed ?? ofPacks ?? null });
		return recorded;
	}

	/** What was kept beside the night goes and comes with its step. */
	function alsoInGear(of: RecordId, isBack: boolean): void {
		underWay.sayTrouble(underWay.ringingUndone(of, isBack), RING_NOT_KEPT);
	}

	function takeBack(): void {
		const of = takeableBack(past.timeline());
		if (of === null) return;
		const isGap = past.isGapBefore();
		const undone = linesOf(past.log, of);
		record([{ k: 'taken-back', at: clock.nowMs(), of }]);
		alsoInGear(of, false);
		effect = effect && { ...effect, tookBack: of };
		setLook({
			deferred: faultsPutOff(underWay),
			message: isGap ? UNDONE_WITH_GAP : undoneWords(undone, underWay.keyOf('put-back')),
		});
	}

	function putBack(): void {
		const of = puttableBack(past.timeline());
		if (of === null) return;
		record([{ k: 'put-back', at: clock.nowMs(), of }]);
		alsoInGear(of, true);
		effect = effect && { ...effect, putBack: of };
	}

	function undoLast(): void {
		if (!effect) return;
		const { look: lookBefore, recorded, tookBack, putBack: putBackSeq } = effect;
		const at = clock.nowMs();
		for (const seq of [recorded, putBackSeq].filter((one) => one !== null)) {
			record([{ k: 'taken-back', at, of: seq }]);
			alsoInGear(seq, false);
		}
		if (tookBack !== null) {
			record([{ k: 'put-back', at, of: tookBack }]);
			alsoInGear(tookBack, true);
		}
		setLook(lookBefore);
		effect = null;
	}

	return {
		run,
		takeBack,
		putBack,
		begin: () => {
			effect = { look: look(), recorded: null, tookBack: null, putBack: null };
		},
		undoLast,
	};
}

/** What a step that stands did, in its order. */
function linesOf(log: Iterable<LogLine>, step: RecordId): readonly string[] {
	const lines: string[] = [];
	for (const line of log) {
		if (line.step === step) lines.unshift(line.words);
		else if (lines.length > 0) break;
	}
	return lines;
}
