// What is told of a night that the next one takes over: each thing with the moment since when it is so, and what is to be
// done about it.

import { cleanText } from '../base/clean-text.ts';
import { dayTimeText } from '../base/show-clock.ts';
import { batteriesOf } from '../rig/battery-hours.ts';
import type { Session, SongItem } from '../session/session.ts';
import type { Instrument } from '../showfile/show.ts';
import {
	packName,
	pedalName,
	playerName,
	shownInstrument,
	songTitle,
} from '../showfile/shown-names.ts';
import * as words from '../words/carried.ts';
import { batteryOf } from '../words/rig.ts';
import {
	hoursAtEnd,
	isSameTuning,
	isWrittenAs,
	type NightBefore,
	usedAtEnd,
} from './night-before.ts';
import { restringsOf, songAt } from './night-steps.ts';
import { itemsAsPlayed } from './order-as-played.ts';

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

/** With the file's part, and the keys and ids down to the place in it. */
export type CarriedAt = Carried & { readonly at?: readonly string[] };

/** All that comes from the night before into the next one, each thing once. */
export function carriedOver(last: Session, before: NightBefore): readonly CarriedAt[] {
	return [
		...last.show.instruments.flatMap((one) => carriedOf(one, last, before)),
		...hoursCarried(last, before),
		...batteriesCarried(last, before),
		...gearCarried(last, before),
		...orderCarried(last),
		...timesCarried(last),
	];
}

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

function hoursCarried(last: Session, before: NightBefore): readonly Carried[] {
	const all = last.show.instruments.flatMap(({ id, strung }) => {
		const hours = hoursAtEnd(id, last, before);
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
