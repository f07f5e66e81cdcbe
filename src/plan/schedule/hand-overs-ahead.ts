// Every change of hands still to be made, with the moment at which those of one section begin.

import type { NightMs } from '../../journal/entry.ts';
import { instrumentById } from '../demand/instrument-by-id.ts';
import type { Outlook } from '../demand/outlook.ts';
import type { PlannedHandOver, Section } from '../plan.ts';
import type { Choice } from './choice.ts';
import { whichFit } from './fit.ts';

/**
 * The hand-overs in order of time, then of the file's players. Those of one section fill their seconds
 * just before it, never reaching into the song before; taking away without giving takes none.
 *
 * @example
 * handOversAhead(outlook, choices).map(({ player, instrument }) => [player, instrument]) // => [['ash', 'A1'], ['bo', 'B1'], ['ash', 'A4'], ['ash', 'A1'], ['bo', null]]
 */
export function handOversAhead(
	{ show, sections, nowMs }: Outlook,
	choices: readonly Choice[],
): readonly PlannedHandOver[] {
	const instruments = instrumentById(show);
	const open = choices.filter((choice) => isChangeOfHands(choice, choices));
	return sections.flatMap((section) => {
		const ofSection = open.filter((choice) => choice.section === section);
		const seconds = ofSection.map(({ after }) =>
			after === null ? 0 : (instruments.get(after.instrument)?.times.handOver ?? 0),
		);
		const inAll = seconds.reduce((sum, one) => sum + one, 0);
		// In a song that is on, what is still open is wanted now.
		const wantedMs = section.hasBegun ? nowMs : beginningMs(section, inAll);
		const fits = whichFit(seconds, section.hasBegun ? null : section.gapSeconds);
		return ofSection.map(
			({ player, before, after, leave, pack, for: named }, index): PlannedHandOver => ({
				section,
				player,
				from: before?.instrument ?? null,
				instrument: after?.instrument ?? null,
				for: after === null ? null : named,
				tuning: after?.tuning ?? null,
				capo: after?.capo ?? 0,
				seconds: seconds[index] ?? 0,
				wantedMs,
				fits: fits[index] ?? true,
				leave: after === null ? null : leave,
				pack: after === null ? null : pack,
			}),
		);
	});
}

/**
 * When hand-overs of so many seconds begin, to be done as the section begins. Only a cue's may reach
 * into the song, which is its own.
 *
 * @example
 * beginningMs({ ...section, point: 0, startMs: 480000, previousEndMs: 465000 }, 37) // => 465000
 */
export function beginningMs(section: Section, seconds: number): NightMs {
	const earliest = section.point === 0 ? section.previousEndMs : null;
	return Math.max(section.startMs - seconds * 1000, earliest ?? Number.NEGATIVE_INFINITY);
}

/**
 * Given, exchanged or taken away. Where nothing can be had, nothing is taken either, unless somebody
 * else is to have it.
 */
function isChangeOfHands(choice: Choice, choices: readonly Choice[]): boolean {
	const { section, player, before, after, isMissing, goesOn, isSettled } = choice;
	if (goesOn || (before === null && after === null)) return false;
	if (!isSettled && !isMissing) return true;
	return choices.some(
		(one) =>
			one.section === section &&
			one.player !== player &&
			before !== null &&
			one.after?.instrument === before.instrument,
	);
}
