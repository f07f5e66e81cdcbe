// The show of the next night from an earlier one: the same gear and songs as that night knew them last, in the order
// as it was played, everything as it stood at the end. Each thing carried over is told once, with where it comes from.

import { cuePoints } from '../../machines/song.ts';
import { cleanText } from '../base/clean-text.ts';
import { dayTimeText } from '../base/show-clock.ts';
import type { BatteryIn, NightMs } from '../journal/entry.ts';
import { batteriesOf } from '../rig/battery-hours.ts';
import { hoursUsed } from '../rig/battery-now.ts';
import type { Session, SongItem } from '../session/session.ts';
import { draftOfShow } from '../setlist/draft-of-show.ts';
import type { ShowDraft } from '../setlist/show-draft.ts';
import type { Power } from '../showfile/rig.ts';
import type { Cue, Instrument, Part, SetItem, Show, Song } from '../showfile/show.ts';
import {
	packName,
	pedalName,
	playerName,
	shownInstrument,
	songTitle,
} from '../showfile/shown-names.ts';
import { isReachable } from '../tuning/retune.ts';
import * as words from '../words/carried.ts';
import { batteryOf } from '../words/rig.ts';
import { type NightStep, restringsOf, songAt } from './night-steps.ts';

export type CarriedKind =
	| 'tuning'
	| 'capo'
	| 'strings'
	| 'hours'
	| 'broken'
	| 'fault'
	| 'out'
	| 'pack'
	| 'battery'
	| 'pedal'
	| 'order'
	| 'times';

export type Carried = {
	readonly what: CarriedKind;
	/** Its id, where it is about one instrument. */
	readonly instrument: string | null;
	readonly text: string;
	/** What is to be done about it before the next show, without a full stop; null for nothing. */
	readonly toDo: string | null;
};

export type NextNight = {
	/** Its date is that of the earlier night. */
	readonly draft: ShowDraft;
	readonly carried: readonly Carried[];
};

export type NightBefore = {
	readonly night: string;
	readonly opened: Session;
	readonly steps: readonly NightStep[];
	/** Add to UTC for the time of day where the show was. */
	readonly dayOffsetMinutes: number;
	/** The day where the show was, `2026-06-12`. */
	readonly dayOf: (atMs: NightMs) => string;
};

/** The next night's show as a draft, and what of it comes from the night before. */
export function nextNight(before: NightBefore): NextNight {
	const last = before.steps.at(-1)?.after ?? before.opened;
	const carried: readonly CarriedAt[] = [
		...last.show.instruments.flatMap((one) => carriedOf(one, last, before)),
		...hoursCarried(last, before),
		...batteriesCarried(last, before),
		...gearCarried(last, before),
		...orderCarried(last),
		...timesCarried(last),
	];
	const draft = draftOfShow(nextShow(last, before));
	const remarksOf = (id: string) =>
		carried.filter(({ instrument }) => instrument === id).map(({ text }) => sentence(text));
	const overall = carried.filter(({ what }) => what === 'battery' || what === 'order');
	return {
		draft: {
			...draft,
			instruments: draft.instruments.map((one) => ({ ...one, remarks: remarksOf(one.id) })),
			remarks: [words.madeFrom(before.night), ...overall.map(({ text }) => sentence(text))],
			furtherRemarks: carried.flatMap(({ at, text }) =>
				at === undefined ? [] : [{ at, text: sentence(text) }],
			),
		},
		carried: carried.map(({ at: _, ...one }) => one),
	};
}

/** With the file's part, and the keys and ids down to the place in it. */
type CarriedAt = Carried & { readonly at?: readonly string[] };

const sentence = (text: string): string => `${text}.`;

const round = (hours: number): number => Math.round(hours * 10) / 10;

/** The hours on its strings at the end, those in hands now among them; null where nobody knows. */
function hoursAt(id: string, session: Session, steps: readonly NightStep[]): number | null {
	const context = session.instruments[id]?.context;
	if (!context || context.stringHours === null) return null;
	const { inHandsSinceMs } = context;
	const nowMs = steps.at(-1)?.entry.at ?? 0;
	const more = inHandsSinceMs === null ? 0 : Math.max(0, nowMs - inHandsSinceMs) / 3_600_000;
	return round(context.stringHours + more);
}

/** The show as it is at the end, as a file would have it. */
function nextShow(last: Session, before: NightBefore): Show {
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

/** A night that never began has used nothing, but for what was changed in it. */
function usedAtEnd(
	last: Session,
	{ steps }: NightBefore,
	battery: BatteryIn & { readonly usedHours: number },
): number {
	const nowMs = steps.at(-1)?.entry.at ?? 0;
	return round(hoursUsed(last, battery, { nowMs, zeroMs: last.zeroAtMs ?? nowMs }));
}

function mapParts(
	parts: Readonly<Record<string, Part>>,
	map: (part: Part) => Part,
): Readonly<Record<string, Part>> {
	return Object.fromEntries(Object.entries(parts).map(([player, part]) => [player, map(part)]));
}

function isSameTuning(
	one: { readonly notes: readonly string[] } | undefined,
	other: { readonly notes: readonly string[] },
): boolean {
	return one === undefined || one.notes.join(' ') === other.notes.join(' ');
}

/**
 * Whether the file says the tuning that it hangs in now. What a file says is also what the strings are for: from there
 * its own tuning, and every one that a song names for it, must be within reach.
 */
function isWrittenAs(
	{ id, kind, tuning: own }: Instrument,
	{ instruments, show }: Session,
): boolean {
	const now = instruments[id]?.context.tuning;
	if (now === undefined || isSameTuning(now, own)) return false;
	const named = show.songs
		.flatMap(({ parts, cues }) => [parts, ...cues.map(({ hand }) => hand)])
		.flatMap((parts) => Object.values(parts))
		.flatMap((part) => (part.kind === 'named' && part.instrument === id ? [part.tuning] : []));
	return [own, ...named].every((one) => one === null || isReachable(now.notes, one.notes, kind));
}

function nextInstrument(one: Instrument, last: Session, { steps, dayOf }: NightBefore): Instrument {
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
			hours: hoursAt(one.id, last, steps) ?? one.strung.hours,
		},
		notes: [...(one.notes === null ? [] : [one.notes]), ...notes].join('; ') || null,
	};
}

// The order.

type Placed = { readonly item: Session['list'][number]; readonly isEncore: boolean };

const beganAt = (item: SongItem): number => item.runs[0]?.beganAtMs ?? 0;

/** Tonight's list without what was dropped; what was played stands in the order in which it was. */
function itemsAsPlayed({ list, show }: Session): readonly Placed[] {
	const kept = list.filter(
		(item) =>
			item.kind === 'interval' ||
			(!item.isDropped && show.songs.some(({ id }) => id === item.song)),
	);
	const isPlayed = (item: Session['list'][number]): item is SongItem =>
		item.kind === 'song' && item.runs.length > 0;
	const played = kept.filter(isPlayed).sort((one, other) => beganAt(one) - beganAt(other));
	let next = 0;
	const placed = kept.map((item): Placed => {
		const isEncore = item.kind === 'song' && item.isEncore;
		if (!isPlayed(item)) return { item, isEncore };
		next += 1;
		return { item: played[next - 1] ?? item, isEncore };
	});
	return placed.filter(({ item }, index) => item.kind === 'song' || isBetween(placed, index));
}

/** An interval stands between two songs, and not before an encore. */
function isBetween(placed: readonly Placed[], index: number): boolean {
	const before = placed[index - 1];
	const after = placed[index + 1];
	return before?.item.kind === 'song' && after?.item.kind === 'song' && !after.isEncore;
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

// What is told.

/** When the last step was at which this came to be as it is at the end. */
function since(
	{ steps, dayOffsetMinutes }: NightBefore,
	of: (session: Session) => unknown,
): words.Since | null {
	const step = steps.findLast(
		({ before, after }) => JSON.stringify(of(before)) !== JSON.stringify(of(after)),
	);
	if (!step) return null;
	const { after, entry } = step;
	const item = songAt(after);
	return {
		song: item === null ? null : cleanText(songTitle(after.show, item.song)),
		isOn: item !== null && after.song !== null && after.phase.value === 'song',
		clock: dayTimeText(entry.at, dayOffsetMinutes).slice(0, 5),
	};
}

function carriedOf(one: Instrument, last: Session, before: NightBefore): readonly Carried[] {
	const { id } = one;
	const state = last.instruments[id];
	if (!state) return [];
	const { tuning, capo, stringsDown, faults } = state.context;
	const name = cleanText(shownInstrument(last.show, id));
	const told: Carried[] = [];
	const tell = (
		what: CarriedKind,
		of: (session: Session) => unknown,
		said: { readonly text: (since: words.Since) => string; readonly toDo: string | null },
	) => {
		const when = since(before, of);
		if (when !== null) told.push({ what, instrument: id, text: said.text(when), toDo: said.toDo });
	};
	const contextOf = (session: Session) => session.instruments[id]?.context;
	if (!isSameTuning(tuning, one.tuning)) {
		const [now, own] = [cleanText(tuning.name), cleanText(one.tuning.name)];
		const isWritten = isWrittenAs(one, last);
		tell('tuning', (at) => contextOf(at)?.tuning.notes, {
			text: (when) =>
				isWritten
					? words.carriedTuning(name, now, when)
					: words.keptTuning(name, { now, own }, when),
			toDo: isWritten ? null : words.retuneTo(name, own),
		});
	}
	if (capo > 0)
		tell('capo', (at) => contextOf(at)?.capo, {
			text: (when) => words.carriedCapo(name, capo, when),
			toDo: words.takeCapoOff(name),
		});
	const restrung = restringsOf(before.steps).get(id)?.at(-1) ?? null;
	if (restrung !== null) {
		const upTo = before.steps.slice(0, before.steps.indexOf(restrung) + 1);
		const when = since({ ...before, steps: upTo.slice(-1) }, ({ instruments }) => instruments);
		const text = when && words.carriedStrings(name, when);
		if (text !== null) told.push({ what: 'strings', instrument: id, text, toDo: null });
	}
	if (stringsDown.length > 0)
		tell('broken', (at) => contextOf(at)?.stringsDown.length, {
			text: (when) => words.carriedBroken(name, stringsDown, when),
			toDo: words.restringIt(name, stringsDown),
		});
	for (const fault of faults)
		tell('fault', (at) => contextOf(at)?.faults.includes(fault), {
			text: (when) => words.carriedFault(name, cleanText(fault), when),
			toDo: words.seeToFault(name, cleanText(fault)),
		});
	if (state.value === 'out' && faults.length === 0 && stringsDown.length === 0)
		tell('out', (at) => at.instruments[id]?.value, {
			text: (when) => words.carriedOut(name, when),
			toDo: words.seeToOut(name),
		});
	return told;
}

function hoursCarried(last: Session, { steps }: NightBefore): readonly Carried[] {
	const all = last.show.instruments.flatMap(({ id, strung }) => {
		const hours = hoursAt(id, last, steps);
		return hours === null || hours === strung.hours
			? []
			: [{ instrument: cleanText(shownInstrument(last.show, id)), hours }];
	});
	return all.length === 0
		? []
		: [{ what: 'hours', instrument: null, text: words.carriedHours(all), toDo: null }];
}

/** Batteries whose hours in use are others than the file says. */
function batteriesCarried(last: Session, before: NightBefore): readonly Carried[] {
	const all = batteriesOf(last.show).flatMap((battery) => {
		const hours = usedAtEnd(last, before, battery);
		return hours === battery.usedHours
			? []
			: [{ what: cleanText(batteryOf(last.show, battery)), hours }];
	});
	return all.length === 0
		? []
		: [{ what: 'battery', instrument: null, text: words.carriedBatteries(all), toDo: null }];
}

function gearCarried(last: Session, before: NightBefore): readonly CarriedAt[] {
	const { show } = last;
	const packs = last.suspectPacks.flatMap((pack): CarriedAt[] => {
		const when = since(before, ({ suspectPacks }) => suspectPacks.includes(pack));
		const name = cleanText(packName(show, pack));
		const text = when && words.carriedPack(name, when);
		if (text === null) return [];
		const toDo = words.checkPack(name);
		return [{ what: 'pack', instrument: null, text, toDo, at: ['packs', pack] }];
	});
	const pedals = Object.entries(last.boards).flatMap(([player, { context }]) =>
		context.stuck.flatMap((pedal): CarriedAt[] => {
			const when = since(before, ({ boards }) => boards[player]?.context.stuck.includes(pedal));
			if (when === null) return [];
			const name = cleanText(playerName(show, player));
			const its = cleanText(pedalName(show, player, pedal));
			const text = words.carriedPedal(name, its, when);
			const toDo = words.seeToPedal(name, its);
			return [{ what: 'pedal', instrument: null, text, toDo, at: ['boards', player, pedal] }];
		}),
	);
	return [...packs, ...pedals];
}

function orderCarried(last: Session): readonly Carried[] {
	const { list, show } = last;
	const titles = (items: readonly SongItem[]) =>
		items.map(({ song }) => cleanText(songTitle(show, song)));
	const songs = list.flatMap((item) => (item.kind === 'song' ? [item] : []));
	const order = itemsAsPlayed(last).flatMap(({ item }) =>
		item.kind === 'song' ? [item.song] : [],
	);
	const inFile = show.set.flatMap((item) => (item.kind === 'song' ? [item.song] : []));
	const added = songs.filter(({ song, isDropped }) => !isDropped && !inFile.includes(song));
	const dropped = songs.filter(({ isDropped }) => isDropped);
	const hasPlayed = songs.some(({ runs }) => runs.length > 0);
	const unplayed = songs.filter(({ runs, isDropped }) => runs.length === 0 && !isDropped);
	const told = [
		...(order.join(' ') === inFile.join(' ') ? [] : [words.ORDER_AS_PLAYED]),
		...(added.length === 0 ? [] : [words.orderAdded(titles(added))]),
		...(dropped.length === 0 ? [] : [words.orderDropped(titles(dropped))]),
		...(!hasPlayed || unplayed.length === 0 ? [] : [words.orderUnplayed(titles(unplayed))]),
	];
	return told.map((text) => ({ what: 'order', instrument: null, text, toDo: null }));
}

function timesCarried({ show }: Session): readonly Carried[] {
	const times = show.ownTimes ?? {};
	return Object.keys(times).length === 0
		? []
		: [{ what: 'times', instrument: null, text: words.keptTimes(times), toDo: null }];
}
