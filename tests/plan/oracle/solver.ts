// HiGHS, a solver for linear programs in whole numbers, to hold results against.

import highs from 'highs';

// Its types are written for `require`, where the loader stands under `default`.
const load = highs as unknown as typeof highs.default;

/** What it gives as it gives it; each call stands alone. */
export const solver = await load();

export type Solution = {
	readonly value: number;
	/** What each name of the model comes to. */
	readonly of: (name: string) => number;
};

/** The optimum of a model in the solver's language; null where there is none; throws where it is not proved. */
export function optimumOf(model: string): Solution | null {
	const { Status, ObjectiveValue, Columns } = solver.solve(model, { output_flag: false });
	if (Status === 'Infeasible') return null;
	if (Status !== 'Optimal') throw new Error(`the solver says ${Status}`);
	return { value: ObjectiveValue, of: (name) => Columns[name]?.Primal ?? Number.NaN };
}
