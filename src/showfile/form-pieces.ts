// The plain pieces that forms on disk are made of, a show's in a night and a night's kept whole.

import './uncompiled-shapes.ts';
import * as z from 'zod/mini';
import { type Known, shared } from './shared-shape.ts';

export const text = z.string();
export const number = z.number();
export const boolean = z.boolean();
export const textOrNull = z.nullable(text);
export const numberOrNull = z.nullable(number);
const lists: Known = new WeakMap();
const maps: Known = new WeakMap();
const laters: Known = new WeakMap();
/** A list of these. */
export const list = <Item extends z.ZodMiniType>(item: Item) =>
	shared(lists, item, () => z.readonly(z.array(item)));
/** These by names, as ids are. */
export const byName = <Item extends z.ZodMiniType>(item: Item) =>
	shared(maps, item, () => z.readonly(z.record(text, item)));
/** Left out where the file gave none, and by all who did not know of it yet. */
export const later = <Of extends z.ZodMiniType>(shape: Of) =>
	shared(laters, shape, () => z.exactOptional(shape));
