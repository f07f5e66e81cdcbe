// A plan as one JSON document: for scripts, and for tests from outside.

import { markText, tenths } from '../base/show-clock.ts';
import type { NightMs } from '../journal/entry.ts';
import { slotStandIns } from '../plan/backups/slot-stand-ins.ts';
import type { Budget } from '../plan/choice/beam-search.ts';
import type { Plan, Slot, Warning, Work } from '../plan/plan.ts';
import { readyAtZero } from '../plan/timed-choice/before-doors.ts';
import { offsetCents } from '../showfile/instrument-strings.ts';
import type { Show } from '../showfile/show.ts';
import { standInWords } from '../words/backup-reasons.ts';
import { laterWords } from '../words/later-costs.ts';
import { warningText } from '../words/warnings.ts';

/**
 * A plan made before the doors as the document that `plan --json` prints. Moments are marks on the show
 * clock, whose zero is the first song's start, cut to the second; seconds are numbers to a tenth.
 */
export function planJson(plan: Plan, show: Show, from?: Budget) {
	const { isProved, bound, cost, slots, work, warnings } = plan;
	return {
		proved: isProved,
		bound: bound === null ? null : { ...bound, lateness: tenths(bound.lateness) },
		cost: { ...cost, lateness: tenths(cost.lateness) },
		slots: slots.map((slot) => slotJson(slot, show)),
		work: work.map((one) => workJson(one, 0)),
		standIns: slotStandIns(readyAtZero(show), {
			plan,
			costs: 'handful',
			...(from === undefined ? {} : { from }),
		}).flatMap(({ slot, standIns }) =>
			standIns.map(({ instrument, readyInSeconds, why, later }) => ({
				song: slot.section.song,
				position: slot.section.position,
				point: slot.section.point,
				player: slot.player,
				for: slot.instrument ?? slot.named,
				instrument,
				readyIn: tenths(readyInSeconds),
				why: standInWords(show, why),
				reasons: why,
				later: later.map((cost) => laterWords(show, cost)),
				costs: later,
			})),
		),
		warnings: warnings.map((one) => warningJson(one, show)),
	};
}

/** A warning as scripts read it: its code with what it is about, and the sentence with instruments by id. */
export function warningJson(warning: Warning, show: Show) {
	return { ...warning, text: warningText(show, warning) };
}

/**
 * One slot. `at` tells apart the slots of a song that hands an instrument over at a cue: the cue point
 * at which it begins, 0 for the song's start.
 */
function slotJson(slot: Slot, show: Show) {
	const { section, player, instrument, tuning, capo, isHandOver } = slot;
	return {
		song: section.song,
		position: section.position,
		point: section.point,
		player,
		instrument,
		for: slot.for,
		tuning: tuning.name,
		pitches: tuning.notes,
		...slotOffsets(slot, show),
		capo,
		handOver: isHandOver,
	};
}

/** Cents off equal temperament, one a pitch; nothing where all stand on it. */
function slotOffsets(
	{ instrument: id, tuning, player }: Slot,
	show: Show,
): { readonly cents?: readonly number[] } {
	const instrument = show.instruments.find((one) => one.id === id);
	const cents = instrument ? offsetCents(show, { instrument, tuning, player }) : [];
	return cents.some((one) => one !== 0) ? { cents } : {};
}

/**
 * One piece of work, its moments as marks counted from `zeroMs`.
 */
function workJson(work: Work, zeroMs: NightMs) {
	const markOf = (ms: NightMs): string => markText(ms - zeroMs);
	return {
		job: work.job,
		instrument: work.instrument,
		player: work.player,
		song: work.section.song,
		to: work.to.name,
		capo: work.capo,
		seconds: tenths(work.seconds),
		from: markOf(work.fromMs),
		wanted: markOf(work.wantedMs),
		start: markOf(work.startMs),
		finish: markOf(work.finishMs),
		slack: tenths(work.slackSeconds),
		beginBy: markOf(work.beginByMs),
	};
}
