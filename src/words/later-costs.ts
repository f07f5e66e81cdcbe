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
 * countdown, as live screens have it; without, it stands on paper. Of `player`, whom all is about, a backup is said
 * without the name, and a tuning in short: that is a line with little room.
 */
export function laterWords(
	show: Show,
	later: Later,
	{ nowSeconds, player }: { readonly nowSeconds?: number; readonly player?: string } = {},
): string {
	switch (later.code) {
		case 'missing':
			return `${playerName(show, later.player)} has nothing in ${titlesWords(show, later.songs)}`;
		case 'backup': {
			const songs = titlesWords(show, later.songs);
			if (later.player === player) return `needs backup in ${songs}`;
			return `${playerName(show, later.player)} plays a backup in ${songs}`;
		}
		case 'late': {
			const kind = show.instruments.find(({ id }) => id === later.instrument)?.kind ?? 'other';
			const capo = later.capo === 0 ? '' : ` with capo ${later.capo}`;
			const tuning = player === undefined ? later.tuning : shortName(show, later.tuning, kind);
			const what = `${tuning} ${familyWords(kind)}${capo}`;
			const title = songTitle(show, later.song);
			return `no ${what} for ${title} ${
				nowSeconds === undefined
					? `until ${paperClock(show, later.inHandsSeconds)}`
					: `for ${minutesSeconds(Math.max(0, later.inHandsSeconds - nowSeconds))}`
			}`;
		}
		case 'tight-gap':
			return `the gap before ${songTitle(show, later.song)} is too short for the hand-over`;
		case 'short-curfew':
			return `the set ends ${minutesSeconds(later.overSeconds)} after the curfew`;
		case 'unknown':
			return 'cost not known';
	}
}

/** As the show and the trade write it in short; what no name is known for as it is. */
function shortName(show: Show, name: string, kind: InstrumentKind): string {
	const known = tuningCalled(name, kind);
	return known === null ? name : shortTuning(show, known);
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
