// A warning is read by scripts, which know instruments by id, and by people, who know them by the slot
// and the name on the rack. Both sentences are made in one place, so that they never say two things.

import type { Show } from '../../showfile/show.ts';
import { slotAndName } from '../../showfile/shown-names.ts';

/** What an instrument is called in a sentence, from its id. */
export type Call = (instrument: string) => string;

export type Sentence = {
	/** Instruments by id. */
	readonly text: string;
	/** The same for people: instruments by slot and name. */
	readonly told: string;
};

/**
 * A sentence about instruments, for scripts and for people.
 *
 * @example
 * sentence(show, (call) => `${call('A1')} is stale`).text // => 'A1 is stale'
 * sentence(show, (call) => `${call('A1')} is stale`).told // => 'slot 1 Amber is stale'
 */
export function sentence(show: Show, words: (call: Call) => string): Sentence {
	return { text: words((id) => id), told: words((id) => slotAndName(show, id)) };
}

/**
 * A slot's reason, which names what was asked for by its id, with that called otherwise.
 *
 * @example
 * calledIn('A3 is out tonight', 'A3', () => 'slot 3 Cobalt') // => 'slot 3 Cobalt is out tonight'
 */
export function calledIn(why: string, named: string | null, call: Call): string {
	return why
		.split(' ')
		.map((word) => (word === named ? call(word) : word))
		.join(' ');
}
