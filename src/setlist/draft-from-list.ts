// From the rows of a set list to a show in the making. Every cell ends as something of the show or as
// something that has to be asked; what was decided on the way is told, so that nothing is guessed in silence.

import { ListCells } from './list-cells.ts';
import { familyWord, ListInstruments, type ListParts } from './list-instruments.ts';
import { Findings, type ListReading, type Rack } from './list-reading.ts';
import type { ListPlayer, ListRow, SetList, SongRow } from './list-row.ts';
import { titleKey } from './name-key.ts';
import { ownersOf } from './owners.ts';
import { idFrom } from './player-ids.ts';
import { readLength } from './read-length.ts';
import type { DraftItem, DraftPlayer, DraftSong } from './show-draft.ts';
import { type SongParts, songOf } from './song-row.ts';

const USUAL_INTERVAL_SECONDS = 1200;

/** The show that these rows make beside this rack. */
export function draftFromList(list: SetList, rack: Rack): ListReading {
	const findings = new Findings();
	findings.said.push(...list.decided);
	for (const one of list.decided) {
		if (one.code !== 'column-unclear') continue;
		const { row, column } = one;
		findings.ask({ row, field: { text: column, column }, why: 'column-unclear' });
	}
	const owners = ownersOf(list, rack);
	const cells = new ListCells(list, rack, owners);
	const parts: ListParts = { list, rack, owners, cells, findings };
	const instruments = new ListInstruments(parts);
	const { songs, set } = new Order({
		...parts,
		instruments,
		now: new Map(),
		open: new Set(),
		played: [],
	}).read();
	const kindOf = ({ id }: ListPlayer) =>
		instruments.made.find(({ owner }) => owner === id)?.kind ?? owners.get(id)?.kind;
	return {
		players: list.players
			.filter(({ id }) => !rack.players.some((one) => one.id === id))
			.map((one): DraftPlayer => {
				const { id, name } = one;
				return { id, name, plays: familyWord(kindOf(one) ?? 'electric-6') };
			}),
		instruments: instruments.made.map(({ owner: _, ...one }) => one),
		...{ songs, set, asked: findings.asked, said: findings.said },
		understood: findings.understood,
	};
}

type Pause = { readonly row: number; readonly seconds: number };
type Untitled = Omit<DraftSong, 'id'>;

/** The rows one by one: the catalogue and the order grow. */
class Order {
	readonly #parts: SongParts;
	readonly #songs: DraftSong[] = [];
	readonly #set: DraftItem[] = [];
	readonly #byTitle = new Map<string, readonly DraftSong[]>();
	readonly #rowsOf = new Map<string, number[]>();
	readonly #taken: Set<string>;
	readonly #titleColumn: string;
	#isEncore = false;
	/** The row of an encore without a song yet. */
	#openEncore: number | null = null;
	/** An interval without a song behind it yet. */
	#pause: Pause | null = null;

	constructor(parts: SongParts) {
		this.#parts = parts;
		this.#taken = new Set(parts.rack.songs.map(({ id }) => id));
		const row = parts.list.rows.find((one) => one.kind === 'song');
		this.#titleColumn = row?.kind === 'song' ? row.titleColumn : '';
	}

	read(): { readonly songs: readonly DraftSong[]; readonly set: readonly DraftItem[] } {
		const { list, findings } = this.#parts;
		for (const row of list.rows) this.#take(row);
		this.#dropPause();
		if (this.#openEncore !== null) this.#askAt(this.#openEncore, 'encore', 'empty-encore');
		for (const { id, title } of this.#songs) {
			const rows = this.#rowsOf.get(id) ?? [];
			if (rows.length > 1) findings.said.push({ code: 'twice', title, rows });
		}
		return { songs: this.#songs, set: this.#set };
	}

	#take(row: ListRow): void {
		switch (row.kind) {
			case 'encore':
				this.#openEncore = row.isEncore ? row.row : null;
				this.#isEncore = row.isEncore;
				return;
			case 'aside':
				if (row.why === 'no-title' || row.why === 'alone') this.#askAt(row.row, row.text, row.why);
				return;
			case 'interval':
				// `Set 2` below `Interval` speaks of the same one, and above the first song of none.
				if (row.isImplied && (this.#pause !== null || this.#set.at(-1)?.kind !== 'song')) return;
				this.#dropPause();
				this.#pause = { row: row.row, seconds: this.#intervalSeconds(row) };
				return;
			case 'song':
				this.#takeSong(row);
		}
	}

	/** Beside the song above. */
	#askAt(
		row: number,
		text: string,
		why: 'no-title' | 'alone' | 'empty-encore' | 'interval-place',
	): void {
		const column = why === 'interval-place' ? '' : this.#titleColumn;
		const song = this.#songs.at(-1)?.id ?? null;
		this.#parts.findings.ask({ row, field: { text, column }, why }, { song });
	}

	#takeSong(row: SongRow): void {
		const { findings } = this.#parts;
		const firstAsked = findings.asked.length;
		const { song, gapSeconds } = songOf(row, this.#parts);
		const id = this.#idOf(row, song);
		// Until now nobody knew what song it is.
		for (const one of findings.asked.splice(firstAsked)) findings.asked.push({ ...one, song: id });
		this.#rowsOf.set(id, [...(this.#rowsOf.get(id) ?? []), row.row]);
		this.#placePause();
		this.#openEncore = null;
		this.#set.push({ kind: 'song', song: id, gapSeconds, isEncore: this.#isEncore });
	}

	/** That of the same song above or in the file that is added to; else a new one, and the song is put into the catalogue. */
	#idOf(row: SongRow, song: Untitled): string {
		const { rack, findings } = this.#parts;
		const key = titleKey(song.title);
		const there = isBare(song)
			? rack.songs.find(({ title }) => titleKey(title) === key)
			: undefined;
		const alike = this.#byTitle.get(key) ?? [];
		const same = there ?? alike.find((one) => isSameSong(one, song, row.isExact));
		if (same) return same.id;
		const own = { id: idFrom(row.title, `song-${row.row}`, this.#taken), ...song };
		this.#taken.add(own.id);
		this.#byTitle.set(key, [...alike, own]);
		if (alike.length > 0)
			findings.said.push({ code: 'same-title', title: own.title, row: row.row });
		this.#songs.push(own);
		return own.id;
	}

	/** An interval stands between two songs that are no encore. */
	#placePause(): void {
		const before = this.#set.at(-1);
		const canStand = before?.kind === 'song' && !before.isEncore && !this.#isEncore;
		if (this.#pause !== null && canStand) {
			this.#set.push({ kind: 'interval', seconds: this.#pause.seconds });
			this.#pause = null;
		}
		this.#dropPause();
	}

	#dropPause(): void {
		if (this.#pause !== null) this.#askAt(this.#pause.row, 'interval', 'interval-place');
		this.#pause = null;
	}

	#intervalSeconds({ row, length }: Extract<ListRow, { kind: 'interval' }>): number {
		const { findings } = this.#parts;
		// Nobody leaves the stage for twenty seconds: a bare number of two digits is minutes here.
		const said = length === null ? null : readLength(length.text, true);
		if (length !== null && said?.seconds) {
			// A table's column for lengths has it in a cell of its own.
			if (length.column !== this.#titleColumn) findings.understood += 1;
			return said.seconds;
		}
		if (length === null) findings.said.push({ code: 'interval-length', row });
		else findings.ask({ row, field: length, why: 'bad-length' });
		return USUAL_INTERVAL_SECONDS;
	}
}

/** The same title is the same song where nothing else differs, or where the later row has nothing but the title. */
function isSameSong(before: Untitled, now: Untitled, isExact: boolean): boolean {
	if (isBare(now) && !isExact) return true;
	if (before.title !== now.title && isExact) return false;
	return (['seconds', 'tempo', 'starts', 'ends', 'notes', 'hands'] as const).every(
		(key) => JSON.stringify(before[key]) === JSON.stringify(now[key]),
	);
}

/** Whether the list says nothing of it but its title. */
function isBare({ seconds, tempo, starts, ends, notes, hands }: Untitled): boolean {
	const said = [seconds, tempo, starts, ends, notes].some((one) => one !== null);
	return !said && Object.keys(hands).length === 0;
}
