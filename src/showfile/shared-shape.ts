// Shapes that stand in a form a hundred times, made once: making one takes as long as reading a value with it.

import * as z from 'zod/mini';

/** What was made around which shape. */
export type Known = WeakMap<z.ZodMiniType, z.ZodMiniType>;

/** What `make` made around this shape the first time; `known` has what was made so far. */
export function shared<Around extends z.ZodMiniType>(
	known: Known,
	shape: z.ZodMiniType,
	make: () => Around,
): Around {
	const found = known.get(shape) ?? make();
	known.set(shape, found);
	return found as Around;
}

const optionals: Known = new WeakMap();

/** The shape where it may be left out. */
export const optional = <Of extends z.ZodMiniType>(shape: Of): z.ZodMiniOptional<Of> =>
	shared(optionals, shape, () => z.optional(shape));
