// What can be at fault between a player's strings and the desk, in the order of the sound path, with how likely each
// is for what is heard. Every part of the rig counts once; a board counts as its pedals.

import type { FaultTraits, PartKind } from '../showfile/rig.ts';
import type { Show } from '../showfile/show.ts';
import { soundPath } from './sound-path.ts';

/** What is heard. */
export const SYMPTOMS = [
	'silent',
	'crackle',
	'hum',
	'thin',
	'cuts-out',
	'distorted',
	'feedback',
	'wireless',
] as const;

export type Symptom = (typeof SYMPTOMS)[number];

export type SuspectKind = Exclude<PartKind, 'board'> | 'instrument' | 'pedal';

export type Suspect = FaultTraits & {
	readonly id: string;
	readonly name: string;
	readonly kind: SuspectKind;
	/** The board that it is on; null for what is on none. */
	readonly board: string | null;
	/** Of an amplifier, where the file says it. */
	readonly isTube?: boolean;
	/** Ids of what may be changed in one with it, as the pack that goes with an instrument. */
	readonly along?: readonly string[];
	/** How often it was the cause before. */
	readonly timesFound: number;
	/** Chance before any test; those of a path add up to 1. */
	readonly prior: number;
};

type Weights = Readonly<Record<SuspectKind, number>>;

/** How often each kind of part is the one, relative to the others: common practice, no source. */
const WEIGHTS: Readonly<Record<Symptom, Weights>> = {
	silent: weights({ cord: 5, pack: 4, instrument: 2, amp: 2 }),
	crackle: weights({ cord: 6, instrument: 4, pedal: 2 }),
	hum: weights({ cord: 4, pedal: 3, amp: 2, 'direct-box': 2, instrument: 2 }),
	thin: weights({ cord: 4, instrument: 3, pedal: 2 }),
	'cuts-out': weights({ cord: 5, pack: 5, instrument: 3 }),
	distorted: weights({ pedal: 3, amp: 3, instrument: 2, pack: 2, cab: 2 }),
	feedback: weights({ instrument: 5, pedal: 3, amp: 2, desk: 3 }),
	wireless: weights({ pack: 20, cord: 3 }),
};

function weights(higher: Partial<Weights>): Weights {
	return {
		...{ instrument: 1, cord: 1, pack: 1, pedal: 1, loop: 1, splitter: 1 },
		...{ 'direct-box': 1, preamp: 1, amp: 1, cab: 1, desk: 1 },
		...higher,
	};
}

/** What was changed just before, or was in doubt already, is this many times likelier: common practice, no source. */
const JUST_CHANGED = 3;
const DOUBTED = 5;

export type FaultCase = {
	readonly player: string;
	/** What is in hands; null where that does not matter. */
	readonly instrument: string | null;
	readonly symptom: Symptom;
	/** Ids of what was changed just before. */
	readonly changed?: readonly string[];
	/** Ids of what was in doubt before anything was tested. */
	readonly doubted?: readonly string[];
	/** The pack that is on; left out, the instrument's own. */
	readonly pack?: string | null;
	/** By id, what may be changed in one with a part. */
	readonly along?: Readonly<Record<string, readonly string[]>>;
	/** By id, what would replace a part now and in how many seconds, in place of what the file says. */
	readonly swaps?: Readonly<Record<string, { readonly spare: string; readonly seconds: number }>>;
	/** How often each part was the cause on this rig before, by id. */
	readonly found?: Readonly<Record<string, number>>;
};

/**
 * The suspects of a case from the strings to the desk. A player without a rig in the file has the least there is:
 * instrument, cord or pack, pedals if any, amplifier.
 *
 * @example
 * suspectsOf(CORDS, { player: 'bo', instrument: 'B1', symptom: 'silent' }).map(({ id }) => id) // => ['B1', 'lead', 'head']
 */
export function suspectsOf(
	show: Pick<Show, 'rigs' | 'boards' | 'instruments'>,
	about: FaultCase,
): readonly Suspect[] {
	const { player, instrument, symptom, pack } = about;
	const { changed = [], doubted = [], found = {}, along = {}, swaps = {} } = about;
	const inHands = show.instruments.find(({ id }) => id === instrument);
	const first: Part = {
		id: inHands?.id ?? 'instrument',
		name: inHands?.name ?? 'instrument',
		kind: 'instrument',
		board: null,
	};
	const worn = pack === undefined ? (inHands?.pack ?? null) : pack;
	const parts = [first, ...partsOf(show, player, worn)].map((one) => {
		const { chance = WEIGHTS[symptom][one.kind] } = one;
		return { one, chance };
	});
	const chances = parts.reduce((total, { chance }) => total + chance, 0);
	const all = parts.map(({ one, chance }) => {
		const timesFound = found[one.id] ?? 0;
		// Laplace's rule of succession, for unequal chances: so many faults thought of as seen before as there are parts
		// (the mean of a Dirichlet distribution after counting; any textbook of Bayesian statistics).
		const pseudoCount = chances > 0 ? (chance / chances) * parts.length : 1;
		const odds =
			(changed.includes(one.id) ? JUST_CHANGED : 1) * (doubted.includes(one.id) ? DOUBTED : 1);
		const swap = swaps[one.id];
		return {
			...one,
			...(swap === undefined ? {} : { spare: swap.spare, swapSeconds: swap.seconds }),
			...(along[one.id] === undefined ? {} : { along: along[one.id] ?? [] }),
			timesFound,
			weight: (pseudoCount + timesFound) * odds,
		};
	});
	const sum = all.reduce((total, { weight }) => total + weight, 0);
	// Where the file gives every part no chance at all, all are alike.
	return all.map(({ weight, ...one }) => ({
		...one,
		prior: sum > 0 ? weight / sum : 1 / all.length,
	}));
}

type Part = Omit<Suspect, 'prior' | 'timesFound'>;

function partsOf(
	show: Pick<Show, 'rigs' | 'boards'>,
	player: string,
	pack: string | null,
): readonly Part[] {
	const pedals = (show.boards[player] ?? []).map(
		(pedal): Part => ({
			id: pedal.id,
			name: pedal.name,
			kind: 'pedal',
			board: 'board',
			...traitsOf(pedal),
		}),
	);
	if (show.rigs?.[player] === undefined) {
		const first: Part =
			pack === null
				? { id: 'cord', name: 'cord', kind: 'cord', board: null }
				: { id: pack, name: pack, kind: 'pack', board: null };
		return [first, ...pedals, { id: 'amp', name: 'amp', kind: 'amp', board: null }];
	}
	return soundPath(show, player).flatMap((part): readonly Part[] => {
		const { id, name, kind, isTube } = part;
		if (kind === 'board') return pedals.map((one) => ({ ...one, board: id }));
		const tubes = isTube === undefined ? {} : { isTube };
		return [{ id, name, kind, board: null, ...tubes, ...traitsOf(part) }];
	});
}

function traitsOf({ chance, testSeconds, swapSeconds, spare }: FaultTraits): FaultTraits {
	return {
		...(chance === undefined ? {} : { chance }),
		...(testSeconds === undefined ? {} : { testSeconds }),
		...(swapSeconds === undefined ? {} : { swapSeconds }),
		...(spare === undefined ? {} : { spare }),
	};
}
