// Where findings are in the set.

import type { SetPoint } from './walk-set.ts';

/** The song, and the cue point where it is one. */
export function whereOf({ on, cue }: SetPoint): { readonly song: string; readonly cue?: string } {
	return { song: on.song.id, ...(cue ? { cue: cue.at } : {}) };
}
