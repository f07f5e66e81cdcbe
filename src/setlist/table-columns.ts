// Whose each column of a table is, and what it holds.

import { type Column, ColumnReader, cellsOf, nameOf, type TableWishes } from './column-reader.ts';
import type { Decided, ListPlayer } from './list-row.ts';
import type { Headed } from './table-headings.ts';

export function columnsOf(
	headed: Headed,
	wishes: TableWishes,
	decided: Decided[],
): readonly Column[] {
	const reader = new ColumnReader(headed, wishes, decided);
	const { players, intoNotes, clocks } = reader;
	const columns = reader.read();
	const named = namesAmong(columns, headed);
	const all = columns.map((column): Column => {
		if (!column.isNames) return column;
		const { heading, index } = column;
		if (!named.has(index)) {
			if (headed.isHeaded) {
				decided.push({ code: 'column-unclear', row: headed.headingRow, column: heading });
				return column;
			}
			intoNotes.push(String(index + 1));
			return { ...column, heading: '' };
		}
		decided.push(
			headed.isHeaded
				? { code: 'names-column', column: heading }
				: { code: 'unheaded-player', column: String(index + 1), name: heading },
		);
		return { ...column, use: 'player', player: players.named(heading) };
	});
	for (const column of all) {
		if (column.isDotted) decided.push({ code: 'dotted-lengths', column: nameOf(column) });
	}
	if (intoNotes.length > 0) decided.push({ code: 'into-notes', columns: intoNotes });
	if (clocks.length > 0) decided.push({ code: 'clock-column', columns: clocks });
	for (const text of new Set(headed.areGroupsKinds ? headed.groups : [])) {
		const under = playersOf(all).filter(({ group }) => group === text && text !== '');
		if (under.length > 0)
			decided.push({ code: 'group', text, players: under.map(({ name }) => name) });
	}
	return all;
}

/** Which columns of mere names are players': those beside a player's, and where nobody else is one, those whose names come again. */
function namesAmong(columns: readonly Column[], headed: Headed): ReadonlySet<number> {
	const said = columns.filter(({ use }) => use !== 'other');
	const players = new Set(said.flatMap(({ player, index }) => (player ? [index] : [])));
	if (players.size === 0) {
		const isRepeated = (index: number) => {
			const names = cellsOf(headed, index).map((cell) => cell.toLowerCase().split(/\s/)[0]);
			return new Set(names).size < names.length;
		};
		return new Set(
			said.flatMap(({ isNames, index }) => (isNames && isRepeated(index) ? [index] : [])),
		);
	}
	const found = new Set<number>();
	const spread = (order: readonly Column[]) => {
		for (const [at, { isNames, index }] of order.entries()) {
			const before = order[at - 1]?.index ?? -1;
			if (isNames && (players.has(before) || found.has(before))) found.add(index);
		}
	};
	spread(said);
	spread(said.toReversed());
	return found;
}

export function playersOf(columns: readonly Column[]): readonly ListPlayer[] {
	return [...new Set(columns.flatMap(({ player }) => (player ? [player] : [])))];
}
