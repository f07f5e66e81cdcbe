// What a card says in tall letters, as much of it as there is room for.

import { capoAct } from '../words/capo-words.ts';
import { NO_BACKUP, TALL, tallCapo, tallCapos } from '../words/stage.ts';
import { tuningNames, tuningThatFits, withSigns } from '../words/tuning-names.ts';
import type { Card } from './cards.ts';
import type { ScreenState } from './screen-state.ts';
import { firstThatFits, tallWidth } from './tall-glyphs.ts';

export type TallWords = {
	/** Empty where no name fits: then `plain` is said in small letters. */
	readonly name: string;
	readonly capo: string;
	readonly plain: string;
};

/** Between what stands beside one another in tall letters. */
export const TALL_GAP = 3;

/**
 * The longest names that leave room for the capo. Where none does, the capo gives way to the tuning, and is said in
 * small letters; but with `isCapoFirst` the tuning is.
 */
export function tallWords(
	state: ScreenState,
	card: Card,
	{ room, isCapoFirst }: { readonly room: number; readonly isCapoFirst: boolean },
): TallWords {
	const act = tallActs(card);
	const { show } = state.session;
	const plain = act === null && card.tuning !== null ? tuningThatFits(show, card.tuning, room) : '';
	const names = tallNames(state, card);
	const alone = firstThatFits(names, room) ?? '';
	const capos = act?.capos ?? (card.capo === 0 ? [] : [tallCapo(card.capo)]);
	const [capo] = capos;
	if (capo === undefined) return { name: alone, capo: '', plain };
	const beside = firstThatFits(names, room - tallWidth(capo) - TALL_GAP);
	if (beside !== null) return { name: beside, capo, plain };
	// Of two acts it is the capo that has to be done.
	if (act !== null) return { name: firstThatFits(capos, room) ?? alone, capo: '', plain };
	return isCapoFirst ? { name: '', capo, plain } : { name: alone, capo: '', plain };
}

/** The tuning, or what is said in place of one, the longest first. */
export function tallNames({ session: { show } }: ScreenState, card: Card): readonly string[] {
	const acts = tallActs(card)?.names;
	if (acts !== undefined) return acts;
	return card.tuning === null ? [TALL.nothing] : tuningNames(show, card.tuning).map(withSigns);
}

type TallActs = {
	readonly names: readonly string[];
	/** What is to be done with the capo, longest first. */
	readonly capos: readonly string[];
};

/** What is said in place of a tuning where nothing is handed over; null where something is. */
function tallActs({ kind, instrument, capo, isCapoToDo, status }: Card): TallActs | null {
	if (kind === 'missing') {
		return { names: status === NO_BACKUP ? TALL.noBackup : TALL.nothingPlanned, capos: [] };
	}
	if (kind === 'wrong' && instrument !== null) return { names: [TALL.wrong], capos: [] };
	if (kind === 'break' && instrument === null) return { names: [TALL.playOn], capos: [] };
	if (kind !== 'stays' || instrument === null) return null;
	if (!isCapoToDo) return { names: [TALL.keeps], capos: capo > 0 ? [tallCapo(capo)] : [] };
	// Beside a slot `on 2` or `off` alone would be read as one thing with it.
	return { names: [TALL.keeps], capos: [capoAct(capo), ...(capo > 0 ? tallCapos(capo) : [])] };
}
