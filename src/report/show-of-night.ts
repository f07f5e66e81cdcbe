// Everything that a night knew by name: its show as it is now, and what earlier readings of the file had
// and later ones left out. The night used it, so the report must be able to call it by its name.

import type { Show } from '../showfile/show.ts';
import type { NightStep } from './night-steps.ts';

/** The latest show, with songs, instruments and players of earlier ones after its own. */
export function showOfNight(opened: Show, steps: readonly NightStep[]): Show {
	const shows = new Set([opened, ...steps.map(({ after }) => after.show)]);
	return [...shows].reduce((known, latest) => ({
		...latest,
		songs: withGone(latest.songs, known.songs),
		instruments: withGone(latest.instruments, known.instruments),
		players: withGone(latest.players, known.players),
	}));
}

function withGone<Thing extends { readonly id: string }>(
	latest: readonly Thing[],
	known: readonly Thing[],
): readonly Thing[] {
	return [...latest, ...known.filter(({ id }) => !latest.some((one) => one.id === id))];
}
