// What would mend a night that does not work: single changes of the show, each planned; where none is
// enough alone, two and then three one after the other. Beam search: of the rows of changes that help and are not
// enough, only the best are gone on with.

import type { Show } from '../../showfile/show.ts';
import type { Budget } from '../choice/beam-search.ts';
import type { Plan } from '../plan.ts';
import { changesTried, type Night, type Tried } from './changes-tried.ts';
import { compareShortfalls, isWorking, shortfallOf } from './shortfall.ts';
import type { ShowChange } from './show-changes.ts';

export type Mend = {
	/** At most three, the cheapest first. */
	readonly changes: readonly ShowChange[];
	/** Each is enough alone, or all of them are needed. */
	readonly isEachEnough: boolean;
	/** Whether they are enough. */
	readonly isMended: boolean;
};

const MOST_CHANGES = 3;
/** Steps of all plans together, where nobody else takes from them: about a second. */
const BUDGET = 3_000_000;
/** For rows of one change, of two and of three: how many shorter ones are gone on with. */
const WIDTHS = [1, 3, 1];

/** Each made to what the one before it made of the show. */
type Row = readonly Tried[];

/**
 * The cheapest changes of a show whose plan does not work. Null when it works.
 *
 * @example
 * mendOf(show, beforeDoors) // => null
 */
export function mendOf(show: Show, plan: Plan, from: Budget = { left: BUDGET }): Mend | null {
	const night = { show, plan, shortfall: shortfallOf(show, plan) };
	if (isWorking(night.shortfall)) return null;
	const nightAfter = (row: Row): Night => row.at(-1) ?? night;
	const wantingAfter = (row: Row) => nightAfter(row).shortfall;
	let rows: readonly Row[] = [[]];
	for (const width of WIDTHS) {
		const begun = rows.slice(0, width);
		// Half of what there is, so that something is left for longer rows, and for whoever else takes from it.
		const share = from.left / 2 / begun.length;
		const next = begun.flatMap((row) => {
			const left: Budget = { left: share };
			const tried = changesTried(nightAfter(row), left);
			from.left -= share - left.left;
			return tried
				.filter((one) => compareShortfalls(one.shortfall, wantingAfter(row)) < 0)
				.map((one) => [...row, one]);
		});
		const enough = byPrice(next).filter((row) => isWorking(wantingAfter(row)));
		const [first] = enough;
		if (first?.length === 1) {
			return { changes: cheapest(enough), isEachEnough: true, isMended: true };
		}
		if (first !== undefined) return mendBy(first, true);
		if (next.length === 0) break;
		const best = byPrice(next).toSorted((one, other) =>
			compareShortfalls(wantingAfter(one), wantingAfter(other)),
		);
		// Of each kind the best one first: what helps in another way is more likely to be what is wanting still.
		rows = [...new Set([...best.filter(isFirstOfKind), ...best])];
	}
	return mendBy(rows[0] ?? [], false);
}

function mendBy(row: Row, isMended: boolean): Mend {
	return { changes: row.map(({ change }) => change), isEachEnough: false, isMended };
}

/** The three cheapest; of one kind only the cheapest, but that there is a choice of songs to leave out. */
function cheapest(rows: readonly Row[]): readonly ShowChange[] {
	return rows
		.filter((row, at, all) => row[0]?.change.kind === 'drop' || isFirstOfKind(row, at, all))
		.flatMap((row) => row.map(({ change }) => change))
		.slice(0, MOST_CHANGES);
}

function isFirstOfKind(row: Row, place: number, all: readonly Row[]): boolean {
	const kind = row.at(-1)?.change.kind;
	return all.findIndex((one) => one.at(-1)?.change.kind === kind) === place;
}

function byPrice(rows: readonly Row[]): readonly Row[] {
	const priceOf = (row: Row) => row.reduce((sum, { change }) => sum + change.price, 0);
	return rows.toSorted((one, other) => priceOf(one) - priceOf(other));
}
