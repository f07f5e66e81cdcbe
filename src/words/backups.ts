// Why a backup would do, in a few words; and what a choice costs later, a sentence each without a full stop.

import { minutesSeconds } from '../base/duration.ts';
import type { Later, StandInReason } from '../plan/plan.ts';
import type { Show } from '../showfile/show.ts';
import { playerName, songTitle } from '../showfile/shown-names.ts';
import { KINDS, type KindFamily } from '../tuning/kind.ts';

/** `same tuning, ready`. */
export function standInWords(show: Show, why: readonly StandInReason[]): string {
	return why.map((reason) => reasonWords(show, reason)).join(', ');
}

function reasonWords(show: Show, reason: StandInReason): string {
	switch (reason.code) {
		case 'in-hands':
			return 'already in hands';
		case 'same-tuning':
			return 'same tuning';
		case 'ready':
			return 'ready';
		case 'not-ready':
			return 'not ready';
		case 'stale':
			return 'RECHECK';
		case 'other-scale':
			return 'other scale';
		case 'has-strings':
			return `has the ${NUMBERS[reason.strings] ?? reason.strings} strings`;
		case 'sounds':
			return `sounds ${reason.tuning}`;
		case 'retune': {
			const capo = reason.capo === null ? '' : ` and ${capoWords(reason.capo)}`;
			return `retune${STRINGS[reason.change]}${capo}`;
		}
		case 'capo':
			return capoWords(reason.capo);
		case 'kind':
			return reason.kind.replace(/-\d+$/, '');
		case 'bridge':
			return `${reason.bridge} bridge`;
		case 'no-feature':
			return `no ${reason.feature}`;
		case 'meant-for':
			return `for ${reason.players.map((player) => playerName(show, player)).join(' and ')}`;
		case 'needed-by':
			return `${playerName(show, reason.player)} needs it`;
	}
}

const NUMBERS: Readonly<Record<number, string>> = { 4: 'four', 5: 'five' };

const STRINGS: Readonly<Record<Extract<StandInReason, { code: 'retune' }>['change'], string>> = {
	'one-string': ' one string',
	'two-strings': ' two strings',
	'all-same-interval': ' all strings',
	other: '',
};

function capoWords(capo: number): string {
	return capo === 0 ? 'capo off' : `capo ${capo}`;
}

/**
 * `Ash has nothing in Gravel and Pilot`. With the present show time in seconds what comes late is a
 * countdown, as live screens have it; without, it is on the show clock.
 */
export function laterWords(show: Show, later: Later, nowSeconds?: number): string {
	switch (later.code) {
		case 'missing':
			return `${playerName(show, later.player)} has nothing in ${titlesWords(show, later.songs)}`;
		case 'backup':
			return `${playerName(show, later.player)} on backup in ${titlesWords(show, later.songs)}`;
		case 'late': {
			const kind = show.instruments.find(({ id }) => id === later.instrument)?.kind ?? 'other';
			const capo = later.capo === 0 ? '' : ` with capo ${later.capo}`;
			const what = `${later.tuning} ${FAMILIES[KINDS[kind].family]}${capo}`;
			const title = songTitle(show, later.song);
			return `no ${what} for ${title} ${
				nowSeconds === undefined
					? `until ${minutesSeconds(later.inHandsSeconds)}`
					: `for ${minutesSeconds(Math.max(0, later.inHandsSeconds - nowSeconds))}`
			}`;
		}
		case 'tight-gap':
			return `the gap before ${songTitle(show, later.song)} is too short for the hand-over`;
		case 'short-curfew':
			return `the set ends ${minutesSeconds(later.overSeconds)} after the curfew`;
	}
}

const FAMILIES: Readonly<Record<KindFamily, string>> = {
	guitar: 'guitar',
	twelve: '12-string',
	baritone: 'baritone',
	bass: 'bass',
	mandolin: 'mandolin',
	ukulele: 'ukulele',
	banjo: 'banjo',
	other: 'instrument',
};

function titlesWords(show: Show, songs: readonly string[]): string {
	return listedWords(songs.map((song) => songTitle(show, song)));
}

/** `Gravel`, `Gravel and Pilot`, `Gravel and 3 more`. */
export function listedWords([first = '', ...more]: readonly string[]): string {
	if (more.length === 0) return first;
	return more.length === 1 ? `${first} and ${more[0]}` : `${first} and ${more.length} more`;
}
