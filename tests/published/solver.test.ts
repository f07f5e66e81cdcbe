// The solver that plans are held against, against published cases of its own: who would trust it else?
// Assignments are two cases of SciPy's tests for linear_sum_assignment, and `assign100` of the OR-Library
// (J. E. Beasley), its data from a copy in a public repository, its optimum of 305 from memory and
// confirmed by SciPy, munkres-js and HiGHS. The rest was computed by several solvers.

import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { optimumOf } from '../plan/oracle/solver.ts';

type Matrix = readonly (readonly number[])[];

/** One of each row and column: what they add up to at least, or at most, and the columns by row, from 1. */
function assigned(costs: Matrix, goal = 'Minimize'): { value: number; columns: number[] } {
	const places = costs.flatMap((row, at) => row.map((_, column) => ({ row: at, column })));
	const name = ({ row, column }: (typeof places)[number]): string => `x${row}_${column}`;
	const sum = (of: typeof places): string => of.map(name).join(' + ');
	const model = [
		goal,
		` obj: ${places.map((one) => `${costs[one.row]![one.column]} ${name(one)}`).join(' + ')}`,
		'Subject To',
		...costs.map((_, at) => ` r${at}: ${sum(places.filter(({ row }) => row === at))} = 1`),
		...costs.map((_, at) => ` c${at}: ${sum(places.filter(({ column }) => column === at))} = 1`),
		'End',
	].join('\n');
	const { value, of } = optimumOf(model)!;
	const columns = costs.map((row, at) => row.findIndex((_, to) => of(`x${at}_${to}`) > 0.5) + 1);
	return { value: Math.round(value), columns };
}

const numbers = readFileSync(new URL('assign100.txt', import.meta.url), 'utf8')
	.trim()
	.split(/\s+/)
	.map(Number);
const [size = 0, ...costs] = numbers;
const assign100 = Array.from({ length: size }, (_, row) =>
	costs.slice(row * size, (row + 1) * size),
);

test('three by three: 850 (SciPy)', () => {
	const found = assigned([
		[400, 150, 400],
		[400, 450, 600],
		[300, 225, 300],
	]);
	expect(found).toEqual({ value: 850, columns: [2, 1, 3] });
});

test('three by three: 18 at least (SciPy), 25 at most (computed)', () => {
	const matrix = [
		[10, 10, 8],
		[9, 8, 1],
		[9, 7, 4],
	];
	expect(assigned(matrix).value).toBe(18);
	expect(assigned(matrix, 'Maximize').value).toBe(25);
});

test('a hundred by a hundred: 305 (OR-Library)', () => {
	expect(costs).toHaveLength(10_000);
	expect(assigned(assign100).value).toBe(305);
});

test('the first five by five of it: 119 (computed)', () => {
	const corner = assign100.slice(0, 5).map((row) => row.slice(0, 5));
	expect(corner[1]).toEqual([20, 17, 80, 96, 14]);
	expect(assigned(corner)).toEqual({ value: 119, columns: [3, 5, 1, 4, 2] });
});

test('whole numbers: 13, and none where the rows contradict each other (computed)', () => {
	const solution = optimumOf(`Maximize
		obj: 5 a + 4 b + 3 c
		Subject To
		 one: 2 a + 3 b + c <= 5
		 two: 4 a + b + 2 c <= 11
		 three: 3 a + 4 b + 2 c <= 8
		Generals
		 a b c
		End`);
	expect(solution?.value).toBe(13);
	expect(['a', 'b', 'c'].map((name) => solution?.of(name))).toEqual([2, 0, 1]);
	expect(
		optimumOf(`Minimize
		obj: a
		Subject To
		 one: a >= 2
		 two: a <= 1
		End`),
	).toBeNull();
});
