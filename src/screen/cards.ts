// The cards: what each player is handed at the next moment at which hands change, with all that goes with it.
// Worked out apart from its drawing, since it is drawn in several sizes.

import type { Work } from '../plan/plan.ts';
import { type PackHanded, packsHanded } from '../session/packs-handed.ts';
import { offsetWords } from '../showfile/instrument-strings.ts';
import { capoAct } from '../words/capo-words.ts';
import { packWords } from '../words/pack-words.ts';
import { capoIsOn, NO_CAPO } from '../words/stage.ts';
import { type Off, offOf } from './card-off.ts';
import { comingHandOvers } from './coming.ts';
import { momentOf } from './coming-words.ts';
import { instrumentOf, playerLabel } from './named-in-show.ts';
import type { ScreenState } from './screen-state.ts';
import type { Coming } from './what-comes.ts';
import { workNow } from './work-words.ts';

/** What a player is handed, keeps with something to be done to it, or lacks, and what goes with that. */
export type Card = Omit<Coming, 'pack'> & {
	/** The player's name, in capitals. */
	readonly label: string;
	/** `CAPO ON 2`, `CAPO OFF`; where nothing is to be done `capo 2 on`, `no capo`; empty where nothing is handed, or it is wrong. */
	readonly capoWords: string;
	/** The capo is to be put on, moved or taken off. */
	readonly isCapoToDo: boolean;
	/** What comes out of their hands, or what they get next; null where nothing is to be said of it. */
	readonly off: Off | null;
	/** The pack, but only where it is to be swapped, or is suspect; else empty. */
	readonly pack: string;
	/** What the strings stand off equal temperament for this player; empty where nothing is asked. */
	readonly offsets: string;
};

export type Cards = {
	/** All who change at the next moment, in the order of the show file's players; after a break those whose sound is gone. */
	readonly now: readonly Card[];
	/** Everybody else: who gets something later, in order of time, then who keeps what they have. */
	readonly rest: readonly Coming[];
};

/** Each player once, on a card or in the rest. */
export function handOverCards(state: ScreenState): Cards {
	const coming = comingHandOvers(state);
	const [first] = coming;
	const isNow = (one: Coming): boolean => {
		if (first === undefined || one.kind === 'keeps') return false;
		return first.kind === 'break' ? one.kind === 'break' : one.moment === first.moment;
	};
	const work = workNow(state);
	const { players } = state.session.show;
	const order = (one: Coming) => players.findIndex(({ id }) => id === one.player);
	return {
		now: coming
			.filter(isNow)
			.toSorted((one, other) => order(one) - order(other))
			.map((one) => cardOf(state, one, work)),
		rest: coming.filter((one) => !isNow(one)),
	};
}

/** All that goes with what is coming for a player; `work` is all that is to be done. */
export function cardOf(state: ScreenState, one: Coming, work: readonly Work[]): Card {
	return {
		...one,
		label: playerLabel(state.session.show, one.player),
		...capoOf(state, one),
		off: offOf(state, one, work),
		pack: packWords(state.session, one.player, {
			pack: one.pack,
			handed: packGoingOn(state, one),
		}),
		offsets: offsetsOf(state, one),
	};
}

function capoOf(
	{ session }: ScreenState,
	{ kind, instrument, capo }: Coming,
): Pick<Card, 'capoWords' | 'isCapoToDo'> {
	if (instrument === null || kind === 'wrong') return { capoWords: '', isCapoToDo: false };
	const on = session.instruments[instrument]?.context.capo ?? 0;
	if (on !== capo) return { capoWords: capoAct(capo), isCapoToDo: true };
	return { capoWords: capo > 0 ? capoIsOn(capo) : NO_CAPO, isCapoToDo: false };
}

/** What is recorded of packs with this hand-over, together with those of the same moment. */
function packGoingOn({ session, plan }: ScreenState, coming: Coming): PackHanded {
	const isOwn = ({ player }: { readonly player: string }) => player === coming.player;
	const planned = plan.handOvers.filter(({ section }) => momentOf(section) === coming.moment);
	const all = planned.some(isOwn) ? planned : [coming];
	return packsHanded(session, all)[all.findIndex(isOwn)] ?? { worn: null, wearer: null };
}

/** Offsets are nobody's to guess. */
function offsetsOf({ session: { show } }: ScreenState, coming: Coming): string {
	const { instrument: id, tuning, player } = coming;
	const instrument = id === null ? null : instrumentOf(show, id);
	return instrument && tuning ? offsetWords(show, { instrument, tuning, player }) : '';
}
