// Boards driven while a show is on: what they are to be becomes bytes on a line at once, the tempo between by the
// clock. A line that is gone is looked for again, and then gets the whole state.

import type { MidiFault } from '../../base/midi-fault.ts';
import { diskErrorCode } from '../../disk/disk.ts';
import type { MidiLine, OpenMidiLine } from '../../disk/midi-line.ts';
import type { TroubleLog } from '../../disk/trouble-log.ts';
import type { EffectsPort } from '../../night/effects-port.ts';
import { type BoardsWanted, CLOCK_TICK, type Sending, sendingOf } from '../../rig/midi-sending.ts';
import type { Show } from '../../showfile/show.ts';
import type { Clock } from '../../terminal/clock.ts';

export type MidiOutParts = {
	/** As it was asked for. */
	readonly port: string;
	readonly open: OpenMidiLine;
	/** The names that there are, where the port is one. */
	readonly ports: () => readonly string[];
	/** The show that the night goes by now. */
	readonly show: () => Show;
	readonly clock: Pick<Clock, 'nowMs' | 'after'>;
	readonly note: TroubleLog['note'];
};

export type MidiOut = {
	readonly effects: EffectsPort;
	/** Why nothing goes out; null while all is well, and in a show that sends nothing. */
	readonly fault: () => MidiFault | null;
	/** Opens the line and looks after it from now on. */
	readonly start: () => void;
};

const LOOK_MS = 1000;
/** A line that took nothing for so long stands still. */
const STALLED_MS = 1000;
const FIRST_RETRY_MS = 2;
const LAST_RETRY_MS = 250;
/** What only another start can mend. */
const FINAL = new Set(['NO_LIBRARY', 'NO_MIDI', 'EFTYPE', 'EISDIR']);
const STATUS = 0x80;

/** Whether a show sends any pedal anything. */
export function sendsMidi({ boards }: Pick<Show, 'boards'>): boolean {
	return Object.values(boards).some((pedals) => pedals.some(({ midi }) => midi !== undefined));
}

export function midiOut({ port, open, ports, show, clock, note }: MidiOutParts): MidiOut {
	let line: MidiLine | null = null;
	let fault: MidiFault | null = null;
	let wanted: BoardsWanted | null = null;
	/** What the line has not taken yet. */
	let waiting: Uint8Array = new Uint8Array();
	let waitingSinceMs: number | null = null;
	let stopRetry = (): void => {};
	/** What is still to follow by itself. */
	let following: (() => void)[] = [];

	function stopFollowing(): void {
		for (const stop of following) stop();
		following = [];
	}

	function fail(trouble: string, isGone: boolean): void {
		const isKnown = fault?.trouble === trouble || (fault?.isGone === true && !isGone);
		if (isKnown) return;
		const names = trouble === 'NO_SUCH_PORT' ? ports() : [];
		fault = { port, trouble, isGone, ports: names };
		note(isGone ? 'midi-gone' : 'midi-failed', trouble);
	}

	function well(): void {
		if (fault !== null) note('midi-back');
		fault = null;
	}

	function lose(trouble: string): void {
		stopFollowing();
		stopRetry();
		line?.close();
		line = null;
		waiting = new Uint8Array();
		waitingSinceMs = null;
		fail(trouble, true);
	}

	function flush(retryMs = FIRST_RETRY_MS): void {
		if (line === null) return;
		stopRetry();
		let from = 0;
		try {
			while (from < waiting.length) {
				const taken = line.write(waiting, from);
				if (taken === 0) break;
				from += taken;
			}
		} catch (error) {
			lose(diskErrorCode(error));
			return;
		}
		waiting = waiting.subarray(from);
		if (waiting.length === 0) {
			waitingSinceMs = null;
			well();
			return;
		}
		if (from > 0 || waitingSinceMs === null) waitingSinceMs = clock.nowMs();
		if (clock.nowMs() - waitingSinceMs >= STALLED_MS) fail('STALLED', false);
		stopRetry = clock.after(retryMs, () => flush(Math.min(2 * retryMs, LAST_RETRY_MS)));
	}

	/** A whole state takes the place of one that still waits, but for the message that is half out. */
	function putWhole(bytes: readonly number[]): void {
		const next = waiting.findIndex((byte) => byte >= STATUS);
		const begun = waiting.subarray(0, next < 0 ? waiting.length : next);
		waiting = Uint8Array.from([...begun, ...bytes]);
		flush();
	}

	/** A beat that cannot go out now would be a wrong one later. */
	function putBeat(bytes: readonly number[]): void {
		if (waiting.length > 0) return;
		waiting = Uint8Array.from(bytes);
		flush();
	}

	function send(sending: Sending): void {
		stopFollowing();
		const sinceMs = clock.nowMs();
		if (sending.now.length > 0) putWhole(sending.now);
		if (line === null) return;
		for (const { afterMs, bytes } of sending.later) {
			following.push(clock.after(afterMs, () => putBeat(bytes)));
		}
		if (sending.clockMs !== null) runClock(sinceMs, sending.clockMs);
	}

	/** Each tick by its distance from the first, so that none adds to the lateness of another. */
	function runClock(sinceMs: number, everyMs: number): void {
		let stop = (): void => {};
		following.push(() => stop());
		const tick = (count: number): void => {
			putBeat([CLOCK_TICK]);
			if (line === null) return;
			const passedMs = clock.nowMs() - sinceMs;
			// Of those that were missed none is made up for: a tempo is the distance between ticks.
			const next = Math.max(count + 1, Math.ceil(passedMs / everyMs));
			stop = clock.after(Math.max(0, next * everyMs - passedMs), () => tick(next));
		};
		tick(0);
	}

	function connect(): void {
		try {
			line = open();
		} catch (error) {
			fail(diskErrorCode(error), false);
			return;
		}
		well();
		if (wanted === null) return;
		const sending = sendingOf(show(), { before: null, now: wanted, again: true });
		if (sending !== null) send(sending);
	}

	function look(): void {
		if (line !== null && !line.isThere()) lose('ENXIO');
		if (line === null && !FINAL.has(fault?.trouble ?? '')) connect();
		clock.after(LOOK_MS, look);
	}

	return {
		effects: {
			become: (now, since) => {
				const sending = sendingOf(show(), { before: wanted, now, again: since === null });
				wanted = now;
				if (sending === null) return;
				if (line === null) stopFollowing();
				else send(sending);
			},
		},
		fault: () => (sendsMidi(show()) ? fault : null),
		start: look,
	};
}
