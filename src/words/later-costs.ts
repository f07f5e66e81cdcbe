// What a choice costs later, a sentence each without a full stop.

import { minutesSeconds } from '../base/duration.ts';
import type { Later } from '../plan/plan.ts';
import type { Show } from '../showfile/show.ts';
import { playerName, songTitle } from '../showfile/shown-names.ts';
import type { InstrumentKind } from '../tuning/kind.ts';
import { tuningCalled } from '../tuning/tuning.ts';
import { familyWords } from './kinds.ts';
import { paperClock } from './paper.ts';
import { shortTuning } from './tuning-names.ts';

/**
 * `Ash has nothing in Gravel and Pilot`. With the present show time in seconds what comes late is a
 * countdown, as live screens have it; without, it stands on paper.
 */
export function laterWords(
	show: Show,
	later: Later,
	{ nowSeconds }: { readonly nowSeconds?: number } = {},
): string {
	switch (later.code) {
		case 'missing':
			return `${playerName(show, later.player)} has nothing in ${titlesWords(show, later.songs)}`;
		case 'backup':
			return `${playerName(show, later.player)} plays a backup in ${titlesWords(show, later.songs)}`;
		case 'late': {
			const title = songTitle(show, later.song);
			const when =
				nowSeconds === undefined
					? `until ${paperClock(show, later.inHandsSeconds)}`
					: lateFor(later, nowSeconds);
			return `no ${lateWhat(show, later, later.tuning)} for ${title} ${when}`;
		}
		case 'tight-gap':
			return `the gap before ${songTitle(show, later.song)} is too short for the hand-over`;
		case 'short-curfew':
			return `the set ends ${minutesSeconds(later.overSeconds)} after the curfew`;
		case 'unknown':
			return 'cost not known';
	}
}

/**
 * The same for a line with little room, of which the end is cut: the song comes first, `player`, whom all is about, is
 * left out, and a tuning is short. `Gravel has no DD guitar for 9:43`.
 */
export function laterInShort(
	show: Show,
	later: Later,
	{ nowSeconds, player }: { readonly nowSeconds: number; readonly player: string },
): string {
	switch (later.code) {
		case 'backup': {
			const who = later.player === player ? '' : `${playerName(show, later.player)} `;
			return `${who}needs backup in ${titlesWords(show, later.songs)}`;
		}
		case 'late': {
			const what = lateWhat(show, later, shortName(show, later));
			return `${songTitle(show, later.song)} has no ${what} ${lateFor(later, nowSeconds)}`;
		}
		case 'tight-gap':
			return `gap before ${songTitle(show, later.song)} too short`;
		case 'missing':
		case 'short-curfew':
		case 'unknown':
			return laterWords(show, later);
	}
}

type Late = Extract<Later, { code: 'late' }>;

/** `drop D guitar with capo 2`. */
function lateWhat(show: Show, late: Late, tuning: string): string {
	const capo = late.capo === 0 ? '' : ` with capo ${late.capo}`;
	return `${tuning} ${familyWords(kindOf(show, late))}${capo}`;
}

function lateFor({ inHandsSeconds }: Late, nowSeconds: number): string {
	return `for ${minutesSeconds(Math.max(0, inHandsSeconds - nowSeconds))}`;
}

function kindOf(show: Show, { instrument }: Late): InstrumentKind {
	return show.instruments.find(({ id }) => id === instrument)?.kind ?? 'other';
}

/** As the show and the trade write it in short; what no name is known for as it is. */
function shortName(show: Show, late: Late): string {
	const known = tuningCalled(late.tuning, kindOf(show, late));
	return known === null ? late.tuning : shortTuning(show, known);
}

function titlesWords(show: Show, songs: readonly string[]): string {
	return listedWords(songs.map((song) => songTitle(show, song)));
}

/** `Gravel`, `Gravel, Pilot and the interval`. */
export function allWords(names: readonly string[]): string {
	const rest = names.slice(0, -1);
	return [...(rest.length === 0 ? [] : [rest.join(', ')]), ...names.slice(-1)].join(' and ');
}

/** `Gravel`, `Gravel and Pilot`, `Gravel and 3 more`. */
export function listedWords([first = '', ...more]: readonly string[]): string {
	if (more.length === 0) return first;
	return more.length === 1 ? `${first} and ${more[0]}` : `${first} and ${more.length} more`;
}
