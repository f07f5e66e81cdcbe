// What people have been told: the choices of the plan before, looked up slot by slot.

import type { Hand } from './hand.ts';
import type { Plan, Section } from './plan.ts';

export type Told = {
	/** What the player was to have in that section; null for nothing, undefined where the plan did not have it. */
	readonly handAt: (section: Section, player: string) => Hand | null | undefined;
};

/**
 * What a plan gave everybody.
 *
 * @example
 * toldBy(plan).handAt(section, 'ash').instrument // => 'A4'
 * toldBy(plan).handAt({ ...section, item: 'other' }, 'ash') // => undefined
 */
export function toldBy(plan: Plan): Told {
	const key = ({ item, point }: Section): string => `${item} ${point}`;
	const sections = new Set(plan.sections.map(key));
	const hands = new Map(
		plan.slots.flatMap(({ section, player, instrument, tuning, capo }) =>
			instrument === null
				? []
				: [[`${key(section)} ${player}`, { instrument, tuning, capo }] as const],
		),
	);
	return {
		handAt: (section, player) =>
			sections.has(key(section)) ? (hands.get(`${key(section)} ${player}`) ?? null) : undefined,
	};
}
