// What a plan has everybody play, line by line, as the judge reads it.

import type { Plan } from '../../../src/plan/plan.ts';
import type { Show } from '../../../src/showfile/show.ts';
import type { Plays } from './judge.ts';
import type { Held, Line } from './lines.ts';
import { semitones } from './lines.ts';

export function playsOf(show: Show, lines: readonly Line[], { sections, slots }: Plan): Plays {
	return lines.map((_, at) =>
		show.players.map(({ id }): Held | null => {
			const slot = slots.find((one) => one.section === sections[at] && one.player === id);
			if (slot === undefined || slot.instrument === null) return null;
			const { instrument, tuning, capo } = slot;
			return { instrument, strings: semitones(tuning.notes), capo };
		}),
	);
}
