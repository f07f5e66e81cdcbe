// Which very instrument something was measured on: not its id in one show file, which another file may
// give to another.

import type { Instrument } from '../showfile/show.ts';

/** `gear quay-amber`, or `file A1 /shows` for what its file does not say more of. */
export type GearId = string;

/**
 * The identity of an instrument of a show file in this folder: its `gear`, else the folder with its id.
 *
 * @example
 * gearId({ id: 'A1', gear: 'quay-amber' }, '/shows') // => 'gear quay-amber'
 * gearId({ id: 'A1' }, '/shows') // => 'file A1 /shows'
 */
export function gearId({ id, gear }: Pick<Instrument, 'id' | 'gear'>, folder: string): GearId {
	return gear === undefined ? `file ${id} ${folder}` : `gear ${gear}`;
}

/** The id in a show file that an identity has in it; null for one that the file names itself. */
export function idIn(gear: GearId): string | null {
	const [, id] = /^(?:id|file) (\S+)/.exec(gear) ?? [];
	return id ?? null;
}

/** The folder of the show files that an identity has in it; null where it has none. */
export function folderIn(gear: GearId): string | null {
	const [, folder] = /^file \S+ (.+)$/.exec(gear) ?? [];
	return folder ?? null;
}
