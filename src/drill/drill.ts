// A drill: the show runs fast up to a moment, the moment happens, and the seconds are counted until the night
// holds the right answer. Each moment stands by itself: the show goes as planned up to it.

import type { Night } from '../night/night.ts';
import type { Band } from '../screen/screen-state.ts';
import { songTitle } from '../showfile/shown-names.ts';
import { DRILL, type DrillKind } from '../words/drill.ts';
import type { Lead } from './led-night.ts';
import { type DrillMoment, LEAD_SPEED, LIMIT_SECONDS } from './moment.ts';
import { openTrial, type TrialOptions, type TrialPlace } from './trial-night.ts';

export type DrillResult = {
	readonly kind: DrillKind;
	/** From when it happened to the right answer, to 0.1; null where it did not come in time. */
	readonly seconds: number | null;
};

export type DrillParts = {
	readonly options: TrialOptions;
	/** At least one. */
	readonly moments: readonly DrillMoment[];
	/** The person's fastest answer to such a moment before this drill; null for none. */
	readonly bestOf: (kind: DrillKind) => number | null;
	/** Told each result as it comes. */
	readonly onResult: (result: DrillResult) => void;
};

/** Where a moment stands: looked on to, asked since then, or done. */
type State =
	| { readonly at: 'lead' | 'asked'; readonly sinceMs: number }
	| { readonly at: 'done'; readonly words: string };

/** Who leads through these moments. */
export function drill({ options, moments, bestOf, onResult }: DrillParts): Lead {
	const { handMs, show } = options;
	const bests = new Map<DrillKind, number | null>();
	let number = 1;
	let isOver = false;
	let moment = momentAt(number);
	let night = opened(moment.lead, LEAD_SPEED);
	let state: State = { at: 'lead', sinceMs: handMs() };

	function momentAt(place: number): DrillMoment {
		const found = moments[place - 1];
		if (found === undefined) throw new RangeError('no such moment');
		return found;
	}

	function opened(place: TrialPlace, speed: number): Night {
		const trial = openTrial(options, place);
		trial.clock.run(speed);
		return trial.night;
	}

	const leadMs = () => (moment.strike.atMs - moment.lead.atMs) / LEAD_SPEED;
	const best = () => bests.get(moment.kind) ?? bestOf(moment.kind);

	function done(seconds: number | null): void {
		const fastest = best();
		state = {
			at: 'done',
			words: seconds === null ? DRILL.missed(moment.words.right) : DRILL.answered(seconds, fastest),
		};
		if (seconds !== null) bests.set(moment.kind, Math.min(seconds, fastest ?? seconds));
		onResult({ kind: moment.kind, seconds });
	}

	/** As often as it takes: the time of one step may have gone by while another was looked at. */
	function look(): void {
		if (state.at === 'done') return;
		const passedMs = handMs() - state.sinceMs;
		if (state.at === 'lead') {
			if (passedMs < leadMs()) return;
			// Whatever was done while one looked on is not of this night.
			night = opened(moment.strike, 1);
			state = { at: 'asked', sinceMs: handMs() };
			return;
		}
		const isInTime = passedMs <= LIMIT_SECONDS * 1000;
		if (isInTime && moment.isAnswered(night.session())) done(Math.round(passedMs / 100) / 10);
		else if (!isInTime) done(null);
	}

	function band(): Band {
		const label = DRILL.label(number, moments.length);
		const hint = DRILL.leaves;
		if (state.at === 'done') {
			const goOn = number < moments.length ? DRILL.goOn : DRILL.ends;
			const under = [DRILL.byKeys(moment.keys), goOn].join('   ');
			return { label, hint, words: state.words, under };
		}
		if (state.at === 'lead') {
			const words = DRILL.looksOn(songTitle(show, moment.song));
			return { label, hint, words, under: DRILL.speed(LEAD_SPEED) };
		}
		const passed = Math.floor((handMs() - state.sinceMs) / 1000);
		const under = DRILL.running(passed, LIMIT_SECONDS, best());
		return { label, hint, words: moment.words.happens, under };
	}

	return {
		night: () => night,
		band,
		isWaiting: () => state.at === 'done',
		goOn: () => {
			if (number === moments.length) {
				isOver = true;
				return;
			}
			number += 1;
			moment = momentAt(number);
			night = opened(moment.lead, LEAD_SPEED);
			state = { at: 'lead', sinceMs: handMs() };
		},
		look,
		isOver: () => isOver,
	};
}
