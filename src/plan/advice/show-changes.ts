// What a band could agree to before the doors so that a night works: each a show that differs in one
// thing. Whether it helps is found by planning it, nowhere else.

import type { Instrument, Part, SetItem, Show } from '../../showfile/show.ts';
import { workTimesOf } from '../../showfile/work-times.ts';
import type { InstrumentKind } from '../../tuning/kind.ts';
import type { Tuning } from '../../tuning/tuning.ts';
import { soundOfSlot } from '../backups/stand-ins.ts';
import type { Hand } from '../demand/hand.ts';
import { samePitches } from '../demand/same-pitches.ts';
import type { Section, Slot } from '../plan.ts';
import { withHand } from '../what-if/part-instead.ts';

/** A song of the set; `time`: which time, from 0, where it is played more than once. */
export type SongInSet = { readonly song: string; readonly time: number | null };

/** What it would be. */
export type ChangeAsked =
	/** More room before a song; `after`: the song that goes straight on into it, or the interval before it. */
	| {
			readonly kind: 'gap';
			readonly song: SongInSet;
			readonly seconds: number;
			readonly after: SongInSet | 'interval' | null;
	  }
	| { readonly kind: 'retune'; readonly instrument: string; readonly tuning: string }
	/** `tuning`: null where it is in it anyway. */
	| {
			readonly kind: 'exchange';
			readonly instrument: string;
			readonly tuning: string | null;
			readonly capo: number;
			readonly player: string;
			readonly song: string;
	  }
	| {
			readonly kind: 'instrument';
			readonly like: InstrumentKind;
			readonly tuning: string;
			readonly player: string;
			readonly song: string;
	  }
	| { readonly kind: 'order'; readonly songs: readonly [SongInSet, SongInSet] }
	| { readonly kind: 'drop'; readonly song: SongInSet; readonly seconds: number | null };

export type ShowChange = ChangeAsked & {
	/** How much it asks of everybody; in seconds of a longer gap. Common practice, no source. */
	readonly price: number;
	readonly show: Show;
};

/** A retuning before the doors costs nobody anything; another instrument is one player's matter, another order the whole band's; parting what they play as one is more so, and finding an instrument most. */
const PRICES = { retune: 0, exchange: 25, order: 30, segue: 60, instrument: 120 };

/** Where in the set a section stands, before the night has changed it. */
function placeOf({ item }: Pick<Section, 'item'>): number {
	return Number(item) - 1;
}

/**
 * The gap before a song longer by so many seconds, or the interval before it. Where a song goes straight
 * on into it, that would be no more. Null where nothing is before it, or where it is reached inside a song.
 *
 * @example
 * longerGap(show, plan.sections[1], 30).song // => { song: 'lantern', time: null }
 */
export function longerGap(show: Show, section: Section, seconds: number): ShowChange | null {
	const place = placeOf(section);
	const [before, item] = [show.set[place - 1], show.set[place]];
	if (section.point > 0 || before === undefined || item?.kind !== 'song') return null;
	const isInterval = before.kind === 'interval';
	const isSegue = goesStraightOn(show, place - 1);
	const longer: readonly SetItem[] = isInterval
		? [{ ...before, seconds: before.seconds + seconds }, item]
		: [before, { ...item, gapSeconds: (section.gapSeconds ?? 0) + seconds }];
	return {
		kind: 'gap',
		song: songAt(show, place),
		seconds,
		after: isInterval ? 'interval' : isSegue ? songAt(show, place - 1) : null,
		price: seconds + (isSegue ? PRICES.segue : 0),
		show: { ...show, set: show.set.toSpliced(place - 1, 2, ...longer) },
	};
}

/**
 * An instrument in another tuning from before the doors on. What the songs ask of it stays what it was.
 *
 * @example
 * tunedBefore(show, 'A1', dropD).tuning // => 'drop D'
 */
export function tunedBefore(show: Show, id: string, tuning: Tuning): ShowChange {
	const own = show.instruments.find((one) => one.id === id)?.tuning ?? tuning;
	const spelled = (parts: Readonly<Record<string, Part>>) =>
		Object.fromEntries(
			Object.entries(parts).map(([player, part]) => [
				player,
				part.kind === 'named' && part.instrument === id && part.tuning === null
					? { ...part, tuning: own }
					: part,
			]),
		);
	return {
		kind: 'retune',
		instrument: id,
		tuning: tuning.name,
		price: PRICES.retune,
		show: {
			...show,
			instruments: show.instruments.map((one) => (one.id === id ? { ...one, tuning } : one)),
			songs: show.songs.map((song) => ({
				...song,
				parts: spelled(song.parts),
				cues: song.cues.map((cue) => ({ ...cue, hand: spelled(cue.hand) })),
			})),
		},
	};
}

/**
 * One more instrument like the one a slot asks for, or of the kind that it needs, kept in that slot's tuning
 * for that song. Null where the file has no instrument at all.
 *
 * @example
 * oneMore(show, slots[0]).like // => 'electric-6'
 */
export function oneMore(show: Show, slot: Slot): ShowChange | null {
	const { section, player, tuning, capo } = slot;
	const like = likeAsked(show, slot);
	if (like === null) return null;
	const id = freshId(show, like.id);
	const { songs } = withNamed(show, slot, { instrument: id, tuning, capo });
	const more = { ...like, id, slot: null, for: [player], tuning };
	return {
		kind: 'instrument',
		like: like.kind,
		tuning: tuning.name,
		player,
		song: section.song,
		price: PRICES.instrument,
		show: { ...show, songs, instruments: [...show.instruments, more] },
	};
}

/** What one more would be like: the one that is asked for, one of the kind, or a plain one where there is none. */
function likeAsked(show: Show, slot: Slot): Instrument | null {
	const { instruments } = show;
	const own = slot.instrument ?? slot.named;
	if (own !== null) return instruments.find(({ id }) => id === own) ?? null;
	const kind = soundOfSlot(show, slot)?.kind;
	const [any] = instruments;
	if (kind === undefined || any === undefined) return null;
	const times = workTimesOf(kind, 'fixed', []);
	const plain = { ...any, kind, bridge: 'fixed', features: [], strings: [], times } as const;
	return instruments.find((one) => one.kind === kind) ?? plain;
}

/**
 * A slot played on something else that is there.
 *
 * @example
 * onAnother(show, slots[0], { instrument: 'S1', tuning: eStandard, capo: 0 }).instrument // => 'S1'
 */
export function onAnother(show: Show, slot: Slot, hand: Hand): ShowChange {
	const { instrument, tuning, capo } = hand;
	const own = show.instruments.find(({ id }) => id === instrument)?.tuning;
	const isInIt = own !== undefined && samePitches(own, tuning);
	return {
		kind: 'exchange',
		instrument,
		tuning: isInIt ? null : tuning.name,
		capo,
		player: slot.player,
		song: slot.section.song,
		price: PRICES.exchange,
		show: withNamed(show, slot, { instrument, tuning, capo }),
	};
}

/** The show in which a song, from a point on, asks a player for exactly this. */
function withNamed(show: Show, { section, player }: Slot, hand: Hand): Show {
	const { point } = section;
	const songs = show.songs.map((song) =>
		song.id === section.song ? withHand(song, { point, player, hand }) : song,
	);
	return { ...show, songs };
}

/** Where a second is added after the first, that is another one. */
function freshId({ instruments }: Pick<Show, 'instruments'>, id: string): string {
	const again = `${id} again`;
	return instruments.some((one) => one.id === again) ? freshId({ instruments }, again) : again;
}

/**
 * Two songs of the set in each other's place, the gaps staying where they are. Null where one of them
 * goes straight on into another, or is gone straight into.
 *
 * @example
 * inEachOthersPlace(show, 0, 2).songs.map(({ song }) => song) // => ['harbour', 'gravel']
 */
export function inEachOthersPlace(show: Show, one: number, other: number): ShowChange | null {
	const [first, second] = [show.set[one], show.set[other]];
	if (first?.kind !== 'song' || second?.kind !== 'song' || first.song === second.song) return null;
	if (isInSegue(show, one) || isInSegue(show, other)) return null;
	const set = show.set
		.with(one, { ...first, song: second.song })
		.with(other, { ...second, song: first.song });
	return {
		kind: 'order',
		songs: [songAt(show, one), songAt(show, other)],
		price: PRICES.order + Math.abs(one - other),
		show: { ...show, set },
	};
}

/**
 * A song left out. Null where it goes straight on into another, or is gone straight into.
 *
 * @example
 * leftOut(show, 1).seconds // => 210
 */
export function leftOut(show: Show, place: number): ShowChange | null {
	const item = show.set[place];
	if (item?.kind !== 'song' || isInSegue(show, place)) return null;
	const seconds = show.songs.find(({ id }) => id === item.song)?.lengthSeconds ?? null;
	return {
		kind: 'drop',
		song: songAt(show, place),
		seconds,
		price: seconds ?? 0,
		show: { ...show, set: show.set.toSpliced(place, 1) },
	};
}

function songAt({ set }: Show, place: number): SongInSet {
	const item = set[place];
	if (item?.kind !== 'song') return { song: '', time: null };
	const { song } = item;
	const times = set.flatMap((one, at) => (one.kind === 'song' && one.song === song ? [at] : []));
	return { song, time: times.length === 1 ? null : times.indexOf(place) };
}

function isInSegue(show: Show, place: number): boolean {
	return goesStraightOn(show, place - 1) || goesStraightOn(show, place);
}

function goesStraightOn({ set, songs }: Show, place: number): boolean {
	const item = set[place];
	return item?.kind === 'song' && songs.find(({ id }) => id === item.song)?.ends === 'segue';
}
