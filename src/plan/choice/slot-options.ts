// What would do in each section for each player: what is named where it can be had, and what else would do
// where it cannot or is in other hands, or where nothing is named.

import type { Demand } from '../demand/demand.ts';
import type { Hand } from '../demand/hand.ts';
import type { Option } from '../demand/options.ts';
import { choicesFor, substitutesFor } from '../demand/options.ts';
import type { Asked, Outlook } from '../demand/outlook.ts';
import { isStrung } from '../demand/outlook.ts';
import { pitchKey } from '../demand/same-pitches.ts';
import { whyUnplayable } from '../demand/why-unplayable.ts';
import { soundsAsNamed } from './sounding-hands.ts';

export type Options = {
	/** What is named, where it can be had. */
	readonly primary: Hand | null;
	/** What else would do. */
	readonly options: readonly Option[];
	/** The same, what is named for somebody else among it. */
	readonly all: readonly Option[];
};
const NOTHING: Options = { primary: null, options: [], all: [] };

/**
 * For each section, then each player, what would do. What is named for somebody else is no option for whoever
 * merely chooses.
 *
 * @example
 * optionsAhead(outlook)[0].map(({ primary }) => primary?.instrument) // => ['A1', 'B1', undefined]
 */
export function optionsAhead(outlook: Outlook): readonly (readonly Options[])[] {
	const known = new Map<string, readonly Option[]>();
	return outlook.asked.map((all, place) => {
		const named = namedAt(outlook, place);
		return all.map((asked, seat) => optionsAt(outlook, { asked, seat, place, named, known }));
	});
}

type OptionsAsked = {
	readonly asked: Asked;
	readonly seat: number;
	readonly place: number;
	readonly named: NamedFor;
	/** What would do for what was asked before: the same is asked again and again. */
	readonly known: Map<string, readonly Option[]>;
};

function optionsAt(outlook: Outlook, at: OptionsAsked): Options {
	const { asked, seat, place, named } = at;
	const { demand, player } = asked;
	const rack = {
		show: outlook.show,
		instruments: outlook.instruments,
		isStrung: (id: string) => isStrung(outlook, id, place),
	};
	const isFree = ({ hand }: Option): boolean =>
		named.get(hand.instrument)?.every((one) => one === seat) ?? true;
	const freeOf = (all: readonly Option[]): readonly Option[] => all.filter(isFree);
	const remembered = (what: string, make: () => readonly Option[]): readonly Option[] => {
		const restrung = [...outlook.restrungFor].filter(([, from]) => from <= place).map(([id]) => id);
		const key = `${seat} ${what} ${restrung.join()}`;
		const found = at.known.get(key) ?? make();
		at.known.set(key, found);
		return found;
	};
	if (demand.kind === 'needs') {
		const { instrumentKind, sounds, features, prefer } = demand.part;
		const what = [instrumentKind, pitchKey({ tuning: sounds }), ...features, prefer].join();
		const all = remembered(what, () => choicesFor(rack, { part: demand.part, player }));
		return { primary: null, options: freeOf(all), all };
	}
	if (demand.kind !== 'named') return NOTHING;
	const { tuning, capo } = demand;
	const instrument = demand.instrument.id;
	const primary = isToBeHad(outlook, demand, place) ? { instrument, tuning, capo } : null;
	const what = [instrument, pitchKey({ tuning }), capo].join();
	const options = remembered(what, () => substitutesFor(rack, { demand, player }));
	return { ...NOTHING, primary, options: freeOf(options) };
}

/** For each instrument that a section names for somebody and that can be had, for whom. */
type NamedFor = ReadonlyMap<string, readonly number[]>;

function namedAt(outlook: Outlook, place: number): NamedFor {
	const named = new Map<string, number[]>();
	const isOn = place === 0 && outlook.sections[0]?.hasBegun === true;
	outlook.asked[place]?.forEach(({ player, demand, isNamed, isSettled, goesOnWithin }, seat) => {
		const isAsked = isNamed && !isSettled && !goesOnWithin && demand.kind === 'named';
		if (!isAsked || !isToBeHad(outlook, demand, place)) return;
		// In a song that is on what sounds so stays, and what was named is free.
		if (isOn && isHeldSounding(outlook, demand, player)) return;
		const { id } = demand.instrument;
		named.set(id, [...(named.get(id) ?? []), seat]);
	});
	return named;
}

function isHeldSounding(
	outlook: Outlook,
	demand: Extract<Demand, { kind: 'named' }>,
	player: string,
): boolean {
	const held = outlook.hands.get(player) ?? null;
	return (
		held !== null &&
		held.instrument !== demand.instrument.id &&
		isStrung(outlook, held.instrument, -1) &&
		soundsAsNamed(outlook, demand, held)
	);
}

function isToBeHad(
	outlook: Outlook,
	{ instrument, tuning }: Extract<Demand, { kind: 'named' }>,
	place: number,
): boolean {
	const state = outlook.instruments[instrument.id];
	return (
		state !== undefined &&
		whyUnplayable({ instrument, state, tuning }) === null &&
		isStrung(outlook, instrument.id, place)
	);
}
