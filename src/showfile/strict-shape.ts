// How a map and a list of a show file are measured: no key that is not known, and a single item where a
// list may stand.

import * as z from 'zod/mini';

import { type Known, shared } from './shared-shape.ts';

/** A map with these keys and no others; the complaint about another carries the known ones. */
export function keyed<Shape extends z.core.$ZodLooseShape>(shape: Shape) {
	const known = Object.keys(shape).join(' ');
	return z.strictObject(shape, {
		error: (issue) => (issue.code === 'unrecognized_keys' ? known : undefined),
	});
}

/** A list, or a single item in its place. */
export const oneOrMore = <Value, Written>(item: z.ZodMiniType<Value, Written>) =>
	shared(lists, item, () => {
		const single = z.pipe(
			item,
			z.transform((one: Value) => [one]),
		);
		return z.union([z.array(item), single]);
	});

const lists: Known = new WeakMap();
