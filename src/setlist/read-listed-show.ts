// The JSON that `list` prints, as a set list again.

import { INSTRUMENT_KINDS } from '../tuning/kind.ts';
import { readTuning } from '../tuning/tuning.ts';
import type { Field, ListPlayer, ListRow, SetList } from './list-row.ts';
import { isUsableId } from './player-ids.ts';

/** The set list, or null where the text is no such JSON. */
export function readListedShow(text: string): SetList | null {
	const data = parsed(text);
	if (!isRecord(data) || !Array.isArray(data.songs)) return null;
	const breaks = Array.isArray(data.breaks) ? data.breaks.filter(isRecord) : [];
	const players = new Map<string, ListPlayer>();
	const rows: ListRow[] = [];
	let isEncore = false;
	for (const [index, song] of data.songs.entries()) {
		if (!isRecord(song) || typeof song.title !== 'string' || song.title.trim() === '') return null;
		const row = index + 1;
		const hands: Record<string, Field> = {};
		for (const [player, cell] of Object.entries(isRecord(song.hands) ? song.hands : {})) {
			if (!isUsableId(player)) continue;
			players.set(player, { id: player, name: player, column: player });
			hands[player] = { text: cellText(cell), column: player };
		}
		if ((song.section === 'encore') !== isEncore) {
			isEncore = !isEncore;
			rows.push({ kind: 'encore', row, isEncore });
		}
		const { seconds } = song;
		rows.push({
			...{ kind: 'song', row, title: song.title.trim(), titleColumn: 'title', hands, notes: [] },
			length: typeof seconds === 'number' ? { text: `${seconds}s`, column: 'seconds' } : null,
			...{ tempo: null, gap: null, starts: null, ends: null, isExact: true, doubt: null, id: null },
		});
		for (const one of breaks) {
			if (one.after !== row || typeof one.seconds !== 'number') continue;
			rows.push({ kind: 'interval', row, length: { text: `${one.seconds}s`, column: 'seconds' } });
		}
	}
	return {
		...{ title: null, players: [...players.values()], rows, decided: [] },
		rowCount: data.songs.length + breaks.length,
	};
}

function cellText(cell: unknown): string {
	if (!isRecord(cell)) return '-';
	const tuning = typeof cell.tuning === 'string' ? cell.tuning : '';
	const capo = typeof cell.capo === 'number' && cell.capo !== 0 ? ` c${cell.capo}` : '';
	if (typeof cell.instrument === 'string') return `[${cell.instrument}] ${tuning}${capo}`;
	return `[${kindWith(tuning)}] ${tuning}`;
}

/** The first kind that has this tuning under this very name. */
function kindWith(tuning: string): string {
	return (
		INSTRUMENT_KINDS.find((kind) => {
			const reading = readTuning(tuning, kind, {});
			return reading.ok && reading.tuning.name === tuning;
		}) ?? 'electric-6'
	);
}

function parsed(text: string): unknown {
	try {
		return JSON.parse(text);
	} catch {
		return null;
	}
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
	return typeof value === 'object' && value !== null && !Array.isArray(value);
}
