// Pieces of the published forms of a night's data: times, names, and the check that a form has every field of its type.

import * as z from 'zod/mini';
import { number, text, textOrNull, boolean as yes } from '../showfile/form-pieces.ts';

/** Has every field. */
export type Whole<Of> = { readonly [Field in keyof Of]-?: z.ZodMiniType };

export type Line<Lines> = Lines extends readonly (infer One)[] ? One : never;

export const yesOrNull = z.nullable(yes);
export const TIME = z.strictObject({ mark: textOrNull, clock: text, atMs: number });
export const TIME_OR_NULL = z.nullable(TIME);
export const LINE = z.strictObject({ at: TIME, words: text });
export const AT = { at: TIME, atMs: number };
export const SPAN = { fromMs: number, toMs: number };
export const PLAYER = { player: text, playerId: text };
export const PLAYER_OR_NULL = { player: textOrNull, playerId: textOrNull };
export const INSTRUMENT_OR_NULL = { instrument: textOrNull, instrumentId: textOrNull };
export const LISTED = { item: text, song: text, title: text };
export const PLACE = z.enum(['rack', 'stage', 'hands', 'bench', 'out']);
