// A number that an option asks for, within its range.

import { cleanText } from '../base/clean-text.ts';
import type { Problem } from '../base/problem.ts';
import { badNumber, range } from '../words/requests.ts';
import { optionText, type Request } from './command.ts';

/** What was asked for, or why it cannot be had. */
export type Asked<Value> =
	| { readonly ok: true; readonly value: Value }
	| { readonly ok: false; readonly problems: readonly Problem[] };

/** Both ends belong to it. */
export type NumberRange = {
	readonly from: number;
	readonly to: number;
	readonly isWhole?: boolean;
};

/** A plain number of an option; `otherwise` where it is not given. */
export function askedNumber<Otherwise extends number | null>(
	request: Request,
	name: string,
	{ from, to, isWhole = false, otherwise }: NumberRange & { readonly otherwise: Otherwise },
): Asked<number | Otherwise> {
	const text = optionText(request, name);
	if (text === null) return { ok: true, value: otherwise };
	const value = /^-?\d+(?:\.\d+)?$/.test(text.trim()) ? Number(text) : Number.NaN;
	const isInRange = value >= from && value <= to;
	if (isInRange && (!isWhole || Number.isInteger(value))) return { ok: true, value };
	const what = badNumber(name, isWhole);
	const expected = range(from, to);
	return { ok: false, problems: [{ code: 'bad-number', what, found: cleanText(text), expected }] };
}
