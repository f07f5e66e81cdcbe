// What the players' cells of a list say, each read beside all others of its player: which names there are, and which
// words may be no name.

import type { InstrumentKind } from '../tuning/kind.ts';
import { kindIn } from './guess-kind.ts';
import type { NameSaid, Rack } from './list-reading.ts';
import type { Field, SetList } from './list-row.ts';
import { nameKey } from './name-key.ts';
import type { Owner } from './owners.ts';
import { isSureName, rackSlip } from './rack-slip.ts';
import { type CellReader, type CellSaid, NOTHING_SAID, readCell } from './read-cell.ts';

export class ListCells {
	readonly #list: SetList;
	readonly #rack: Rack;
	readonly #owners: ReadonlyMap<string, Owner>;
	readonly #cells = new Map<Field, CellSaid>();
	/** Names in doubt. */
	readonly #words = new Map<Field, NameSaid>();
	readonly #alone = new Map<string, CellSaid>();
	readonly #beside = new Map<string, CellSaid>();

	constructor(list: SetList, rack: Rack, owners: ReadonlyMap<string, Owner>) {
		this.#list = list;
		this.#rack = rack;
		this.#owners = owners;
		this.#readAll();
	}

	/** What this cell says; undefined where it is no cell of the list. */
	said(cell: Field): CellSaid | undefined {
		return this.#cells.get(cell);
	}

	/** The name in it that may be none; null where nothing is in doubt. */
	word(cell: Field): NameSaid | null {
		return this.#words.get(cell) ?? null;
	}

	/** Names of instruments by player, as far as cells say them beside a tuning, a capo or alone. */
	#knownNames(): ReadonlyMap<string, ReadonlySet<string>> {
		const known = new Map<string, ReadonlySet<string>>();
		for (const { player, kind } of this.#owners.values()) {
			const names = new Set<string>();
			for (const row of this.#list.rows) {
				const field = row.kind === 'song' ? row.hands[player.id] : undefined;
				if (!field) continue;
				const said = this.readAlone(this.#instrumentIn(field, kind), kind);
				if (said.kind === 'has' && said.name !== null) names.add(nameKey(said.name));
			}
			known.set(player.id, names);
		}
		return known;
	}

	/** The cell as it reads where no instrument is known. */
	readAlone(text: string, kind: InstrumentKind): CellSaid {
		return this.#read(text, { kind, isKnown: () => false }, this.#alone);
	}

	/** Whether it has a word in a column of tunings that is none. */
	#hasUnknownTuning({ tuning }: Field, kind: InstrumentKind): boolean {
		if (tuning === undefined) return false;
		const said = this.readAlone(tuning, kind);
		return (
			said.kind !== 'has' || said.tuning === null || (said.name ?? said.slot ?? said.id) !== null
		);
	}

	/** The cell without a tuning that nobody knows. */
	#instrumentIn(field: Field, kind: InstrumentKind): string {
		const { text, tuning = '' } = field;
		return this.#hasUnknownTuning(field, kind) ? text.slice(0, text.length - tuning.length) : text;
	}

	/** In a long list the same cells come again and again. */
	#read(
		text: string,
		reader: Omit<CellReader, 'abbreviations'>,
		before: Map<string, CellSaid>,
	): CellSaid {
		const key = `${reader.kind} ${text}`;
		const said =
			before.get(key) ?? readCell(text, { ...reader, abbreviations: this.#rack.abbreviations });
		before.set(key, said);
		return said;
	}

	/** Each cell of each row as read. */
	#readAll(): void {
		const known = this.#knownNames();
		const racked = new Set(
			this.#rack.instruments.flatMap(({ id, name, slot }) => [id, name, slot ?? id].map(nameKey)),
		);
		for (const row of this.#list.rows) {
			if (row.kind !== 'song') continue;
			for (const [player, field] of Object.entries(row.hands)) {
				const owner = this.#owners.get(player);
				if (!owner) continue;
				if (this.#hasUnknownTuning(field, owner.kind)) {
					const { tuning = '' } = field;
					this.#cells.set(field, { kind: 'unclear', why: 'unknown-tuning' });
					if (/^[^?"″“”„]+$/.test(tuning)) {
						this.#words.set(field, { whole: tuning, unknown: tuning });
					}
					continue;
				}
				const isKnown = (text: string) => racked.has(nameKey(text));
				const said = this.#read(field.text, { kind: owner.kind, isKnown }, this.#beside);
				const name = said.kind === 'has' && said.id === null ? said.name : null;
				const isSure = name === null || racked.has(nameKey(name)) || isSureName(this.#rack, name);
				const more = isSure ? null : behindShorter(name, known.get(player) ?? new Set());
				if (more !== null && name !== null) {
					this.#words.set(field, { whole: name, unknown: more });
				}
				this.#cells.set(field, more === null ? said : { kind: 'unclear', why: 'extra-words' });
			}
		}
		for (const owner of this.#owners.values()) this.#markOwnWords(owner, racked);
	}

	/** A name that stands alone wherever it stands may be the act's own word for a tuning. */
	#markOwnWords(owner: Owner, racked: ReadonlySet<string>): void {
		const theirs = this.#list.rows.flatMap((row) => {
			const key = row.kind === 'song' ? row.hands[owner.player.id] : undefined;
			const said = key && this.#cells.get(key);
			return key && said?.kind === 'has' ? [{ key, said }] : [];
		});
		const surely = new Set(
			theirs.flatMap(({ said: { name, slot, tuning } }) =>
				name !== null && (slot !== null || tuning !== null) ? [nameKey(name)] : [],
			),
		);
		const isKnown = (name: string) =>
			[surely, racked].some((names) => names.has(nameKey(name))) ||
			kindIn(name) !== null ||
			isSureName(this.#rack, name);
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
		const hasRack =
			this.#rack.isAsked === true &&
			this.#rack.instruments.some((one) => one.for?.includes(owner.player.id));
		for (const { key, name } of alone) {
			const isLikely = tunings.length > 0 && (isFew || LIKE_SHORTHAND.test(name));
			const isSlip = rackSlip(this.#rack, { ...NOTHING_SAID, name }) !== null;
			if (isSlip || (!hasRack && !isLikely)) continue;
			this.#cells.set(key, { kind: 'unclear', why: 'own-word' });
			this.#words.set(key, { whole: name, unknown: name });
		}
		owner.hasNames ||= theirs.some(({ key }) => {
			const said = this.#cells.get(key);
			return said?.kind === 'has' && (said.name ?? said.slot ?? said.id) !== null;
		});
	}
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
