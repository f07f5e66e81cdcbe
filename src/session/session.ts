// The state of a night: a fold over its entries, composed of small machine snapshots and plain data.
// Nothing here knows the time; what depends on it (ages, ready, stale) is asked with a time given.

import type { InstrumentState } from '../../machines/instrument.ts';
import type { BoardState } from '../../machines/rig.ts';
import type { ShowState } from '../../machines/show.ts';
import type { SongState } from '../../machines/song.ts';
import type { BatteryIn, NightMs, SongEnd, ToldHand } from '../journal/entry.ts';
import type { RecordId } from '../journal/record.ts';
import type { Part, Show } from '../showfile/show.ts';

export type Session = {
	readonly show: Show;
	/** before, song, changeover, interval, encore, over, packed. */
	readonly phase: ShowState;
	/** The set as it stands tonight: what was played, skipped, put in. */
	readonly list: readonly ListItem[];
	/** The song in progress, or the last one ended; null before the first. */
	readonly current: string | null;
	/** The item that comes after it; null when nothing does. May be an interval while a song is on. */
	readonly next: string | null;
	/** The first song's start: zero of the show clock. */
	readonly zeroAtMs: NightMs | null;
	/** Where we are in the current song; null before the first and once it has ended. */
	readonly song: SongState | null;
	/** When what stands now (the song, the change-over, the interval) began; null before the show. */
	readonly phaseSinceMs: NightMs | null;
	/** When the last interval began, one that was only passed over too; null before any. */
	readonly intervalBeganMs: NightMs | null;
	readonly instruments: Readonly<Record<string, InstrumentState>>;
	readonly players: Readonly<Record<string, PlayerState>>;
	readonly boards: Readonly<Record<string, BoardState>>;
	/**
	 * Whose planned hand-over of which list item is settled, so that reaching it records nothing for
	 * them: by player, the cue point at which that was; hand-overs of later points are not settled by it.
	 */
	readonly settled: {
		readonly item: string | null;
		readonly players: Readonly<Record<string, number>>;
	};
	/** Who was said, while another song is on, to stay on what they have for this later item of the list. */
	readonly staying: { readonly item: string | null; readonly players: readonly string[] };
	/**
	 * What people were told of songs that leave a choice, by slot (see told.ts): what the plan said when the
	 * last step was made, null for nothing to play. Empty until the first song begins.
	 */
	readonly told: Readonly<Record<string, ToldHand | null>>;
	readonly incidents: readonly Incident[];
	/** Every search for a fault, oldest first. */
	readonly faults: readonly Fault[];
	readonly suspectPacks: readonly string[];
	/** The pack that a player was just given in place of another, until anything else is recorded. */
	readonly packChange: PackChange | null;
	/** What the last step handed over as planned though nobody had marked it so, until anything else is recorded. */
	readonly unmarked: Unmarked | null;
	/** How long each pack that was put on has been worn tonight. */
	readonly packTimes: Readonly<Record<string, PackTime>>;
	/** The batteries that were changed tonight, each once, with when that was last. */
	readonly freshBatteries: readonly FreshBattery[];
	/** Degrees Celsius last typed in. */
	readonly stageCelsius: number | null;
	/** By instrument, when it was last made ready; kept when it is doubted since. */
	readonly readyMarks: Readonly<Record<string, ReadyMark>>;
};

export type Unmarked = {
	/** The record that handed them over. */
	readonly of: RecordId;
	readonly instruments: readonly {
		readonly player: string;
		readonly instrument: string;
		/** The tuning's name and the capo as they were logged; null for what was so already. */
		readonly tuning: string | null;
		readonly capo: number | null;
	}[];
};

export type PackChange = {
	readonly player: string;
	/** The pack worn before; null for none. */
	readonly from: string | null;
	readonly to: string;
};

export type FreshBattery = BatteryIn & { readonly atMs: NightMs };

export type PackTime = {
	/** Until it was taken off last, from its last change of battery on. */
	readonly wornMs: number;
	/** Since when it is on; null while nobody wears it. */
	readonly sinceMs: NightMs | null;
};

export type ReadyMark = {
	readonly atMs: NightMs;
	/** The stage then, as it had been typed last; null when it had not. */
	readonly celsius: number | null;
};

export type ListItem = SongItem | IntervalItem;

export type SongItem = {
	readonly key: string;
	readonly kind: 'song';
	readonly song: string;
	readonly gapSeconds: number | null;
	readonly isEncore: boolean;
	/** Not to come any more: something else took its place, or it was dropped. */
	readonly isPassedOver: boolean;
	/** It was taken off tonight's list by hand. */
	readonly isDropped: boolean;
	/** Each time it was on, oldest first. `how` null while it is on. */
	readonly runs: readonly Run[];
	/** What the file's list says above it, by player: for whom its song does not name. */
	readonly above: Readonly<Record<string, Part>>;
	/** What the technician has named for it tonight, by player; counts before what its song says. */
	readonly tonight: Readonly<Record<string, Part>>;
};

export type IntervalItem = {
	readonly key: string;
	readonly kind: 'interval';
	readonly seconds: number;
};

export type Run = {
	readonly beganAtMs: NightMs;
	readonly endedAtMs: NightMs | null;
	readonly how: SongEnd | null;
};

export type PlayerState = {
	readonly holds: string | null;
	readonly sinceMs: NightMs | null;
	/** When it was last said that they stay on what they have; left out when it never was. */
	readonly stayedMs?: NightMs;
	/** What they had when an interval began; who keeps takes it again. Null once they were given anything, or somebody else that. */
	readonly putDown: string | null;
	/** The pack they wear now, if any. */
	readonly pack: string | null;
	/** When it was last changed by hand; left out when it never was. */
	readonly packSinceMs?: NightMs;
	/** A hand-over recorded from the plan or as a stand-in that an exchange may still correct. */
	readonly correctable: Correctable | null;
};

/** What a planned hand-over changed, so that a correction can set it right. */
export type Correctable = {
	/** The record that recorded it. */
	readonly of: RecordId;
	readonly atMs: NightMs;
	/** What the plan said was given. */
	readonly given: string | null;
	/** That instrument as it was before. */
	readonly givenBefore: InstrumentState | null;
};

export type Incident = {
	/** That of the record which noted it; its number for people is its place among all, from 1. */
	readonly id: RecordId;
	readonly atMs: NightMs;
	/** `string-break`, or what was said of it later; null while nothing was. */
	readonly kind: string | null;
	readonly player: string | null;
	readonly instrument: string | null;
	readonly string: number | null;
	/** The pedal that does not switch, on the player's board. */
	readonly pedal: string | null;
	readonly standIn: string | null;
	/** Seconds without sound: from the break to the stand-in in hands; null where it does not apply or is not over. */
	readonly silenceSeconds: number | null;
	/** A break that still waits for its answer. */
	readonly isOpen: boolean;
	readonly words: readonly string[];
};

/** A search for what is at fault with a player's sound. */
export type Fault = {
	/** That of the record which began it. */
	readonly id: RecordId;
	readonly atMs: NightMs;
	readonly player: string;
	/** What is heard. */
	readonly symptom: string;
	readonly incident: RecordId;
	/** What was in hands and which pack was on when it began. */
	readonly instrument: string | null;
	readonly pack: string | null;
	/** Ids of the instrument and the pack where they were changed just before. */
	readonly changed: readonly string[];
	/** Ids of packs, pedals and instruments that were in doubt already. */
	readonly doubted: readonly string[];
	/** How often each part was the cause on earlier nights, by id. */
	readonly found: Readonly<Record<string, number>>;
	readonly tests: readonly {
		readonly test: string;
		readonly answer: 'sound' | 'same' | 'not-now';
		/** A song was on. */
		readonly isInSong: boolean;
	}[];
	/** When the player had sound again; null while they have none, or not the right one. */
	readonly heardAtMs: NightMs | null;
	/** The cause; null while it is not known. */
	readonly part: string | null;
	readonly isOpen: boolean;
};
