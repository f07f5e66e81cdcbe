// One step of finding a fault, printed and as data.

import { minutesSeconds } from '../base/duration.ts';
import type { FaultCase } from '../rig/fault-suspects.ts';
import type { FaultAim, FaultStep } from '../rig/find-fault.ts';
import type { Show } from '../showfile/show.ts';
import { playerName } from '../showfile/shown-names.ts';
import {
	expectedWords,
	FAULT_PAGE,
	faultCautions,
	foundWords,
	percent,
	SYMPTOM_WORDS,
	suspectWords,
	testWords,
	whyWords,
} from '../words/fault.ts';
import { PAPER_COLUMNS, wrapped } from './paper.ts';

type Sought = { readonly about: FaultCase; readonly aim: FaultAim; readonly step: FaultStep };

/** Chances as computed; they add up to 1. */
export function faultJson(show: Show, { step }: Sought) {
	const { next, causes, expectedSeconds, found, isContradictory } = step;
	return {
		next:
			next === null
				? null
				: {
						test: next.id,
						seconds: next.seconds,
						why: whyWords(next, step),
						do: testWords(show, next, causes),
					},
		causes: byChance(step).map(({ suspect, chance }) => ({ part: suspect.id, chance })),
		expectedSeconds,
		found: found?.id ?? null,
		contradictory: isContradictory,
	};
}

/** Lines without their ends. */
export function faultLines(show: Show, { about, aim, step }: Sought): readonly string[] {
	const { next, causes, expectedSeconds, found, isContradictory } = step;
	const chance = causes.find(({ suspect }) => suspect.id === found?.id)?.chance ?? 0;
	const advice =
		found !== null
			? [`${FAULT_PAGE.found}  ${foundWords(show, found, chance)}`]
			: next === null
				? [FAULT_PAGE.nothing]
				: [
						`${FAULT_PAGE.next}  ${testWords(show, next, causes)}  (${next.id}: ${whyWords(next, step)})`,
						`      ${FAULT_PAGE.answers}`,
						`      ${expectedWords(minutesSeconds(expectedSeconds), aim)}`,
					];
	return [
		`${playerName(show, about.player)}: ${SYMPTOM_WORDS[about.symptom]}`,
		...(isContradictory ? wrapped(FAULT_PAGE.contradiction, PAPER_COLUMNS, '') : []),
		'',
		...advice,
		'',
		FAULT_PAGE.chances,
		...byChance(step).map(
			({ suspect, chance: one }) => `${percent(one).padStart(9)}  ${suspectWords(show, suspect)}`,
		),
		'',
		...(about.symptom === 'feedback' ? wrapped(FAULT_PAGE.feedback, PAPER_COLUMNS, '') : []),
		...faultCautions(about.symptom, causes).flatMap((line) => wrapped(line, PAPER_COLUMNS, '')),
	];
}

function byChance({ causes }: FaultStep): FaultStep['causes'] {
	return causes.toSorted((one, other) => other.chance - one.chance);
}
