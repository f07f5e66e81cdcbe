// What a plan has everybody play, section by section, as the judge reads it.

import type { Plan } from '../../src/plan/plan.ts';
import type { Show } from '../../src/showfile/show.ts';
import type { Plays } from './independent/judge.ts';
import type { Played } from './independent/live-state.ts';
import { pitchesOf } from './independent/sounding.ts';

export function playsOf(show: Show, { sections, slots }: Pick<Plan, 'sections' | 'slots'>): Plays {
	return sections.map((section) =>
		show.players.map(({ id }): Played | null => {
			const slot = slots.find((one) => one.section === section && one.player === id);
			if (slot === undefined || slot.instrument === null) return null;
			return { instrument: slot.instrument, open: pitchesOf(slot.tuning), capo: slot.capo };
		}),
	);
}
