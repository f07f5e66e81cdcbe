// Why something cannot be had, in a few words without a full stop.

import type { LeftOut, Unplayable } from '../plan/plan.ts';
import type { Show } from '../showfile/show.ts';
import { playerName, shownInstrument } from '../showfile/shown-names.ts';
import { type Call, onRack } from './call.ts';
import { familyWords, kindWords } from './kinds.ts';

/** `4 Anchor is out tonight`. */
export function unplayableWords(show: Show, why: Unplayable, call: Call = onRack(show)): string {
	switch (why.code) {
		case 'out':
			return `${call(why.instrument)} is out tonight`;
		case 'faulty':
			return `${call(why.instrument)} is faulty: ${why.fault}`;
		case 'string-down':
			return `${call(why.instrument)} has a string down`;
		case 'not-in-show':
			return `${call(why.instrument)} is not in this show`;
		case 'floating-bridge':
			return `${call(why.instrument)} has a floating bridge and is in ${why.tuning}`;
		case 'in-hands':
			return `${playerName(show, why.player)} has ${call(why.instrument)}`;
		case 'none-free':
			return `no ${kindWords(why.kind)} is free for ${why.sounds}`;
	}
}

/** More of them are counted instead. */
const MOST_LEFT_OUT = 3;

/** Why no backup fits, what is alike together: `Bo has 5 Birch; 8 Coal and F Third spare are strung for E standard`. */
export function leftOutWords(
	show: Show,
	leftOut: readonly LeftOut[],
	call: Call = onRack(show),
): string {
	const said = leftOut.slice(0, MOST_LEFT_OUT);
	const more = leftOut.length - said.length;
	const alike = Map.groupBy(said, (one, place) =>
		isStrung(one) ? `${one.code} ${one.tuning}` : place,
	);
	const reasons = [...alike.values()].map((some) => leftOutReason(show, some, call));
	return [...reasons, ...(more > 0 ? [`${more} more`] : [])].join('; ');
}

/** The first of them where room is short: `8 Coal: four strings`. */
export function leftOutInShort(show: Show, [first, ...more]: readonly LeftOut[]): string {
	if (first === undefined) return '';
	const count =
		first.code === 'other-strings'
			? show.instruments.find(({ id }) => id === first.instrument)?.tuning.notes.length
			: undefined;
	const reason =
		first.code === 'other-strings' && count !== undefined
			? `${shownInstrument(show, first.instrument)}: ${NUMBERS[count] ?? count} strings`
			: leftOutWords(show, [first]);
	return more.length === 0 ? reason : `${reason} (+${more.length})`;
}

const NUMBERS: Readonly<Record<number, string>> = {
	4: 'four',
	5: 'five',
	6: 'six',
	8: 'eight',
	12: 'twelve',
};

type Strung = Extract<LeftOut, { readonly code: 'too-heavy' | 'too-light' | 'other-strings' }>;

function isStrung(why: LeftOut): why is Strung {
	return why.code === 'too-heavy' || why.code === 'too-light' || why.code === 'other-strings';
}

/** Behind the tuning that it is strung for. */
const STRUNG: Readonly<Record<Strung['code'], string>> = {
	'too-heavy': ', too heavily',
	'too-light': ', too lightly',
	'other-strings': '',
};

/** Of one, or of several that are strung alike. */
function leftOutReason(show: Show, [why, ...alike]: readonly LeftOut[], call: Call): string {
	if (why === undefined) return '';
	if (isStrung(why)) {
		const names = [why, ...alike].filter(isStrung).map(({ instrument }) => call(instrument));
		return `${names.join(' and ')} ${names.length === 1 ? 'is' : 'are'} strung for ${why.tuning}${STRUNG[why.code]}`;
	}
	switch (why.code) {
		case 'no-other':
			return `there is no other ${familyWords(why.kind)}`;
		default:
			return unplayableWords(show, why, call);
	}
}
