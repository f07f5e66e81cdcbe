// A case of chance in the form that the program takes.

import { freeClock } from '../../../src/plan/schedule/free-clock.ts';
import type { PiecesOfWork } from '../../../src/plan/schedule/one-machine.ts';
import type { ClockCase } from './clock-case.ts';

/** Seconds stand where the program has milliseconds: the arithmetic is the same. */
export function clockPieces({ chores, busy }: ClockCase): PiecesOfWork {
	const clock = freeClock(busy.map(([fromMs, untilMs]) => ({ fromMs, untilMs })));
	return {
		heads: Float64Array.from(chores, ({ from }) => clock.at(from)),
		lengths: Float64Array.from(chores, ({ seconds }) => seconds),
		dues: Float64Array.from(chores, ({ wanted }) => wanted),
		nightMs: clock.firstMs,
	};
}
