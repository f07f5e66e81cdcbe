// What boards would have been sent, as lines of a text: the clock of a rehearsal stands still between its steps, so
// what follows a moment by itself is written when the next moment comes.

import { markText } from '../../base/show-clock.ts';
import type { EffectsPort } from '../../night/effects-port.ts';
import { hexBytes } from '../../rig/midi-bytes.ts';
import { type BoardsWanted, CLOCK_TICK, type Sending, sendingOf } from '../../rig/midi-sending.ts';
import type { Show } from '../../showfile/show.ts';

export type MidiTape = {
	readonly effects: EffectsPort;
	/** One line a second of the show clock in which something was sent: `00:04:15 C0 05 B0 07 64`. */
	readonly text: (untilMs: number) => string;
};

/** `nowMs` and the moments of the tape are on the show clock. */
export function midiTape(show: Show, nowMs: () => number): MidiTape {
	const sent: { readonly atMs: number; readonly bytes: readonly number[] }[] = [];
	let before: BoardsWanted | null = null;
	let running: { readonly sinceMs: number; readonly sending: Sending } | null = null;
	const runUntil = (untilMs: number): void => {
		if (running === null) return;
		const { sinceMs, sending } = running;
		const ticks: { readonly atMs: number; readonly bytes: readonly number[] }[] = [];
		const { clockMs } = sending;
		if (clockMs !== null) {
			for (let tick = 0; sinceMs + tick * clockMs < untilMs; tick += 1) {
				ticks.push({ atMs: sinceMs + tick * clockMs, bytes: [CLOCK_TICK] });
			}
		}
		const later = sending.later.map(({ afterMs, bytes }) => ({ atMs: sinceMs + afterMs, bytes }));
		const due = [...later.filter(({ atMs }) => atMs < untilMs), ...ticks];
		sent.push(...due.sort((one, other) => one.atMs - other.atMs));
		running = null;
	};
	return {
		effects: {
			become: (now, since) => {
				const sending = sendingOf(show, { before, now, again: since === null });
				before = now;
				if (sending === null) return;
				const atMs = nowMs();
				runUntil(atMs);
				if (sending.now.length > 0) sent.push({ atMs, bytes: sending.now });
				running = { sinceMs: atMs, sending };
			},
		},
		text: (untilMs) => {
			runUntil(untilMs);
			const lines: { readonly mark: string; bytes: number[] }[] = [];
			for (const { atMs, bytes } of sent) {
				const mark = markText(atMs);
				const last = lines.at(-1);
				if (last?.mark === mark) last.bytes.push(...bytes);
				else lines.push({ mark, bytes: [...bytes] });
			}
			return lines.map(({ mark, bytes }) => `${mark} ${hexBytes(bytes)}\n`).join('');
		},
	};
}
