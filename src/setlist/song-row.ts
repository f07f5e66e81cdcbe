// A row of a list as a song: its length, its speed, who starts it, how it ends, what is in whose hands.

import { parseSeconds } from '../base/duration.ts';
import { nearestName } from '../base/nearest-name.ts';
import { cellInHands } from './cell-in-hands.ts';
import type { ListInstruments, ListParts } from './list-instruments.ts';
import type { SongRow } from './list-row.ts';
import { nameKey } from './name-key.ts';
import { readEnds, readLength, readTempo } from './read-length.ts';
import { songMeant } from './same-as.ts';
import type { DraftCell, DraftSong } from './show-draft.ts';

/** Letters of a title or a note. */
const LONGEST_TEXT = 1000;

/** What the songs of a list are read beside. */
export type SongParts = ListParts & {
	readonly instruments: ListInstruments;
	/** What each player has from the songs above. */
	readonly now: Map<string, DraftCell>;
	/** Players of whom that is not known, since a cell was left open. */
	readonly open: Set<string>;
	/** The songs above, in order, with what each player had. */
	readonly played: Played[];
};

type Played = {
	readonly number: number | null;
	readonly title: string;
	readonly hands: ReadonlyMap<string, DraftCell>;
	readonly open: ReadonlySet<string>;
};

/** The song that a row makes, and the gap before it. */
export function songOf(
	row: SongRow,
	parts: SongParts,
): { readonly song: Omit<DraftSong, 'id'>; readonly gapSeconds: number | null } {
	const { findings } = parts;
	const { title, titleColumn, doubt } = row;
	const isLong = title.length > LONGEST_TEXT;
	const ask = (
		text: string,
		column: string,
		why: 'title-too-long' | NonNullable<typeof doubt>['why'],
	) => findings.ask({ row: row.row, field: { text, column }, why });
	if (isLong) ask(`${title.slice(0, 40)}…`, titleColumn, 'title-too-long');
	if (doubt) ask(title, doubt.why === 'length-or-title' ? 'length' : titleColumn, doubt.why);
	const length = findings.read(row.length, (text) => readLength(text), at('bad-length'));
	if (length?.isTurned) findings.said.push({ code: 'turned-length', row: row.row });
	const song = {
		title: isLong ? title.slice(0, LONGEST_TEXT) : title,
		seconds: length?.seconds ?? null,
		tempo: findings.read(row.tempo, readTempo, at('bad-tempo')),
		starts: starts(row, parts),
		// Behind a title the sign is no cell of its own.
		ends:
			row.ends?.text === '>>' && row.ends.column === titleColumn
				? ('segue' as const)
				: findings.read(row.ends, readEnds, at('bad-ends')),
		notes: notesText(row.notes),
		hands: { ...handsAs(row, parts), ...hands(row, parts) },
	};
	const { now, open, played } = parts;
	played.push({ number: row.number ?? null, title, hands: new Map(now), open: new Set(open) });
	return { song, gapSeconds: findings.read(row.gap, readGap, at('bad-gap')) };

	function at<Why>(why: Why) {
		return { row: row.row, why };
	}
}

function readGap(text: string): number | null {
	return /^0+s?$/.test(text.trim()) ? 0 : (readLength(text)?.seconds ?? parseSeconds(text));
}

function notesText(notes: readonly string[]): string | null {
	const text = notes.join('; ').slice(0, LONGEST_TEXT);
	return text.trim() === '' ? null : text;
}

/** A player by id or name; other words as they are, unless the file would take them for a slip of an id. */
function starts(
	{ row, starts: field, isExact }: SongRow,
	{ rack, list, findings }: SongParts,
): string | null {
	if (!field) return null;
	const text = field.text.replace(/\s+/g, ' ').trim();
	const players = [...rack.players, ...list.players];
	const isCalled = ({ id, name }: (typeof players)[number]) =>
		!isExact && [id, name].map(nameKey).includes(nameKey(text));
	const player = players.find(({ id }) => id === text) ?? players.find(isCalled);
	const ids = players.map(({ id }) => id);
	const near = player ? null : nearestName(text, ids);
	if (!player && (near !== null || text.length > LONGEST_TEXT)) {
		findings.ask({ row, field, why: 'nearly-a-player' }, { near });
		return null;
	}
	findings.understood += 1;
	return player?.id ?? text;
}

/** What everybody has in the song that this one is played as. */
function handsAs(
	{ row, title, sameAs }: SongRow,
	{ findings, list, now, open, played }: SongParts,
): Readonly<Record<string, DraftCell>> {
	if (!sameAs) return {};
	const source = songMeant(sameAs.text, played);
	if (!source || (source.hands.size === 0 && source.open.size === 0)) {
		findings.ask({ row, field: sameAs, why: 'no-such-song' });
		for (const player of now.keys()) open.add(player);
		return {};
	}
	for (const [player, cell] of source.hands) now.set(player, cell);
	const later = [...now.keys()].filter((player) => !source.hands.has(player));
	const unknown = [...new Set([...source.open, ...later])];
	for (const player of source.hands.keys()) open.delete(player);
	for (const player of unknown) open.add(player);
	if (unknown.length > 0) {
		const names = unknown.map((id) => list.players.find((one) => one.id === id)?.name ?? id);
		const field = { ...sameAs, column: names.join(', ') };
		findings.ask({ row, field, why: 'same-as-open' });
	}
	findings.understood += 1;
	findings.said.push({ code: 'same-as', row, title, as: source.title });
	return Object.fromEntries([...source.hands].filter(([player]) => !open.has(player)));
}

function hands(
	{ row, hands: fields }: SongRow,
	parts: SongParts,
): Readonly<Record<string, DraftCell>> {
	const { cells, owners, now, open, played, findings } = parts;
	const found: Record<string, DraftCell> = {};
	for (const [player, field] of Object.entries(fields)) {
		const said = cells.said(field);
		const owner = owners.get(player);
		if (!said || !owner) continue;
		if (said.kind === 'as') {
			const source = songMeant(said.song, played);
			const cell = source?.open.has(player) ? undefined : source?.hands.get(player);
			if (cell) found[player] = cell;
			else findings.ask({ row, field, why: 'no-such-song' });
			if (cell) {
				now.set(player, cell);
				open.delete(player);
				findings.understood += 1;
			} else open.add(player);
			continue;
		}
		const answer = cellInHands(said, { owner, now: now.get(player) ?? null }, parts);
		if ('why' in answer) {
			const { why, near } = answer;
			const name = said.kind === 'has' && why === 'nearly' ? said.name : null;
			const word = name === null ? cells.word(field) : { whole: name, unknown: name };
			findings.ask({ row, field, why }, { near, word });
			open.add(player);
			continue;
		}
		if (answer.isUsualTuning) findings.said.push({ code: 'usual-with-capo', row });
		findings.understood += 1;
		if (answer.cell === null) continue;
		found[player] = answer.cell;
		now.set(player, answer.cell);
		open.delete(player);
	}
	return found;
}
