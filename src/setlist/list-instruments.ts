// The instruments of a list: those of the rack, and those that are made since only the list names them.

import { INSTRUMENT_KINDS, type InstrumentKind, KINDS } from '../tuning/kind.ts';
import { type Abbreviations, readTuning, type Tuning } from '../tuning/tuning.ts';
import { kindIn } from './guess-kind.ts';
import type { ListCells } from './list-cells.ts';
import type { Findings, Rack, RackInstrument, Said } from './list-reading.ts';
import type { SetList } from './list-row.ts';
import { giveSlots, lettersOf } from './list-slots.ts';
import { nameKey } from './name-key.ts';
import type { Owner } from './owners.ts';
import { isUsableId } from './player-ids.ts';
import { rackSlip } from './rack-slip.ts';
import type { Has } from './read-cell.ts';
import type { DraftInstrument } from './show-draft.ts';

/** One that is made, and whose it was first. */
export type Made = { -readonly [Key in keyof DraftInstrument]: DraftInstrument[Key] } & {
	readonly owner: string;
};

/** What the instruments of a list are made of. */
export type ListParts = {
	readonly list: SetList;
	readonly rack: Rack;
	readonly owners: ReadonlyMap<string, Owner>;
	readonly cells: ListCells;
	readonly findings: Findings;
};

export class ListInstruments {
	readonly made: Made[] = [];
	readonly #list: SetList;
	readonly #rack: Rack;
	readonly #owners: ReadonlyMap<string, Owner>;
	readonly #cells: ListCells;
	readonly #findings: Findings;

	constructor({ list, rack, owners, cells, findings }: ListParts) {
		this.#list = list;
		this.#rack = rack;
		this.#owners = owners;
		this.#cells = cells;
		this.#findings = findings;
		this.#makeAll();
	}

	/** The rack's first. */
	get all(): readonly (RackInstrument | Made)[] {
		return [...this.#rack.instruments, ...this.made];
	}

	/** The instruments that cells name and no rack has, and for a player who only ever says tunings one for each. */
	#makeAll(): void {
		const held = new Set<string>();
		for (const row of this.#list.rows) {
			if (row.kind !== 'song') continue;
			for (const [player, field] of Object.entries(row.hands)) {
				const said = this.#cells.said(field);
				const owner = this.#owners.get(player);
				if (said?.kind === 'none') held.delete(player);
				if (said?.kind !== 'has' || !owner) continue;
				// A capo alone goes on what they have, and needs no other.
				if (said.tuning === null && held.has(player) && !owner.hasNames) continue;
				held.add(player);
				if (!owner.hasNames && said.instrumentKind === null)
					this.#makeForTuning(said, owner, row.row);
				else if ((said.name ?? said.slot ?? said.id) !== null)
					this.#makeNamed(said, owner, row.row);
			}
		}
		// As on a rack: each player's side by side.
		const order = this.#list.players.map(({ id }) => id);
		this.made.sort((a, b) => order.indexOf(a.owner) - order.indexOf(b.owner));
		giveSlots(this.made, this.#list, this.#rack);
	}

	#makeForTuning(said: Has, owner: Owner, row: number): void {
		if (said.tuning === null && said.capo === null) return;
		const tuning = said.tuning ?? KINDS[owner.kind].usual;
		const kind = tuning === null ? null : kindFor([owner.kind], tuning, this.#rack.abbreviations);
		const read = kind && tuning !== null ? this.tuning(tuning, kind) : null;
		if (!kind || !read) return;
		const isThere = this.made.some(
			(one) => one.owner === owner.player.id && one.tuning === read.name,
		);
		if (isThere) return;
		const name = `${owner.player.name} ${read.name}`;
		this.#make(
			{ name, id: null, slot: null, kind, tuning: read.name },
			{ owner, row, by: kind === owner.kind ? byHeading(owner) : 'tuning', isForTuning: true },
		);
	}

	#makeNamed(said: Has, owner: Owner, row: number): void {
		const found = this.find(said, owner);
		if (found) {
			const made = this.made.find((one) => one.id === found.id);
			if (made?.for && !made.for.includes(owner.player.id)) {
				made.for = [...made.for, owner.player.id];
			}
			return;
		}
		// With a rack a slot or a near name is more likely a slip than a new instrument.
		if (rackSlip(this.#rack, said) !== null) return;
		const name = said.name ?? said.id;
		const answered = name === null ? undefined : this.#rack.kinds?.get(nameKey(name));
		const byName = said.instrumentKind ?? answered ?? (name === null ? null : kindIn(name));
		const first = byName ?? owner.kind;
		const kind = answered ?? this.#kindOf(said, first, owner);
		const tuning = said.tuning === null ? null : this.tuning(said.tuning, kind);
		const own = tuning?.name ?? KINDS[kind].usual ?? 'E2 A2 D3 G3 B3 E4';
		const by = said.instrumentKind
			? 'cell'
			: answered
				? 'answer'
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
			{ owner, row, by, isForTuning: false },
		);
	}

	/** The kind that fits all tunings which the list has for this instrument, the likeliest first. */
	#kindOf(said: Has, first: InstrumentKind, owner: Owner): InstrumentKind {
		const tunings: string[] = [];
		for (const row of this.#list.rows) {
			if (row.kind !== 'song') continue;
			const field = row.hands[owner.player.id];
			if (!field) continue;
			const cell = this.#cells.readAlone(field.text, owner.kind);
			if (cell.kind === 'has' && cell.tuning !== null && isSameNaming(cell, said))
				tunings.push(cell.tuning);
		}
		if (said.instrumentKind) return said.instrumentKind;
		const order = kindOrder(first);
		const fits = (kind: InstrumentKind) => tunings.every((one) => this.tuning(one, kind) !== null);
		// What this program wrote is a tuning's own name, which not every kind that can read it has.
		const isOwnName = (kind: InstrumentKind) =>
			tunings.every((one) => this.tuning(one, kind)?.name === one);
		if (said.id !== null) return order.find(isOwnName) ?? order.find(fits) ?? first;
		return order.find(fits) ?? first;
	}

	/** The text as a tuning of this kind; null for none. */
	tuning(text: string, kind: InstrumentKind): Tuning | null {
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
			readonly isForTuning: boolean;
		},
	): void {
		const taken = new Set([...this.#rack.instruments, ...this.made].map(({ id }) => id));
		// An id is what the list calls it where that looks like one: A1, B2.
		const said = one.id ?? (/^[A-Z]{1,2}\d{1,2}$/.test(one.name) ? one.name : null);
		const isFree = said !== null && !taken.has(said) && isUsableId(said);
		const id = isFree ? said : this.#freeId(made.owner, one.slot, taken);
		const player = made.owner.player.id;
		this.made.push({
			...{ id, name: one.name, slot: one.slot, kind: one.kind, for: [player], tuning: one.tuning },
			...{ owner: player },
		});
		this.#findings.said.push({
			code: 'made',
			instrument: id,
			row: made.row,
			by: made.by,
			isForTuning: made.isForTuning,
		});
	}

	/** `A1`: the player's letter and the slot that the cell says, else the next number. */
	#freeId(owner: Owner, slot: string | null, taken: ReadonlySet<string>): string {
		const letter = lettersOf(this.#list).get(owner.player.id) ?? 'I';
		if (slot !== null && !taken.has(`${letter}${slot}`)) return `${letter}${slot}`;
		for (let number = 1; ; number += 1) {
			const id = `${letter}${number}`;
			if (!taken.has(id)) return id;
		}
	}

	/** The instrument that a cell names, of the rack or made; the player's own before others'. */
	find(said: Has, owner: Owner): RackInstrument | Made | null {
		const all: readonly (RackInstrument | Made)[] = [...this.#rack.instruments, ...this.made];
		const theirs = all.filter((one) => one.for === null || one.for.includes(owner.player.id));
		const order = [...theirs, ...all];
		const { id, slot, name } = said;
		if (id !== null) return order.find((one) => one.id === id) ?? null;
		if (name !== null) {
			const key = nameKey(name);
			// Ids of instruments made here are ours, and nobody means them in a list.
			const isOurs = (one: RackInstrument | Made) => 'owner' in one;
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
}

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

function byHeading({ player, kind }: Owner): 'heading' | 'group' | 'nothing' {
	if (kindIn(player.column) === kind) return 'heading';
	return kindIn(player.group ?? '') === kind ? 'group' : 'nothing';
}

/** What a player of it is said to play. */
export function familyWord(kind: InstrumentKind): string {
	const { family } = KINDS[kind];
	return family === 'twelve' || family === 'other' || family === 'baritone' ? 'guitar' : family;
}

function capital(word: string): string {
	return word.charAt(0).toUpperCase() + word.slice(1);
}
