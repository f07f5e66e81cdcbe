// How a night stands, as the enumeration reads it, from its session: nothing of the planner has a part in it.

import type { Part } from '../../../src/showfile/show.ts';
import { demandOf, recheckOf } from './before-doors.ts';
import { numbered } from './holds.ts';
import type { Cell, Demand, Gear, LivePlayer, LiveState, Played } from './live-state.ts';
import { slotKey } from './live-state.ts';
import { type NightAt, type PlacedSection, sectionsOfNight } from './sections-of-night.ts';
import { pitchesOf } from './sounding.ts';

/** Before the hands of whom nothing is asked in particular. */
const KEEP: Demand = { kind: 'keep' };
/** All that was in hands is back on the rack so long after the song before an interval. */
const BACK_AFTER_INTERVAL = 15;

export type LiveNight = {
	readonly state: LiveState;
	readonly placed: readonly PlacedSection[];
	/** By slot, what the song asks, whether or not the player's hands are left alone. */
	readonly asked: Readonly<Record<string, Cell>>;
	/** Slots in which the player's hands are left alone. */
	readonly isAlone: ReadonlySet<string>;
};

export type NightAsked = NightAt & {
	/** When the last interval began; -Infinity where none did. */
	readonly intervalBeganMs: number;
	/** By instrument with strings down, the first section for which they are on again. */
	readonly restrungFor: Readonly<Record<string, number>>;
};

/** The night at this moment. */
export function liveFromSession(night: NightAsked): LiveNight {
	const { session, now } = night;
	const placed = sectionsOfNight(night);
	const { show } = session;
	const players = show.players.map(({ id }) => livePlayer(night, id));
	const gear = show.instruments.map((instrument) => gearOf(night, instrument.id));
	const asked: Record<string, Cell> = {};
	for (const section of placed) {
		for (const { id } of players) asked[slotKey(section.key, id)] = cellOf(night, section, id);
	}
	const bare: LiveState = {
		now,
		players,
		gear,
		sections: placed.map((section) => ({ ...section, cells: {} })),
		// With something in hands a night is under way, though its first song is to come.
		whenMissing:
			session.zeroAtMs === null && players.every(({ holds }) => holds === null)
				? 'empties'
				: 'keeps',
		told: {},
		worked: null,
	};
	const model = numbered(bare);
	const isAlone = new Set<string>();
	for (const [index, section] of placed.entries()) {
		for (const { id, holds } of players) {
			const slot = slotKey(section.key, id);
			const cell = asked[slot]!;
			if (isSettled(night, placed, { index, player: id })) isAlone.add(slot);
			if (!section.isOn) continue;
			const hold = holds === null ? null : model.holdOf(holds);
			const isFor = holds !== null && serves(model, cell.demand, id, holds);
			const isSo = hold !== null && model.sounds(hold, cell.demand, id);
			const isGivenAhead = wasGivenSince(night, section, id) && !isFor;
			if (isBroken(gear, holds) || isGivenAhead || isSo) isAlone.add(slot);
		}
	}
	const sections = placed.map((section, index) => ({
		...section,
		cells: Object.fromEntries(
			players.map(({ id, holds }) => {
				const slot = slotKey(section.key, id);
				// What an interval put on the rack is not taken from it for hands that are said to be empty.
				const left: Demand = index === 0 && holds === null ? { kind: 'none' } : KEEP;
				return [id, isAlone.has(slot) ? { demand: left, isAsAbove: true } : asked[slot]!];
			}),
		),
	}));
	const state = { ...bare, sections, told: toldOf(night, placed, { asked, isAlone }) };
	return { state, placed, asked, isAlone };
}

function heldAs({ session }: NightAt, id: string | null): Played | null {
	if (id === null) return null;
	const { tuning, capo } = session.instruments[id]!.context;
	return { instrument: id, open: pitchesOf(tuning as never), capo };
}

function livePlayer(night: NightAsked, id: string): LivePlayer {
	const { holds, putDown, sinceMs } = night.session.players[id]!;
	const isInterval = night.session.phase.value === 'interval';
	return {
		id,
		holds: heldAs(night, holds),
		putDown: isInterval ? heldAs(night, putDown) : null,
		hasBegun: holds !== null || (sinceMs !== null && sinceMs > night.intervalBeganMs),
	};
}

function gearOf(night: NightAsked, id: string): Gear {
	const { session, secondsOf } = night;
	const instrument = session.show.instruments.find((one) => one.id === id)!;
	const { value, context } = session.instruments[id]!;
	const { tuning, capo, isToWipe, readyAtMs, backAtMs, stringsDown, faults, stringHours } = context;
	// Its way back to the rack takes as long, though a song is on again by then.
	const isPutDown = Object.values(session.players).some(({ putDown }) => putDown === id);
	const back = backAtMs === null ? null : secondsOf(backAtMs);
	return {
		instrument,
		canBeHad: value !== 'out' && faults.length === 0,
		open: pitchesOf(tuning as never),
		capo,
		isToWipe,
		readyAt: readyAtMs === null ? null : secondsOf(readyAtMs),
		backAt: back !== null && isPutDown ? back + BACK_AFTER_INTERVAL : back,
		stringsDown: stringsDown.length,
		restrungFor: night.restrungFor[id] ?? null,
		recheck: recheckOf(session.show, instrument, stringHours),
		recheckNew: session.show.staleNewSeconds,
	};
}

/** The song's own word, a cue's before that, tonight's before both; else the line above it in the file. */
function cellOf(
	{ session: { show } }: NightAt,
	{ item, song, point, isOn }: PlacedSection,
	player: string,
): Cell {
	const own = (parts: Readonly<Record<string, Part>>): Part | undefined => parts[player];
	const handed = song.cues.slice(0, point).flatMap(({ hand }) => own(hand) ?? []);
	const isNamed =
		point > 0
			? own(song.cues[point - 1]!.hand) !== undefined
			: (own(item.tonight) ?? own(song.parts)) !== undefined;
	const part = handed.at(-1) ?? own(item.tonight) ?? own(song.parts) ?? own(item.above);
	return {
		demand: part === undefined ? KEEP : demandOf(show, part),
		isAsAbove: !isNamed,
		// In a song that is on at such a point the hand-over may still be open.
		goesOn: point > 0 && !isNamed && !isOn,
	};
}

type Place = { readonly index: number; readonly player: string };

/** Their hands are left alone there: an exchange, or staying, has closed what was planned. */
function isSettled(
	{ session }: NightAt,
	placed: readonly PlacedSection[],
	{ index, player }: Place,
): boolean {
	const { settled, staying } = session;
	const { item, song, point } = placed[index]!;
	const first = placed.findIndex(
		(one) => one.item.key === item.key && one.point === 0 && !one.isOn,
	);
	const isFirstSong = placed
		.slice(0, index + 1)
		.every((one, i) => one.item.key === item.key && (i === 0 || one.point > 0));
	const at =
		isFirstSong && settled.item === item.key
			? settled.players[player]
			: staying.item === item.key &&
					staying.players.includes(player) &&
					first >= 0 &&
					index >= first &&
					// An interval takes all from hands.
					!placed.slice(0, first + 1).some(({ isAfterInterval }) => isAfterInterval)
				? 0
				: undefined;
	if (at === undefined) return false;
	const open = song.cues.findIndex(({ hand }, i) => i + 1 > at && Object.hasOwn(hand, player));
	return open < 0 || point < open + 1;
}

function isBroken(gear: readonly Gear[], holds: Played | null): boolean {
	return gear.some(
		({ instrument, stringsDown }) => instrument.id === holds?.instrument && stringsDown > 0,
	);
}

/** They were given something by the plan since the song that is on began. */
function wasGivenSince(
	{ session, secondsOf }: NightAt,
	section: PlacedSection,
	player: string,
): boolean {
	const { correctable, holds, sinceMs } = session.players[player]!;
	return (
		correctable !== null &&
		correctable.given === holds &&
		sinceMs !== null &&
		secondsOf(sinceMs) > section.start
	);
}

function serves(
	model: ReturnType<typeof numbered>,
	demand: Demand,
	player: string,
	{ instrument }: Played,
): boolean {
	if (demand.kind === 'named') return demand.instrument === instrument;
	if (demand.kind !== 'needs') return demand.kind === 'keep';
	return model.choices(demand, player).some(({ played }) => played.instrument === instrument);
}

type Asking = {
	readonly asked: Readonly<Record<string, Cell>>;
	readonly isAlone: ReadonlySet<string>;
};

/**
 * What people were told of the slots that are still open. Whoever was given something else by hand was told so
 * by that, for as long as they were to keep what they did not get.
 */
function toldOf(
	{ session }: NightAsked,
	placed: readonly PlacedSection[],
	{ asked, isAlone }: Asking,
): LiveState['told'] {
	const told: Record<string, Played | null> = {};
	for (const { id } of session.show.players) {
		const last = placed.findLastIndex(({ key }) => isAlone.has(slotKey(key, id)));
		const wasTold = (section: PlacedSection) =>
			session.told[`${section.item.key} ${section.point} ${id}`];
		const player = session.players[id]!;
		const refusing = last < 0 || player.correctable !== null ? null : wasTold(placed[last]!);
		let refused = refusing && refusing.instrument !== player.holds ? refusing.instrument : null;
		for (const [index, section] of placed.entries()) {
			if (index <= last) continue;
			const slot = slotKey(section.key, id);
			const { demand, isAsAbove } = asked[slot]!;
			if (demand.kind === 'keep' || (section.point > 0 && isAsAbove && !section.isOn)) continue;
			const hand = wasTold(section);
			if (hand?.instrument !== refused) refused = null;
			if (hand === undefined || refused !== null) continue;
			told[slot] =
				hand === null
					? null
					: { instrument: hand.instrument, open: pitchesOf(hand.tuning as never), capo: hand.capo };
		}
	}
	return told;
}
