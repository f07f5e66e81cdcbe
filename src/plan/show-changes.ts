// What a band could agree to before the doors so that a night works: each a show that differs in one
// thing. Whether it helps is found by planning it, nowhere else.

import { minutesSeconds } from '../base/duration.ts';
import type { Part, SetItem, Show } from '../showfile/show.ts';
import { playerName, slotAndName, songTitle } from '../showfile/shown-names.ts';
import type { Tuning } from '../tuning/tuning.ts';
import type { Section, Slot } from './plan.ts';

export type ShowChange = {
	readonly kind: 'gap' | 'retune' | 'instrument' | 'order' | 'drop';
	/** What it would be, as it can be said to the band. */
	readonly words: string;
	/** How much it asks of everybody; in seconds of a longer gap. Common practice, no source. */
	readonly price: number;
	readonly show: Show;
};

/** A retuning before the doors costs nobody anything; telling the band another order does, and finding an instrument most. */
const PRICES = { retune: 0, order: 30, instrument: 120 };

/** Where in the set a section stands, before the night has changed it. */
function placeOf({ item }: Pick<Section, 'item'>): number {
	return Number(item) - 1;
}

function withItem(show: Show, place: number, changed: (item: SetItem) => SetItem): Show {
	return { ...show, set: show.set.map((item, index) => (index === place ? changed(item) : item)) };
}

/**
 * The gap before a song longer by so many seconds.
 *
 * @example
 * longerGap(show, plan.sections[1], 30).words // => '0:30 more before Lantern'
 */
export function longerGap(show: Show, section: Section, seconds: number): ShowChange {
	const gapSeconds = (section.gapSeconds ?? 0) + seconds;
	return {
		kind: 'gap',
		words: `${minutesSeconds(seconds)} more before ${songTitle(show, section.song)}`,
		price: seconds,
		show: withItem(show, placeOf(section), (item) =>
			item.kind === 'song' ? { ...item, gapSeconds } : item,
		),
	};
}

/**
 * An instrument in another tuning from before the doors on. What the songs ask of it stays what it was.
 *
 * @example
 * tunedBefore(show, 'A1', dropD).words // => 'slot 1 Amber in drop D before the doors'
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
		words: `${slotAndName(show, id)} in ${tuning.name} before the doors`,
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
 * One more instrument like the one a slot asks for, kept in that slot's tuning for that song. Null where
 * the file names no instrument to take it after.
 *
 * @example
 * oneMore(show, slots[0]).words // => 'one more electric-6 in E standard for Ash in Harbour'
 */
export function oneMore(show: Show, { section, player, ...slot }: Slot): ShowChange | null {
	const like = show.instruments.find(({ id }) => id === (slot.instrument ?? slot.named));
	if (like === undefined) return null;
	const more = { ...like, id: `${like.id} again`, slot: null, for: [player], tuning: slot.tuning };
	const part: Part = {
		kind: 'named',
		instrument: more.id,
		tuning: slot.tuning,
		capo: slot.capo,
		leave: null,
		pack: null,
	};
	const songs = show.songs.map((song) => {
		if (song.id !== section.song) return song;
		if (section.point === 0) return { ...song, parts: { ...song.parts, [player]: part } };
		const cues = song.cues.map((cue, index) =>
			index === section.point - 1 ? { ...cue, hand: { ...cue.hand, [player]: part } } : cue,
		);
		return { ...song, cues };
	});
	const sounds = `${like.kind} in ${slot.tuning.name}`;
	return {
		kind: 'instrument',
		words: `one more ${sounds} for ${playerName(show, player)} in ${songTitle(show, section.song)}`,
		price: PRICES.instrument,
		show: { ...show, songs, instruments: [...show.instruments, more] },
	};
}

/**
 * Two songs of the set in each other's place, the gaps staying where they are. Null where one of them
 * goes straight on into another, or is gone straight into.
 *
 * @example
 * inEachOthersPlace(show, 0, 2).words // => 'Harbour and Gravel in each other\'s place'
 */
export function inEachOthersPlace(show: Show, one: number, other: number): ShowChange | null {
	const [first, second] = [show.set[one], show.set[other]];
	if (first?.kind !== 'song' || second?.kind !== 'song' || first.song === second.song) return null;
	if (isInSegue(show, one) || isInSegue(show, other)) return null;
	const swapped = withItem(show, one, (item) => ({ ...item, song: second.song }) as SetItem);
	return {
		kind: 'order',
		words: `${songTitle(show, first.song)} and ${songTitle(show, second.song)} in each other's place`,
		price: PRICES.order + Math.abs(one - other),
		show: withItem(swapped, other, (item) => ({ ...item, song: first.song }) as SetItem),
	};
}

/**
 * A song left out. Null where it goes straight on into another, or is gone straight into.
 *
 * @example
 * leftOut(show, 1).words // => 'Lantern (3:30) left out'
 */
export function leftOut(show: Show, place: number): ShowChange | null {
	const item = show.set[place];
	if (item?.kind !== 'song' || isInSegue(show, place)) return null;
	const seconds = show.songs.find(({ id }) => id === item.song)?.lengthSeconds ?? null;
	const length = seconds === null ? '' : ` (${minutesSeconds(seconds)})`;
	return {
		kind: 'drop',
		words: `${songTitle(show, item.song)}${length} left out`,
		price: seconds ?? 0,
		show: { ...show, set: show.set.filter((_, index) => index !== place) },
	};
}

function isInSegue(show: Show, place: number): boolean {
	return [place - 1, place].some((at) => {
		const item = show.set[at];
		return item?.kind === 'song' && show.songs.find(({ id }) => id === item.song)?.ends === 'segue';
	});
}
