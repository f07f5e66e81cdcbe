// A sheet cut down to what concerns some players, or to what changes alone.

import type { Sheet, SheetRow } from './sheet.ts';

/** For whom a sheet is cut down; null for everybody. */
export type SheetChoice = {
	/** Ids of players. */
	readonly players: readonly string[] | null;
	readonly isChangesOnly: boolean;
};

/** The sheet with what concerns these players, or with what changes alone. */
export function chosenOf(sheet: Sheet, { players, isChangesOnly }: SheetChoice): Sheet {
	const isFor = ({ player }: { readonly player: string | null }) =>
		players === null || player === null || players.includes(player);
	const rows = sheet.rows.map((row): SheetRow => {
		if (row.kind === 'interval') {
			return { ...row, back: row.back.filter(isFor), work: row.work.filter(isFor) };
		}
		const points = row.points.map((point) => ({ ...point, boards: point.boards.filter(isFor) }));
		return {
			...row,
			changes: row.changes.filter(isFor),
			points: isChangesOnly
				? []
				: players === null
					? points
					: points.filter(({ boards, say }) => boards.length > 0 || say !== null),
			work: row.work.filter(isFor),
			marks: row.marks.filter(isFor),
		};
	});
	return {
		...sheet,
		before: sheet.before.filter(isFor),
		rows: isChangesOnly ? rows.filter(hasChange) : rows,
		warnings: sheet.warnings.filter(isFor),
	};
}

function hasChange(row: SheetRow): boolean {
	return row.kind === 'interval' || row.changes.length > 0 || row.work.length > 0;
}
