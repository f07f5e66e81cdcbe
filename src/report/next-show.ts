// The show as it is at the end of a night, as a file of the next one would have it.

import { cuePoints } from '../../machines/song.ts';
import { cleanText } from '../base/clean-text.ts';
import type { BatteryIn } from '../journal/entry.ts';
import type { Session } from '../session/session.ts';
import type { Power } from '../showfile/rig.ts';
import type { Cue, Instrument, Part, SetItem, Show, Song } from '../showfile/show.ts';
import * as words from '../words/carried.ts';
import { hoursAtEnd, isWrittenAs, type NightBefore, usedAtEnd } from './night-before.ts';
import { restringsOf } from './night-steps.ts';
import { itemsAsPlayed, type Placed } from './order-as-played.ts';

/** The show as it is at the end, as a file would have it. */
export function nextShow(last: Session, before: NightBefore): Show {
	const { show } = last;
	const own = new Map(
		show.instruments.filter((one) => isWrittenAs(one, last)).map(({ id, tuning }) => [id, tuning]),
	);
	const asBefore = (part: Part): Part =>
		// What names no tuning means the instrument's own: that is another one now.
		part.kind === 'named' && part.tuning === null && own.has(part.instrument)
			? { ...part, tuning: own.get(part.instrument) ?? null }
			: part;
	const songs = show.songs.map(
		(song): Song => ({
			...song,
			parts: mapParts(song.parts, asBefore),
			cues: song.cues.map((cue): Cue => ({ ...cue, hand: mapParts(cue.hand, asBefore) })),
		}),
	);
	const items = itemsAsPlayed(last);
	const power = <Thing extends { readonly id: string; readonly power?: Power }>(
		thing: Thing,
		where: Pick<BatteryIn, 'what' | 'player'>,
	): Thing => withHours(thing, { ...where, id: thing.id }, { last, before });
	return {
		...show,
		packs: show.packs.map((pack) =>
			pack.battery === undefined
				? pack
				: {
						...pack,
						battery: {
							...pack.battery,
							used: usedAtEnd(last, before, {
								...{ what: 'pack', player: null, id: pack.id },
								usedHours: pack.battery.used,
							}),
						},
					},
		),
		boards: mapAll(show.boards, (pedal, player) => power(pedal, { what: 'pedal', player })),
		...(show.rigs === undefined
			? {}
			: { rigs: mapAll(show.rigs, (part, player) => power(part, { what: 'part', player })) }),
		instruments: show.instruments.map((one) =>
			power(nextInstrument(one, last, before), { what: 'instrument', player: null }),
		),
		songs: withCellsKept(songs, items, asBefore),
		set: items.map(
			({ item, isEncore }): SetItem =>
				item.kind === 'interval'
					? { kind: 'interval', seconds: item.seconds }
					: { kind: 'song', song: item.song, gapSeconds: item.gapSeconds, isEncore },
		),
	};
}

function mapAll<Thing>(
	all: Readonly<Record<string, readonly Thing[]>>,
	map: (one: Thing, player: string) => Thing,
): Readonly<Record<string, readonly Thing[]>> {
	return Object.fromEntries(
		Object.entries(all).map(([player, things]) => [player, things.map((one) => map(one, player))]),
	);
}

/** The hours that its battery has been in use at the end of the night. */
function withHours<Thing extends { readonly power?: Power }>(
	thing: Thing,
	where: BatteryIn,
	{ last, before }: { readonly last: Session; readonly before: NightBefore },
): Thing {
	const { power } = thing;
	if (power === undefined || power.battery === null) return thing;
	const used = usedAtEnd(last, before, { ...where, usedHours: power.battery.hoursUsed });
	return { ...thing, power: { ...power, battery: { ...power.battery, hoursUsed: used } } };
}

function mapParts(
	parts: Readonly<Record<string, Part>>,
	map: (part: Part) => Part,
): Readonly<Record<string, Part>> {
	return Object.fromEntries(Object.entries(parts).map(([player, part]) => [player, map(part)]));
}

function nextInstrument(one: Instrument, last: Session, before: NightBefore): Instrument {
	const { steps, dayOf } = before;
	const state = last.instruments[one.id];
	if (!state) return one;
	const { tuning, stringsDown, faults } = state.context;
	const restrung = restringsOf(steps).get(one.id)?.at(-1) ?? null;
	const wrong = [
		...(stringsDown.length > 0 ? [words.brokenWords(stringsDown)] : []),
		...faults.map(cleanText),
	];
	const atMs = steps.at(-1)?.entry.at;
	const notes =
		wrong.length === 0 || atMs === undefined ? [] : [words.noteOf(dayOf(atMs), wrong.join(', '))];
	return {
		...one,
		tuning: isWrittenAs(one, last) ? tuning : one.tuning,
		strung: {
			on: restrung === null ? one.strung.on : dayOf(restrung.entry.at),
			hours: hoursAtEnd(one.id, last, before) ?? one.strung.hours,
		},
		notes: [...(one.notes === null ? [] : [one.notes]), ...notes].join('; ') || null,
	};
}

/**
 * Songs that say what they asked for where they stood: a player whom a song does not name has what stands above it, and
 * above it may stand another song now. A song that is played twice cannot say two things, and stays as it is.
 */
function withCellsKept(
	songs: readonly Song[],
	items: readonly Placed[],
	asBefore: (part: Part) => Part,
): readonly Song[] {
	const byId = new Map(songs.map((song) => [song.id, song]));
	const inList = items.flatMap(({ item }) => (item.kind === 'song' ? [item] : []));
	let above: Readonly<Record<string, Part>> = {};
	for (const item of inList) {
		const song = byId.get(item.song);
		if (!song) continue;
		const isOnce = inList.filter((one) => one.song === item.song).length === 1;
		const missing = Object.entries(item.above)
			.map(([player, part]) => [player, asBefore(part)] as const)
			.filter(
				([player, part]) =>
					!Object.hasOwn(song.parts, player) &&
					JSON.stringify(above[player]) !== JSON.stringify(part),
			);
		const kept =
			isOnce && missing.length > 0
				? { ...song, parts: { ...song.parts, ...Object.fromEntries(missing) } }
				: song;
		byId.set(song.id, kept);
		above = { ...above, ...(cuePoints(kept).at(-1)?.parts ?? {}) };
	}
	return songs.map((song) => byId.get(song.id) ?? song);
}
