// Why a backup would do, in a few words.

import type { StandIn, StandInReason } from '../plan/plan.ts';
import type { Show } from '../showfile/show.ts';
import { playerName } from '../showfile/shown-names.ts';

/** `same tuning, ready`. */
export function standInWords(show: Show, why: readonly StandInReason[]): string {
	return why.map((reason) => reasonWords(show, reason)).join(', ');
}

/** Why it would do, but its capo, which is said beside its tuning. */
export function whyBesideCapo({
	why,
	capo,
}: Pick<StandIn, 'why' | 'capo'>): readonly StandInReason[] {
	return why.filter((one) => one.code !== 'capo' || one.capo !== capo || capo === 0);
}

/** In what it is other than what it stands in for: seen only once it is in hands, so it is said first. */
const DIFFERENCES: ReadonlySet<StandInReason['code']> = new Set([
	'bridge',
	'has-strings',
	'kind',
	'no-feature',
	'other-scale',
]);

/** The same in two: in what it differs, `floating bridge`, and the rest, `same tuning, ready`; empty for nothing. */
export function differenceAndRest(
	show: Show,
	why: readonly StandInReason[],
): { readonly difference: string; readonly rest: string } {
	const differs = ({ code }: StandInReason) => DIFFERENCES.has(code);
	return {
		difference: standInWords(show, why.filter(differs)),
		rest: standInWords(
			show,
			why.filter((one) => !differs(one)),
		),
	};
}

/** Both in one: `floating bridge, same tuning, ready`. */
export function differenceFirst(show: Show, why: readonly StandInReason[]): string {
	const { difference, rest } = differenceAndRest(show, why);
	return [difference, rest].filter((one) => one !== '').join(', ');
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
			return `all ${NUMBERS[reason.strings] ?? reason.strings} strings`;
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
