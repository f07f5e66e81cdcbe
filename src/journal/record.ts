// The shapes that a night's journal is made of. One record is one command with all its entries, so
// that nothing is half done after a crash. What an entry says is defined elsewhere; here it only has
// a kind.

/** An entry as the journal sees it: a kind, and whatever else belongs to that kind. */
export type AnyEntry = { readonly k: string };

/** The format this program writes; a reader refuses to write into one with a higher number. */
export const nightFormat = 'rackside-night/2';

/** The number that every record this program writes carries as `v`. */
export const recordVersion = 2;

/** Identity of a record among all that any laptop writes: `writer:number`. */
export type RecordId = string;

/**
 * Hybrid logical time (Kulkarni and others, 2014, from memory): the wall clock, never before that of any
 * record known when it was written, and a count where both are the same.
 */
export type LogicalTime = readonly [milliseconds: number, count: number];

/** One command's entries, with who wrote them and the moment at which the command was given. */
export type JournalRecord<E extends AnyEntry = AnyEntry> = {
	readonly v: typeof recordVersion;
	/** The writer's own number: 0 for the header, then 1, 2, 3 …; a checkpoint has that of the last record it holds. */
	readonly s: number;
	/** Writer: this laptop and data folder, and after a dot this opening of the night for writing. */
	readonly w: string;
	readonly h: LogicalTime;
	/** What it follows from; left out where that is the writer's own record before, or nothing. */
	readonly p?: readonly RecordId[];
	/** Its identity; see `idOf`. */
	readonly id: RecordId;
	/** Wall clock, milliseconds since 1970. */
	readonly t: number;
	/** Milliseconds since the machine was started, time asleep included. */
	readonly m: number;
	readonly e: readonly E[];
};

/** A record that is not written: of what is only thought of. */
export const NEW: RecordId = 'new';

/** The identity of a writer's record with this number. */
export function idOf(w: string, s: number): RecordId {
	return `${w}:${s}`;
}

/** The first record's only entry: all that a night needs to stand alone. */
export type NightHeader = {
	readonly k: 'header';
	/** `rackside-night/2`. */
	readonly format: string;
	/** Id of the night, which is also its file's name; seeds every checksum but the header's own. */
	readonly journal: string;
	/** Id of the machine's start in which the night began; empty when the system has none. */
	readonly boot: string;
	readonly title: string;
	/** Absolute path of the show file; empty when there was none. */
	readonly showPath: string;
	/** Hash of the show as it was read. */
	readonly showHash: string;
	/** The whole show; null when it was too long to be copied. */
	readonly show: unknown;
	readonly isRehearsal: boolean;
	/** First sequence number in this file; above 1 in a night's second and later files. */
	readonly from: number;
};

/** What a caller says about a night that it begins; the rest of the header is added when it is made. */
export type NightSubject = Pick<
	NightHeader,
	'boot' | 'title' | 'showPath' | 'showHash' | 'show' | 'isRehearsal'
>;

/** The only entry of a checkpoint record; `state` is whatever the caller needs to go on from there. */
export type CheckpointEntry = { readonly k: 'checkpoint'; readonly state: unknown };

/** A state, and the number of the last record that it holds. */
export type Checkpoint = { readonly seq: number; readonly state: unknown };

/** Both clocks as they stood when something was done (see `t` and `m` of a record). */
export type ClockReading = { readonly wallMs: number; readonly upMs: number };
