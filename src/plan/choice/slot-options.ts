// What would do in each section for each player: what is named where it can be had, and what else where that
// cannot be had, may be in other hands, or nothing is named.

import type { Demand } from '../demand/demand.ts';
import type { Hand } from '../demand/hand.ts';
import type { Option } from '../demand/options.ts';
import { choicesFor, substitutesFor } from '../demand/options.ts';
import type { Outlook } from '../demand/outlook.ts';
import { isStrung } from '../demand/outlook.ts';
import { pitchKey } from '../demand/same-pitches.ts';
import { whyUnplayable } from '../demand/why-unplayable.ts';

export type Options = {
	/** What is named, where it can be had. */
	readonly primary: Hand | null;
	/** And nobody else may have it. */
	readonly isSure: boolean;
	/** What else would do. */
	readonly options: readonly Option[];
};

const NOTHING: Options = { primary: null, isSure: false, options: [] };

/**
 * For each section, then each player, what would do.
 *
 * @example
 * optionsAhead(outlook)[0].map(({ primary }) => primary?.instrument) // => ['A1', 'B1', undefined]
 */
export function optionsAhead(outlook: Outlook): readonly (readonly Options[])[] {
	const { show, instruments, asked, restrungFor } = outlook;
	const mayHave = show.players.map((_, seat) => everHad(outlook, seat));
	// The same is asked again and again: it is worked out, and put into numbers, once.
	const known = new Map<string, readonly Option[]>();
	return asked.map((all, place) =>
		all.map(({ demand, player }, seat): Options => {
			if (demand.kind !== 'named' && demand.kind !== 'needs') return NOTHING;
			const rack = { show, instruments, isStrung: (id: string) => isStrung(outlook, id, place) };
			const restrung = [...restrungFor].filter(([, from]) => from <= place).map(([id]) => id);
			const key = [seat, keyOf(demand), ...restrung].join();
			const optionsOf = (): readonly Option[] => {
				const found =
					known.get(key) ??
					(demand.kind === 'named'
						? substitutesFor(rack, { demand, player })
						: choicesFor(rack, { part: demand.part, player }));
				known.set(key, found);
				return found;
			};
			if (demand.kind === 'needs' || !isToBeHad(outlook, demand, place)) {
				return { ...NOTHING, options: optionsOf() };
			}
			const { instrument, tuning, capo } = demand;
			const primary = { instrument: instrument.id, tuning, capo };
			const isSure = all.every((theirs, other) => {
				if (other === seat) return true;
				if (theirs.demand.kind === 'named' && theirs.demand.instrument === instrument) return false;
				const mayKeep = !theirs.isNamed || theirs.isSettled || theirs.goesOnWithin || place === 0;
				return !(mayKeep && mayHave[other]?.has(instrument.id));
			});
			return { primary, isSure, options: isSure ? [] : optionsOf() };
		}),
	);
}

function keyOf(demand: Extract<Demand, { kind: 'named' | 'needs' }>): string {
	if (demand.kind === 'named') {
		return [demand.instrument.id, pitchKey({ tuning: demand.tuning }), demand.capo].join();
	}
	const { instrumentKind, sounds, features, prefer } = demand.part;
	return [instrumentKind, pitchKey({ tuning: sounds }), ...features, prefer].join();
}

/** Every instrument that a player may have in hands at any time. */
function everHad({ show, asked, hands, heldBefore }: Outlook, seat: number): ReadonlySet<string> {
	const id = show.players[seat]?.id ?? '';
	const had = [hands.get(id), heldBefore.get(id)].flatMap((hand) => hand?.instrument ?? []);
	const kinds = new Set<string>();
	for (const all of asked) {
		const demand = all[seat]?.demand;
		if (demand?.kind === 'needs') kinds.add(demand.part.instrumentKind);
		if (demand?.kind !== 'named') continue;
		const { id: named, instead, kind } = demand.instrument;
		had.push(named, ...(instead ?? []).map(({ instrument }) => instrument));
		if (instead === undefined) kinds.add(kind);
	}
	const alike = show.instruments.filter(({ kind }) => kinds.has(kind));
	return new Set([...had, ...alike.map((one) => one.id)]);
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
