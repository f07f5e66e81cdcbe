// An instrument's page: what it is in and what is wanted, its strings, the steps, what to check.

/** `4 Anchor is in drop D, no capo; wanted E standard, capo 2, for Ash in Lantern`. */
export function pageTitle(page: {
	readonly instrument: string;
	readonly is: string;
	/** Null where it is as wanted. */
	readonly wanted: string | null;
	readonly forWhom: { readonly player: string; readonly song: string } | null;
}): string {
	const { instrument, is, wanted, forWhom } = page;
	const whom = forWhom === null ? '' : `, for ${forWhom.player} in ${forWhom.song}`;
	return `${instrument}: in ${is}${wanted === null ? ', as wanted' : `; wanted ${wanted}`}${whom}`;
}
export const tunedTo = (tuning: string, capo: string): string => `${tuning}, ${capo}`;
export const RACK_EMPTY = 'Nothing is on the rack.';

export function stringsWords(strings: {
	readonly hours: number | null;
	readonly putOn: string | null;
	readonly tension: string;
}): string {
	const { hours, putOn, tension } = strings;
	const age = hours === null ? 'of unknown age' : `${hours.toFixed(1)} h in hands`;
	return `strings ${age}${putOn === null ? '' : `, put on ${putOn}`}${tension}`;
}

export function tensionWords(tension: {
	readonly newtons: number;
	readonly uncertainty: number;
	readonly changeNewtons: number;
	readonly isNearBreaking: boolean;
}): string {
	const { newtons, uncertainty, changeNewtons, isNearBreaking } = tension;
	const off = uncertainty > 0 ? ` ± ${(uncertainty * 100).toFixed(0)} %` : '';
	const less = changeNewtons < 0 ? 'less' : 'more';
	const more =
		changeNewtons === 0 ? '' : `, ${Math.abs(changeNewtons)} N ${less} than in its own tuning`;
	const near = isNearBreaking ? '; A STRING NEAR BREAKING' : '';
	return `; tension in all ${newtons.toFixed(0)} N${off}${more}${near}`;
}

export const faultWords = (isBroken: boolean, faults: readonly string[]): string =>
	[...(isBroken ? ['string broken'] : []), ...faults].join(', ');
export const checkWords = (what: string): string => `check ${what}`;
export const moveWords = (semitones: number): string =>
	semitones === 0 ? '' : `${semitones < 0 ? 'down' : 'up'} ${Math.abs(semitones)}`;
export const soundsAs = (note: string): string => `as ${note.padEnd(3)}`;

type Step = { readonly string: string; readonly to: string; readonly how: 'up' | 'down' | 'check' };

/** The steps of a retuning in order; twice round where the bridge floats. */
export function stepsWords(
	steps: readonly Step[],
	{ isTwice, isPaired }: { readonly isTwice: boolean; readonly isPaired: boolean },
): string {
	const words = steps.map(({ string, to, how }) =>
		how === 'check' ? `${string} check ${to}` : `${string} ${how} to ${to}`,
	);
	const label = isPaired ? 'course' : 'string';
	const below = steps.some(({ how }) => how === 'down') ? 'go below, then ' : '';
	return `${label} ${words.join(', ')}: ${below}up to pitch${isTwice ? '; then all once more' : ''}`;
}
