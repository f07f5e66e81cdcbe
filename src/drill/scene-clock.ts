// A clock that a lesson turns: it stands, leaps, and runs as fast as it is told by the hands' own clock.

import type { MachineClock } from '../base/machine-clock.ts';

export type SceneClock = MachineClock & {
	/** Forward by so many milliseconds at once; never back. */
	readonly leap: (ms: number) => void;
	/** From now on so many times as fast as the hands' clock; 0 stands still. */
	readonly run: (speed: number) => void;
};

/** How long the machine has been up when the show starts, so that it is up before it too. */
const UP_AT_ZERO_MS = 10 * 86_400_000;

export type SceneClockOptions = {
	/** The wall clock when the show is meant to start. */
	readonly zeroMs: number;
	/** Where it stands at first, in milliseconds from there; negative before. */
	readonly atMs: number;
	/** Milliseconds that the hands live by. */
	readonly handMs: () => number;
};

/** A clock that stands at the moment given until it is let run. */
export function sceneClock({ zeroMs, atMs, handMs }: SceneClockOptions): SceneClock {
	let keptMs = atMs;
	let sinceMs = handMs();
	let speed = 0;
	const now = () => keptMs + (handMs() - sinceMs) * speed;
	const turn = (toMs: number, nextSpeed: number): void => {
		keptMs = toMs;
		sinceMs = handMs();
		speed = nextSpeed;
	};
	return {
		wallMs: () => zeroMs + now(),
		upMs: () => UP_AT_ZERO_MS + now(),
		bootId: '',
		leap: (ms) => turn(now() + Math.max(0, ms), speed),
		run: (next) => turn(now(), next),
	};
}
