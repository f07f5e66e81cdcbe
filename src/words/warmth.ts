// What a stage's temperature and damp do to the rack, said to whoever stands at it.

import type { StageDrift, TunedAt } from '../session/warmth.ts';
import type { Drifted } from '../showfile/finding.ts';
import type { Show } from '../showfile/show.ts';
import { seenCents } from '../tuning/warmth.ts';
import { type Call, onRack } from './call.ts';

/** More names than these are not read in the dark. */
const MOST_NAMED = 3;

/** Which to touch first and how far they are likely to be out, in one sentence; null for none. */
export function driftWords(
	show: Show,
	drifted: readonly Drifted[],
	call: Call = onRack(show),
): string | null {
	const named = drifted.slice(0, MOST_NAMED);
	const [first] = named;
	if (first === undefined) return null;
	const isAlike = named.every(({ kelvins }) => kelvins === first.kelvins);
	const words = named.map((one, index) => {
		const change = isAlike ? '' : `${one.kelvins > 0 ? '+' : ''}${one.kelvins} °C, `;
		const out = isAlike && index > 0 ? `${rangeWords(one.cents)} c` : centsWords(one.cents);
		return `${call(one.instrument)} (${change}string ${one.string}, ${out})`;
	});
	const since = isAlike ? changeWords(first.kelvins) : 'since each was ready';
	return `${since}: touch first ${words.join(', ')}.`;
}

const SINCE: Readonly<Record<TunedAt['since'], (celsius: number) => string>> = {
	ready: (celsius) => `than when made ready at ${celsius} °C`,
	'ready-expected': () => 'than expected when made ready',
	soundcheck: () => 'than at soundcheck',
	expected: () => 'than expected',
	typed: () => 'than before',
};

/** `stage 4 °C warmer than at soundcheck: string 3, 6 to 12 c flat`. */
export function stageDriftWords({ worst, tuned, isExpected }: StageDrift): string {
	const change = `${isExpected ? 'expected ' : ''}${changeWords(worst.kelvins)}`;
	const since = SINCE[tuned.since](tuned.celsius);
	return `stage ${change} ${since}: string ${worst.string}, ${centsWords(worst.cents)}`;
}

/** `11 to 23 c flat`: what is seen of what the string alone would go. */
export function centsWords(cents: number): string {
	return `${rangeWords(cents)} c ${cents < 0 ? 'flat' : 'sharp'}`;
}

/** `11 to 23`. */
function rangeWords(cents: number): string {
	const [least, most] = seenCents(cents).map(Math.abs);
	return least === most ? String(most) : `${least} to ${most}`;
}

/** `8 °C warmer`. */
function changeWords(kelvins: number): string {
	return `${Math.abs(kelvins)} °C ${kelvins > 0 ? 'warmer' : 'colder'}`;
}

/** What damp or dry air does, in whole sentences; never cents, and it says why. */
export function humidityWords(is: 'damp' | 'dry', percent: number): string {
	const said =
		is === 'damp'
			? `Damp (${percent} %): wood swells, necks and tops move, strings tend to go sharp.`
			: `Dry (${percent} %): wood shrinks, fret ends stand out, strings tend to go flat.`;
	return `${said} No cents are given: wood reacts hours later. Check each one by ear and meter. Leave cases shut until their latches feel like room temperature.`;
}
