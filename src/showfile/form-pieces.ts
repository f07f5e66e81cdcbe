// The plain pieces that forms on disk are made of, a show's in a night and a night's kept whole.

import './uncompiled-shapes.ts';
import * as z from 'zod/mini';

export const text = z.string();
export const number = z.number();
export const boolean = z.boolean();
export const textOrNull = z.nullable(text);
export const numberOrNull = z.nullable(number);
/** A list of these. */
export const list = <Item extends z.ZodMiniType>(item: Item) => z.readonly(z.array(item));
/** These by names, as ids are. */
export const byName = <Item extends z.ZodMiniType>(item: Item) => z.readonly(z.record(text, item));
