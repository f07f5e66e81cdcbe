// From the rows of a set list to a show in the making. Every cell ends as something of the show or as
// something that has to be asked; what was decided on the way is told, so that nothing is guessed in silence.

import { parseSeconds } from '../base/duration.ts';
import { nearestName } from '../base/nearest-name.ts';
import type { InstrumentKind } from '../tuning/kind.ts';
import { INSTRUMENT_KINDS, KINDS } from '../tuning/kind.ts';
import { type Abbreviations, readTuning, type Tuning } from '../tuning/tuning.ts';
import { kindIn } from './guess-kind.ts';
import type {
	AsideWhy,
	Decided,
	Field,
	ListPlayer,
	ListRow,
	RowDoubtWhy,
	SetList,
	SongRow,
} from './list-row.ts';
import { idFrom, isUsableId } from './player-ids.ts';
import { type CellReader, type CellSaid, type CellWhy, readCell } from './read-cell.ts';
import { readEnds, readLength, readTempo } from './read-length.ts';
import type {
	DraftCell,
	DraftInstrument,
	DraftItem,
	DraftPlayer,
	DraftSong,
} from './show-draft.ts';

/** An instrument that is there before the list is read. */
export type RackInstrument = {
	readonly id: string;
	readonly name: string;
	readonly slot: string | null;
	readonly kind: InstrumentKind;
	readonly for: readonly string[] | null;
	/** Canonical. */
	readonly tuning: string;
};

/** What is known before the list is read. */
export type Rack = {
	readonly players: readonly DraftPlayer[];
	readonly instruments: readonly RackInstrument[];
	readonly songs: readonly { readonly id: string; readonly title: string }[];
	readonly abbreviations: Abbreviations;
	/** Names that are instruments', whatever they look like. */
	readonly sureNames?: readonly string[];
};

export const EMPTY_RACK: Rack = { players: [], instruments: [], songs: [], abbreviations: {} };

export type AskedWhy =
	| CellWhy
	| RowDoubtWhy
	| AsideWhy
	| 'no-such-instrument'
	| 'no-such-slot'
	| 'nearly'
	| 'which-instrument'
	| 'tuning-of-another-kind'
	| 'capo-on-this-kind'
	| 'capo-on-nothing'
	| 'bad-length'
	| 'bad-tempo'
	| 'bad-gap'
	| 'bad-ends'
	| 'nearly-a-player'
	| 'interval-place'
	| 'empty-encore'
	| 'title-too-long'
	| 'column-unclear';

/** What could not be read in one way only. */
export type Asked = {
	readonly row: number;
	readonly column: string;
	readonly text: string;
	readonly why: AskedWhy;
	/** What it is near to, where that helps. */
	readonly near: string | null;
	/** What of a cell may be an instrument's name, and the part of it that is known from nowhere; null for other doubts. */
	readonly word: NameSaid | null;
	/** The draft's song that it belongs to; null for none. */
	readonly song: string | null;
};

type NameSaid = { readonly whole: string; readonly unknown: string };

/** What was decided and has to be said. */
export type Said =
	| Decided
	| {
			readonly code: 'made';
			readonly instrument: string;
			readonly row: number;
			/** What says its kind. */
			readonly by: 'cell' | 'name' | 'heading' | 'tuning' | 'nothing';
	  }
	| { readonly code: 'interval-length'; readonly row: number }
	| { readonly code: 'turned-length'; readonly row: number }
	| { readonly code: 'twice'; readonly title: string; readonly rows: readonly number[] }
	| { readonly code: 'same-title'; readonly title: string; readonly row: number }
	| { readonly code: 'usual-with-capo'; readonly row: number };

export type ListReading = {
	readonly players: readonly DraftPlayer[];
	readonly instruments: readonly DraftInstrument[];
	readonly songs: readonly DraftSong[];
	readonly set: readonly DraftItem[];
	readonly asked: readonly Asked[];
	readonly said: readonly Said[];
	readonly understood: number;
};

const USUAL_INTERVAL_SECONDS = 1200;
const LONGEST_TITLE = 1000;

/** The show that these rows make beside this rack. */
export function draftFromList(list: SetList, rack: Rack): ListReading {
	return new Drafting(list, rack).read();
}

type Has = Extract<CellSaid, { kind: 'has' }>;

const NOTHING_SAID: Has = {
	...{ kind: 'has', name: null, slot: null, id: null, instrumentKind: null, tuning: null },
	capo: null,
};

type Owner = {
	readonly player: ListPlayer;
	readonly kind: InstrumentKind;
	/** Every cell of theirs that says something of an instrument, as first read. */
	hasNames: boolean;
};

type Making = { -readonly [Key in keyof DraftInstrument]: DraftInstrument[Key] } & {
	readonly owner: string;
};

class Drafting {
	readonly #list: SetList;
	readonly #rack: Rack;
	readonly #asked: Asked[] = [];
	readonly #said: Said[] = [];
	readonly #owners = new Map<string, Owner>();
	readonly #made: Making[] = [];
	/** Names in doubt, by cell. */
	readonly #words = new Map<string, NameSaid>();
	#understood = 0;

	constructor(list: SetList, rack: Rack) {
		this.#list = list;
		this.#rack = rack;
		this.#said.push(...list.decided);
		for (const player of list.players) {
			const theirs = rack.instruments.filter((one) => one.for?.includes(player.id));
			const plays = rack.players.find(({ id }) => id === player.id)?.plays ?? '';
			const kind = theirs[0]?.kind ?? kindIn(plays) ?? kindIn(player.column) ?? 'electric-6';
			this.#owners.set(player.id, { player, kind, hasNames: theirs.length > 0 });
		}
	}

	read(): ListReading {
		for (const one of this.#list.decided) {
			if (one.code !== 'column-unclear') continue;
			this.#ask({
				row: one.row,
				field: { text: one.column, column: one.column },
				why: 'column-unclear',
			});
		}
		const known = this.#knownNames();
		const cells = this.#cellsOf(known);
		this.#makeInstruments(cells);
		const { songs, set } = this.#songs(cells);
		const taken = new Set(this.#rack.players.map(({ id }) => id));
		return {
			players: this.#list.players
				.filter(({ id }) => !taken.has(id))
				.map((one) => this.#player(one)),
			instruments: this.#made.map(plainInstrument),
			songs,
			set,
			asked: this.#asked,
			said: this.#said,
			understood: this.#understood,
		};
	}

	#ask(
		one: { readonly row: number; readonly field: Field; readonly why: AskedWhy },
		song: string | null = null,
		{ near = null, word = null }: Partial<Pick<Asked, 'near' | 'word'>> = {},
	): void {
		const { row, field, why } = one;
		this.#asked.push({ row, column: field.column, text: field.text, why, near, word, song });
	}

	#player({ id, name }: ListPlayer): DraftPlayer {
		const owner = this.#owners.get(id);
		const first = this.#made.find((one) => one.owner === id)?.kind ?? owner?.kind ?? 'electric-6';
		return { id, name, plays: playsWord(first) };
	}

	/** Names of instruments by player, as far as cells say them beside a tuning, a capo or alone. */
	#knownNames(): ReadonlyMap<string, ReadonlySet<string>> {
		const known = new Map<string, ReadonlySet<string>>();
		for (const { player, kind } of this.#owners.values()) {
			const names = new Set<string>();
			for (const row of this.#list.rows) {
				const field = row.kind === 'song' ? row.hands[player.id] : undefined;
				if (!field) continue;
				const said = readCell(
					field.text,
					this.#reader(kind, () => false),
				);
				if (said.kind === 'has' && said.name !== null) names.add(nameKey(said.name));
			}
			known.set(player.id, names);
		}
		return known;
	}

	#reader(kind: InstrumentKind, isKnown: (text: string) => boolean): CellReader {
		return { kind, abbreviations: this.#rack.abbreviations, isKnown };
	}

	/** Each cell of each row as read, by row and player. */
	#cellsOf(known: ReadonlyMap<string, ReadonlySet<string>>): ReadonlyMap<string, CellSaid> {
		const cells = new Map<string, CellSaid>();
		const racked = new Set(
			this.#rack.instruments.flatMap(({ id, name, slot }) => [id, name, slot ?? id].map(nameKey)),
		);
		for (const row of this.#list.rows) {
			if (row.kind !== 'song') continue;
			for (const [player, field] of Object.entries(row.hands)) {
				const owner = this.#owners.get(player);
				if (!owner) continue;
				const reader = this.#reader(owner.kind, (text) => racked.has(nameKey(text)));
				const said = readCell(field.text, reader);
				const name = said.kind === 'has' && said.id === null ? said.name : null;
				const isSure = name === null || racked.has(nameKey(name)) || this.#isSure(name);
				const more = isSure ? null : behindShorter(name, known.get(player) ?? new Set());
				if (more !== null && name !== null) {
					this.#words.set(cellKey(row.row, player), { whole: name, unknown: more });
				}
				cells.set(
					cellKey(row.row, player),
					more === null ? said : { kind: 'unclear', why: 'extra-words' },
				);
			}
		}
		for (const owner of this.#owners.values()) this.#markOwnWords(cells, owner, racked);
		return cells;
	}

	#isSure(name: string): boolean {
		return (this.#rack.sureNames ?? []).some((one) => nameKey(one) === nameKey(name));
	}

	/** A name that stands alone wherever it stands may be the act's own word for a tuning. */
	#markOwnWords(cells: Map<string, CellSaid>, owner: Owner, racked: ReadonlySet<string>): void {
		const theirs = this.#list.rows.flatMap(({ row }) => {
			const key = cellKey(row, owner.player.id);
			const said = cells.get(key);
			return said?.kind === 'has' ? [{ key, said }] : [];
		});
		const surely = new Set(
			theirs.flatMap(({ said: { name, slot, tuning } }) =>
				name !== null && (slot !== null || tuning !== null) ? [nameKey(name)] : [],
			),
		);
		const isKnown = (name: string) =>
			[surely, racked].some((names) => names.has(nameKey(name))) ||
			kindIn(name) !== null ||
			this.#isSure(name);
		const alone = theirs.flatMap(({ key, said: { name, id } }) =>
			name === null || id !== null || isKnown(name) ? [] : [{ key, name }],
		);
		const tunings = theirs.filter(
			({ said: { name, slot, id, tuning } }) => (name ?? slot ?? id) === null && tuning !== null,
		);
		const count = (texts: readonly string[]) => new Set(texts.map(nameKey)).size;
		// In a column of tunings the few words that are none are likelier tunings too.
		const isFew =
			theirs.length === tunings.length + alone.length &&
			count(alone.map(({ name }) => name)) < count(tunings.map(({ said }) => said.tuning ?? ''));
		const hasRack = this.#rack.instruments.some((one) => one.for?.includes(owner.player.id));
		for (const { key, name } of alone) {
			const isLikely = tunings.length > 0 && (isFew || LIKE_SHORTHAND.test(name));
			const isSlip = this.#rackSlip({ ...NOTHING_SAID, name }) !== null;
			if (isSlip || (!hasRack && !isLikely)) continue;
			cells.set(key, { kind: 'unclear', why: 'own-word' });
			this.#words.set(key, { whole: name, unknown: name });
		}
		owner.hasNames ||= theirs.some(({ key }) => {
			const said = cells.get(key);
			return said?.kind === 'has' && (said.name ?? said.slot ?? said.id) !== null;
		});
	}

	/** The instruments that cells name and no rack has, and for a player who only ever says tunings one for each. */
	#makeInstruments(cells: ReadonlyMap<string, CellSaid>): void {
		for (const row of this.#list.rows) {
			if (row.kind !== 'song') continue;
			for (const player of Object.keys(row.hands)) {
				const said = cells.get(cellKey(row.row, player));
				const owner = this.#owners.get(player);
				if (said?.kind !== 'has' || !owner) continue;
				if (!owner.hasNames && said.instrumentKind === null)
					this.#makeForTuning(said, owner, row.row);
				else if ((said.name ?? said.slot ?? said.id) !== null)
					this.#makeNamed(said, owner, row.row);
			}
		}
		// As on a rack: each player's side by side.
		const order = this.#list.players.map(({ id }) => id);
		this.#made.sort((a, b) => order.indexOf(a.owner) - order.indexOf(b.owner));
		this.#giveSlots();
	}

	#makeForTuning(said: Has, owner: Owner, row: number): void {
		if (said.tuning === null && said.capo === null) return;
		const tuning = said.tuning ?? KINDS[owner.kind].usual;
		const kind = tuning === null ? null : kindFor([owner.kind], tuning, this.#rack.abbreviations);
		const read = kind && tuning !== null ? this.#tuning(tuning, kind) : null;
		if (!kind || !read) return;
		const isThere = this.#made.some(
			(one) => one.owner === owner.player.id && one.tuning === read.name,
		);
		if (isThere) return;
		const name = `${owner.player.name} ${read.name}`;
		this.#make(
			{ name, id: null, slot: null, kind, tuning: read.name },
			{ owner, row, by: kind === owner.kind ? byHeading(owner) : 'tuning' },
		);
	}

	#makeNamed(said: Has, owner: Owner, row: number): void {
		const found = this.#find(said, owner);
		if (found) {
			const made = this.#made.find((one) => one.id === found.id);
			if (made?.for && !made.for.includes(owner.player.id)) {
				made.for = [...made.for, owner.player.id];
			}
			return;
		}
		// With a rack a slot or a near name is more likely a slip than a new instrument.
		if (this.#rackSlip(said) !== null) return;
		const name = said.name ?? said.id;
		const byName = said.instrumentKind ?? (name === null ? null : kindIn(name));
		const first = byName ?? owner.kind;
		const kind = this.#kindOf(said, first, owner);
		const tuning = said.tuning === null ? null : this.#tuning(said.tuning, kind);
		const own = tuning?.name ?? KINDS[kind].usual ?? 'E2 A2 D3 G3 B3 E4';
		const by = said.instrumentKind
			? 'cell'
			: byName === kind
				? 'name'
				: kind === owner.kind
					? byHeading(owner)
					: 'tuning';
		this.#make(
			{
				name: name ?? `${capital(familyWord(kind))} ${said.slot}`,
				id: said.id,
				slot: said.slot,
				kind,
				tuning: own,
			},
			{ owner, row, by },
		);
	}

	/** The kind that fits all tunings which the list has for this instrument, the likeliest first. */
	#kindOf(said: Has, first: InstrumentKind, owner: Owner): InstrumentKind {
		const tunings: string[] = [];
		for (const row of this.#list.rows) {
			if (row.kind !== 'song') continue;
			const field = row.hands[owner.player.id];
			if (!field) continue;
			const cell = readCell(
				field.text,
				this.#reader(owner.kind, () => false),
			);
			if (cell.kind === 'has' && cell.tuning !== null && isSameNaming(cell, said))
				tunings.push(cell.tuning);
		}
		if (said.instrumentKind) return said.instrumentKind;
		const order = kindOrder(first);
		const fits = (kind: InstrumentKind) => tunings.every((one) => this.#tuning(one, kind) !== null);
		// What this program wrote is a tuning's own name, which not every kind that can read it has.
		const isOwnName = (kind: InstrumentKind) =>
			tunings.every((one) => this.#tuning(one, kind)?.name === one);
		if (said.id !== null) return order.find(isOwnName) ?? order.find(fits) ?? first;
		return order.find(fits) ?? first;
	}

	#tuning(text: string, kind: InstrumentKind): Tuning | null {
		const reading = readTuning(text, kind, this.#rack.abbreviations);
		return reading.ok ? reading.tuning : null;
	}

	#make(
		one: {
			readonly name: string;
			readonly id: string | null;
			readonly slot: string | null;
			readonly kind: InstrumentKind;
			readonly tuning: string;
		},
		made: {
			readonly owner: Owner;
			readonly row: number;
			readonly by: Extract<Said, { code: 'made' }>['by'];
		},
	): void {
		const taken = new Set([...this.#rack.instruments, ...this.#made].map(({ id }) => id));
		// An id is what the list calls it where that looks like one: A1, B2.
		const said = one.id ?? (/^[A-Z]{1,2}\d{1,2}$/.test(one.name) ? one.name : null);
		const isFree = said !== null && !taken.has(said) && isUsableId(said);
		const id = isFree ? said : this.#freeId(made.owner, one.slot, taken);
		const player = made.owner.player.id;
		this.#made.push({
			...{ id, name: one.name, slot: one.slot, kind: one.kind, for: [player], tuning: one.tuning },
			...{ owner: player },
		});
		this.#said.push({ code: 'made', instrument: id, row: made.row, by: made.by });
	}

	/** `A1`: the player's letter and the slot that the cell says, else the next number. */
	#freeId(owner: Owner, slot: string | null, taken: ReadonlySet<string>): string {
		const letter = this.#letters().get(owner.player.id) ?? 'I';
		if (slot !== null && !taken.has(`${letter}${slot}`)) return `${letter}${slot}`;
		for (let number = 1; ; number += 1) {
			const id = `${letter}${number}`;
			if (!taken.has(id)) return id;
		}
	}

	#letters(): ReadonlyMap<string, string> {
		const letters = new Map<string, string>();
		const free = new Set('ABCDEFGHIJKLMNOPQRSTUVWXYZ');
		for (const { id, name } of this.#list.players) {
			const own = [...name.normalize('NFD').toUpperCase()].find((one) => free.has(one));
			const letter = own ?? [...free][0] ?? 'I';
			free.delete(letter);
			letters.set(id, letter);
		}
		return letters;
	}

	/** Slots that cells name stay; the others get the next free digit, then a letter that begins nobody's name. */
	#giveSlots(): void {
		const taken = new Set(this.#rack.instruments.map(({ slot }) => slot));
		for (const one of this.#made) {
			if (one.slot === null) continue;
			if (taken.has(one.slot)) one.slot = null;
			else taken.add(one.slot);
		}
		const initials = new Set(
			[...this.#rack.players, ...this.#list.players].map(
				({ name }) => name.normalize('NFD').toLowerCase()[0],
			),
		);
		const letters = [...'qwertyuiopasdfghjklzxcvbnm'].filter((one) => !initials.has(one));
		// Players need letters of their own in prompts.
		const spare = Math.max(
			0,
			26 - this.#rack.players.length - this.#list.players.length - initials.size,
		);
		const free = [...'123456789', ...letters.slice(0, spare)].filter((one) => !taken.has(one));
		for (const one of this.#made) if (one.slot === null) one.slot = free.shift() ?? null;
	}

	/** The instrument that a cell names, of the rack or made; the player's own before others'. */
	#find(said: Has, owner: Owner): RackInstrument | Making | null {
		const all: readonly (RackInstrument | Making)[] = [...this.#rack.instruments, ...this.#made];
		const theirs = all.filter((one) => one.for === null || one.for.includes(owner.player.id));
		const order = [...theirs, ...all];
		const { id, slot, name } = said;
		if (id !== null) return order.find((one) => one.id === id) ?? null;
		if (name !== null) {
			const key = nameKey(name);
			// Ids of instruments made here are ours, and nobody means them in a list.
			const isOurs = (one: RackInstrument | Making) => 'owner' in one;
			const named = order.find(
				(one) => nameKey(one.name) === key || (!isOurs(one) && nameKey(one.id) === key),
			);
			if (named) return named;
			// A rack's slot may be a letter, and stands where a name could.
			return (
				this.#rack.instruments.find((one) => one.slot !== null && nameKey(one.slot) === key) ?? null
			);
		}
		return slot === null ? null : (order.find((one) => one.slot === slot) ?? null);
	}

	#rackSlip(said: Has): { readonly why: AskedWhy; readonly near: string | null } | null {
		if (this.#rack.instruments.length === 0 || said.id !== null) return null;
		if (said.name === null) return { why: 'no-such-slot', near: null };
		if (this.#isSure(said.name)) return null;
		const near = nearestName(
			said.name,
			this.#rack.instruments.map(({ name }) => name),
		);
		return near === null ? null : { why: 'nearly', near };
	}

	#songs(cells: ReadonlyMap<string, CellSaid>): {
		songs: readonly DraftSong[];
		set: readonly DraftItem[];
	} {
		const songs: DraftSong[] = [];
		const set: DraftItem[] = [];
		const rowsOf = new Map<string, number[]>();
		const taken = new Set(this.#rack.songs.map(({ id }) => id));
		const now = new Map<string, DraftCell>();
		let isEncore = false;
		let pause: { readonly row: number; readonly seconds: number } | null = null;
		const lostPause = () => {
			if (pause)
				this.#ask(
					{ row: pause.row, field: { text: 'interval', column: '' }, why: 'interval-place' },
					songs.at(-1)?.id ?? null,
				);
			pause = null;
		};
		let lastEncore: number | null = null;
		for (const row of this.#list.rows) {
			if (row.kind === 'encore') {
				lastEncore = row.isEncore ? row.row : null;
				isEncore = row.isEncore;
				continue;
			}
			if (row.kind === 'aside') {
				if (row.why === 'no-title') {
					this.#ask(
						{
							row: row.row,
							field: { text: row.text, column: this.#titleColumn() },
							why: 'no-title',
						},
						songs.at(-1)?.id ?? null,
					);
				}
				continue;
			}
			if (row.kind === 'interval') {
				lostPause();
				pause = { row: row.row, seconds: this.#intervalSeconds(row) };
				continue;
			}
			const song = this.#song(row, cells, now);
			const gapSeconds = this.#gap(row, song.id);
			const there = isBare(song)
				? this.#rack.songs.find(({ title }) => titleKey(title) === titleKey(song.title))
				: undefined;
			const same = there
				? { ...song, id: there.id }
				: songs.find((one) => isSameSong(one, song, row.isExact));
			const own = same ?? { ...song, id: this.#songId(row, taken) };
			if (same) this.#renamed(song.id, same.id);
			else {
				this.#renamed(song.id, own.id);
				taken.add(own.id);
				const alike = songs.some(({ title }) => titleKey(title) === titleKey(own.title));
				if (alike) this.#said.push({ code: 'same-title', title: own.title, row: row.row });
				songs.push(own);
			}
			rowsOf.set(own.id, [...(rowsOf.get(own.id) ?? []), row.row]);
			if (pause) {
				const before = set.at(-1);
				if (before?.kind === 'song' && !before.isEncore && !isEncore) {
					set.push({ kind: 'interval', seconds: pause.seconds });
					pause = null;
				} else lostPause();
			}
			lastEncore = null;
			set.push({ kind: 'song', song: own.id, gapSeconds, isEncore });
		}
		lostPause();
		if (lastEncore !== null) {
			this.#ask(
				{
					row: lastEncore,
					field: { text: 'encore', column: this.#titleColumn() },
					why: 'empty-encore',
				},
				songs.at(-1)?.id ?? null,
			);
		}
		for (const { id, title } of songs) {
			const rows = rowsOf.get(id) ?? [];
			if (rows.length > 1) this.#said.push({ code: 'twice', title, rows });
		}
		return { songs, set };
	}

	/** What was asked of a song under way, told by the id that it got. */
	#renamed(from: string, to: string): void {
		for (const [index, one] of this.#asked.entries()) {
			if (one.song === from) this.#asked[index] = { ...one, song: to };
		}
	}

	#titleColumn(): string {
		const row = this.#list.rows.find((one) => one.kind === 'song');
		return row?.kind === 'song' ? row.titleColumn : '';
	}

	#songId(row: SongRow, taken: ReadonlySet<string>): string {
		return idFrom(row.title, `song-${row.row}`, taken);
	}

	#intervalSeconds(row: Extract<ListRow, { kind: 'interval' }>): number {
		// Nobody leaves the stage for twenty seconds: a bare number of two digits is minutes here.
		const said = row.length === null ? null : readLength(row.length.text, true);
		if (row.length !== null && said?.seconds) {
			// A table's column for lengths has it in a cell of its own.
			if (row.length.column !== this.#titleColumn()) this.#understood += 1;
			return said.seconds;
		}
		if (row.length === null) this.#said.push({ code: 'interval-length', row: row.row });
		else this.#ask({ row: row.row, field: row.length, why: 'bad-length' });
		return USUAL_INTERVAL_SECONDS;
	}

	#song(
		row: SongRow,
		cells: ReadonlyMap<string, CellSaid>,
		now: Map<string, DraftCell>,
	): DraftSong {
		// A name until the song has its id.
		const id = `\n${row.row}-${row.title}`;
		const isLong = row.title.length > LONGEST_TITLE;
		if (isLong)
			this.#ask(
				{
					row: row.row,
					field: { text: `${row.title.slice(0, 40)}…`, column: row.titleColumn },
					why: 'title-too-long',
				},
				id,
			);
		if (row.doubt)
			this.#ask(
				{
					row: row.row,
					field: {
						text: row.title,
						column: row.doubt.why === 'length-or-title' ? 'length' : row.titleColumn,
					},
					why: row.doubt.why,
				},
				id,
			);
		const said = this.#fields(row, id);
		return {
			...{ id, title: isLong ? row.title.slice(0, LONGEST_TITLE) : row.title },
			...said,
			hands: this.#hands(row, { cells, now, id }),
		};
	}

	#fields(row: SongRow, id: string) {
		const at = (why: AskedWhy) => ({ row: row.row, song: id, why });
		const length = this.#read(row.length, (text) => readLength(text), at('bad-length'));
		if (length?.isTurned) this.#said.push({ code: 'turned-length', row: row.row });
		return {
			seconds: length?.seconds ?? null,
			tempo: this.#read(row.tempo, readTempo, at('bad-tempo')),
			starts: this.#starts(row, id),
			ends: this.#ends(row, id),
			notes: notesText(row.notes),
		};
	}

	#ends(row: SongRow, id: string) {
		// Behind a title the sign is no cell of its own.
		if (row.ends?.text === '>>' && row.ends.column === row.titleColumn) return 'segue' as const;
		return this.#read(row.ends, readEnds, { row: row.row, song: id, why: 'bad-ends' });
	}

	#hands(
		row: SongRow,
		{
			cells,
			now,
			id,
		}: {
			readonly cells: ReadonlyMap<string, CellSaid>;
			readonly now: Map<string, DraftCell>;
			readonly id: string;
		},
	): Readonly<Record<string, DraftCell>> {
		const hands: Record<string, DraftCell> = {};
		for (const [player, field] of Object.entries(row.hands)) {
			const said = cells.get(cellKey(row.row, player));
			const owner = this.#owners.get(player);
			if (!said || !owner) continue;
			const answer = this.#cell(said, owner, { now: now.get(player) ?? null, row: row.row });
			if ('why' in answer) {
				const name = said.kind === 'has' && answer.why === 'nearly' ? said.name : null;
				const word =
					name === null
						? this.#words.get(cellKey(row.row, player))
						: { whole: name, unknown: name };
				const { why, near } = answer;
				this.#ask({ row: row.row, field, why }, id, { near, word: word ?? null });
				continue;
			}
			this.#understood += 1;
			if (answer.cell === null) continue;
			hands[player] = answer.cell;
			now.set(player, answer.cell);
		}
		return hands;
	}

	#read<Value>(
		field: Field | null,
		read: (text: string) => Value | null,
		at: { readonly row: number; readonly song: string; readonly why: AskedWhy },
	): Value | null {
		if (field === null) return null;
		const value = read(field.text);
		if (value === null) this.#ask({ row: at.row, field, why: at.why }, at.song);
		else this.#understood += 1;
		return value;
	}

	#gap(row: SongRow, song: string): number | null {
		const read = (text: string) =>
			/^0+s?$/.test(text.trim()) ? 0 : (readLength(text)?.seconds ?? parseSeconds(text));
		return this.#read(row.gap, read, { row: row.row, song, why: 'bad-gap' });
	}

	/** A player by id or name; other words as they are, unless the file would take them for a slip of an id. */
	#starts(row: SongRow, song: string): string | null {
		if (!row.starts) return null;
		const text = row.starts.text.replace(/\s+/g, ' ').trim();
		const players = [...this.#rack.players, ...this.#list.players];
		const key = nameKey(text);
		const player =
			players.find(({ id }) => id === text) ??
			(row.isExact
				? undefined
				: players.find(({ id, name }) => [id, name].map(nameKey).includes(key)));
		if (player) {
			this.#understood += 1;
			return player.id;
		}
		const near = nearestName(
			text,
			players.map(({ id }) => id),
		);
		if (near === null && text.length <= LONGEST_TITLE) {
			this.#understood += 1;
			return text;
		}
		this.#ask({ row: row.row, field: row.starts, why: 'nearly-a-player' }, song, { near });
		return null;
	}

	#cell(
		said: CellSaid,
		owner: Owner,
		at: { readonly now: DraftCell | null; readonly row: number },
	):
		| { readonly cell: DraftCell | null }
		| { readonly why: AskedWhy; readonly near: string | null } {
		if (said.kind === 'keeps') return { cell: null };
		if (said.kind === 'none') return { cell: { kind: 'none' } };
		if (said.kind === 'unclear') return { why: said.why, near: null };
		if ((said.name ?? said.slot ?? said.id) !== null) return this.#namedCell(said, owner);
		if (said.instrumentKind !== null) return this.#needs(said.tuning, said.instrumentKind);
		if (said.tuning === null) {
			if (at.now?.kind === 'named') return this.#withCapo(at.now, said.capo ?? 0);
			if (owner.hasNames) return { why: 'capo-on-nothing', near: null };
			this.#said.push({ code: 'usual-with-capo', row: at.row });
		}
		const tuning = said.tuning ?? KINDS[owner.kind].usual;
		if (tuning === null) return { why: 'capo-on-nothing', near: null };
		return this.#whichever(tuning, said.capo ?? 0, owner);
	}

	#withCapo(now: Extract<DraftCell, { kind: 'named' }>, capo: number) {
		const kind = [...this.#rack.instruments, ...this.#made].find(
			({ id }) => id === now.instrument,
		)?.kind;
		if (kind && capo > 0 && !KINDS[kind].canTakeCapo)
			return { why: 'capo-on-this-kind', near: null } as const;
		return { cell: { ...now, capo } };
	}

	#namedCell(
		said: Has,
		owner: Owner,
	): { readonly cell: DraftCell } | { readonly why: AskedWhy; readonly near: string | null } {
		const instrument = this.#find(said, owner);
		if (!instrument) return this.#rackSlip(said) ?? { why: 'no-such-instrument', near: null };
		const capo = said.capo ?? 0;
		if (capo > 0 && !KINDS[instrument.kind].canTakeCapo)
			return { why: 'capo-on-this-kind', near: null };
		if (said.tuning === null)
			return { cell: { kind: 'named', instrument: instrument.id, tuning: null, capo } };
		const tuning = this.#tuning(said.tuning, instrument.kind);
		if (!tuning) return { why: 'tuning-of-another-kind', near: null };
		const isOwn = tuning.name === instrument.tuning;
		return {
			cell: { kind: 'named', instrument: instrument.id, tuning: isOwn ? null : tuning.name, capo },
		};
	}

	#needs(
		text: string | null,
		kind: InstrumentKind,
	): { readonly cell: DraftCell } | { readonly why: AskedWhy; readonly near: string | null } {
		const tuning = text === null ? null : this.#tuning(text, kind);
		if (!tuning) return { why: 'tuning-of-another-kind', near: null };
		return { cell: { kind: 'needs', instrumentKind: kind, sounds: tuning.name } };
	}

	/** A tuning alone: whichever of theirs; with a capo it has to be one that is in it. */
	#whichever(
		text: string,
		capo: number,
		owner: Owner,
	): { readonly cell: DraftCell } | { readonly why: AskedWhy; readonly near: string | null } {
		const all: readonly (RackInstrument | Making)[] = [...this.#rack.instruments, ...this.#made];
		const theirs = all.filter((one) => one.for?.includes(owner.player.id));
		const inIt = theirs.filter((one) => this.#tuning(text, one.kind)?.name === one.tuning);
		const only = inIt.length === 1 ? inIt[0] : undefined;
		if (only && (capo > 0 || !owner.hasNames)) {
			if (capo > 0 && !KINDS[only.kind].canTakeCapo)
				return { why: 'capo-on-this-kind', near: null };
			return { cell: { kind: 'named', instrument: only.id, tuning: null, capo } };
		}
		const [one, another] = theirs;
		if (one && !another && this.#tuning(text, one.kind) !== null) {
			return this.#namedCell({ ...NOTHING_SAID, id: one.id, tuning: text, capo }, owner);
		}
		if (capo > 0) return { why: 'which-instrument', near: null };
		const kind = theirs.find((one) => this.#tuning(text, one.kind) !== null)?.kind;
		if (!kind)
			return {
				why: theirs.length === 0 ? 'which-instrument' : 'tuning-of-another-kind',
				near: null,
			};
		return this.#needs(text, kind);
	}
}

function plainInstrument({ owner: _, ...one }: Making): DraftInstrument {
	return one;
}

function cellKey(row: number, player: string): string {
	return `${row} ${player}`;
}

/** What names are compared by. */
function nameKey(text: string): string {
	return text
		.normalize('NFC')
		.toLowerCase()
		.replace(/[\s_.'’-]+/g, ' ')
		.trim();
}

/** What of this name stands behind the longest other one, alone or with a tuning elsewhere, that it begins with; null where there is none. */
function behindShorter(name: string, known: ReadonlySet<string>): string | null {
	const words = name.split(/[\s_.'’-]+/);
	const count = words.findLastIndex(
		(_, index) => index > 0 && known.has(nameKey(words.slice(0, index).join(' '))),
	);
	return count === -1 ? null : words.slice(count).join(' ');
}

/** Capitals as in OPG, or a star as in a legend; not as instruments are numbered, A1. */
const LIKE_SHORTHAND = /^(?![A-Z]{1,2}\d{1,2}$)[A-Z][A-Z\d]{1,5}\*?$|^\S{1,8}\*$/;

function isSameNaming(a: Has, b: Has): boolean {
	if (b.id !== null) return a.id === b.id;
	if (b.name !== null) return a.name !== null && nameKey(a.name) === nameKey(b.name);
	return b.slot !== null && a.slot === b.slot;
}

/** This kind first, then those of its own sort, then all others. */
function kindOrder(first: InstrumentKind): readonly InstrumentKind[] {
	const isAlike = (kind: InstrumentKind) =>
		KINDS[kind].family === KINDS[first].family ||
		(KINDS[first].family === 'guitar' && kind === 'baritone-6');
	const others = INSTRUMENT_KINDS.filter((kind) => kind !== first && kind !== 'other');
	return [first, ...others.filter(isAlike), ...others.filter((kind) => !isAlike(kind))];
}

function kindFor(
	first: readonly InstrumentKind[],
	tuning: string,
	abbreviations: Abbreviations,
): InstrumentKind | null {
	const order = first.flatMap(kindOrder);
	return order.find((kind) => readTuning(tuning, kind, abbreviations).ok) ?? null;
}

function byHeading({ player, kind }: Owner): 'heading' | 'nothing' {
	return kindIn(player.column) === kind ? 'heading' : 'nothing';
}

function familyWord(kind: InstrumentKind): string {
	const { family } = KINDS[kind];
	return family === 'twelve' || family === 'other' || family === 'baritone' ? 'guitar' : family;
}

function playsWord(kind: InstrumentKind): string {
	return familyWord(kind);
}

function capital(word: string): string {
	return word.charAt(0).toUpperCase() + word.slice(1);
}

function notesText(notes: readonly string[]): string | null {
	const text = notes.join('; ').slice(0, LONGEST_TITLE);
	return text.trim() === '' ? null : text;
}

function titleKey(title: string): string {
	return title.normalize('NFC').toLowerCase().replace(/\s+/g, ' ').trim();
}

/** The same title is the same song where nothing else differs, or where the later row has nothing but the title. */
function isSameSong(before: DraftSong, now: DraftSong, isExact: boolean): boolean {
	if (titleKey(before.title) !== titleKey(now.title)) return false;
	const rest = ({ id: _, title: __, ...one }: DraftSong) => JSON.stringify(one);
	if (before.title === now.title || !isExact) {
		if (rest(before) === rest(now)) return true;
	}
	return isBare(now) && !isExact;
}

/** Whether the list says nothing of it but its title. */
function isBare({ seconds, tempo, starts, ends, notes, hands }: DraftSong): boolean {
	const said = [seconds, tempo, starts, ends, notes].some((one) => one !== null);
	return !said && Object.keys(hands).length === 0;
}
