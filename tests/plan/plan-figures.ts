// A plan's figures as short lines, so that a test reads as the technician would say it.

import { markText } from '../../src/base/show-clock.ts';
import type { Plan, PlannedHandOver, Work } from '../../src/plan/plan.ts';
import type { Show } from '../../src/showfile/show.ts';
import { warningText } from '../../src/words/warnings.ts';

/** Job, instrument and seconds, then the marks: wanted, finish, begin by; and the slack in seconds. */
export function workLines({ work }: Plan): readonly string[] {
	return work.map(workLine);
}

function workLine({ job, instrument, seconds, ...one }: Work): string {
	const marks = [one.wantedMs, one.finishMs, one.beginByMs].map((ms) => markText(ms).slice(1));
	const [wanted, finish, beginBy] = marks;
	return `${job} ${instrument} ${seconds} s, wanted ${wanted}, done ${finish}, slack ${one.slackSeconds}, begin by ${beginBy}`;
}

/** Whose hands change, before which song, from what to what. */
export function handOverLines({ handOvers }: Plan): readonly string[] {
	return handOvers.map(handOverLine);
}

function handOverLine({ section, player, from, instrument }: PlannedHandOver): string {
	return `${section.song}: ${player} ${from ?? 'nothing'} > ${instrument ?? 'nothing'}`;
}

export function warningLines({ warnings }: Plan, show: Show): readonly string[] {
	return warnings.map((one) => `${one.code}: ${warningText(show, one)}`);
}

/** What each slot of a song holds, `-` for nothing playable. */
export function slotLines({ slots }: Plan, song: string): readonly string[] {
	return slots
		.filter(({ section }) => section.song === song)
		.map(({ player, instrument, tuning, capo }) => {
			const fret = capo === 0 ? '' : ` capo ${capo}`;
			return `${player} ${instrument ?? '-'} ${tuning.name}${fret}`;
		});
}
