// Shows made up by chance, of any size: the small ones are enumerated, the larger ones solved by a general
// solver, the largest timed.

import type { Instrument, Part, SetItem, Show, Song } from '../../../src/showfile/show.ts';
import { workTimesOf } from '../../../src/showfile/work-times.ts';
import { tuningCalled } from '../../../src/tuning/tuning.ts';
import type { Chance } from './chance.ts';
import { chance } from './chance.ts';

export type Shape = {
	readonly songs: number;
	readonly players: number;
	/** Instruments of each player's own, and such as anybody may have. */
	readonly own: number;
	readonly shared: number;
	/** Shares of the slots; the rest is needed. */
	readonly named: number;
	readonly keeps: number;
	readonly none: number;
	/** How often what is named is the player's first instrument, on which they play most of the night. */
	readonly main?: number;
	/** Seconds of the gaps to choose between. */
	readonly gaps: readonly number[];
	/** How often a song hands something over in its middle, has an interval before it. */
	readonly cues: number;
	readonly intervals: number;
	/** Seconds of the shortest song. */
	readonly shortest: number;
	/** How many tunings come up, how often a need says what it prefers, and asks for a feature. */
	readonly tunings: number;
	readonly prefers: number;
	readonly features: number;
	/** Different seconds for each instrument's hand-over. */
	readonly hasOddHandOvers: boolean;
};

/** An evening as it often is: gaps that fit their changes, one main instrument each, four fifths of the gear somebody's own. */
export function evening(songs: number, players: number, named: number): Shape {
	return {
		songs,
		players,
		own: 4,
		shared: players,
		named,
		keeps: 0,
		none: 0,
		main: 0.6,
		gaps: [15 * players, 15 * players + 15],
		cues: 0,
		intervals: 0.05,
		shortest: 150,
		tunings: 4,
		prefers: 0.3,
		features: 0.1,
		hasOddHandOvers: false,
	};
}

const PLAYERS = ['ash', 'bo', 'cleo', 'dee'];
const TUNINGS = [
	'E standard',
	'drop D',
	'half-step down',
	'DADGAD',
	'open G',
	'whole step down',
].map((name) => tuningCalled(name, 'electric-6')!);
const BARE = {
	scaleMillimetres: null,
	strings: [],
	pack: null,
	case: null,
	leave: null,
	notes: null,
	pickups: null,
} as const;
const PLAIN = { leave: null, pack: null } as const;

/** The show of this shape that this number stands for. */
export function chanceShow(seed: number, shape: Shape): Show {
	const by = chance(seed);
	const players = PLAYERS.slice(0, shape.players);
	const instruments = [
		...players.flatMap((player) =>
			Array.from({ length: shape.own }, () => instrumentBy(by, [player], shape)),
		),
		...Array.from({ length: shape.shared }, () => instrumentBy(by, null, shape)),
	].map((one, index): Instrument => ({ ...one, id: `I${index + 1}`, name: `I${index + 1}` }));
	const songs = Array.from({ length: shape.songs }, (_, index): Song => {
		const withParts = (share: number) =>
			Object.fromEntries(
				players.flatMap((player) => {
					const part = by.is(share) ? partBy(by, { player, instruments, shape }) : null;
					return part === null ? [] : [[player, part]];
				}),
			);
		return {
			id: `s${index + 1}`,
			title: `S${index + 1}`,
			lengthSeconds: shape.shortest + 30 * by.below(7),
			tempo: null,
			parts: withParts(1),
			board: {},
			cues: by.is(shape.cues)
				? [{ at: 'bridge', nearSeconds: 30, say: null, hand: withParts(0.6), boards: {} }]
				: [],
			starts: null,
			count: null,
			ends: 'ring',
			notes: null,
		};
	});
	return {
		title: `Show ${seed}`,
		venue: null,
		date: null,
		startMinutes: null,
		curfewMinutes: null,
		referenceHertz: 440,
		staleAfterSeconds: by.of([300, 480, 900]),
		staleNewSeconds: 300,
		techs: [],
		players: players.map((id) => ({ id, name: id, plays: null, tech: null, key: id.charAt(0) })),
		instruments,
		songs,
		set: songs.flatMap(({ id }, index): readonly SetItem[] => [
			...(index > 0 && by.is(shape.intervals) ? [{ kind: 'interval', seconds: 900 } as const] : []),
			{ kind: 'song', song: id, gapSeconds: by.of(shape.gaps), isEncore: false },
		]),
		boards: {},
		packs: [],
		times: {},
		stock: [],
		abbreviations: {},
	};
}

function instrumentBy(
	by: Chance,
	forWhom: readonly string[] | null,
	shape: Shape,
): Omit<Instrument, 'id' | 'name'> {
	const bridge = by.is(0.15) ? 'floating' : 'fixed';
	const times = workTimesOf('electric-6', bridge, []);
	return {
		...BARE,
		slot: null,
		kind: 'electric-6',
		for: forWhom,
		tuning: by.of(TUNINGS.slice(0, Math.min(4, shape.tunings))),
		bridge,
		features: by.is(0.4) ? ['arm'] : [],
		spare: by.is(forWhom === null ? 0.5 : 0.15),
		strung: { on: null, hours: null },
		times: shape.hasOddHandOvers ? { ...times, handOver: by.of([10, 15, 15, 20]) } : times,
	};
}

type PartAsked = {
	readonly player: string;
	readonly instruments: readonly Instrument[];
	readonly shape: Shape;
};

function partBy(by: Chance, { player, instruments, shape }: PartAsked): Part | null {
	const mine = instruments.filter((one) => one.for === null || one.for.includes(player));
	const own = mine.filter((one) => one.for !== null);
	if (by.is(shape.keeps)) return null;
	if (by.is(shape.none)) return { kind: 'none' };
	if (by.is(shape.named)) {
		const isMain = shape.main !== undefined && by.is(shape.main);
		const instrument = isMain ? mine[0]! : by.of(own.length > 0 && by.is(0.8) ? own : mine);
		const tuning =
			by.is(0.15) && instrument.bridge === 'fixed'
				? by.of(TUNINGS.slice(0, Math.min(4, shape.tunings)))
				: null;
		return {
			kind: 'named',
			instrument: instrument.id,
			tuning,
			capo: by.of([0, 0, 0, 2]),
			...PLAIN,
		};
	}
	return {
		kind: 'needs',
		instrumentKind: 'electric-6',
		sounds: by.of(TUNINGS.slice(0, shape.tunings)),
		features: by.is(shape.features) ? ['arm'] : [],
		prefer: by.is(shape.prefers) ? by.of(mine).id : null,
		...PLAIN,
	};
}
