// Names that are nearly one of the rack's.

import { nearestName } from '../base/nearest-name.ts';
import type { AskedWhy, Rack } from './list-reading.ts';
import { nameKey } from './name-key.ts';
import type { Has } from './read-cell.ts';

/** Whether somebody said that this is an instrument's name. */
export function isSureName({ sureNames = [] }: Rack, name: string): boolean {
	return sureNames.some((one) => nameKey(one) === nameKey(name));
}

/** Why a name or slot that the rack does not have is likelier a slip than a new instrument; null where it is not. */
export function rackSlip(
	rack: Rack,
	said: Has,
): { readonly why: AskedWhy; readonly near: string | null } | null {
	if (rack.instruments.length === 0 || said.id !== null) return null;
	if (said.name === null) return { why: 'no-such-slot', near: null };
	if (isSureName(rack, said.name)) return null;
	const near = nearestName(
		said.name,
		rack.instruments.map(({ name }) => name),
	);
	return near === null ? null : { why: 'nearly', near };
}
