// Whether a night works, where it is tight, and what could be agreed with the band so that it does.

import { minutesSeconds } from '../base/duration.ts';
import type { Mend } from '../plan/advice/mend.ts';
import type { ChangeAsked, SongInSet } from '../plan/advice/show-changes.ts';
import type { TightPlace } from '../plan/advice/tight-places.ts';
import type { Verdict, Wrong } from '../plan/advice/verdict.ts';
import type { Work } from '../plan/plan.ts';
import { runningOrder } from '../showfile/running-order.ts';
import type { Show } from '../showfile/show.ts';
import { playerName, shownInstrument, songTitle } from '../showfile/shown-names.ts';
import { firstWithoutLength } from '../showfile/song-length.ts';
import { kindWords } from './kinds.ts';
import { laterWords } from './later-costs.ts';
import { expectedClock, handOverCount, leftWords } from './paper.ts';

/** `The show works. Tightest: before Lantern at 4:00, one hand-over, nothing left; one more is as tight.` */
export function verdictWords(show: Show, verdict: Verdict): string {
	if (verdict.works) {
		const { tightest, alike } = verdict;
		if (tightest === null) return 'The show works. Nothing is to be done between songs.';
		const more =
			alike === 0 ? '' : alike === 1 ? '; one more is as tight' : `; ${alike} more are as tight`;
		return `The show works. Tightest: ${placeWords(show, tightest)}${more}.`;
	}
	const wrong = verdict.wrong.map((one) => wrongWords(show, one)).join('; ');
	const mend = verdict.mend === null ? '' : ` ${mendWords(show, verdict.mend)}`;
	return `The show does not work: ${wrong}.${mend}`;
}

/** `before Lantern at 4:00, one hand-over, nothing left`; `retune 4 Anchor for Gravel, start by 6:45, 0:20 left`. */
export function placeWords(show: Show, place: TightPlace): string {
	const { section, spareSeconds, work, handOvers } = place;
	const title = songTitle(show, section.song);
	const playings = runningOrder(show).map((one) => ({ song: one.song.id, position: one.position }));
	const first = firstWithoutLength(show, playings);
	const isAbout = first !== null && section.position > first;
	const clock = (ms: number) => expectedClock(show, { seconds: ms / 1000, isAbout });
	if (work !== null) {
		const what = `${workWords(work, shownInstrument(show, work.instrument))} for ${title}`;
		// What is late whenever it is begun has no latest start.
		const startBy = work.slackSeconds < 0 ? [] : [`start by ${clock(work.beginByMs)}`];
		return [what, ...startBy, leftWords(spareSeconds)].join(', ');
	}
	const at = clock(section.startMs);
	return `before ${title} at ${at}, ${handOverCount(handOvers)}, ${leftWords(spareSeconds)}`;
}

function workWords({ job, capo }: Work, name: string): string {
	switch (job) {
		case 'touch-up':
			return `touch up ${name}`;
		case 'retune':
			return `retune ${name}`;
		case 'capo':
			return capo === 0 ? `take the capo off ${name}` : `put capo ${capo} on ${name}`;
		case 'restring':
			return `restring ${name}`;
	}
}

function wrongWords(show: Show, wrong: Wrong): string {
	switch (wrong.code) {
		case 'over-gap': {
			const gap = `gap ${minutesSeconds(wrong.gapSeconds)}`;
			const what = `before ${songTitle(show, wrong.song)}: ${handOverCount(wrong.handOvers)}, ${gap}`;
			return `${what}, ${leftWords(-wrong.overSeconds)}${moreWords(wrong)}`;
		}
		case 'late': {
			const short = `${minutesSeconds(wrong.shortSeconds)} short for ${songTitle(show, wrong.song)}`;
			return `${shownInstrument(show, wrong.instrument)} is ${short}${moreWords(wrong)}`;
		}
		default:
			return laterWords(show, wrong);
	}
}

function moreWords({ more }: { readonly more: number }): string {
	return more === 0 ? '' : `, and ${more} more`;
}

function mendWords(show: Show, { changes, isEachEnough, isMended }: Mend): string {
	const words = changes.map((change) => changeWords(show, change));
	const [first = ''] = words;
	if (words.length === 0) return 'No fix found.';
	if (words.length === 1) {
		return isMended ? `This fixes it: ${first}.` : `This helps, but is not enough: ${first}.`;
	}
	if (isEachEnough) return `Any one of these fixes it: ${words.join('; or ')}.`;
	const all = words.join('; and ');
	return isMended ? `Together these fix it: ${all}.` : `These help, but are not enough: ${all}.`;
}

/** What could be done, as it can be said to the band. */
export function changeWords(show: Show, change: ChangeAsked): string {
	switch (change.kind) {
		case 'gap':
			return gapWords(show, change);
		case 'retune':
			return `${shownInstrument(show, change.instrument)} in ${change.tuning} before the doors`;
		case 'exchange': {
			const tuning = change.tuning === null ? '' : ` in ${change.tuning}`;
			const capo = change.capo === 0 ? '' : ` with capo ${change.capo}`;
			return `${shownInstrument(show, change.instrument)}${tuning}${capo} for ${whoWords(show, change)}`;
		}
		case 'instrument': {
			const what = `${kindWords(change.like)} in ${change.tuning}`;
			return `one more ${what} for ${whoWords(show, change)}`;
		}
		case 'order': {
			const [one, other] = change.songs;
			return `swap ${titleWords(show, one)} and ${titleWords(show, other)}`;
		}
		case 'drop': {
			const length = change.seconds === null ? '' : ` (${minutesSeconds(change.seconds)})`;
			return `drop ${titleWords(show, change.song)}${length}`;
		}
	}
}

function gapWords(
	show: Show,
	{ song, seconds, after }: Extract<ChangeAsked, { kind: 'gap' }>,
): string {
	const title = titleWords(show, song);
	const long = minutesSeconds(seconds);
	if (after === null) return `${long} more before ${title}`;
	if (after === 'interval') return `${long} more of interval before ${title}`;
	return `${long} between ${titleWords(show, after)} and ${title}, no segue`;
}

function whoWords(show: Show, { player, song }: { player: string; song: string }): string {
	return `${playerName(show, player)} in ${songTitle(show, song)}`;
}

/** A song's title; of one that is played more than once, which time. */
function titleWords(show: Show, { song, time }: SongInSet): string {
	const title = songTitle(show, song);
	return time === null ? title : `${title} (the ${ORDINALS[time] ?? 'last'})`;
}

const ORDINALS = ['first', 'second', 'third', 'fourth'];
